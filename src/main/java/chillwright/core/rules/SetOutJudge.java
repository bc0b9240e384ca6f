package chillwright.core.rules;

import chillwright.core.log.LogEntry;
import chillwright.core.log.Phase;
import chillwright.core.log.Timeline;
import chillwright.core.log.Word;
import chillwright.core.measure.Elapsed;
import chillwright.core.measure.Limit;
import chillwright.core.rules.Shape.TimeAlone;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Judges food out on a table by times alone: from the end of cooking or hot holding, from when
 * reheated food was last shown hot (within the time that it may be out), from being made warm or
 * from being set out, until it is chilled or frozen (or held hot or reheated). Several times out
 * add up, through what is prepared of it; surroundings above the hot-air limit shorten the time.
 * Food that still read hot enough to be held hot was not at risk until then.
 */
final class SetOutJudge {
  private static final Set<Phase> STARTS = EnumSet.of(Phase.COOKED, Phase.SET_OUT, Phase.COOLING);

  private static final Set<Phase> ENDS =
      EnumSet.of(Phase.CHILLED, Phase.FROZEN, Phase.HOT_HOLDING, Phase.REHEATING);

  private static final Set<Word> HEATED = EnumSet.of(Word.COOKED, Word.REHEATING);

  /** One time out; the end is empty while the food is still out. */
  private record Out(
      LogEntry opening,
      LogEntry start,
      Optional<Instant> to,
      List<LogEntry> rows,
      boolean isCookedToHold) {
    Instant from() {
      return start.happenedAt();
    }

    Out endedBy(Instant used) {
      return to.isPresent() ? this : new Out(opening, start, Optional.of(used), rows, false);
    }

    /** Food that goes from cooking into hot holding in time was not on a table. */
    boolean counts(Duration within) {
      return !isCookedToHold || to.orElseThrow().isAfter(from().plus(within));
    }
  }

  private SetOutJudge() {}

  static Optional<Finding> finding(Timeline timeline, RuleSet rules) {
    return rules
        .rule(Occasion.SET_OUT)
        .flatMap(rule -> judge(rule, timeline, counted(rule, timeline, Thresholds.of(rules))));
  }

  /**
   * The times out that count: those of the lot itself, and before them those of the source that had
   * the least time left, unless all was cooked anew. A source whose time was up already shows that
   * by itself.
   */
  private static List<Out> counted(Rule rule, Timeline timeline, Thresholds thresholds) {
    TimeAlone limit = (TimeAlone) rule.shape();
    LogEntry first = timeline.entries().get(0);
    List<Out> own =
        timesOut(timeline, thresholds, limit.within()).stream()
            .filter(out -> out.counts(limit.within()))
            .toList();
    if (first.word() == Word.COOKED) {
      return own;
    }
    // Air that was hot in one of them, or in this lot, shortens the time of all that is added up.
    return timeline.sources().stream()
        .map(source -> counted(rule, source, thresholds))
        .map(times -> times.stream().map(out -> out.endedBy(first.happenedAt())).toList())
        .filter(times -> !left(within(limit, times), times).isNegative())
        .map(times -> Stream.concat(times.stream(), own.stream()).toList())
        .min(Comparator.comparing(times -> left(within(limit, times), before(own, times))))
        .orElse(own);
  }

  private static List<Out> before(List<Out> own, List<Out> all) {
    return all.subList(0, all.size() - own.size());
  }

  private static Duration left(Duration within, List<Out> ended) {
    return ended.stream()
        .map(out -> Duration.between(out.from(), out.to().orElseThrow()))
        .reduce(within, Duration::minus);
  }

  private static Duration within(TimeAlone limit, List<Out> outs) {
    return isInHotAir(limit, outs) ? limit.withinHotAir().orElseThrow() : limit.within();
  }

  private static boolean isInHotAir(TimeAlone limit, List<Out> outs) {
    return outs.stream().flatMap(out -> out.rows().stream()).anyMatch(row -> isHot(limit, row));
  }

  /** The last row of a time out, from its first on, at which the food is shown to be still hot. */
  private static LogEntry start(
      LogEntry opening, List<LogEntry> rows, Thresholds thresholds, Duration within) {
    LogEntry start = opening;
    if (opening.word() == Word.REHEATING) {
      return reheated(opening, rows, thresholds, within);
    }
    for (LogEntry row : Readings.coolest(rows)) {
      if (!thresholds.isHot(row, false)) {
        break;
      }
      start = row;
    }
    return start;
  }

