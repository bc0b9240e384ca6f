package chillwright.core.plan;

import chillwright.core.plan.Bound.Kind;
import chillwright.core.plan.Dish.Route;
import chillwright.core.rules.Occasion;
import chillwright.core.rules.Rule;
import chillwright.core.rules.RuleSet;
import chillwright.core.rules.Shape.Reach;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** What a dish must read while it cools, is kept and thaws; no moment of a plan sets these. */
final class Readings {
  private Readings() {}

  static List<Bound> of(Dish dish, boolean isFrozen, RuleSet rules) {
    boolean isFresh = dish.route() == Route.FRESH;
    boolean isThawed = !isFresh && !dish.thaw().isZero();
    boolean thaws = isThawed || dish.make().stream().anyMatch(s -> Thawing.isNamed(s.name()));
    return Stream.of(
            of(dish, Kind.COOL, rules.rules(Occasion.COOLING_COOKED), !isFresh && !isFrozen),
            of(dish, Kind.COLD, rules.rules(Occasion.COLD_HOLDING), dish.route() == Route.CHILLED),
            of(dish, Kind.THAW, rules.rules(Occasion.THAWING_REFRIGERATOR), thaws))
        .flatMap(List::stream)
        .toList();
  }

  private static List<Bound> of(Dish dish, Kind kind, List<Rule> rules, boolean counts) {
    Optional<Instant> never = Optional.empty();
    return rules.stream()
        .filter(rule -> counts && dish.category().tcs())
        .map(
            rule -> new Bound(dish.name(), kind, never, never, Optional.of(rule), false, "", false))
        .toList();
  }

  /** Within what times it must be read while it cools, from when it is made. */
  static List<Duration> coolingTimes(Window window) {
    return window.bounds().stream()
        .filter(bound -> bound.kind() == Kind.COOL)
        .flatMap(bound -> bound.rule().stream())
        .map(Rule::shape)
        .filter(Reach.class::isInstance)
        .flatMap(shape -> ((Reach) shape).within().stream())
        .toList();
  }
}
