package chillwright.core.rules;

import chillwright.core.log.How;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Phase;
import chillwright.core.log.Timeline;
import chillwright.core.measure.Elapsed;
import chillwright.core.measure.Limit;
import chillwright.core.rules.Shape.Hold;
import chillwright.core.rules.Shape.TimeAlone;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Judges food under time as a public health control by its first such row: whether it started at a
 * lawful temperature, and whether it is gone in time. Going back to the refrigerator changes
 * nothing.
 */
final class TimeControlJudge {
  /** Phases in which a reading tells how food was held. */
  private static final Set<Phase> HOLDING =
      EnumSet.of(
          Phase.HOT_HOLDING,
          Phase.CHILLED,
          Phase.THAWING,
          Phase.PREPARED,
          Phase.RECEIVED,
          Phase.OPENED,
          Phase.SET_OUT);

  private static final Set<Occasion> START =
      EnumSet.of(Occasion.TIME_CONTROL_START_4H, Occasion.TIME_CONTROL_START_6H);

  private static final Set<Occasion> DISCARD =
      EnumSet.of(Occasion.TIME_CONTROL_DISCARD_4H, Occasion.TIME_CONTROL_DISCARD_6H);

  private final Timeline timeline;
  private final RuleSet rules;
  private final List<Span> spans;

  private TimeControlJudge(Timeline timeline, RuleSet rules) {
    this.timeline = timeline;
    this.rules = rules;
    this.spans = Span.of(timeline);
  }

  static List<Finding> findings(Timeline timeline, RuleSet rules) {
    return new TimeControlJudge(timeline, rules).findings();
  }

  private List<Finding> findings() {
    Optional<LogEntry> row = row(timeline);
    if (row.isEmpty()) {
      return List.of();
    }
    boolean isSixHours = row.get().is(How.SIX_HOURS);
    List<Finding> findings = new ArrayList<>();
    rules
        .rule(isSixHours ? Occasion.TIME_CONTROL_START_6H : Occasion.TIME_CONTROL_START_4H)
        .ifPresent(rule -> findings.add(start(rule, row.get())));
    discardRule(timeline, rules).ifPresent(rule -> findings.add(discard(rule, row.get())));
    return findings;
  }

  /** The row that put the lot under time control. */
  static Optional<LogEntry> row(Timeline timeline) {
    return timeline.entries().stream()
        .filter(e -> e.word().phase().filter(Phase.TIME_CONTROL::equals).isPresent())
        .findFirst();
  }

  private static Optional<Rule> discardRule(Timeline timeline, RuleSet rules) {
    boolean isSixHours = row(timeline).filter(row -> row.is(How.SIX_HOURS)).isPresent();
    return rules.rule(
        isSixHours ? Occasion.TIME_CONTROL_DISCARD_6H : Occasion.TIME_CONTROL_DISCARD_4H);
  }

  private Finding start(Rule rule, LogEntry row) {
    Draft draft = new Draft(rule, timeline.lot(), row.happenedAt()).evidence(Optional.of(row));
    Optional<LogEntry> reading =
        row.temperature().isPresent() ? Optional.of(row) : lastHoldingReading(row);
    if (reading.isEmpty()) {
      return draft.remark(Remark.NO_READING, true).settled(Verdict.NOT_SHOWN, row.happenedAt());
    }
    boolean isLawful = HoldingJudge.isWithin((Hold) rule.shape(), reading.get());
    return draft.decisive(reading).settled(isLawful ? Verdict.IN : Verdict.OUT, row.happenedAt());
  }

  private Optional<LogEntry> lastHoldingReading(LogEntry row) {
    return spans.stream()
        .takeWhile(span -> !span.opening().equals(row))
        .filter(span -> span.isIn(HOLDING))
        .flatMap(span -> span.rows().stream())
        .filter(entry -> entry.temperature().isPresent())
        .reduce((earlier, later) -> later);
  }

  private Finding discard(Rule rule, LogEntry row) {
    TimeAlone limit = (TimeAlone) rule.shape();
    Instant last = row.happenedAt().plus(limit.within());
    Draft draft =
        new Draft(rule, timeline.lot(), row.happenedAt())
            .evidence(Optional.of(row))
            .deadline(Optional.of(last));
    boolean isMarkedTooLate =
        row.details()
            .until()
            .filter(mark -> mark.lastMoment(timeline.zone()).isAfter(last))
            .isPresent();
    if (isMarkedTooLate) {
      return draft
          .remark(Remark.MARKED_TOO_LATE, true)
          .decisive(Optional.of(row))
          .settled(Verdict.OUT, row.happenedAt());
    }
    Optional<LogEntry> tooWarm = limit.ceiling().flatMap(c -> firstAbove(c, row, last));
    if (tooWarm.isPresent()) {
      return draft
          .remark(Remark.ABOVE_CEILING, true)
          .decisive(tooWarm)
          .settled(Verdict.OUT, tooWarm.get().happenedAt());
    }
    return untilDiscarded(draft, last, timeline.closedAt());
  }

  private Optional<LogEntry> firstAbove(Limit ceiling, LogEntry row, Instant last) {
    return timeline.entries().stream()
        .filter(e -> !e.happenedAt().isBefore(row.happenedAt()) && !e.happenedAt().isAfter(last))
        .filter(e -> e.temperature().filter(t -> !ceiling.isColdEnough(t)).isPresent())
        .findFirst();
  }

  private static Finding untilDiscarded(Draft draft, Instant last, Optional<Instant> closed) {
    if (closed.filter(end -> !end.isAfter(last)).isPresent()) {
      return draft.remark(Remark.CLOSED_IN_TIME, true).settled(Verdict.IN, closed.get());
    }
    return draft.pendingUntil(last, Verdict.OUT);
  }

  static boolean isStart(Rule rule) {
    return rule.occasions().stream().anyMatch(START::contains);
  }

  static boolean isDiscard(Rule rule) {
    return rule.occasions().stream().anyMatch(DISCARD::contains);
  }

  /** The end of a source's time as it binds what was made of it, for as long as that is on hand. */
  static Finding untilDiscarded(Finding ofSource, Timeline made) {
    Instant last = ofSource.deadline().orElseThrow();
    Optional<Instant> inTime = made.closedAt().filter(end -> !end.isAfter(last));
    return new Finding(
        ofSource.rule(),
        ofSource.lot(),
        ofSource.opensAt(),
        inTime.orElse(last.plusMillis(1)),
        inTime.isPresent() ? Verdict.IN : Verdict.OUT,
        ofSource.deadline(),
        Elapsed.UNKNOWN,
        Optional.empty(),
        ofSource.evidence(),
        inTime.isPresent()
            ? List.of(Remark.CLOSED_IN_TIME, Remark.FROM_SOURCE)
            : List.of(Remark.FROM_SOURCE));
  }
}
