package chillwright.web.pages;

import chillwright.core.log.Row;
import chillwright.core.log.Word;
import chillwright.core.measure.Limit;
import chillwright.core.rules.Occasion;
import chillwright.core.rules.Rule;
import chillwright.core.rules.RuleSet;
import chillwright.core.rules.Shape.Hold;
import chillwright.service.Kitchen;
import java.time.LocalDate;
import java.util.Optional;

/**
 * Food said to be just cooked that reads less than the rule set asks of hot food: common practice,
 * no source, and never more than a question.
 */
final class CookedDoubt {
  private CookedDoubt() {}

  /** The question; empty where nothing is odd, or the food needs no temperature. */
  static Optional<Question> of(Row row, String category, Desk desk, Visitor visitor) {
    if (row.word() != Word.COOKED || !needsTemperature(category, desk.kitchen())) {
      return Optional.empty();
    }
    RuleSet rules =
        desk.kitchen()
            .settings()
            .ruleBook()
            .on(LocalDate.ofInstant(desk.kitchen().now(), desk.zone()));
    return row.details()
        .temperature()
        .flatMap(
            given ->
                hot(rules)
                    .filter(limit -> !limit.isHotEnough(given))
                    .map(
                        limit ->
                            visitor.say(
                                "entry.doubt.not-hot",
                                given.text(visitor.scale()),
                                limit.text(given.scale())))
                    .map(says -> Question.of("not-hot", given.text(), says)));
  }

  private static boolean needsTemperature(String category, Kitchen kitchen) {
    return kitchen.library().keepingList().category(category).filter(c -> c.tcs()).isPresent();
  }

  private static Optional<Limit> hot(RuleSet rules) {
    return rules
        .rule(Occasion.HOT_HOLDING)
        .map(Rule::shape)
        .filter(Hold.class::isInstance)
        .flatMap(shape -> ((Hold) shape).atLeast());
  }
}
