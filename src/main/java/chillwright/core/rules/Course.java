package chillwright.core.rules;

import chillwright.core.log.How;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Phase;
import chillwright.core.log.Portions;
import chillwright.core.log.Timeline;
import chillwright.core.log.Word;
import chillwright.core.rules.Cycle.End;
import chillwright.core.rules.Shape.Reach;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The coolings and reheats of a lot, found by walking its entries once in order of time. The row a
 * cook writes starts no clock by itself; what the food is shown to have done does.
 */
final class Course {
  /** Phases in which food counts as cold-held although no reading says so. */
  private static final Set<Phase> HELD_COLD =
      EnumSet.of(
          Phase.PREPARED, Phase.OPENED, Phase.CHILLED, Phase.FROZEN, Phase.THAWING, Phase.SET_OUT);

  /** Coolings to judge; one that hot holding stopped is not among them. */
  final List<Cycle> coolings = new ArrayList<>();

  /** Every cooling that was ever opened, stopped ones too. */
  final List<Cycle> opened = new ArrayList<>();

  final List<Reheat> reheats = new ArrayList<>();

  private final RuleSet rules;
  private final Thresholds thresholds;
  private final Shown shown;
  private final List<LogEntry> coolest;
  private final List<LogEntry> warmest;
  private final List<LogEntry> actions;

  /** How many of the coolest and of the warmest readings the walk has passed. */
  private int coolestRead;

  private int warmestRead;

  private Optional<Phase> phase = Optional.empty();
  private Optional<Cycle> cooling = Optional.empty();
  private Optional<Reheat> reheat = Optional.empty();
  private boolean hasOrigin;
  private boolean isRoast;
  private boolean isUnderTimeControl;
  private int correctiveReheats;

  private Course(Timeline timeline, RuleSet rules) {
    this.rules = rules;
    this.thresholds = Thresholds.of(rules);
    this.shown = new Shown(thresholds);
    List<LogEntry> entries = timeline.entries();
    this.coolest = Readings.coolest(entries);
    this.warmest = Readings.warmest(entries);
    this.actions = entries.stream().filter(e -> e.word() == Word.ACTION).toList();
    for (LogEntry entry : entries) {
      if (!isUnderTimeControl) {
        step(entry);
      }
    }
  }

  static Course of(Timeline timeline, RuleSet rules) {
    return new Course(timeline, rules);
  }

  /**
   * Whether a clock still runs under which a reading was below the hot limit, or none is needed.
   */
  boolean hasCooledBelowHot() {
    return cooling.filter(c -> c.startsAtRow || c.firstBelow.isPresent()).isPresent();
  }

  private void step(LogEntry entry) {
    Optional<Phase> next = entry.word().phase().filter(p -> !Portions.isOutgoing(entry.word()));
    boolean isRead = entry.temperature().isPresent();
    // What is read as the food comes off the heat is the last reading of the reheat.
    boolean isReadFirst = isRead && isIn(Phase.REHEATING) && entry.word() == Word.COOLING;
    if (isReadFirst) {
      read(entry);
    }
    next.ifPresent(entered -> enter(entered, entry));
    if (isRead && !isReadFirst && !isUnderTimeControl) {
      read(entry);
    }
  }

  private boolean isIn(Phase asked) {
    return phase.filter(asked::equals).isPresent();
  }

  private void enter(Phase next, LogEntry row) {
    if (isIn(Phase.HOT_HOLDING) && next != Phase.HOT_HOLDING) {
      leaveHotHolding(next, row);
    }
    cooling.ifPresent(running -> running.isBeingReheated = false);
    switch (next) {
      case COOKED -> enterCooked(row);
      case PREPARED -> enterPrepared(row);
      case RECEIVED -> enterReceived(row);
      case HOT_HOLDING -> enterHotHolding(row);
      case COOLING -> enterCooling(row);
      case REHEATING -> enterReheating(row);
      case TIME_CONTROL -> enterTimeControl(row);
      case CHILLED, FROZEN, SET_OUT, OPENED -> leaveReheat(row);
      case THAWING -> enterThawing(row);
      case SERVED, DISCARDED, USED_UP, PUT_BACK, COUNTED_OUT ->
          throw new IllegalStateException("not a phase of food on hand");
    }
    phase = Optional.of(next);
  }

  private void enterCooked(LogEntry row) {
    endCooling(End.WITHDRAWN, row);
    stopReheat(row);
    isRoast = row.is(How.ROAST);
    Cycle begun = open(Occasion.COOLING_COOKED, row);
    if (row.temperature().isEmpty() || thresholds.isHot(row, isRoast)) {
      begun.provedBy(row, false);
      shown.hotProof = Optional.of(row);
    }
  }

  private void enterPrepared(LogEntry row) {
    boolean isChilled = row.temperature().isPresent() && thresholds.isCold(row);
    hasOrigin = true;
    if (!isChilled && stillRunning(row.happenedAt()).isEmpty()) {
      endCooling(End.SETTLED, row);
      open(Occasion.COOLING_AMBIENT, row);
    }
  }

