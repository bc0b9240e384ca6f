package chillwright.core.rules;

import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.measure.Elapsed;
import chillwright.core.rules.Cycle.End;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * Judges one cooling by the rules that bear on it: cooked food in two stages, food from ambient
 * ingredients, food received warm as law allows.
 *
 * <p>Between two readings nobody looked, so both ends are bounded. {@code longest} runs from the
 * last proof of the start to the first reading past the limit: within the limit it is {@code in}.
 * {@code shortest} runs from the latest start to the last reading still on the wrong side: at the
 * limit it is {@code out}, since the food was still too warm then. Anything else is not shown.
 */
final class CoolingJudge {
  private final Cycle cycle;
  private final List<Rule> rules;
  private final LotId lot;
  private final Optional<Instant> endedAt;
  private final boolean isClosed;

  CoolingJudge(Cycle cycle, List<Rule> rules, LotId lot, Optional<Instant> closedAt) {
    this.cycle = cycle;
    this.rules = rules;
    this.lot = lot;
    this.isClosed = closedAt.isPresent();
    this.endedAt =
        cycle
            .end
            .filter(end -> end == End.WITHDRAWN || end == End.STARTED_AGAIN)
            .flatMap(end -> cycle.endRow.map(LogEntry::happenedAt))
            .or(() -> closedAt);
  }

  List<Finding> findings() {
    return rules.stream().map(this::judge).flatMap(Optional::stream).toList();
  }

  private Optional<Finding> judge(Rule rule) {
    Duration within = Cycle.within(rule);
    Optional<LogEntry> reheatRow = reheatThatClosed();
    boolean wasRunning =
        reheatRow.filter(row -> cycle.running(rules, row.happenedAt()).contains(rule)).isPresent();
    Instant upTo = reheatRow.map(LogEntry::happenedAt).orElse(Instant.MAX);
    Crossing crossing = Crossing.of(cycle, rule, rules, upTo);
    Optional<Instant> start = cycle.start(rule).latest().map(LogEntry::happenedAt);
    Optional<LogEntry> tooWarm =
        crossing.considered().stream().filter(r -> isTooWarmAt(rule, r, start, within)).findFirst();
    Draft draft = draft(rule, crossing);
    if (tooWarm.isPresent()) {
      return Optional.of(draft.decisive(tooWarm).settled(Verdict.OUT, tooWarm.get().happenedAt()));
    }
    if (wasRunning) {
      return Optional.of(closedByReheat(draft, rule, reheatRow.orElseThrow()));
    }
    return notTooWarm(draft, rule, crossing);
  }

  private Optional<LogEntry> reheatThatClosed() {
    return cycle.end.filter(End.REHEATED::equals).flatMap(e -> Readings.last(cycle.attempts));
  }

  private static boolean isTooWarmAt(
      Rule rule, LogEntry reading, Optional<Instant> start, Duration within) {
    return start.filter(s -> !reading.happenedAt().isBefore(s.plus(within))).isPresent()
        && !Crossing.to(rule).isColdEnough(Readings.temperature(reading));
  }

  private Finding closedByReheat(Draft draft, Rule rule, LogEntry row) {
    LogEntry reached = cycle.endRow.orElseThrow();
    draft
        .remark(Remark.CLOSED_BY_REHEAT, true)
        .evidence(Optional.of(row))
        .decisive(Optional.of(reached));
    return draft.settled(
        cycle.start(rule).proof().isPresent() ? Verdict.IN : Verdict.NOT_SHOWN,
        reached.happenedAt());
  }

  private Optional<Finding> notTooWarm(Draft draft, Rule rule, Crossing crossing) {
    Optional<Instant> deadline = cycle.deadline(rule);
    Optional<Instant> reached = crossing.reached().map(LogEntry::happenedAt);
    draft.decisive(crossing.reached().or(crossing::lastAbove));
    if (deadline.isEmpty()) {
      boolean isWithdrawn =
          reached.isEmpty() && endedAt.filter(end -> !cycle.hadPassed(rule, end)).isPresent();
      return isWithdrawn
          ? Optional.empty()
          : Optional.of(
              draft.settled(Verdict.NOT_SHOWN, reached.orElse(cycle.opening.happenedAt())));
    }
    Instant last = deadline.get();
    if (reached.filter(moment -> !moment.isAfter(last)).isPresent()) {
      return Optional.of(draft.settled(Verdict.IN, reached.get()));
    }
    if (reached.isEmpty() && endedAt.filter(end -> !end.isAfter(last)).isPresent()) {
      return Optional.empty();
    }
    draft.remark(Remark.READING_OVERDUE, reached.isEmpty());
    draft.remark(Remark.CLOSED_UNREAD, reached.isEmpty() && isClosed);
    return Optional.of(draft.pendingUntil(last, Verdict.NOT_SHOWN));
  }

  private Draft draft(Rule rule, Crossing crossing) {
    Cycle.Start start = cycle.start(rule);
    Elapsed bounds = bounds(start, crossing);
    Estimate estimate = Estimate.of(cycle, rule, crossing);
    boolean isEstimated = estimate.elapsed().isPresent();
    return aboutReheats(new Draft(rule, lot, cycle.opening.happenedAt()), crossing)
        .deadline(cycle.deadline(rule))
        .elapsed(new Elapsed(bounds.shortest(), bounds.longest(), estimate.elapsed()))
        .evidence(start.proof())
        .evidence(start.latest())
        .evidence(crossing.lastAbove())
        .remark(Remark.START_NOT_SHOWN, start.proof().isEmpty())
        .remark(Remark.ROSE_AGAIN, crossing.roseAgain())
        .remark(Remark.LOG_LINEAR, isEstimated && estimate.isLogLinear())
        .remark(Remark.STRAIGHT_LINE, isEstimated && !estimate.isLogLinear());
  }

  /** Says why a reheat that was logged while this limit was waited for did not close it. */
  private Draft aboutReheats(Draft draft, Crossing crossing) {
    Optional<LogEntry> attempt = Readings.last(cycle.attempts);
    boolean startedAgain = cycle.end.filter(End.STARTED_AGAIN::equals).isPresent();
    if (attempt.isEmpty()
        || startedAgain
        || crossing.reached().isPresent()
        || reheatThatClosed().isPresent()) {
      return draft;
    }
    LogEntry row = attempt.get();
    boolean isTooLate = cycle.hasMissed(rules, row, row.happenedAt());
    return draft
        .evidence(attempt)
        .remark(Remark.REHEAT_TOO_LATE, isTooLate)
        .remark(Remark.REHEATED_TOO_OFTEN, !isTooLate && !cycle.mayStartAnew)
        .remark(Remark.REHEAT_BEGUN, !isTooLate && cycle.mayStartAnew && cycle.isBeingReheated);
  }

  private static Elapsed bounds(Cycle.Start clock, Crossing crossing) {
    Optional<Instant> latestStart = clock.latest().map(LogEntry::happenedAt);
    Optional<Instant> lastAbove = crossing.lastAbove().map(LogEntry::happenedAt);
    Optional<Duration> shortest =
        latestStart.map(
            start ->
                lastAbove
                    .filter(start::isBefore)
                    .map(moment -> Duration.between(start, moment))
                    .orElse(Duration.ZERO));
    Optional<Duration> longest =
        clock
            .proof()
            .map(LogEntry::happenedAt)
            .flatMap(start -> crossing.reached().map(r -> Duration.between(start, r.happenedAt())));
    return new Elapsed(shortest, longest, Optional.empty());
  }
}
