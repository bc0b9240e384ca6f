package chillwright.core.learning;

import chillwright.core.learning.CoolingRun.Outcome;
import chillwright.core.learning.CoolingRun.Stage;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * How earlier coolings went that began as one that runs: the same food, container and depth, in the
 * same places so far.
 *
 * @param made how many reached every limit in time
 * @param missed how many missed one
 * @param notShown how many of which the record shows neither
 * @param worstMargin the least time that any limit left in those that made all; empty for none
 */
public record Likewise(int made, int missed, int notShown, Optional<Duration> worstMargin) {
  /** Of the coolings that began that way; empty where none did. */
  public static Optional<Likewise> of(CoolingMethod begun, List<CoolingRun> earlier) {
    List<CoolingRun> alike = earlier.stream().filter(run -> run.method().beganAs(begun)).toList();
    return alike.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Likewise(
                count(alike, Outcome.MADE),
                count(alike, Outcome.MISSED),
                count(alike, Outcome.NOT_SHOWN),
                worst(alike)));
  }

  private static int count(List<CoolingRun> runs, Outcome outcome) {
    return (int) runs.stream().filter(run -> run.outcome() == outcome).count();
  }

  private static Optional<Duration> worst(List<CoolingRun> runs) {
    return runs.stream()
        .filter(run -> run.outcome() == Outcome.MADE)
        .flatMap(run -> run.stages().stream())
        .map(Stage::margin)
        .flatMap(Optional::stream)
        .min(Comparator.naturalOrder());
  }

  public int runs() {
    return made + missed + notShown;
  }
}
