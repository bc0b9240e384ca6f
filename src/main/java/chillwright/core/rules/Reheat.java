package chillwright.core.rules;

import chillwright.core.log.LogEntry;
import chillwright.core.measure.Limit;
import chillwright.core.rules.Shape.Reach;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * One ordinary reheat: the row that started it, what proves that the food was cold until then, and
 * the readings since.
 */
final class Reheat {
  /**
   * As long as a reheat may take: FDA Food Code 2022 3-403.11(D). For "at once" none is printed.
   */
  static final Duration SERVED_WITHIN = Duration.ofHours(2);

  final LogEntry row;

  /** Food that was served at once for one order, unless a hot-holding row came later. */
  boolean isServedAtOnce;

  /** Last proof of being cold; empty where a reading contradicts it and none showed it before. */
  final Optional<LogEntry> lastCold;

  /** The latest moment the clock can have started. */
  final LogEntry latestStart;

  final List<LogEntry> readings = new ArrayList<>();

  /** The same, of several at one moment the warmest. */
  final List<LogEntry> warmest = new ArrayList<>();

  /** What shows that the food was hot before the row; empty where it was held cold. */
  Optional<LogEntry> hotBefore = Optional.empty();

  /** The row that ended it short of its limit. */
  Optional<LogEntry> stoppedBy = Optional.empty();

  Optional<LogEntry> reached = Optional.empty();

  private Reheat(LogEntry row, Optional<LogEntry> lastCold, LogEntry latestStart) {
    this.row = row;
    this.lastCold = lastCold;
    this.latestStart = latestStart;
  }

  /** The row itself is the start: cold-held food counts as cold until then. */
  static Reheat startingAt(LogEntry row) {
    return new Reheat(row, Optional.of(row), row);
  }

  /** A reading says that the food was warm before the row. */
  static Reheat startingBefore(LogEntry row, Optional<LogEntry> lastCold, LogEntry firstWarm) {
    return new Reheat(row, lastCold, firstWarm);
  }

  /** Whether a row says again, in time, what a reheat still short of its limit said before. */
  boolean isContinuedBy(LogEntry again, RuleSet rules) {
    Optional<Duration> within = Thresholds.reach(rules, occasion()).flatMap(Reach::within);
    return again.details().how().equals(row.details().how())
        && within
            .filter(time -> again.happenedAt().isAfter(latestStart.happenedAt().plus(time)))
            .isEmpty();
  }

  /** What last shows the food hot: a reading since the row, or what showed it before. */
  Optional<LogEntry> lastHot(Predicate<LogEntry> isHot) {
    return Readings.last(warmest.stream().filter(isHot).toList()).or(() -> hotBefore);
  }

  List<LogEntry> warmestFrom(LogEntry first) {
    return warmest.stream().filter(r -> !r.happenedAt().isBefore(first.happenedAt())).toList();
  }

  /** Whether the time to reach the limit is over; where none is set, it always is. */
  boolean isTimeOver(LogEntry reading, RuleSet rules) {
    return Thresholds.reach(rules, occasion())
        .flatMap(Reach::within)
        .filter(time -> !reading.happenedAt().isAfter(latestStart.happenedAt().plus(time)))
        .isEmpty();
  }

  /** Whether it was to be eaten at once, and stood unread for longer than a reheat may take. */
  boolean isUnread(LogEntry putAway) {
    Instant until = row.happenedAt().plus(SERVED_WITHIN);
    return isServedAtOnce
        && warmest.stream().allMatch(reading -> reading.happenedAt().equals(row.happenedAt()))
        && putAway.happenedAt().isAfter(until);
  }

  /** The occasion: food served at once for one order, unless it was then held hot after all. */
  Occasion occasion() {
    Occasion named = Thresholds.reheating(row);
    boolean wasHeldAfterAll = named == Occasion.REHEATING_SERVE_NOW && !isServedAtOnce;
    return wasHeldAfterAll ? Occasion.REHEATING : named;
  }

  /** The last moment for a reheat that began with a row; empty where no time is set. */
  static Optional<Instant> last(Reach reach, LogEntry row) {
    return reach.within().map(row.happenedAt()::plus);
  }

  /** Whether a reading comes within the time that the reheat of a row may take. */
  static boolean isInTime(Reach reach, LogEntry row, LogEntry reading) {
    return last(reach, row).filter(reading.happenedAt()::isAfter).isEmpty();
  }

  /**
   * Whether a reading shows that the reheating limit was reached: at or above it, not contradicted
   * within the seconds it must last, and after the standing time the method asks.
   */
  static boolean isReached(
      Reach reach, LogEntry row, LogEntry reading, List<LogEntry> coolestOfLot) {
    return isHotEnough(reach.to(), reading)
        && !reading.happenedAt().isBefore(row.happenedAt().plus(reach.stands()))
        && !isContradicted(reach, reading, coolestOfLot);
  }

  private static boolean isContradicted(
      Reach reach, LogEntry reading, List<LogEntry> coolestOfLot) {
    Instant until = reading.happenedAt().plus(reach.stays());
    return coolestOfLot.stream()
        .filter(later -> later.happenedAt().isAfter(reading.happenedAt()))
        .filter(later -> !later.happenedAt().isAfter(until))
        .anyMatch(later -> !isHotEnough(reach.to(), later));
  }

  static boolean isHotEnough(Limit limit, LogEntry reading) {
    return limit.isHotEnough(Readings.temperature(reading));
  }
}
