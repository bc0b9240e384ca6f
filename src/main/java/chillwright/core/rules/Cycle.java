package chillwright.core.rules;

import chillwright.core.log.LogEntry;
import chillwright.core.measure.Limit;
import chillwright.core.measure.Temperature;
import chillwright.core.rules.Shape.Reach;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One cooling of a lot, built row by row: what proves that it was hot, the first reading below the
 * hot limit, every reading since, and how it ended. The clock starts after {@code proof} and no
 * later than {@code firstBelow}.
 */
final class Cycle {
  /** How a cooling ended, other than by reaching its limits. */
  enum End {
    /** Taken off this clock: served, under time control, cooked or held hot. */
    WITHDRAWN,
    /** Closed by a reheat in time. */
    REHEATED,
    /** Reheated after a limit had passed, with the leave of the authority. */
    STARTED_AGAIN,
    /** Reheated after every limit had settled. */
    SETTLED
  }

  final Occasion occasion;
  final LogEntry opening;

  /** Whether the clock starts exactly at the opening row. */
  final boolean startsAtRow;

  final List<LogEntry> readings = new ArrayList<>();

  /** Reheating rows while this clock ran. */
  final List<LogEntry> attempts = new ArrayList<>();

  /** Whether the rule set still lets a reheat in time start this cooling anew. */
  final boolean mayStartAnew;

  /** Whether the last of the attempts still goes on. */
  boolean isBeingReheated;

  Optional<LogEntry> proof = Optional.empty();
  Optional<LogEntry> firstBelow = Optional.empty();
  Optional<End> end = Optional.empty();
  Optional<LogEntry> endRow = Optional.empty();

  /** A reading exactly on the hot limit is the start itself. */
  private boolean proofIsStart;

  /** Where the cooling of hot food starts, as the rule set prints it. */
  private final Optional<Limit> hot;

  Cycle(Occasion occasion, LogEntry opening, Optional<Limit> hot, boolean mayStartAnew) {
    this.occasion = occasion;
    this.mayStartAnew = mayStartAnew;
    this.hot = hot;
    this.opening = opening;
    this.startsAtRow = occasion != Occasion.COOLING_COOKED;
    if (startsAtRow) {
      proof = Optional.of(opening);
    }
  }

  /** The row proves that the food was hot, and it may have begun to cool from then on. */
  void provedBy(LogEntry row, boolean isStart) {
    proof = Optional.of(row);
    proofIsStart = isStart;
  }

  /** Takes in a reading; hot readings prove the start until one below the hot limit is read. */
  void read(LogEntry reading, boolean isHot, boolean isExactlyHot, boolean isBeingHeated) {
    readings.add(reading);
    if (startsAtRow || firstBelow.isPresent()) {
      return;
    }
    if (isHot) {
      provedBy(reading, isExactlyHot);
    } else if (!isBeingHeated) {
      firstBelow = Optional.of(reading);
    }
  }

  /** The latest the clock can have started; empty while no reading tells. */
  Optional<LogEntry> latestStart() {
    if (startsAtRow) {
      return Optional.of(opening);
    }
    return proofIsStart ? proof : firstBelow;
  }

  void endWith(End how, LogEntry row) {
    end = Optional.of(how);
    endRow = Optional.of(row);
  }

  /**
   * The bounds of where a rule's clock starts: at the hot limit for most rules; for a stage that
   * starts at a limit of its own, where the food passed that.
   *
   * @param proof last proof of being at or above the limit
   * @param latest the latest the clock can have started; empty while no reading tells
   */
  record Start(Optional<LogEntry> proof, Optional<LogEntry> latest) {}

  Start start(Rule rule) {
    Optional<Limit> own = ((Reach) rule.shape()).from().filter(from -> !startsAtRow);
    if (own.isEmpty() || hot.filter(own.get()::equals).isPresent()) {
      return new Start(proof, latestStart());
    }
    Limit from = own.get();
    Optional<LogEntry> last = proof;
    for (LogEntry reading : readings) {
      Temperature read = Readings.temperature(reading);
      if (!from.isHotEnough(read)) {
        return new Start(last, isExactly(from, last) ? last : Optional.of(reading));
      }
      last = Optional.of(reading);
    }
    return new Start(last, last.filter(entry -> isExactly(from, Optional.of(entry))));
  }

  private static boolean isExactly(Limit limit, Optional<LogEntry> reading) {
    return reading.flatMap(LogEntry::temperature).filter(limit::isExactly).isPresent();
  }

  /** Last moment that complies with a rule; empty where the start is not shown. */
  Optional<Instant> deadline(Rule rule) {
    return start(rule).proof().map(entry -> entry.happenedAt().plus(within(rule)));
  }

  /** Whether a rule's time had passed before the moment, as far as the record can tell. */
  boolean hadPassed(Rule rule, Instant moment) {
    return deadline(rule)
        .or(() -> start(rule).latest().map(entry -> entry.happenedAt().plus(within(rule))))
        .filter(moment::isAfter)
        .isPresent();
  }

  /** Rules of this cooling that still waited for a temperature at the moment. */
  List<Rule> running(List<Rule> rules, Instant moment) {
    return unreached(rules, moment).stream().filter(rule -> !hadPassed(rule, moment)).toList();
  }

  /** Rules of this cooling whose limit had not been reached by the moment, in time or late. */
  List<Rule> unreached(List<Rule> rules, Instant moment) {
    return rules.stream()
        .filter(rule -> Crossing.of(this, rule, rules, moment).reached().isEmpty())
        .toList();
  }

  /** Whether a limit of this cooling had passed unmet by the moment, so that no reheat mends it. */
  boolean hasMissed(List<Rule> rules, LogEntry attempt, Instant moment) {
    return unreached(rules, attempt.happenedAt()).stream()
        .anyMatch(rule -> hadPassed(rule, moment));
  }

  static Duration within(Rule rule) {
    return ((Reach) rule.shape()).within().orElse(Duration.ofDays(36_500));
  }

  /**
   * How a reading ends this cooling. A logged reheat closes it where it reaches its limit in the
   * time that any reheat has, and before any running one passed. A later one closes nothing, but
   * where the kitchen logged an action since the limit was missed, before the reheat or after it,
   * that is the leave of its authority: the cooling starts again beside what was missed.
   */
  Optional<End> endedBy(
      LogEntry reading, RuleSet rules, List<LogEntry> coolestOfLot, List<LogEntry> actions) {
    Optional<LogEntry> attempt = Readings.last(attempts);
    if (attempt.isEmpty() || !isBeingReheated || !mayStartAnew) {
      return Optional.empty();
    }
    LogEntry row = attempt.get();
    boolean isReached =
        Thresholds.reach(rules, Thresholds.reheating(row))
            .filter(reach -> Reheat.isReached(reach, row, reading, coolestOfLot))
            .filter(reach -> Reheat.isInTime(reach, row, reading))
            .isPresent();
    if (!isReached) {
      return Optional.empty();
    }
    List<Rule> bearing = rules.rules(occasion);
    if (!hasMissed(bearing, row, reading.happenedAt())) {
      return Optional.of(End.REHEATED);
    }
    boolean isAllowed =
        actions.stream()
            .anyMatch(
                action ->
                    !action.happenedAt().isBefore(reading.happenedAt())
                        || hasMissed(bearing, action, action.happenedAt()));
    return isAllowed ? Optional.of(End.STARTED_AGAIN) : Optional.empty();
  }
}
