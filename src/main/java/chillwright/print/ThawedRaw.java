package chillwright.print;

import chillwright.core.plan.Dish;
import chillwright.core.plan.Menu;
import chillwright.core.plan.Plan;
import chillwright.core.plan.Plan.Kind;
import chillwright.core.plan.Thawing;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;

/** By which day raw food that a plan thaws is cooked. */
final class ThawedRaw {
  private final PlanText text;

  ThawedRaw(PlanText text) {
    this.text = text;
  }

  List<String> says(Menu menu, Plan plan) {
    return menu.dishes().stream().flatMap(dish -> says(dish, menu, plan).stream()).toList();
  }

  private Optional<String> says(Dish dish, Menu menu, Plan plan) {
    OptionalInt days = Thawing.days(dish.category());
    Optional<Instant> thawed = thawed(dish, plan);
    if (days.isEmpty() || thawed.isEmpty()) {
      return Optional.empty();
    }
    LocalDate day = LocalDate.ofInstant(thawed.get(), menu.zone());
    LocalDate last = day.plusDays(days.getAsInt());
    return Optional.of(
        text.say("plan.thawing.by", dish.name(), text.day(day), text.day(last), days.getAsInt()));
  }

  /** When it is thawed first: after a step that thaws, or of raw food after it was taken out. */
  private static Optional<Instant> thawed(Dish dish, Plan plan) {
    boolean isRaw = !dish.category().readyToEat();
    Stream<Instant> steps =
        plan.tasks().stream()
            .filter(task -> task.dish().equals(dish.name()) && task.kind() == Kind.MAKE)
            .filter(task -> Thawing.isSlow(task.step()) && !Thawing.isInWater(task.step()))
            .map(task -> thawed(task, dish));
    Stream<Instant> out =
        plan.tasks().stream()
            .filter(task -> task.dish().equals(dish.name()) && task.kind() == Kind.TAKE_OUT)
            .filter(task -> isRaw)
            .map(task -> task.start().plus(dish.thaw()));
    return Stream.concat(steps, out).min(Comparator.naturalOrder());
  }

  /** What comes out sooner than it must is thawed sooner. */
  private static Instant thawed(Plan.Task task, Dish dish) {
    return dish.make().stream()
        .filter(step -> step.name().equals(task.step()))
        .map(step -> task.start().plus(step.lasts()))
        .filter(task.end()::isAfter)
        .findFirst()
        .orElse(task.end());
  }
}
