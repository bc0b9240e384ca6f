package chillwright.core.measure;

import chillwright.core.measure.Temperature.Scale;
import java.util.OptionalInt;

/**
 * A limit as its authority prints it: in one scale or in both, in whole hundredths of a degree,
 * passing at the limit itself ({@code inclusive}) or only beyond it.
 *
 * <p>A reading is judged by the figure printed in its own scale, because printed pairs are rounded:
 * 57 °C is 134.6 °F, yet both "57 °C" and "135 °F" meet the hot-holding limit of the FDA Food Code
 * (3-501.16(A)(1)). A limit printed in one scale only is compared by exact conversion. Nothing is
 * rounded before comparing.
 */
public record Limit(OptionalInt celsius, OptionalInt fahrenheit, boolean inclusive) {
  public Limit {
    if (celsius.isEmpty() && fahrenheit.isEmpty()) {
      throw new IllegalArgumentException("a limit needs a figure in at least one scale");
    }
  }

  /** A limit printed in both scales, in whole degrees, which passes at the limit itself. */
  public static Limit of(int celsius, int fahrenheit) {
    return new Limit(OptionalInt.of(celsius * 100), OptionalInt.of(fahrenheit * 100), true);
  }

  /** Cold enough: at or below the limit (below it where the limit itself does not pass). */
  public boolean isColdEnough(Temperature reading) {
    int side = compare(reading);
    return side < 0 || (side == 0 && inclusive);
  }

  /** Hot enough: at or above the limit (above it where the limit itself does not pass). */
  public boolean isHotEnough(Temperature reading) {
    int side = compare(reading);
    return side > 0 || (side == 0 && inclusive);
  }

  /** Whether the reading is exactly the printed figure. */
  public boolean isExactly(Temperature reading) {
    return compare(reading) == 0;
  }

  private int compare(Temperature reading) {
    return Long.compare(reading.nineHundredths(), in(reading.scale()).nineHundredths());
  }

  /** The printed figure in that scale, or the other figure where only that one is printed. */
  public Temperature in(Scale wanted) {
    OptionalInt own = wanted == Scale.CELSIUS ? celsius : fahrenheit;
    if (own.isPresent()) {
      return new Temperature(own.getAsInt(), wanted);
    }
    return wanted == Scale.CELSIUS
        ? new Temperature(fahrenheit.getAsInt(), Scale.FAHRENHEIT)
        : new Temperature(celsius.getAsInt(), Scale.CELSIUS);
  }

  /** "70 °F", or "21 °C", in the wanted scale where it is printed in that scale. */
  public String text(Scale wanted) {
    return in(wanted).text();
  }

  /** Both printed figures: "70 °F (21 °C)". */
  public String text() {
    return both(Scale.FAHRENHEIT);
  }

  /** Both printed figures, that of the wanted scale first: "21 °C (70 °F)". */
  public String both(Scale first) {
    if (celsius.isEmpty() || fahrenheit.isEmpty()) {
      return text(first);
    }
    Scale second = first == Scale.CELSIUS ? Scale.FAHRENHEIT : Scale.CELSIUS;
    return text(first) + " (" + text(second) + ")";
  }
}
