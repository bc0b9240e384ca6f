package chillwright.core.heat;

import java.util.Objects;

/**
 * A kitchen figure that somebody printed, with its range: a rule of thumb, never a limit.
 *
 * @param key such as "freezer-load-meat"
 * @param low the smaller figure; equal to {@code high} where one is printed
 * @param unit what it counts, such as "lb/ft3"
 * @param status verified, reported, or derived from printed figures by our own arithmetic
 */
public record Practice(
    String key, double low, double high, String unit, String source, String status) {
  public Practice {
    Objects.requireNonNull(key, "key");
    Objects.requireNonNull(unit, "unit");
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(status, "status");
    if (!(low > 0 && high >= low)) {
      throw new IllegalArgumentException(key + ": " + low + " to " + high);
    }
  }
}
