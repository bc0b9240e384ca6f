package chillwright.core.learning;

import chillwright.core.log.LotId;
import chillwright.core.measure.Temperature;
import chillwright.core.rules.Rule;
import chillwright.core.rules.Shape.Reach;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * One cooling that is over, and what it showed.
 *
 * @param stages one for each limit that was judged
 * @param air what was read around the food meanwhile
 */
public record CoolingRun(
    LotId lot,
    CoolingMethod method,
    Instant began,
    Outcome outcome,
    List<Stage> stages,
    List<Temperature> air) {
  /** What a cooling showed. */
  public enum Outcome {
    /** Every limit was reached in time, by readings. */
    MADE,
    /** At least one limit was missed. */
    MISSED,
    /** Nothing was missed, but the record does not show every limit in time by cooling alone. */
    NOT_SHOWN
  }

  /**
   * One limit.
   *
   * @param took the longest it can have taken: to the first reading that showed it; empty where no
   *     reading did
   */
  public record Stage(Rule rule, boolean isMissed, Optional<Duration> took) {
    /** Time that was left at the latest it can have been reached; negative where it was late. */
    public Optional<Duration> margin() {
      return took.flatMap(
          time -> ((Reach) rule.shape()).within().map(within -> within.minus(time)));
    }
  }

  public CoolingRun {
    stages = List.copyOf(stages);
    air = List.copyOf(air);
  }
}
