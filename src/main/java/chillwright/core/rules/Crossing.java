package chillwright.core.rules;

import chillwright.core.log.LogEntry;
import chillwright.core.measure.Limit;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Shape.Reach;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Where cooling food crossed a limit, as far as its readings tell: after {@code lastAbove}, no
 * later than {@code reached}. For the coldest limit of a cooling the first reading at or below it
 * counts; for a limit before that the last crossing counts, since a rise over it reopens it until
 * the coldest is reached.
 *
 * @param considered the readings that can speak for or against this limit, in order of time
 * @param roseAgain whether it rose over the limit after having passed it
 */
record Crossing(
    List<LogEntry> considered,
    Optional<LogEntry> lastAbove,
    Optional<LogEntry> reached,
    boolean roseAgain) {

  /** The crossing of a rule's limit in a cooling, by the readings up to a moment. */
  static Crossing of(Cycle cycle, Rule rule, List<Rule> together, Instant upTo) {
    Limit limit = to(rule);
    Limit coldest = coldest(together);
    List<LogEntry> readings = Readings.upTo(cycle.readings, lastToSpeak(cycle, rule, upTo));
    int end = firstBelow(readings, coldest, 0);
    List<LogEntry> considered = end < 0 ? readings : readings.subList(0, end + 1);
    int last = lastAbove(considered, limit);
    int first = firstBelow(considered, limit, last + 1);
    int everBelow = firstBelow(considered, limit, 0);
    return new Crossing(
        considered,
        last < 0 ? Optional.empty() : Optional.of(considered.get(last)),
        first < 0 ? Optional.empty() : Optional.of(considered.get(first)),
        everBelow >= 0 && everBelow < last);
  }

  /** After a reheating row, readings say nothing of a limit whose time had passed before it. */
  private static Instant lastToSpeak(Cycle cycle, Rule rule, Instant upTo) {
    for (LogEntry attempt : cycle.attempts) {
      Instant row = attempt.happenedAt();
      if (row.isBefore(upTo) && cycle.hadPassed(rule, row)) {
        return row;
      }
    }
    return upTo;
  }

  static Limit to(Rule rule) {
    return ((Reach) rule.shape()).to();
  }

  private static Limit coldest(List<Rule> together) {
    return together.stream()
        .map(Crossing::to)
        .min(Comparator.comparing(limit -> limit.in(Scale.FAHRENHEIT).nineHundredths()))
        .orElseThrow();
  }

  private static int firstBelow(List<LogEntry> readings, Limit limit, int from) {
    for (int i = from; i < readings.size(); i++) {
      if (limit.isColdEnough(Readings.temperature(readings.get(i)))) {
        return i;
      }
    }
    return -1;
  }

  private static int lastAbove(List<LogEntry> readings, Limit limit) {
    for (int i = readings.size() - 1; i >= 0; i--) {
      if (!limit.isColdEnough(Readings.temperature(readings.get(i)))) {
        return i;
      }
    }
    return -1;
  }
}