  /** The same of a reheat: food that was not hot for longer than it may be is not hot in time. */
  private static LogEntry reheated(
      LogEntry opening, List<LogEntry> rows, Thresholds thresholds, Duration within) {
    LogEntry start = opening;
    boolean wasHot = false;
    for (LogEntry row : Readings.coolest(rows)) {
      boolean isInTime = !row.happenedAt().isAfter(start.happenedAt().plus(within));
      boolean isHot = thresholds.isHot(row, false);
      if (isHot && (wasHot || isInTime)) {
        start = row;
      }
      wasHot = isHot && start.equals(row);
    }
    return start;
  }

  /** Food made cold comes from the refrigerator and is no further out than any other. */
  private static boolean isMadeWarm(Span span, Thresholds thresholds) {
    LogEntry row = span.opening();
    return span.is(Phase.PREPARED) && !(row.temperature().isPresent() && thresholds.isCold(row));
  }

  private static List<Out> timesOut(Timeline timeline, Thresholds thresholds, Duration within) {
    List<Out> outs = new ArrayList<>();
    Optional<LogEntry> opening = Optional.empty();
    List<LogEntry> rows = new ArrayList<>();
    boolean wasHeldHot = false;
    for (Span span : Span.of(timeline)) {
      boolean ends = span.isIn(ENDS);
      if (opening.isPresent() && ends) {
        boolean isCookedToHold =
            HEATED.contains(opening.get().word()) && span.is(Phase.HOT_HOLDING);
        LogEntry start = start(opening.get(), rows, thresholds, within);
        Optional<Instant> end = Optional.of(span.from());
        outs.add(new Out(opening.get(), start, end, List.copyOf(rows), isCookedToHold));
        opening = Optional.empty();
        rows.clear();
      }
      boolean isWarm = span.isIn(STARTS) || wasHeldHot || isMadeWarm(span, thresholds);
      boolean starts = span.is(Phase.REHEATING) || (!ends && isWarm);
      if (opening.isEmpty() && starts) {
        opening = Optional.of(span.opening());
      }
      if (opening.isPresent()) {
        rows.addAll(span.rows());
      }
      wasHeldHot = span.is(Phase.HOT_HOLDING);
    }
    opening.ifPresent(
        row ->
            outs.add(
                new Out(
                    row,
                    start(row, rows, thresholds, within),
                    timeline.closedAt(),
                    List.copyOf(rows),
                    false)));
    return outs;
  }

  private static Optional<Finding> judge(Rule rule, Timeline timeline, List<Out> outs) {
    TimeAlone limit = (TimeAlone) rule.shape();
    return outs.isEmpty() ? Optional.empty() : Optional.of(judge(rule, limit, timeline, outs));
  }

  private static Finding judge(Rule rule, TimeAlone limit, Timeline timeline, List<Out> outs) {
    Duration within = within(limit, outs);
    Draft draft =
        new Draft(rule, timeline.lot(), outs.get(0).from())
            .remark(Remark.HOT_AIR, isInHotAir(limit, outs))
            .remark(Remark.COUNTS_SOURCE, !timeline.entries().contains(outs.get(0).opening()))
            .evidence(outs.stream().map(Out::opening).toList())
            .evidence(outs.stream().map(Out::start).toList());
    Duration sum = Duration.ZERO;
    for (Out out : outs) {
      Instant last = out.from().plus(within.minus(sum));
      boolean isStillOut = out.to().isEmpty();
      if (isStillOut || out.to().get().isAfter(last)) {
        Duration known = isStillOut ? sum : sum.plus(Duration.between(out.from(), out.to().get()));
        return draft
            .elapsed(exactly(known, isStillOut))
            .decisive(Optional.of(out.start()))
            .pendingUntil(last, Verdict.OUT);
      }
      sum = sum.plus(Duration.between(out.from(), out.to().get()));
    }
    Instant back = outs.get(outs.size() - 1).to().orElseThrow();
    return draft
        .elapsed(exactly(sum, false))
        .remark(Remark.CLOSED_IN_TIME, timeline.closedAt().filter(back::equals).isPresent())
        .settled(Verdict.IN, back);
  }

  private static boolean isHot(TimeAlone limit, LogEntry row) {
    Optional<Limit> hotAir = limit.hotAir();
    return row.details()
        .air()
        .filter(air -> hotAir.filter(most -> !most.isColdEnough(air)).isPresent())
        .isPresent();
  }

  private static Elapsed exactly(Duration time, boolean isStillOut) {
    return new Elapsed(
        Optional.of(time),
        isStillOut ? Optional.empty() : Optional.of(time),
        isStillOut ? Optional.empty() : Optional.of(time));
  }
}
