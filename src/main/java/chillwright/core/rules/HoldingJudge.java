package chillwright.core.rules;

import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.measure.Elapsed;
import chillwright.core.measure.Temperature;
import chillwright.core.rules.Shape.Hold;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Judges one stretch of holding at its readings: a gap between readings is no fault, the longest is
 * shown; a stretch without a reading is not shown, but not overdue.
 */
final class HoldingJudge {
  private final LotId lot;

  HoldingJudge(LotId lot) {
    this.lot = lot;
  }

  /**
   * The finding of one stretch.
   *
   * @param from when the stretch began
   * @param readings one for each moment, in order of time
   * @param goesOn whether the food was still held so after the last entry
   */
  Finding judge(Rule rule, Instant from, List<LogEntry> readings, boolean goesOn) {
    Hold hold = (Hold) rule.shape();
    int end = endOfLongestGap(from, readings);
    Elapsed longest = readings.isEmpty() ? Elapsed.UNKNOWN : gap(end, from, readings);
    Draft draft =
        new Draft(rule, lot, from)
            .elapsed(longest)
            .remark(Remark.STILL_GOES_ON, goesOn)
            .evidence(tellingOf(end, readings));
    if (readings.isEmpty()) {
      return draft.remark(Remark.NO_READING, true).settled(Verdict.NOT_SHOWN, from);
    }
    Optional<LogEntry> beyond = readings.stream().filter(r -> !isWithin(hold, r)).findFirst();
    if (beyond.isEmpty()) {
      LogEntry first = readings.get(0);
      return draft.decisive(Readings.last(readings)).settled(Verdict.IN, first.happenedAt());
    }
    if (hold.allowed().isZero()) {
      return draft
          .elapsed(sinceLastGood(readings, beyond.get()))
          .evidence(before(readings, beyond.get()))
          .decisive(beyond)
          .settled(Verdict.OUT, beyond.get().happenedAt());
    }
    return judgeAllowance(draft, hold, from, readings);
  }

  /**
   * The findings of one stretch: a later excursion beyond the limit, after a good reading or after
   * the action that answered the one before, is one of its own.
   *
   * @param actions what was done about the lot, in order of time
   */
  List<Finding> judgeEach(
      Rule rule, Instant from, List<LogEntry> readings, boolean goesOn, List<LogEntry> actions) {
    List<Finding> found = new ArrayList<>();
    Instant start = from;
    List<LogEntry> left = readings;
    int next = nextExcursion((Hold) rule.shape(), left, actions);
    while (next > 0) {
      found.add(judge(rule, start, left.subList(0, next), false));
      left = left.subList(next, left.size());
      start = left.get(0).happenedAt();
      next = nextExcursion((Hold) rule.shape(), left, actions);
    }
    found.add(judge(rule, start, left, goesOn));
    return found;
  }

  /** Where the readings before a second excursion begin; 0 where there is no second one. */
  private static int nextExcursion(Hold hold, List<LogEntry> readings, List<LogEntry> actions) {
    if (!hold.allowed().isZero()) {
      return 0;
    }
    int over = firstBeyond(hold, readings, 0);
    if (over < 0) {
      return 0;
    }
    Instant found = readings.get(over).happenedAt();
    Optional<Instant> answered =
        actions.stream().map(LogEntry::happenedAt).filter(at -> !at.isBefore(found)).findFirst();
    int next = over + 1;
    while (next < readings.size()) {
      LogEntry reading = readings.get(next);
      if (isWithin(hold, reading) || answered.filter(reading.happenedAt()::isAfter).isPresent()) {
        return firstBeyond(hold, readings, next) < 0 ? 0 : next;
      }
      next++;
    }
    return 0;
  }

  private static int firstBeyond(Hold hold, List<LogEntry> readings, int from) {
    for (int i = from; i < readings.size(); i++) {
      if (!isWithin(hold, readings.get(i))) {
        return i;
      }
    }
    return -1;
  }

  /** The finding where the authority sets no figure for what the row says was done. */
  Finding noFigure(Rule rule, LogEntry row) {
    return new Draft(rule, lot, row.happenedAt())
        .decisive(Optional.of(row))
        .settled(Verdict.NO_RULE, row.happenedAt());
  }

  /** The same for the surroundings logged with the rows, such as the water food is thawed in. */
  Finding judgeSurroundings(Rule rule, Instant from, List<LogEntry> rows) {
    Hold hold = (Hold) rule.shape();
    Draft draft = new Draft(rule, lot, from).evidence(rows);
    Optional<LogEntry> beyond =
        rows.stream().filter(row -> !isWithin(hold, row.details().air().orElseThrow())).findFirst();
    return beyond.isPresent()
        ? draft.decisive(beyond).settled(Verdict.OUT, beyond.get().happenedAt())
        : draft.decisive(Readings.last(rows)).settled(Verdict.IN, rows.get(0).happenedAt());
  }

  /**
   * The readings of a stretch, and where the last of them is beyond the limit the later ones too,
   * up to the first that is back within it.
   */
  static List<LogEntry> untilBack(Hold hold, List<LogEntry> during, List<LogEntry> ofLot) {
    List<LogEntry> all = new ArrayList<>(during);
    for (LogEntry later : ofLot) {
      Optional<LogEntry> last = Readings.last(all);
      boolean isOpen = last.filter(reading -> !isWithin(hold, reading)).isPresent();
      if (isOpen && later.happenedAt().isAfter(last.orElseThrow().happenedAt())) {
        all.add(later);
      }
    }
    return all;
  }

