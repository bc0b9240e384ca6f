package chillwright.core.plan;

import chillwright.core.plan.Plan.Unattended;
import chillwright.core.rules.Occasion;
import chillwright.core.rules.Rule;
import chillwright.core.rules.RuleSet;
import chillwright.core.rules.Shape.Reach;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Limits of cooling that a plan has fall due while nobody is there to show them. */
final class Unwatched {
  private Unwatched() {}

  static List<Unattended> of(List<Placed> plan, Grid grid, Menu menu, RuleSet rules) {
    Stream<Unattended> planned =
        plan.stream()
            .filter(placed -> isCooled(placed.job()))
            .flatMap(
                placed ->
                    rules.rules(Occasion.COOLING_COOKED).stream()
                        .flatMap(rule -> limit(placed, rule, grid).stream()))
            .filter(limit -> isClosed(limit, menu));
    return Stream.concat(begun(menu).stream(), planned).toList();
  }

  /** Of what cools already, by its log. */
  static List<Unattended> begun(Menu menu) {
    return menu.dishes().stream()
        .flatMap(
            dish ->
                menu.progress(dish).stream()
                    .flatMap(done -> done.cools().stream())
                    .map(limit -> new Unattended(dish.name(), limit.rule(), limit.by(), true)))
        .filter(limit -> isClosed(limit, menu))
        .distinct()
        .toList();
  }

  private static boolean isClosed(Unattended limit, Menu menu) {
    return !menu.isOpen(limit.by()) && !menu.isOpen(limit.by().minusSeconds(1));
  }

  /** What was made already has its limits in the log. */
  private static boolean isCooled(Job job) {
    return !job.isFresh() && job.makeLength() > 0 && job.dish().category().tcs();
  }

  /** Counted from when it is made, which is no later than when it cools to the hot limit. */
  private static Optional<Unattended> limit(Placed placed, Rule rule, Grid grid) {
    Instant made = grid.moment(placed.made());
    return Optional.of(rule.shape())
        .filter(Reach.class::isInstance)
        .flatMap(shape -> ((Reach) shape).within())
        .map(within -> new Unattended(placed.job().dish().name(), rule, made.plus(within), false));
  }
}
