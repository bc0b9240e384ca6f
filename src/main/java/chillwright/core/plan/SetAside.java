package chillwright.core.plan;

import chillwright.core.plan.Dish.Route;
import chillwright.core.rules.Occasion;
import chillwright.core.rules.Rule;
import chillwright.core.rules.RuleSet;
import chillwright.core.rules.Shape.Reach;
import java.time.Duration;
import java.util.List;

/** Time that a plan sets aside for a dish to cool. Planning only: readings judge. */
final class SetAside {
  /** Where a rule set prints no cooling time. */
  private static final Duration COOLS = Duration.ofHours(6);

  /** What needs no cold stands so long before it is wrapped: common practice, no source. */
  private static final Duration AIR_COOLS = Duration.ofHours(2);

  private SetAside() {}

  /** From made until it may be frozen, or finished: what the rules allow at most. */
  static Duration cooling(Dish dish, RuleSet rules) {
    if (!dish.category().tcs()) {
      return dish.route() == Route.FROZEN ? AIR_COOLS : Duration.ZERO;
    }
    if (dish.route() == Route.FRESH) {
      return Duration.ZERO;
    }
    List<Rule> cools = rules.rules(Occasion.COOLING_COOKED);
    return cools.stream()
        .map(Rule::shape)
        .filter(Reach.class::isInstance)
        .flatMap(shape -> ((Reach) shape).within().stream())
        .reduce(Duration.ZERO, (one, other) -> one.compareTo(other) > 0 ? one : other)
        .plus(cools.isEmpty() ? COOLS : Duration.ZERO);
  }
}