  /** A stretch of the record beyond the limit, between readings that were within it. */
  private record Excursion(Optional<LogEntry> before, List<LogEntry> beyond, boolean isOver) {
    Duration shortest() {
      return Duration.between(
          beyond.get(0).happenedAt(), beyond.get(beyond.size() - 1).happenedAt());
    }
  }

  /** Food may be beyond the limit for so long in one stretch; bounded like a crossing. */
  private Finding judgeAllowance(Draft draft, Hold hold, Instant from, List<LogEntry> readings) {
    List<Excursion> excursions = excursions(hold, readings);
    for (Excursion excursion : excursions) {
      if (excursion.shortest().compareTo(hold.allowed()) >= 0) {
        Instant limit = excursion.beyond().get(0).happenedAt().plus(hold.allowed());
        Optional<LogEntry> late =
            excursion.beyond().stream().filter(r -> !r.happenedAt().isBefore(limit)).findFirst();
        return draft
            .evidence(excursion.before())
            .evidence(Optional.of(excursion.beyond().get(0)))
            .decisive(late)
            .settled(Verdict.OUT, late.orElseThrow().happenedAt());
      }
    }
    Excursion last = excursions.get(excursions.size() - 1);
    Instant start = last.before().map(LogEntry::happenedAt).orElse(from);
    Instant lastMoment = start.plus(hold.allowed());
    draft
        .evidence(last.before())
        .evidence(Optional.of(last.beyond().get(0)))
        .decisive(Readings.last(last.beyond()));
    if (!last.isOver()) {
      return draft.remark(Remark.READING_OVERDUE, true).pendingUntil(lastMoment, Verdict.NOT_SHOWN);
    }
    boolean allInTime = excursions.stream().allMatch(e -> isInTime(e, from, hold, readings));
    Instant settled = readings.get(readings.size() - 1).happenedAt();
    return draft.settled(allInTime ? Verdict.IN : Verdict.NOT_SHOWN, settled);
  }

  private static boolean isInTime(
      Excursion excursion, Instant from, Hold hold, List<LogEntry> readings) {
    Instant start = excursion.before().map(LogEntry::happenedAt).orElse(from);
    Instant lastBeyond = excursion.beyond().get(excursion.beyond().size() - 1).happenedAt();
    return readings.stream()
        .map(LogEntry::happenedAt)
        .filter(lastBeyond::isBefore)
        .findFirst()
        .filter(back -> !back.isAfter(start.plus(hold.allowed())))
        .isPresent();
  }

  private static List<Excursion> excursions(Hold hold, List<LogEntry> readings) {
    List<Excursion> found = new ArrayList<>();
    List<LogEntry> beyond = new ArrayList<>();
    Optional<LogEntry> before = Optional.empty();
    for (LogEntry reading : readings) {
      if (!isWithin(hold, reading)) {
        beyond.add(reading);
        continue;
      }
      if (!beyond.isEmpty()) {
        found.add(new Excursion(before, List.copyOf(beyond), true));
        beyond.clear();
      }
      before = Optional.of(reading);
    }
    if (!beyond.isEmpty()) {
      found.add(new Excursion(before, List.copyOf(beyond), false));
    }
    return found;
  }

  /** Within the limit; a row without a temperature does not speak against it. */
  static boolean isWithin(Hold hold, LogEntry row) {
    return row.temperature().filter(reading -> !isWithin(hold, reading)).isEmpty();
  }

  /** Where a rule has a cold and a hot limit, either will do. */
  private static boolean isWithin(Hold hold, Temperature reading) {
    return hold.atMost().filter(limit -> limit.isColdEnough(reading)).isPresent()
        || hold.atLeast().filter(limit -> limit.isHotEnough(reading)).isPresent();
  }

  /** How long it can have been beyond the limit at the reading that showed it. */
  private static Elapsed sinceLastGood(List<LogEntry> readings, LogEntry beyond) {
    Optional<Duration> longest =
        before(readings, beyond)
            .map(good -> Duration.between(good.happenedAt(), beyond.happenedAt()));
    return new Elapsed(Optional.empty(), longest, Optional.empty());
  }

  private static Optional<LogEntry> before(List<LogEntry> readings, LogEntry reading) {
    int at = readings.indexOf(reading);
    return at == 0 ? Optional.empty() : Optional.of(readings.get(at - 1));
  }

  /**
   * The readings a finding rests on, however many there are: the first, the last, and the two that
   * the longest gap lies between.
   */
  private static List<LogEntry> tellingOf(int end, List<LogEntry> readings) {
    List<LogEntry> telling = new ArrayList<>();
    if (!readings.isEmpty()) {
      telling.add(readings.get(0));
      telling.add(readings.get(Math.max(0, end - 1)));
      telling.add(readings.get(end));
      telling.add(readings.get(readings.size() - 1));
    }
    return telling;
  }

  private static Elapsed gap(int end, Instant from, List<LogEntry> readings) {
    Duration longest = gapBefore(end, from, readings);
    return new Elapsed(Optional.empty(), Optional.of(longest), Optional.empty());
  }

  private static int endOfLongestGap(Instant from, List<LogEntry> readings) {
    int end = 0;
    Duration longest = Duration.ofSeconds(Long.MIN_VALUE);
    for (int i = 0; i < readings.size(); i++) {
      Duration gap = gapBefore(i, from, readings);
      if (gap.compareTo(longest) > 0) {
        longest = gap;
        end = i;
      }
    }
    return end;
  }

  private static Duration gapBefore(int i, Instant from, List<LogEntry> readings) {
    Instant before = i == 0 ? from : readings.get(i - 1).happenedAt();
    return Duration.between(before, readings.get(i).happenedAt());
  }
}
