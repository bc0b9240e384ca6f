package chillwright.core.rules;

import chillwright.core.log.LogEntry;
import chillwright.core.log.Timeline;
import chillwright.core.rules.DayCounting.Days;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;

/**
 * Judges the date mark: pending until its last day is over, then out for a lot still on hand; in
 * while the food is frozen with days left. Closing the lot in time settles it in.
 */
final class DateMarkJudge {
  private DateMarkJudge() {}

  static Optional<Finding> finding(Timeline timeline, RuleSet rules) {
    return DayCounting.of(timeline, rules)
        .flatMap(days -> rules.rule(Occasion.DATE_MARK).map(rule -> judge(rule, timeline, days)));
  }

  private static Finding judge(Rule rule, Timeline timeline, Days days) {
    Instant dayOne = days.dayOneRow().happenedAt();
    Draft draft =
        new Draft(rule, timeline.lot(), dayOne)
            .evidence(Optional.of(days.dayOneRow()))
            .remark(Remark.USE_AT_ONCE, isUsedAtOnce(days));
    if (days.missed().isPresent()) {
      return draft
          .remark(Remark.FROZEN_TOO_LATE, true)
          .decisive(days.lateFreezing())
          .pendingUntil(lastMoment(timeline, days.missed().get()), Verdict.OUT);
    }
    if (days.isFrozen()) {
      LogEntry last = timeline.entries().get(timeline.entries().size() - 1);
      return draft.settled(Verdict.IN, min(last.happenedAt(), timeline.closedAt()));
    }
    Instant last = lastMoment(timeline, days.lastDay());
    Optional<Instant> closed = timeline.closedAt().filter(end -> !end.isAfter(last));
    return closed.isPresent()
        ? draft.remark(Remark.CLOSED_IN_TIME, true).settled(Verdict.IN, closed.get())
        : draft.pendingUntil(last, Verdict.OUT);
  }

  /** Frozen on its last day, it has the day of thawing; frozen later, it has none. */
  private static boolean isUsedAtOnce(Days days) {
    return days.left() == 0
        && days.allowed() > 0
        && days.missed().isEmpty()
        && (days.isFrozen() || days.wasThawed());
  }

  private static Instant min(Instant a, Optional<Instant> b) {
    return b.filter(a::isAfter).orElse(a);
  }

  private static Instant lastMoment(Timeline timeline, LocalDate day) {
    return day.plusDays(1).atStartOfDay(timeline.zone()).toInstant().minusMillis(1);
  }
}
