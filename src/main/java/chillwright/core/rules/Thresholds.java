package chillwright.core.rules;

import chillwright.core.log.How;
import chillwright.core.log.LogEntry;
import chillwright.core.measure.Limit;
import chillwright.core.rules.Shape.Hold;
import chillwright.core.rules.Shape.Reach;
import java.util.Optional;

/**
 * The temperatures that divide hot, cooling and cold food in a rule set, read off its rules.
 *
 * @param hot where cooling starts
 * @param roast where the cooling of a roast may start; the hot limit where the set has none
 * @param cold where cooling ends and cold holding begins
 */
record Thresholds(Optional<Limit> hot, Optional<Limit> roast, Optional<Limit> cold) {
  static Thresholds of(RuleSet rules) {
    Optional<Limit> hot = start(rules).or(() -> hold(rules, Occasion.HOT_HOLDING));
    Optional<Limit> roast = hold(rules, Occasion.HOT_HOLDING_ROAST).or(() -> hot);
    Optional<Limit> cold =
        rules
            .rule(Occasion.COLD_HOLDING)
            .map(Rule::shape)
            .filter(Hold.class::isInstance)
            .flatMap(shape -> ((Hold) shape).atMost());
    return new Thresholds(hot, roast, cold);
  }

  private static Optional<Limit> start(RuleSet rules) {
    return rules.rules(Occasion.COOLING_COOKED).stream()
        .map(Rule::shape)
        .filter(Reach.class::isInstance)
        .flatMap(shape -> ((Reach) shape).from().stream())
        .findFirst();
  }

  private static Optional<Limit> hold(RuleSet rules, Occasion occasion) {
    return rules
        .rule(occasion)
        .map(Rule::shape)
        .filter(Hold.class::isInstance)
        .flatMap(shape -> ((Hold) shape).atLeast());
  }

  /** The limit food must stay above while it is held hot. */
  Optional<Limit> hot(boolean isRoast) {
    return isRoast ? roast : hot;
  }

  boolean isHot(LogEntry reading, boolean isRoast) {
    return hot(isRoast).filter(l -> l.isHotEnough(Readings.temperature(reading))).isPresent();
  }

  boolean isCold(LogEntry reading) {
    return cold.filter(limit -> limit.isColdEnough(Readings.temperature(reading))).isPresent();
  }

  /** The occasion whose rule a reheating row falls under. */
  static Occasion reheating(LogEntry row) {
    if (row.is(How.MICROWAVE)) {
      return Occasion.REHEATING_MICROWAVE;
    }
    if (row.is(How.COMMERCIAL)) {
      return Occasion.REHEATING_COMMERCIAL;
    }
    return row.is(How.SERVE_NOW) ? Occasion.REHEATING_SERVE_NOW : Occasion.REHEATING;
  }

  /** Whether a row reads exactly the limit of hot food, which is where its cooling starts. */
  boolean isExactlyHot(LogEntry row) {
    return isExactly(hot(), row);
  }

  boolean isExactlyCold(LogEntry row) {
    return isExactly(cold(), row);
  }

  private static boolean isExactly(Optional<Limit> limit, LogEntry row) {
    return row.temperature()
        .filter(read -> limit.filter(l -> l.isExactly(read)).isPresent())
        .isPresent();
  }

  /** What must be reached on an occasion; empty where the set has no such rule. */
  static Optional<Reach> reach(RuleSet rules, Occasion occasion) {
    return rules
        .rule(occasion)
        .map(Rule::shape)
        .filter(Reach.class::isInstance)
        .map(Reach.class::cast);
  }
}
