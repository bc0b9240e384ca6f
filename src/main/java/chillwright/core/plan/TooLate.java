package chillwright.core.plan;

import chillwright.core.plan.Dish.Route;
import chillwright.core.plan.Plan.Conflict;
import chillwright.core.plan.Plan.Why;
import chillwright.core.rules.Occasion;
import chillwright.core.rules.Rule;
import chillwright.core.rules.RuleSet;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Which part of a dish the time no longer reaches for, and what the rules allow instead. */
record TooLate(Window window, Menu menu, RuleSet rules) {
  /** Empty where there is time. */
  Optional<Conflict> conflict() {
    boolean isBegunFrozen = window.progress().isPresent() && window.dish().route() == Route.FROZEN;
    if (isBegunFrozen && thawEnds().isAfter(window.finishTo())) {
      Instant out = window.finishTo().minus(window.dish().thaw());
      boolean isFrozen = window.progress().flatMap(Progress::frozen).isPresent();
      return Optional.of(
          isFrozen && !out.isAfter(menu.from())
              ? conflict(Why.TOO_LATE_TO_THAW, Optional.of(out), faster())
              : conflict(
                  Why.TOO_LATE_TO_FREEZE, Optional.of(out.minus(Window.FREEZES)), List.of()));
    }
    return window.isEmpty() || window.finishTo().isBefore(menu.from())
        ? Optional.of(conflict(Why.TOO_LATE_TO_MAKE, Optional.empty(), List.of()))
        : Optional.empty();
  }

  /** A lot that does not keep until it is served; one that still thaws may thaw faster. */
  Optional<Conflict> ends() {
    boolean isInFreezer = window.progress().filter(Progress::isInFreezer).isPresent();
    return window
        .ends()
        .map(
            ends -> {
              Instant last = ends.last().atStartOfDay(menu.zone()).toInstant();
              boolean mayHelp = !ends.isQuality() && isInFreezer && isThawedBefore();
              return conflict(
                  ends.isQuality() ? Why.LOT_PAST_BEST : Why.LOT_KEEPS_TOO_SHORT,
                  Optional.of(last),
                  mayHelp ? faster() : List.of());
            });
  }

  /** Whether it comes out on a day before the one on which it is served. */
  private boolean isThawedBefore() {
    LocalDate out = window.takeOutTo().atZone(menu.zone()).toLocalDate();
    return out.isBefore(window.due().atZone(menu.zone()).toLocalDate());
  }

  /** When it is thawed at the earliest; food out of the freezer thaws from when it came out. */
  private Instant thawEnds() {
    return menu.from().plus(window.cool()).plus(window.freeze()).plus(window.thaw());
  }

  private Conflict conflict(Why why, Optional<Instant> by, List<Rule> instead) {
    return new Conflict(why, window.dish().name(), "", 0, by, instead, List.of());
  }

  /** Faster ways to thaw that the rules name: in water, and heated while still frozen. */
  private List<Rule> faster() {
    Dish dish = window.dish();
    List<Rule> ways = new ArrayList<>();
    if (dish.category().tcs()) {
      Occasion water =
          dish.category().readyToEat()
              ? Occasion.THAWING_RUNNING_WATER
              : Occasion.THAWING_RUNNING_WATER_RAW;
      ways.addAll(rules.rules(water));
      if (!ways.isEmpty()) {
        ways.addAll(rules.rules(Occasion.THAWING_WATER));
      }
      if (!dish.finish().isEmpty()) {
        ways.addAll(rules.rules(Occasion.THAWING_WHILE_COOKING));
      }
    }
    return ways;
  }
}
