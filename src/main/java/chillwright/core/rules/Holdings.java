package chillwright.core.rules;

import chillwright.core.log.How;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Phase;
import chillwright.core.log.Portions;
import chillwright.core.log.Timeline;
import chillwright.core.measure.Limit;
import chillwright.core.rules.Shape.Hold;
import chillwright.core.rules.Shape.Reach;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The stretches in which a lot was held hot, held cold, or thawed, with the rule for each. */
final class Holdings {
  /** Phases in which food that is cold is judged by the cold-holding limit. */
  private static final Set<Phase> COLD =
      EnumSet.of(
          Phase.PREPARED,
          Phase.RECEIVED,
          Phase.OPENED,
          Phase.CHILLED,
          Phase.COOLING,
          Phase.COOKED,
          Phase.SET_OUT);

  private final RuleSet rules;
  private final Course course;
  private final HoldingJudge judge;
  private final List<Span> spans;
  private final List<LogEntry> warmest;
  private final Optional<Hold> hold;
  private final List<CooledDown> coolings;
  private final List<LogEntry> actions;
  private final boolean isReadyToEat;
  private final boolean isOnHand;
  private final List<Finding> findings = new ArrayList<>();

  private Holdings(Timeline timeline, RuleSet rules, Course course) {
    this.rules = rules;
    this.course = course;
    this.judge = new HoldingJudge(timeline.lot());
    this.spans = untilTimeControl(Span.of(timeline));
    this.warmest = Readings.warmest(timeline.entries());
    this.hold = cold(rules);
    this.coolings = cooledDown(rules, hold, course, warmest);
    this.actions = Acts.actions(timeline);
    this.isReadyToEat = timeline.food().category().readyToEat();
    this.isOnHand = timeline.closedAt().isEmpty();
  }

  static List<Finding> findings(Timeline timeline, RuleSet rules, Course course) {
    Holdings holdings = new Holdings(timeline, rules, course);
    holdings.judgeHot();
    rules.rule(Occasion.COLD_HOLDING).ifPresent(holdings::judgeCold);
    holdings.judgeThawing();
    return holdings.findings;
  }

  /** Food under time control is not judged by its temperature. */
  private static List<Span> untilTimeControl(List<Span> all) {
    List<Span> kept = new ArrayList<>();
    for (Span span : all) {
      if (span.is(Phase.TIME_CONTROL)) {
        break;
      }
      kept.add(span);
    }
    return kept;
  }

  private void judgeHot() {
    boolean isRoast = false;
    int i = 0;
    while (i < spans.size()) {
      Span span = spans.get(i++);
      if (span.is(Phase.COOKED)) {
        isRoast = span.opening().is(How.ROAST);
      } else if (span.is(Phase.REHEATING)) {
        isRoast = false;
      }
      if (!span.is(Phase.HOT_HOLDING)) {
        continue;
      }
      List<LogEntry> rows = new ArrayList<>(span.rows());
      while (i < spans.size() && spans.get(i).is(Phase.HOT_HOLDING)) {
        rows.addAll(spans.get(i++).rows());
      }
      isRoast |= rows.stream().anyMatch(row -> row.is(How.ROAST));
      judgeHot(isRoast, rows);
    }
  }

  private void judgeHot(boolean isRoast, List<LogEntry> rows) {
    Optional<Rule> roast = rules.rule(Occasion.HOT_HOLDING_ROAST).filter(rule -> isRoast);
    Optional<Rule> rule = roast.or(() -> rules.rule(Occasion.HOT_HOLDING));
    Optional<Instant> held = heldFrom(rows.get(0));
    if (rule.isEmpty() || held.isEmpty()) {
      return;
    }
    List<LogEntry> readings =
        Readings.coolest(rows).stream().filter(r -> !r.happenedAt().isBefore(held.get())).toList();
    boolean goesOn = isOnHand && rows.contains(spans.get(spans.size() - 1).opening());
    findings.addAll(judge.judgeEach(rule.get(), held.get(), readings, goesOn, actions));
  }

  /** Food put cold into hot holding is reheating until it reached the reheating limit. */
  private Optional<Instant> heldFrom(LogEntry opening) {
    for (Reheat reheat : course.reheats) {
      if (reheat.row.equals(opening) && hasReheatingLimit()) {
        return reheat.reached.map(LogEntry::happenedAt);
      }
    }
    return Optional.of(opening.happenedAt());
  }

  private boolean hasReheatingLimit() {
    return rules.rule(Occasion.REHEATING).filter(r -> r.shape() instanceof Reach).isPresent();
  }

