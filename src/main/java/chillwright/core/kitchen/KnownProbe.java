package chillwright.core.kitchen;

import chillwright.core.measure.Temperature;
import java.util.Arrays;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * A thermometer.
 *
 * @param name its name or number, as it is written beside a reading
 */
public record KnownProbe(String name, Scales scales, Optional<String> note) {
  /** In 1/900 °C, where both scales are whole numbers. */
  private static final long ONE_CELSIUS = 900;

  private static final long TWO_FAHRENHEIT = 1000;

  /** Which scales it shows, on which its accuracy depends. */
  public enum Scales {
    CELSIUS,
    FAHRENHEIT,
    BOTH;

    /** As it is written in requests. */
    public String key() {
      return name().toLowerCase(Locale.ROOT);
    }

    public static Optional<Scales> ofKey(String key) {
      return Arrays.stream(values()).filter(scales -> scales.key().equals(key)).findFirst();
    }

    /** The accuracy that is asked of it, as it is printed. */
    public String tolerance() {
      return this == FAHRENHEIT ? "±2 °F" : "±1 °C";
    }
  }

  public KnownProbe {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(scales, "scales");
    Objects.requireNonNull(note, "note");
  }

  /**
   * Whether what it shows in ice water is accurate enough: FDA Food Code 4-203.11, as adopted in
   * California Health and Safety Code 114159, asks for ±1 °C where it shows Celsius, alone or
   * beside Fahrenheit, and for ±2 °F where it shows Fahrenheit alone.
   */
  public boolean isAccurateAtIcePoint(Temperature shown) {
    long most = scales == Scales.FAHRENHEIT ? TWO_FAHRENHEIT : ONE_CELSIUS;
    return Math.abs(shown.nineHundredths()) <= most;
  }
}
