package chillwright.core.rules;

import chillwright.core.log.How;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Phase;
import chillwright.core.log.Timeline;
import chillwright.core.rules.Shape.Hold;
import java.util.List;
import java.util.Optional;

/** Judges the temperature food was received at. */
final class ReceivingJudge {
  private ReceivingJudge() {}

  static List<Finding> findings(Timeline timeline, RuleSet rules) {
    Optional<Rule> rule = rules.rule(Occasion.RECEIVING);
    if (rule.isEmpty()) {
      return List.of();
    }
    return timeline.entries().stream()
        .filter(e -> e.word().phase().filter(Phase.RECEIVED::equals).isPresent())
        .map(row -> judge(rule.get(), timeline, row))
        .toList();
  }

  private static Finding judge(Rule rule, Timeline timeline, LogEntry row) {
    Draft draft = new Draft(rule, timeline.lot(), row.happenedAt()).decisive(Optional.of(row));
    if (row.temperature().isEmpty()) {
      return draft.remark(Remark.NO_READING, true).settled(Verdict.NOT_SHOWN, row.happenedAt());
    }
    boolean isLawful = row.is(How.LAW_ALLOWS) || HoldingJudge.isWithin((Hold) rule.shape(), row);
    return draft.settled(isLawful ? Verdict.IN : Verdict.OUT, row.happenedAt());
  }
}
