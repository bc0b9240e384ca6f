package chillwright.core.kitchen;

import chillwright.core.measure.Temperature;
import java.util.Arrays;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * A place where food is kept.
 *
 * @param ownLimit the kitchen's own figure, at least as strict as that of its rule set
 * @param rounds how often a day it should be read; zero where it need not be
 */
public record KnownPlace(String name, Kind kind, Optional<Temperature> ownLimit, int rounds) {
  /** How often a place is read where nothing else was said: common practice, no source. */
  public static final int USUAL_ROUNDS = 2;

  /** The most rounds a day. */
  public static final int MOST_ROUNDS = 24;

  /** What a place is for. */
  public enum Kind {
    REFRIGERATOR,
    FREEZER,
    HOT_HOLDING,
    COUNTER,
    OTHER;

    /** As it is written in requests, such as "hot-holding". */
    public String key() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public static Optional<Kind> ofKey(String key) {
      return Arrays.stream(values()).filter(kind -> kind.key().equals(key)).findFirst();
    }

    /** Whether a temperature is too warm or too cold for it at all. */
    public boolean hasLimit() {
      return this == REFRIGERATOR || this == FREEZER || this == HOT_HOLDING;
    }
  }

  public KnownPlace {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(kind, "kind");
    if (ownLimit.isPresent() && !kind.hasLimit()) {
      throw new IllegalArgumentException("no limit bears on a place of kind " + kind.key());
    }
    if (rounds < 0 || rounds > MOST_ROUNDS) {
      throw new IllegalArgumentException("rounds are 0 to " + MOST_ROUNDS + ": " + rounds);
    }
  }
}
