package chillwright.core.plan;

import chillwright.core.keeping.Keeping;
import chillwright.core.plan.Dish.Route;
import chillwright.core.plan.Plan.Kind;
import chillwright.core.plan.Plan.Task;
import chillwright.rulebook.RuleBook;
import chillwright.service.KeepQuestion;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Holds a plan against its menu minute by minute, and against the keeping days as the home cook's
 * question answers them; shares nothing with the planner but the menu.
 */
final class PlanCheck {
  private final Menu menu;
  private final Plan plan;
  private final RuleBook book;
  private final List<String> faults = new ArrayList<>();

  private PlanCheck(Menu menu, Plan plan, RuleBook book) {
    this.menu = menu;
    this.plan = plan;
    this.book = book;
  }

  /** What is wrong with it; empty for a sound plan. */
  static List<String> faults(Menu menu, Plan plan, RuleBook book) {
    PlanCheck check = new PlanCheck(menu, plan, book);
    menu.dishes().forEach(check::dish);
    check.amounts();
    return check.faults;
  }

  private void require(boolean holds, String what) {
    if (!holds) {
      faults.add(what);
    }
  }

  private List<Task> of(Dish dish, Kind kind) {
    return plan.tasks().stream()
        .filter(task -> task.dish().equals(dish.name()) && task.kind() == kind)
        .toList();
  }

  private static Duration total(List<Step> steps) {
    return steps.stream().map(Step::lasts).reduce(Duration.ZERO, Duration::plus);
  }

  private void dish(Dish dish) {
    List<Task> make = of(dish, Kind.MAKE);
    List<Task> finish = of(dish, Kind.FINISH);
    require(make.size() == dish.make().size(), dish.name() + ": a step of making is missing");
    require(finish.size() == dish.finish().size(), dish.name() + ": a step at the end is missing");
    Instant made = make.get(make.size() - 1).end();
    Instant ready = finish.isEmpty() ? readyWithout(dish) : finish.get(finish.size() - 1).end();
    Instant begun = make.get(0).start();
    require(!begun.isBefore(menu.from()), dish.name() + ": begins before work does");
    require(!Duration.between(begun, made).minus(total(dish.make())).isNegative(), "too short");
    require(!ready.isAfter(due(dish)), dish.name() + ": late");
    require(
        Duration.between(ready, due(dish)).compareTo(dish.hold()) <= 0,
        dish.name() + ": held too long");
    Instant finishes = finish.isEmpty() ? ready : finish.get(0).start();
    Stream.concat(make.stream(), finish.stream())
        .forEach(task -> require(isOpen(task.start()), task.step() + ": nobody begins it"));
    require(isOpen(made.minusSeconds(1)), dish.name() + ": nobody is there when it is made");
    LocalDate served = day(due(dish));
    switch (dish.route()) {
      case FRESH -> require(made.equals(finishes), dish.name() + ": fresh food waits");
      case CHILLED -> {
        require(!made.plus(cool(dish)).isAfter(finishes), dish.name() + ": not cold yet");
        require(isWithin(dish, begun, Optional.empty(), Optional.empty(), served), "past its day");
      }
      case FROZEN -> frozen(dish, begun, made, finishes, served);
      default -> throw new IllegalStateException("no such route");
    }
  }

  private Instant readyWithout(Dish dish) {
    return of(dish, Kind.HOLD).stream().map(Task::start).findFirst().orElse(due(dish));
  }

  private Instant due(Dish dish) {
    return dish.due().orElse(menu.serving());
  }

  private Duration cool(Dish dish) {
    int uncooled = dish.route() == Dish.Route.FROZEN ? 2 : 0;
    return Duration.ofHours(dish.category().tcs() ? 6 : uncooled);
  }