  private void judgeCold(Rule rule) {
    List<LogEntry> readings = new ArrayList<>();
    Optional<Instant> from = Optional.empty();
    for (int i = 0; i < spans.size(); i++) {
      Span span = spans.get(i);
      if (isToBeServed(span)) {
        judgeLeftover(rule, span, i + 1 < spans.size() ? spans.get(i + 1) : span);
      }
      if (isUncontrolled(span)) {
        close(rule, from, readings, false);
        close(rule, Optional.of(span.from()), whileOut(rule, span), false);
        from = Optional.empty();
        readings.clear();
        continue;
      }
      boolean isFreezing = span.is(Phase.FROZEN);
      boolean canBeCold = span.isIn(COLD) || span.phase().isEmpty();
      if (!canBeCold && !isFreezing) {
        close(rule, from, readings, false);
        from = Optional.empty();
        readings.clear();
        continue;
      }
      List<LogEntry> judged =
          Readings.warmest(isFreezing ? FrozenJudge.beforeProof(span.rows()) : span.rows()).stream()
              .filter(reading -> isHeldCold(span, reading))
              .toList();
      readings.addAll(judged);
      boolean opens = !judged.isEmpty() || isSilentHolding(span);
      if (from.isEmpty() && opens) {
        from = Optional.of(judged.isEmpty() ? span.from() : judged.get(0).happenedAt());
      }
      if (isFreezing) {
        close(rule, from, readings, false);
        from = Optional.empty();
        readings.clear();
      }
    }
    close(rule, from, readings, isOnHand);
  }

  /** Made hot, or thawed, to be eaten at once: no limit waits for such food. */
  private static boolean isToBeServed(Span span) {
    LogEntry row = span.opening();
    return (span.is(Phase.REHEATING) && row.is(How.SERVE_NOW))
        || (span.is(Phase.THAWING) && row.is(How.WHILE_COOKING));
  }

  /** What of such food is there later and neither hot nor shown cold was out of control. */
  private void judgeLeftover(Rule rule, Span span, Span next) {
    Instant served = span.from().plus(Reheat.SERVED_WITHIN);
    boolean isPutAway = next.from().isAfter(served) && (next.isIn(COLD) || next.is(Phase.FROZEN));
    List<LogEntry> read = Readings.warmest(span.rows());
    Optional<LogEntry> last = Readings.last(read).filter(r -> isPutAway);
    List<LogEntry> late =
        read.stream()
            .filter(r -> r.happenedAt().isAfter(served) || last.filter(r::equals).isPresent())
            .filter(reading -> !isHeldHot(reading))
            .toList();
    if (!late.isEmpty() || isPutAway) {
      close(rule, Optional.of(span.from()), late, false);
    }
  }

  private boolean isHeldHot(LogEntry reading) {
    return rules
        .rule(Occasion.HOT_HOLDING)
        .filter(rule -> rule.shape() instanceof Hold)
        .filter(rule -> HoldingJudge.isWithin((Hold) rule.shape(), reading))
        .isPresent();
  }

  /**
   * Out without time control, in a set that allows no time for that: only readings show it cold.
   */
  private boolean isUncontrolled(Span span) {
    return span.is(Phase.SET_OUT)
        && rules.rule(Occasion.SET_OUT).isEmpty()
        && !isStillCooling(span.from());
  }

  /** What was read cold as it was set out shows nothing of the time after. */
  private static List<LogEntry> whileOut(Rule rule, Span span) {
    return Readings.warmest(span.rows()).stream()
        .filter(
            reading ->
                reading.happenedAt().isAfter(span.from())
                    || !HoldingJudge.isWithin((Hold) rule.shape(), reading))
        .toList();
  }

  private void close(Rule rule, Optional<Instant> from, List<LogEntry> readings, boolean goesOn) {
    from.ifPresent(
        start -> findings.addAll(judge.judgeEach(rule, start, readings, goesOn, actions)));
  }

  /** A refrigerated stretch, of food that no cooling clock waits for. */
  private boolean isSilentHolding(Span span) {
    return span.is(Phase.CHILLED) && !isStillCooling(span.from());
  }

  /** Judged from the first reading at or below the limit, or where no cooling clock ever ran. */
  private boolean isHeldCold(Span span, LogEntry reading) {
    boolean isReceipt = span.is(Phase.RECEIVED) && reading.equals(span.opening());
    return !isReceipt && !isStillCooling(reading.happenedAt()) && !isLastOfCooling(reading);
  }

  /** Whether it was read in the minute, but before the row, that shows the food cold. */
  private boolean isLastOfCooling(LogEntry reading) {
    boolean isSameMoment =
        coolings.stream()
            .anyMatch(c -> c.heldFrom().filter(reading.happenedAt()::equals).isPresent());
    return isSameMoment
        && hold.filter(cold -> !HoldingJudge.isWithin(cold, reading)).isPresent()
        && warmest.stream()
            .filter(other -> other.happenedAt().equals(reading.happenedAt()))
            .dropWhile(other -> !other.equals(reading))
            .skip(1)
            .anyMatch(other -> HoldingJudge.isWithin(hold.orElseThrow(), other));
  }