  private void enterReceived(LogEntry row) {
    if (row.temperature().isPresent() && thresholds.isHot(row, false)) {
      open(Occasion.COOLING_COOKED, row);
    } else if (row.is(How.LAW_ALLOWS)
        && !(row.temperature().isPresent() && thresholds.isCold(row))) {
      open(Occasion.COOLING_RECEIVED, row);
    }
    hasOrigin = true;
  }

  /** Hot holding stops a cooling clock, unless a reading had already shown the food below it. */
  private void enterHotHolding(LogEntry row) {
    isRoast |= row.is(How.ROAST);
    reheat.filter(r -> r.isServedAtOnce).ifPresent(this::holdAfterAll);
    boolean isRunning = !stillRunning(row.happenedAt()).isEmpty();
    boolean isReadHot = row.temperature().isPresent() && isHotFor(row);
    boolean wasBelow =
        cooling.filter(c -> c.readings.stream().anyMatch(r -> !isHotFor(r))).isPresent();
    boolean isStopped =
        isRunning
            || isReadHot
            || cooling.filter(c -> rules.rules(c.occasion).isEmpty()).isPresent();
    if (cooling.isPresent() && !wasBelow && isStopped) {
      coolings.remove(cooling.get());
      cooling = Optional.empty();
    } else if (!isRunning) {
      endCooling(End.SETTLED, row);
      if (isHeldCold()) {
        begin(shown.reheatFrom(row));
      }
    }
    hasOrigin = true;
  }

  /** Food reheated for one order that is then held hot was an ordinary reheat from its row on. */
  private void holdAfterAll(Reheat served) {
    served.isServedAtOnce = false;
    Optional<Reach> reach = Thresholds.reach(rules, served.occasion());
    served.reached =
        served.readings.stream()
            .filter(r -> reach.filter(f -> Reheat.isReached(f, served.row, r, coolest)).isPresent())
            .findFirst();
    if (served.reached.isPresent()) {
      reheat = Optional.empty();
    }
  }

  private boolean isHotFor(LogEntry reading) {
    return thresholds.isHot(reading, isRoast);
  }

  private boolean isHeldCold() {
    if (phase.isEmpty() || reheat.isPresent()) {
      return false;
    }
    return HELD_COLD.contains(phase.get())
        || (phase.get() != Phase.HOT_HOLDING
            && shown.lastReading.filter(thresholds::isCold).isPresent());
  }

  /**
   * The end of hot holding opens the cooling clock, proved by the hold if it was lawful to the end.
   */
  private void leaveHotHolding(Phase next, LogEntry row) {
    if (cooling.isPresent()
        || next == Phase.REHEATING
        || next == Phase.TIME_CONTROL
        || next == Phase.COOKED) {
      return;
    }
    Cycle begun = open(Occasion.COOLING_COOKED, row);
    boolean wasHot = shown.lastReading.filter(this::isHotFor).isPresent();
    boolean readsLower = row.temperature().isPresent() && !isHotFor(row);
    if (wasHot && !readsLower) {
      begun.provedBy(row, false);
    } else {
      shown.hotProof.ifPresent(proof -> begun.provedBy(proof, thresholds.isExactlyHot(proof)));
    }
  }

  private void enterCooling(LogEntry row) {
    leaveReheat(row);
    if (!hasOrigin && cooling.isEmpty()) {
      open(Occasion.COOLING_COOKED, row);
    }
  }

  /** Readings of food that thaws say nothing of how it cooled before it was frozen. */
  private void enterThawing(LogEntry row) {
    stopReheat(row);
    endCooling(End.SETTLED, row);
  }

  private void enterReheating(LogEntry row) {
    if (isIn(Phase.REHEATING) && reheat.filter(r -> r.isContinuedBy(row, rules)).isPresent()) {
      return;
    }
    stopReheat(row);
    if (!stillRunning(row.happenedAt()).isEmpty()) {
      if (!row.is(How.SERVE_NOW)) {
        Cycle running = cooling.orElseThrow();
        running.attempts.add(row);
        running.isBeingReheated = true;
      }
      return;
    }
    endCooling(End.SETTLED, row);
    boolean fromHot = isIn(Phase.HOT_HOLDING);
    Reheat begun = fromHot ? Reheat.startingAt(row) : shown.reheatFrom(row);
    if (fromHot) {
      begun.hotBefore =
          shown.lastReading.filter(this::isHotFor).map(hot -> row).or(() -> shown.hotProof);
    }
    begun.isServedAtOnce = row.is(How.SERVE_NOW);
    isRoast = false;
    hasOrigin = true;
    begin(begun);
  }

  private void begin(Reheat begun) {
    reheats.add(begun);
    reheat = Optional.of(begun);
    shown.hotProof = Optional.empty();
  }

