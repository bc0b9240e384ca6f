package chillwright.core.measure;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Objects;

/**
 * A temperature exactly as it was read: whole hundredths of a degree, in the scale on the probe.
 * Never null. Range: -100 to 600 °F, or the Celsius figures that are exactly as warm or lie
 * between. Deliberately not {@code Comparable}: 41 °F and 5 °C are equally warm but not equal.
 */
public record Temperature(int hundredths, Scale scale) {
  /** The two scales that kitchens' probes show. */
  public enum Scale {
    CELSIUS("°C"),
    FAHRENHEIT("°F");

    private final String sign;

    Scale(String sign) {
      this.sign = sign;
    }

    /** The degree sign with its letter, such as "°F". */
    public String sign() {
      return sign;
    }
  }

  /** The coldest accepted reading, -100 °F, counted in 1/900 °C. */
  private static final long COLDEST = 5L * (-100_00L - 32_00L);

  /** The warmest accepted reading, 600 °F, counted in 1/900 °C. */
  private static final long WARMEST = 5L * (600_00L - 32_00L);

  public Temperature {
    Objects.requireNonNull(scale, "scale");
    long count = count(hundredths, scale);
    if (count < COLDEST || count > WARMEST) {
      throw new IllegalArgumentException(
          "temperature out of range, -100 to 600 °F: " + hundredths + " hundredths " + scale);
    }
  }

  /** Whether a reading of so many hundredths is one this type accepts (-100 to 600 °F). */
  public static boolean isAccepted(int hundredths, Scale scale) {
    long count = count(hundredths, scale);
    return count >= COLDEST && count <= WARMEST;
  }

  public static Temperature fahrenheit(double degrees) {
    return new Temperature((int) Math.round(degrees * 100), Scale.FAHRENHEIT);
  }

  public static Temperature celsius(double degrees) {
    return new Temperature((int) Math.round(degrees * 100), Scale.CELSIUS);
  }

  /**
   * Counted in 1/900 °C, where both scales are whole numbers: 41 °F and 5 °C are the same count.
   */
  public long nineHundredths() {
    return count(hundredths, scale);
  }

  private static long count(int hundredths, Scale scale) {
    return switch (scale) {
      case CELSIUS -> 9L * hundredths;
      case FAHRENHEIT -> 5L * (hundredths - 32_00L);
    };
  }

  /** Whether this is warmer than the other, by exact conversion. */
  public boolean isWarmerThan(Temperature other) {
    return nineHundredths() > other.nineHundredths();
  }

  /** Degrees Celsius, for arithmetic on curves only; never for a comparison with a limit. */
  public double celsiusDegrees() {
    return nineHundredths() / 900.0;
  }

  /** Degrees of a scale, to be shown; never for a comparison with a limit. */
  public double degrees(Scale wanted) {
    double celsius = celsiusDegrees();
    return wanted == Scale.CELSIUS ? celsius : celsius * 9 / 5 + 32;
  }

  /** As it was read, with what that is for who reads the other scale: "32 °C (89.6 °F)". */
  public String text(Scale readers) {
    if (scale == readers) {
      return text();
    }
    return "%s (%s %s)"
        .formatted(
            text(),
            BigDecimal.valueOf(degrees(readers))
                .setScale(1, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString(),
            readers.sign());
  }

  /** As it was read, without trailing zeros: "128.5 °F". */
  public String text() {
    return BigDecimal.valueOf(hundredths, 2).stripTrailingZeros().toPlainString()
        + " "
        + scale.sign();
  }
}
