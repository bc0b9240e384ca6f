package chillwright.core.plan;

import chillwright.core.plan.Plan.Kind;
import chillwright.core.plan.Plan.Task;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;

/** A plan with every part begun at another moment within the window that it gives for it. */
final class ChosenWithin {
  private static final Duration SLOT = Duration.ofMinutes(5);

  private final Menu menu;
  private final Plan plan;
  private final SplittableRandom random;
  private final int choice;
  private final List<Task> tasks = new ArrayList<>();
  private int moved;

  /**
   * Chooses.
   *
   * @param choice 0 the earliest of each, 1 the latest of each; else any, the ends more often
   */
  ChosenWithin(Menu menu, Plan plan, SplittableRandom random, int choice) {
    this.menu = menu;
    this.plan = plan;
    this.random = random;
    this.choice = choice;
    menu.dishes().forEach(this::dish);
  }

  Plan plan() {
    return new Plan(true, plan.isProven(), tasks, plan.bounds(), List.of());
  }

  /** How many parts begin at another moment than planned. */
  int moved() {
    return moved;
  }

  private List<Task> of(Dish dish, Kind kind) {
    return plan.tasks().stream()
        .filter(task -> task.dish().equals(dish.name()) && task.kind() == kind)
        .toList();
  }

  private Instant chosen(Dish dish, Bound.Kind kind, Instant planned) {
    Optional<Bound> bound =
        plan.bounds().stream()
            .filter(one -> one.dish().equals(dish.name()) && one.kind() == kind)
            .findFirst();
    if (bound.isEmpty()) {
      return planned;
    }
    Instant from = bound.get().from().orElseThrow();
    long slots = Duration.between(from, bound.get().to().orElseThrow()).dividedBy(SLOT);
    int way = choice < 2 ? choice : random.nextInt(4);
    long by = way == 0 ? 0 : way == 1 ? slots : random.nextLong(slots + 1);
    Instant at = from.plus(SLOT.multipliedBy(by));
    moved += at.equals(planned) ? 0 : 1;
    return at;
  }

  private static Instant start(List<Task> tasks) {
    return tasks.get(0).start();
  }

  private void dish(Dish dish) {
    List<Task> make = of(dish, Kind.MAKE);
    Instant begun = chosen(dish, Bound.Kind.MAKE, start(make));
    Duration shift = Duration.between(start(make), begun);
    make.forEach(task -> add(task, task.start().plus(shift), task.end().plus(shift)));
    Instant made = make.get(make.size() - 1).end().plus(shift);
    List<Task> finish = of(dish, Kind.FINISH);
    Instant planned = finish.isEmpty() ? made : start(finish);
    Instant finishes = chosen(dish, Bound.Kind.REHEAT, planned);
    Duration later = Duration.between(planned, finishes);
    finish.forEach(task -> add(task, task.start().plus(later), task.end().plus(later)));
    if (dish.route() == Dish.Route.FROZEN) {
      Instant freeze = chosen(dish, Bound.Kind.FREEZE, start(of(dish, Kind.FREEZE)));
      Instant out = chosen(dish, Bound.Kind.TAKE_OUT, of(dish, Kind.FREEZE).get(0).end());
      stretch(dish, Kind.COOL, made, freeze, Menu.REFRIGERATOR);
      stretch(dish, Kind.FREEZE, freeze, out, Menu.FREEZER);
      stretch(dish, Kind.TAKE_OUT, out, finishes, Menu.REFRIGERATOR);
    } else if (dish.route() == Dish.Route.CHILLED) {
      stretch(dish, Kind.CHILL, made, finishes, Menu.REFRIGERATOR);
    }
    Duration takes =
        finish.stream()
            .map(task -> Duration.between(task.start(), task.end()))
            .reduce(Duration.ZERO, Duration::plus);
    stretch(dish, Kind.HOLD, finishes.plus(takes), menu.due(dish), Menu.WARM);
  }

  private void add(Task task, Instant from, Instant to) {
    tasks.add(new Task(task.dish(), task.kind(), task.step(), from, to, task.uses()));
  }

  private void stretch(Dish dish, Kind kind, Instant from, Instant to, String thing) {
    if (to.isAfter(from)) {
      Map<String, Double> uses =
          Optional.ofNullable(dish.keeps().get(thing))
              .map(amount -> Map.of(thing, amount))
              .orElse(Map.of());
      tasks.add(new Task(dish.name(), kind, "", from, to, uses));
    }
  }
}