  private void enterTimeControl(LogEntry row) {
    stopReheat(row);
    endCooling(End.WITHDRAWN, row);
    isUnderTimeControl = true;
  }

  private void stopReheat(LogEntry row) {
    reheat.filter(r -> r.reached.isEmpty()).ifPresent(r -> r.stoppedBy = Optional.of(row));
    reheat = Optional.empty();
  }

  /** A reheat short of its limit is left: what it made hot cools all the same. */
  private void leaveReheat(LogEntry row) {
    Optional<Reheat> left = reheat;
    stopReheat(row);
    left.ifPresent(
        unreached ->
            coolAfter(
                unreached,
                Optional.of(row)
                    .filter(this::readsHot)
                    .or(() -> Optional.of(unreached.row).filter(r -> unreached.isUnread(row)))));
  }

  private boolean readsHot(LogEntry row) {
    return row.temperature().isPresent() && isHotFor(row);
  }

  /** Opens the clock of food that was last shown hot in a reheat, or as it left that. */
  private void coolAfter(Reheat left, Optional<LogEntry> leaving) {
    Optional<LogEntry> hot = left.lastHot(this::isHotFor);
    Optional<LogEntry> opening = hot.or(() -> leaving);
    if (cooling.isPresent() || opening.isEmpty()) {
      return;
    }
    Cycle begun = open(Occasion.COOLING_COOKED, opening.get());
    left.hotBefore.ifPresent(proof -> begun.provedBy(proof, false));
    for (LogEntry reading : hot.map(left::warmestFrom).orElse(List.of())) {
      begun.read(
          reading, thresholds.isHot(reading, false), thresholds.isExactlyHot(reading), false);
      shown.noteCold(reading, false);
    }
  }

  private Cycle open(Occasion occasion, LogEntry row) {
    boolean mayStartAnew = correctiveReheats < rules.settings().correctiveReheats();
    Cycle begun = new Cycle(occasion, row, thresholds.hot(), mayStartAnew);
    coolings.add(begun);
    opened.add(begun);
    cooling = Optional.of(begun);
    shown.startsToCool();
    hasOrigin = true;
    return begun;
  }

  private void endCooling(End how, LogEntry row) {
    cooling.ifPresent(c -> c.endWith(how, row));
    cooling = Optional.empty();
  }

  private List<Rule> stillRunning(Instant moment) {
    return cooling.map(c -> c.running(rules.rules(c.occasion), moment)).orElse(List.of());
  }

  private void read(LogEntry reading) {
    if (Readings.isAt(coolest, coolestRead, reading)) {
      coolestRead++;
      readForReheat(reading);
    }
    if (Readings.isAt(warmest, warmestRead, reading)) {
      warmestRead++;
      readForCooling(reading);
    }
    shown.read(reading, isHotFor(reading), opened.isEmpty());
  }

  private void readForReheat(LogEntry reading) {
    if (reheat.isEmpty()) {
      return;
    }
    Reheat running = reheat.get();
    running.readings.add(reading);
    Optional<Reach> reach = Thresholds.reach(rules, running.occasion());
    if (reach.isEmpty() || !Reheat.isReached(reach.get(), running.row, reading, coolest)) {
      return;
    }
    running.reached = Optional.of(reading);
    reheat = Optional.empty();
    if (isIn(Phase.REHEATING) && !running.isServedAtOnce) {
      // What it cooled meanwhile, left once the time of the reheat was over, no longer counts.
      cooling
          .filter(c -> !stillRunning(reading.happenedAt()).isEmpty())
          .ifPresent(coolings::remove);
      endCooling(End.SETTLED, reading);
      open(Occasion.COOLING_COOKED, reading);
    }
  }

  private void readForCooling(LogEntry reading) {
    reheat
        .filter(left -> isIn(Phase.REHEATING) && !isHotFor(reading))
        .filter(left -> left.isTimeOver(reading, rules))
        .ifPresent(left -> coolAfter(left, Optional.empty()));
    reheat.ifPresent(running -> running.warmest.add(reading));
    boolean isUnnamed = phase.isEmpty() && !hasOrigin && !thresholds.isCold(reading);
    if (cooling.isEmpty() && isUnnamed && thresholds.hot().isPresent()) {
      // Only readings so far, and warm: food that cools, whatever row is still missing.
      open(Occasion.COOLING_COOKED, reading);
    }
    if (cooling.isEmpty()) {
      return;
    }
    Cycle running = cooling.get();
    Optional<End> byReheat = running.endedBy(reading, rules, coolest, actions);
    if (byReheat.isPresent()) {
      running.endWith(byReheat.get(), reading);
      correctiveReheats++;
      running = open(Occasion.COOLING_COOKED, reading);
    }
    boolean isHot = thresholds.isHot(reading, false);
    boolean isBeingHeated =
        isIn(Phase.HOT_HOLDING) || (isIn(Phase.REHEATING) && !running.attempts.isEmpty());
    running.read(reading, isHot, thresholds.isExactlyHot(reading), isBeingHeated);
  }
}
