package chillwright.core.rules;

import chillwright.core.log.LogEntry;
import chillwright.core.log.Phase;
import chillwright.core.log.Timeline;
import chillwright.core.log.Word;
import chillwright.core.measure.Limit;
import chillwright.core.rules.Shape.Reach;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** A reheat that is under way: what it still has to reach comes before any limit of cooling. */
public final class OpenReheat {
  private OpenReheat() {}

  /**
   * What food being reheated has not been read at yet.
   *
   * @param to the limit
   * @param last the last moment for it by the rule of reheating; empty where it sets no time
   */
  public record Running(Limit to, Optional<Instant> last) {
    /** The sooner of its own last moment and that of something else which waits for it. */
    public Instant by(Instant other) {
      return last.filter(other::isAfter).orElse(other);
    }
  }

  /** What it still has to reach; empty for any other food, and once its time is over. */
  public static Optional<Running> of(Timeline timeline, RuleSet rules, Instant now) {
    if (timeline.phase() != Phase.REHEATING || timeline.closedAt().isPresent()) {
      return Optional.empty();
    }
    List<LogEntry> coolest = Readings.coolest(timeline.entries());
    return Readings.last(
            timeline.entries().stream().filter(entry -> entry.word() == Word.REHEATING).toList())
        .flatMap(
            row ->
                Thresholds.reach(rules, Thresholds.reheating(row))
                    .filter(reach -> !isReached(reach, row, coolest))
                    .map(reach -> new Running(reach.to(), Reheat.last(reach, row))))
        .filter(running -> running.last().filter(now::isAfter).isEmpty());
  }

  /** The same for a cooling limit that waits meanwhile; empty for any other finding. */
  public static Optional<Running> during(
      Finding finding, Timeline timeline, RuleSet rules, Instant now) {
    boolean isCooling = finding.rule().occasions().stream().anyMatch(Occasion::isCooling);
    return isCooling && !finding.has(Remark.REHEATED_TOO_OFTEN)
        ? of(timeline, rules, now)
        : Optional.empty();
  }

  private static boolean isReached(Reach reach, LogEntry row, List<LogEntry> coolest) {
    return coolest.stream()
        .filter(read -> !read.happenedAt().isBefore(row.happenedAt()))
        .anyMatch(read -> Reheat.isReached(reach, row, read, coolest));
  }
}
