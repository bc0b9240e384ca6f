package chillwright.core.heat;

import java.util.Objects;

/**
 * What becomes of a group of foods that lost its cold when the power was out.
 *
 * @param key such as "soft-cheese"
 * @param fahrenheit warmer than that; from 32
 * @param hours for longer than that; above 0
 * @param status verified or reported
 */
public record OutageFood(
    String key,
    Place place,
    Then then,
    double fahrenheit,
    double hours,
    String source,
    String status) {
  /** Where it was. */
  public enum Place {
    REFRIGERATOR,
    FREEZER
  }

  /** What is done with it; out of a freezer, to keep is to freeze it again. */
  public enum Then {
    DISCARD,
    KEEP
  }

  public OutageFood {
    Objects.requireNonNull(key, "key");
    Objects.requireNonNull(place, "place");
    Objects.requireNonNull(then, "then");
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(status, "status");
    if (!(fahrenheit >= 32 && hours > 0)) {
      throw new IllegalArgumentException(key + ": above " + fahrenheit + " °F for " + hours + " h");
    }
  }
}
