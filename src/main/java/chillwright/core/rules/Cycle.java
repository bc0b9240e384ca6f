package chillwright.core.rules;

import chillwright.core.log.LogEntry;
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

  Optional<LogEntry> proof = Optional.empty();
  Optional<LogEntry> firstBelow = Optional.empty();
  Optional<End> end = Optional.empty();
  Optional<LogEntry> endRow = Optional.empty();

  /** A reading exactly on the hot limit is the start itself. */
  private boolean proofIsStart;

  Cycle(Occasion occasion, LogEntry opening) {
    this.occasion = occasion;
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

  /** Last moment that complies with a limit of so long; empty where the start is not shown. */
  Optional<Instant> deadline(Duration within) {
    return proof.map(entry -> entry.happenedAt().plus(within));
  }

  /** Whether a limit's time had passed before the moment, as far as the record can tell. */
  boolean hadPassed(Duration within, Instant moment) {
    return deadline(within)
        .or(() -> latestStart().map(entry -> entry.happenedAt().plus(within)))
        .filter(moment::isAfter)
        .isPresent();
  }

  /** Rules of this cooling that still waited for a temperature at the moment. */
  List<Rule> running(List<Rule> rules, Instant moment) {
    return rules.stream()
        .filter(rule -> !hadPassed(within(rule), moment))
        .filter(rule -> Crossing.of(this, rule, rules, moment).reached().isEmpty())
        .toList();
  }

  static Duration within(Rule rule) {
    return ((Reach) rule.shape()).within().orElse(Duration.ofDays(36_500));
  }
}
