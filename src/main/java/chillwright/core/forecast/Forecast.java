package chillwright.core.forecast;

import chillwright.core.measure.Temperature;
import chillwright.core.rules.OpenCooling.Awaited;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * When food is expected to reach one limit.
 *
 * @param asOf the moment it is made
 * @param expected best guess; empty where it never gets there in these surroundings, or where the
 *     readings cannot tell: the doubts say which
 * @param earliest in published series about nine in ten crossings fall between it and {@code
 *     latest}
 * @param latest empty where no reading bounds it
 * @param target what the food must read by a moment to be still in time
 * @param speedups what would bring it there sooner, the soonest first; only where it is late or may
 *     be, and the limit has not passed
 */
public record Forecast(
    Awaited awaited,
    Instant asOf,
    Optional<Instant> expected,
    Optional<Instant> earliest,
    Optional<Instant> latest,
    Optional<Target> target,
    Basis basis,
    List<Speedup> speedups) {
  public Forecast {
    speedups = List.copyOf(speedups);
  }

  /** Without what would bring it there sooner. */
  Forecast(
      Awaited awaited,
      Instant asOf,
      Optional<Instant> expected,
      Optional<Instant> earliest,
      Optional<Instant> latest,
      Optional<Target> target,
      Basis basis) {
    this(awaited, asOf, expected, earliest, latest, target, basis, List.of());
  }

  Forecast with(List<Speedup> found) {
    return new Forecast(awaited, asOf, expected, earliest, latest, target, basis, found);
  }

  /** Food at or below the temperature at the moment is on the curve that meets the limit. */
  public record Target(Temperature temperature, Instant by) {}

  /**
   * What it rests on.
   *
   * @param readings how many were used
   * @param surroundings what the food cools towards, logged or reckoned with
   */
  public record Basis(int readings, Optional<Temperature> surroundings, List<Doubt> doubts) {
    public Basis {
      doubts = List.copyOf(doubts);
    }

    public boolean has(Doubt doubt) {
      return doubts.contains(doubt);
    }
  }

  /** Why a forecast is wide, or why there is none. */
  public enum Doubt {
    /** One reading since it began to cool, or was moved or handled, or several at one time. */
    ONE_READING,
    /** The last two readings do not fall. */
    NOT_FALLING,
    /** The surroundings are not colder than the limit. */
    NEVER_THERE,
    /** Nobody logged what is around the food; a refrigerator is reckoned with. */
    SURROUNDINGS_NOT_LOGGED,
    /** Two readings lie on any curve. */
    TWO_READINGS,
    /** The readings bend away from the curve: the place, or the food, was changed. */
    NOT_ONE_CURVE
  }

  /** How it stands against the limit. */
  public enum Outlook {
    /** All of the interval is in time. */
    IN_TIME("in-time"),
    /** Part of the interval is late, or it has no end. */
    UNSURE("unsure"),
    /** It should be there by now, and no reading shows it. */
    UNREAD("unread"),
    /** Expected late. */
    LATE("late"),
    /** Nothing is expected, or the limit has no moment. */
    NOT_TOLD("not-told");

    private final String key;

    Outlook(String key) {
      this.key = key;
    }

    /** As it stands in an answer. */
    public String key() {
      return key;
    }
  }

  public Outlook outlook() {
    if (basis.has(Doubt.NEVER_THERE)) {
      return Outlook.LATE;
    }
    if (expected.isEmpty() || awaited.deadline().isEmpty()) {
      return Outlook.NOT_TOLD;
    }
    Instant last = awaited.deadline().get();
    if (expected.get().isAfter(last)) {
      return Outlook.LATE;
    }
    if (asOf.isAfter(expected.get())) {
      return Outlook.UNREAD;
    }
    return latest.filter(moment -> !moment.isAfter(last)).isPresent()
        ? Outlook.IN_TIME
        : Outlook.UNSURE;
  }
}