  private void frozen(Dish dish, Instant begun, Instant made, Instant finishes, LocalDate served) {
    Task freezer = of(dish, Kind.FREEZE).get(0);
    require(!made.plus(cool(dish)).isAfter(freezer.start()), dish.name() + ": frozen warm");
    require(
        Duration.between(freezer.start(), freezer.end()).compareTo(Duration.ofHours(24)) >= 0,
        dish.name() + ": not frozen through");
    require(
        !freezer.end().plus(dish.thaw()).isAfter(finishes), dish.name() + ": not thawed in time");
    require(isOpen(freezer.start()) && isOpen(freezer.end()), dish.name() + ": nobody is there");
    require(
        isWithin(dish, begun, Optional.of(freezer.start()), Optional.of(freezer.end()), served),
        dish.name() + ": past its day");
  }

  private LocalDate day(Instant moment) {
    return moment.atZone(menu.zone()).toLocalDate();
  }

  private boolean isWithin(
      Dish dish,
      Instant made,
      Optional<Instant> frozen,
      Optional<Instant> thawed,
      LocalDate served) {
    KeepQuestion question =
        new KeepQuestion(
            dish.category(),
            Optional.of(day(made)),
            Optional.empty(),
            Optional.empty(),
            frozen.map(this::day),
            thawed.map(this::day));
    Keeping keeping = question.answer(book, menu.zone(), served).keeping();
    Optional<LocalDate> last = keeping.dateMarkLastDay().or(keeping::chilledLastDay);
    boolean isGood =
        thawed.isEmpty() || keeping.bestQualityBy().filter(day(thawed.get())::isAfter).isEmpty();
    return isGood && last.filter(served::isAfter).isEmpty();
  }

  private boolean isOpen(Instant moment) {
    ZonedDateTime local = moment.atZone(menu.zone());
    return menu.open().isEmpty()
        || menu.open().stream()
            .anyMatch(
                hours ->
                    hours.days().contains(local.getDayOfWeek())
                        && !local.toLocalTime().isBefore(hours.from())
                        && local.toLocalTime().isBefore(hours.to()));
  }

  /** Every minute in which something begins: between two of them nothing grows. */
  private void amounts() {
    for (Task moment : plan.tasks()) {
      Map<String, Double> held = new HashMap<>();
      for (Task task : plan.tasks()) {
        if (!task.start().isAfter(moment.start()) && task.end().isAfter(moment.start())) {
          task.uses().forEach((name, amount) -> held.merge(name, amount, Double::sum));
        }
      }
      menu.has()
          .forEach(
              (name, there) ->
                  require(
                      held.getOrDefault(name, 0.0) <= there + 1e-9,
                      name + " overrun at " + moment.start()));
    }
    plan.tasks().stream()
        .filter(task -> task.uses().containsKey(Menu.HANDS))
        .forEach(task -> require(isOpenThrough(task), task.step() + ": nobody is there"));
    freezing();
  }

  private boolean isOpenThrough(Task task) {
    for (Instant at = task.start(); at.isBefore(task.end()); at = at.plus(Duration.ofMinutes(5))) {
      if (!isOpen(at)) {
        return false;
      }
    }
    return true;
  }

  /** What goes into the freezer within 24 hours. */
  private void freezing() {
    Double most = menu.has().get(Menu.FREEZING);
    if (most == null) {
      return;
    }
    Map<String, Double> kilograms = new HashMap<>();
    menu.dishes().stream()
        .filter(dish -> dish.route() == Route.FROZEN)
        .forEach(dish -> kilograms.put(dish.name(), dish.keeps().getOrDefault(Menu.FREEZING, 0.0)));
    List<Task> put = plan.tasks().stream().filter(task -> task.kind() == Kind.FREEZE).toList();
    for (Task first : put) {
      double sum =
          put.stream()
              .filter(task -> !task.start().isBefore(first.start()))
              .filter(task -> task.start().isBefore(first.start().plus(Duration.ofHours(24))))
              .mapToDouble(task -> kilograms.get(task.dish()))
              .sum();
      require(sum <= most + 1e-9, "too much to freeze from " + first.start());
    }
  }
}
