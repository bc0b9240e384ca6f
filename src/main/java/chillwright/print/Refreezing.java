package chillwright.print;

import chillwright.core.log.Category;
import chillwright.core.measure.Limit;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Occasion;
import chillwright.core.rules.Rule;
import chillwright.core.rules.RuleSet;
import chillwright.core.rules.Shape.Hold;
import chillwright.core.rules.Verdict;
import java.util.Optional;
import java.util.function.Function;

/**
 * The plain answer to "may I freeze it again?", with the figures of the rule set: food that kept
 * ice crystals, or stayed at the cold limit, may be; food that was warmer for too long may not.
 */
public final class Refreezing {
  private Refreezing() {}

  /** What the rule set says of food that thawed; empty where it leaves that open. */
  public static Optional<String> advice(RuleSet rules) {
    return advice(rules, Language.ENGLISH, Scale.FAHRENHEIT);
  }

  /** The same with the figure of the wanted scale first. */
  public static Optional<String> advice(RuleSet rules, Language language, Scale scale) {
    return rules.thawedLimit().map(rule -> told("refreeze.advice", rule, language, scale));
  }

  /**
   * The same of one food: one that needs no cold for safety is bound by no limit, one that is not
   * frozen again once it softened never may be.
   */
  public static Optional<String> advice(
      RuleSet rules, Category food, Language language, Scale scale) {
    if (food.discardWhenSoft() && food.tcs()) {
      return rules.thawedLimit().map(rule -> language.say("refreeze.soft", rule.citation().text()));
    }
    return food.tcs()
        ? rules.thawedLimit().map(rule -> told("refreeze.food", rule, language, scale))
        : rules.thawedLimit().map(rule -> language.say("refreeze.quality"));
  }

  private static String told(String key, Rule rule, Language language, Scale scale) {
    return language.say(
        key,
        cold(rule, limit -> limit.both(scale), language),
        Figures.duration(((Hold) rule.shape()).allowed()),
        rule.citation().text());
  }

  /** The end of what a finding says; empty for a rule that is not about thawed food. */
  static String answer(Rule rule, Verdict verdict, Scale scale, Language language) {
    if (!(rule.shape() instanceof Hold) || !rule.occasions().contains(Occasion.FROZEN)) {
      return "";
    }
    return switch (verdict) {
      case IN -> language.say("refreeze.in", cold(rule, limit -> limit.text(scale), language));
      case PENDING -> language.say("refreeze.pending");
      case NOT_SHOWN ->
          language.say("refreeze.not-shown", cold(rule, limit -> limit.text(scale), language));
      case OUT, NO_RULE -> "";
    };
  }

  private static String cold(Rule rule, Function<Limit, String> text, Language language) {
    Optional<Limit> limit = ((Hold) rule.shape()).atMost();
    return limit
        .map(most -> language.say("limit.at-most", text.apply(most)))
        .orElseGet(() -> language.say("refreeze.limit"));
  }
}
