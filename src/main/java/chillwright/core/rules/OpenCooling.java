package chillwright.core.rules;

import chillwright.core.log.LogEntry;
import chillwright.core.log.Timeline;
import chillwright.core.measure.Limit;
import chillwright.core.rules.Shape.Reach;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * A cooling that still waits for a temperature.
 *
 * @param since the row that opened it
 * @param readings of the food since it began, one for each moment, in order of time
 * @param awaited its limits that no reading has shown yet, in the order of the rule set
 */
public record OpenCooling(Instant since, List<LogEntry> readings, List<Awaited> awaited) {
  /**
   * A limit still to be reached.
   *
   * @param deadline last moment that complies; empty where the start of the clock is not shown
   */
  public record Awaited(Rule rule, Limit limit, Optional<Instant> deadline) {}

  public OpenCooling {
    readings = List.copyOf(readings);
    awaited = List.copyOf(awaited);
  }

  /** The one that runs in a lot, late or not; empty where none does. */
  public static Optional<OpenCooling> of(Timeline timeline, RuleSet rules) {
    if (!timeline.food().category().tcs() || timeline.closedAt().isPresent()) {
      return Optional.empty();
    }
    List<Cycle> cycles = Course.of(timeline, rules).coolings;
    if (cycles.isEmpty()) {
      return Optional.empty();
    }
    Cycle last = cycles.get(cycles.size() - 1);
    return Optional.of(last)
        .filter(cycle -> cycle.end.isEmpty() && !cycle.isBeingReheated)
        .map(
            cycle ->
                new OpenCooling(cycle.opening.happenedAt(), cycle.readings, awaited(cycle, rules)))
        .filter(open -> !open.awaited().isEmpty());
  }

  private static List<Awaited> awaited(Cycle cycle, RuleSet rules) {
    return cycle.unreached(rules.rules(cycle.occasion), Instant.MAX).stream()
        .map(rule -> new Awaited(rule, ((Reach) rule.shape()).to(), cycle.deadline(rule)))
        .toList();
  }
}
