package chillwright.core.rules;

import chillwright.core.measure.Limit;
import java.time.Duration;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/** The form of a rule: one small type that reads as one sentence, with the rule's figures. */
public sealed interface Shape {
  /**
   * Food passes from one limit to another in time. Cooling falls to {@code to}, reheating rises to
   * it; which of the two is the occasion's matter.
   *
   * @param from where the clock starts; empty where it starts at a row
   * @param within longest elapsed time, itself allowed; empty where no time is set
   * @param stays how long the reached temperature must last (15 s for reheating)
   * @param stands how long after the row a reading must show it (2 min for a microwave); zero if
   *     nothing is asked
   */
  record Reach(
      Optional<Limit> from, Limit to, Optional<Duration> within, Duration stays, Duration stands)
      implements Shape {
    public Reach {
      Objects.requireNonNull(to, "to");
    }
  }

  /**
   * Food stays cold enough, or hot enough, at every reading. With both limits, either will do (food
   * put under time control starts cold or hot). At least one is present.
   *
   * @param allowed how long food may be beyond the limit in one stretch; zero if not at all
   */
  record Hold(Optional<Limit> atMost, Optional<Limit> atLeast, Duration allowed) implements Shape {
    public Hold {
      if (atMost.isEmpty() && atLeast.isEmpty()) {
        throw new IllegalArgumentException("a hold rule needs a limit");
      }
    }
  }

  /**
   * Time alone controls: served or discarded in time.
   *
   * @param ceiling the food must never read warmer meanwhile
   * @param hotAir surroundings warmer than this shorten the time to {@code withinHotAir}
   */
  record TimeAlone(
      Duration within,
      Optional<Limit> ceiling,
      Optional<Limit> hotAir,
      Optional<Duration> withinHotAir)
      implements Shape {
    public TimeAlone {
      Objects.requireNonNull(within, "within");
      if (hotAir.isPresent() != withinHotAir.isPresent()) {
        throw new IllegalArgumentException("hot air needs both its limit and its time");
      }
    }
  }

  /**
   * Used or discarded within so many local calendar days.
   *
   * @param days empty where the days are those of the food's storage category
   * @param firstDayCounts whether the making (or opening) day is day 1
   */
  record DayCount(OptionalInt days, boolean firstDayCounts) implements Shape {}

  /**
   * Frozen food stays frozen.
   *
   * @param atMost the warmest allowed, where the authority prints a number; else it is judged by
   *     state: hard, or read at or below freezing
   */
  record StaysFrozen(Optional<Limit> atMost) implements Shape {}

  /** The authority sets neither a number nor a state: never a pass. */
  record NoFigure() implements Shape {}
}
