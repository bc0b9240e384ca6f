package chillwright.print;

import chillwright.core.measure.Limit;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Occasion;
import chillwright.core.rules.Rule;
import chillwright.core.rules.RuleSet;
import chillwright.core.rules.Shape.Hold;
import chillwright.core.rules.Verdict;
import java.util.Optional;

/**
 * The plain answer to "may I freeze it again?", with the figures of the rule set: food that kept
 * ice crystals, or stayed at the cold limit, may be; food that was warmer for too long may not.
 */
public final class Refreezing {
  private static final String NEVER = "; ice cream that softened may not";

  private Refreezing() {}

  /** What the rule set says of food that thawed; empty where it leaves that open. */
  public static Optional<String> advice(RuleSet rules) {
    return rules.rules(Occasion.FROZEN).stream()
        .filter(rule -> rule.shape() instanceof Hold)
        .findFirst()
        .map(
            rule ->
                "Freeze it again? It may be refrozen while it has ice crystals or reads "
                    + cold(rule, Scale.FAHRENHEIT)
                    + NEVER
                    + ". Warmer than that for more than "
                    + Figures.duration(((Hold) rule.shape()).allowed())
                    + ", or nobody knows for how long: do not refreeze, discard ["
                    + rule.citation().text()
                    + "]");
  }

  /** The end of what a finding says; empty for a rule that is not about thawed food. */
  static String answer(Rule rule, Verdict verdict, Scale scale) {
    if (!(rule.shape() instanceof Hold) || !rule.occasions().contains(Occasion.FROZEN)) {
      return "";
    }
    return switch (verdict) {
      case IN ->
          " With ice crystals, or at " + cold(rule, scale) + ", it may be refrozen" + NEVER + ".";
      case PENDING -> " Back in time it may be refrozen; else do not refreeze it: discard.";
      case NOT_SHOWN ->
          " At "
              + cold(rule, scale)
              + " it may be refrozen; warmer, and nobody knows for how long: do not refreeze it,"
              + " discard.";
      case OUT, NO_RULE -> "";
    };
  }

  private static String cold(Rule rule, Scale scale) {
    Optional<Limit> limit = ((Hold) rule.shape()).atMost();
    return limit.map(most -> most.text(scale) + " or below").orElse("its limit");
  }
}
