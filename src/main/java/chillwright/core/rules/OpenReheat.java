package chillwright.core.rules;

import chillwright.core.log.LogEntry;
import chillwright.core.log.Phase;
import chillwright.core.log.Timeline;
import chillwright.core.log.Word;
import chillwright.core.measure.Limit;
import chillwright.core.rules.Shape.Reach;
import java.util.List;
import java.util.Optional;

/** A reheat that is under way: what it still has to reach comes before any limit of cooling. */
public final class OpenReheat {
  private OpenReheat() {}

  /** The limit that food being reheated has not been read at yet; empty for any other food. */
  public static Optional<Limit> of(Timeline timeline, RuleSet rules) {
    if (timeline.phase() != Phase.REHEATING || timeline.closedAt().isPresent()) {
      return Optional.empty();
    }
    List<LogEntry> coolest = Readings.coolest(timeline.entries());
    return Readings.last(
            timeline.entries().stream().filter(entry -> entry.word() == Word.REHEATING).toList())
        .flatMap(
            row ->
                Thresholds.reach(rules, Thresholds.reheating(row))
                    .filter(reach -> !isReached(reach, row, coolest)))
        .map(Reach::to);
  }

  /** The same for a cooling limit that waits meanwhile; empty for any other finding. */
  public static Optional<Limit> during(Finding finding, Timeline timeline, RuleSet rules) {
    boolean isCooling = finding.rule().occasions().stream().anyMatch(Occasion::isCooling);
    return isCooling && !finding.has(Remark.REHEATED_TOO_OFTEN)
        ? of(timeline, rules)
        : Optional.empty();
  }

  private static boolean isReached(Reach reach, LogEntry row, List<LogEntry> coolest) {
    return coolest.stream()
        .filter(read -> !read.happenedAt().isBefore(row.happenedAt()))
        .anyMatch(read -> Reheat.isReached(reach, row, read, coolest));
  }
}
