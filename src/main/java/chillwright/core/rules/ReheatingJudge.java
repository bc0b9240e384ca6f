package chillwright.core.rules;

import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.measure.Elapsed;
import chillwright.core.rules.Shape.NoFigure;
import chillwright.core.rules.Shape.Reach;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Judges one ordinary reheat: from cold to its limit in time, by whatever its method needs. */
final class ReheatingJudge {
  private final Reheat reheat;
  private final LotId lot;
  private final Optional<Instant> closedAt;

  ReheatingJudge(Reheat reheat, LotId lot, Optional<Instant> closedAt) {
    this.reheat = reheat;
    this.lot = lot;
    this.closedAt = closedAt;
  }

  Optional<Finding> judge(Rule rule) {
    if (rule.shape() instanceof NoFigure) {
      Instant row = reheat.row.happenedAt();
      return Optional.of(draft(rule).settled(Verdict.NO_RULE, row));
    }
    Reach reach = (Reach) rule.shape();
    Optional<LogEntry> reached = reheat.reached;
    Optional<LogEntry> tooCold = reach.within().flatMap(within -> firstTooCold(reach, within));
    Draft draft =
        draft(rule)
            .elapsed(bounds(reach))
            .deadline(deadline(reach))
            .remark(Remark.START_NOT_SHOWN, reheat.lastCold.isEmpty())
            .remark(Remark.STANDING_NOT_SHOWN, reached.isEmpty() && wasHotBeforeStanding(reach))
            .evidence(reheat.lastCold)
            .evidence(Optional.of(reheat.latestStart));
    if (tooCold.isPresent()) {
      return Optional.of(draft.decisive(tooCold).settled(Verdict.OUT, tooCold.get().happenedAt()));
    }
    draft.decisive(reached.or(() -> Readings.last(reheat.readings)));
    return notTooCold(draft, reach, reached.map(LogEntry::happenedAt));
  }

  private Draft draft(Rule rule) {
    return new Draft(rule, lot, reheat.row.happenedAt()).evidence(Optional.of(reheat.row));
  }

  private Optional<Finding> notTooCold(Draft draft, Reach reach, Optional<Instant> reached) {
    Optional<Instant> deadline = deadline(reach);
    boolean isInTime =
        reached.isPresent() && deadline.filter(last -> reached.get().isAfter(last)).isEmpty();
    boolean isStartShown = reheat.lastCold.isPresent() || reach.within().isEmpty();
    if (isInTime && isStartShown) {
      return Optional.of(draft.settled(Verdict.IN, reached.get()));
    }
    boolean isWithdrawn =
        reached.isEmpty()
            && closedAt
                .filter(end -> deadline.filter(last -> end.isAfter(last)).isEmpty())
                .isPresent();
    if (isWithdrawn) {
      return Optional.empty();
    }
    if (deadline.isEmpty()) {
      return Optional.of(draft.settled(Verdict.NOT_SHOWN, reheat.row.happenedAt()));
    }
    draft.remark(Remark.READING_OVERDUE, reached.isEmpty());
    draft.remark(Remark.CLOSED_UNREAD, reached.isEmpty() && closedAt.isPresent());
    return Optional.of(draft.pendingUntil(deadline.get(), Verdict.NOT_SHOWN));
  }

  private Optional<Instant> deadline(Reach reach) {
    return reheat
        .lastCold
        .map(LogEntry::happenedAt)
        .flatMap(start -> reach.within().map(start::plus));
  }

  /**
   * The first reading that was still too cold when the time was up, before the limit was reached.
   */
  private Optional<LogEntry> firstTooCold(Reach reach, Duration within) {
    Instant up = reheat.latestStart.happenedAt().plus(within);
    return unreached(reach).stream().filter(r -> !r.happenedAt().isBefore(up)).findFirst();
  }

  private List<LogEntry> unreached(Reach reach) {
    return reheat.readings.stream()
        .filter(r -> !Reheat.isHotEnough(reach.to(), r))
        .filter(
            r ->
                reheat
                    .reached
                    .filter(done -> !r.happenedAt().isBefore(done.happenedAt()))
                    .isEmpty())
        .toList();
  }

  private boolean wasHotBeforeStanding(Reach reach) {
    return !reach.stands().isZero()
        && reheat.readings.stream().anyMatch(r -> Reheat.isHotEnough(reach.to(), r));
  }

  private Elapsed bounds(Reach reach) {
    Instant latestStart = reheat.latestStart.happenedAt();
    Duration shortest =
        Readings.last(unreached(reach))
            .map(r -> Duration.between(latestStart, r.happenedAt()))
            .filter(d -> !d.isNegative())
            .orElse(Duration.ZERO);
    Optional<Duration> longest =
        reheat.lastCold.flatMap(
            cold -> reheat.reached.map(r -> Duration.between(cold.happenedAt(), r.happenedAt())));
    return new Elapsed(Optional.of(shortest), longest, Optional.empty());
  }
}