  /** Whether food that was hot or warm had not been read cold by that moment. */
  private boolean isStillCooling(Instant moment) {
    boolean isCooling = false;
    for (CooledDown cooling : coolings) {
      if (!cooling.opened().isAfter(moment)) {
        isCooling = cooling.heldFrom().filter(from -> !from.isAfter(moment)).isEmpty();
      }
    }
    return isCooling;
  }

  /**
   * A cooling, and from when on cold holding is judged: from the first reading that meets its
   * limit, or where a kitchen holds colder than its cooling rules ask, after the one that ended the
   * cooling.
   */
  private record CooledDown(Instant opened, Optional<Instant> heldFrom) {}

  private static Optional<Hold> cold(RuleSet rules) {
    return rules
        .rule(Occasion.COLD_HOLDING)
        .map(Rule::shape)
        .filter(Hold.class::isInstance)
        .map(Hold.class::cast);
  }

  private static List<CooledDown> cooledDown(
      RuleSet rules, Optional<Hold> hold, Course course, List<LogEntry> warmest) {
    List<CooledDown> all = new ArrayList<>();
    for (Cycle cooling : course.opened) {
      Instant opened = cooling.opening.happenedAt();
      List<Limit> ends = rules.rules(cooling.occasion).stream().map(Crossing::to).toList();
      all.add(new CooledDown(opened, hold.flatMap(h -> heldFrom(h, ends, opened, warmest))));
    }
    return all;
  }

  private static Optional<Instant> heldFrom(
      Hold hold, List<Limit> ends, Instant opened, List<LogEntry> warmest) {
    for (LogEntry reading : warmest) {
      Instant at = reading.happenedAt();
      if (at.isBefore(opened)) {
        continue;
      }
      if (HoldingJudge.isWithin(hold, reading)) {
        return Optional.of(at);
      }
      boolean hasEnded =
          !ends.isEmpty()
              && ends.stream().allMatch(to -> to.isColdEnough(Readings.temperature(reading)));
      if (hasEnded) {
        return Optional.of(at.plusMillis(1));
      }
    }
    return Optional.empty();
  }

  private void judgeThawing() {
    for (Span span : spans) {
      if (span.is(Phase.THAWING)) {
        judgeThawing(span);
      }
    }
  }

  private void judgeThawing(Span span) {
    LogEntry row = span.opening();
    if (row.is(How.RUNNING_WATER)) {
      judgeWater(span);
    }
    for (Rule rule : rules.rules(thawing(row))) {
      findings.add(
          rule.shape() instanceof Hold hold
              ? judge.judge(rule, span.from(), thawingReadings(hold, span), goesOn(span))
              : judge.noFigure(rule, row));
    }
  }

  private boolean goesOn(Span span) {
    return isOnHand && span.ending().isEmpty();
  }

  /**
   * Where time above the limit is allowed, it runs on until a reading shows the food cold again.
   * What is read cold as the next phase begins shows how the thaw ended.
   */
  private List<LogEntry> thawingReadings(Hold hold, Span span) {
    List<LogEntry> during = Readings.warmest(span.rows());
    List<LogEntry> all =
        new ArrayList<>(
            hold.allowed().isZero() ? during : HoldingJudge.untilBack(hold, during, warmest));
    span.ending()
        .filter(next -> next.word().phase().isPresent() && !Portions.isOutgoing(next.word()))
        .filter(next -> next.temperature().isPresent() && HoldingJudge.isWithin(hold, next))
        .filter(next -> warmest.contains(next))
        .filter(next -> isAfterAll(all, next))
        .ifPresent(all::add);
    return all;
  }

  private static boolean isAfterAll(List<LogEntry> readings, LogEntry next) {
    return Readings.last(readings)
        .filter(last -> !last.happenedAt().isBefore(next.happenedAt()))
        .isEmpty();
  }

  private Occasion thawing(LogEntry row) {
    if (row.is(How.WHILE_COOKING)) {
      return Occasion.THAWING_WHILE_COOKING;
    }
    if (!row.is(How.RUNNING_WATER)) {
      return Occasion.THAWING_REFRIGERATOR;
    }
    return isReadyToEat ? Occasion.THAWING_RUNNING_WATER : Occasion.THAWING_RUNNING_WATER_RAW;
  }

  private void judgeWater(Span span) {
    Optional<Rule> rule = rules.rule(Occasion.THAWING_WATER);
    List<LogEntry> water =
        span.rows().stream().filter(row -> row.details().air().isPresent()).toList();
    if (rule.isPresent() && !water.isEmpty()) {
      findings.add(judge.judgeSurroundings(rule.get(), span.from(), water));
    }
  }
}
