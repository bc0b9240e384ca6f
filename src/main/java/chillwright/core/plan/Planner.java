package chillwright.core.plan;

import chillwright.core.plan.Plan.Conflict;
import chillwright.core.plan.Plan.Kind;
import chillwright.core.plan.Plan.Task;
import chillwright.core.plan.Plan.Why;
import chillwright.core.rules.RuleSet;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;

/**
 * Plans a menu backwards from its serving time: each dish as late as its limits, the other dishes
 * and the kitchen allow. First a list, then a solver for what the list misses or wastes.
 */
public final class Planner {
  /** How far an amount is raised to see whether more of it would help. */
  private static final int MORE = 8;

  /** Failures after which the search for a plan is given up, and for what would help. */
  private static final long MANY = 4_000;

  private static final long FEW = 200;

  /** Orders tried for what a plan had better have. */
  private static final int SOME = 20;

  private final Menu menu;
  private final List<Window> windows;
  private final Grid grid;
  private final Budget budget;

  private Planner(Menu menu, List<Window> windows, Budget budget) {
    this.budget = budget;
    this.menu = menu;
    this.windows = windows;
    Instant first =
        windows.stream()
            .flatMap(w -> List.of(EarlyThaw.reach(w.dish(), w.makeFrom()), w.finishFrom()).stream())
            .min(Comparator.naturalOrder())
            .filter(menu.serving()::isAfter)
            .orElse(menu.from());
    this.grid = new Grid(menu, first.isBefore(menu.from()) ? menu.from() : first);
  }

  /**
   * The plan of a menu by the rules in force on the day it is served. The same menu always gives
   * the same plan.
   */
  public static Plan plan(Menu menu, RuleSet rules) {
    List<Window> windows =
        menu.dishes().stream()
            .filter(dish -> menu.due(dish).isAfter(menu.from()))
            .map(dish -> Window.of(dish, menu, rules))
            .toList();
    return new Planner(menu, windows, new Budget(windows.size())).plan(rules);
  }

  private Plan plan(RuleSet rules) {
    List<Conflict> conflicts = ownConflicts(rules);
    if (!conflicts.isEmpty()) {
      return without(conflicts, true);
    }
    Found found = find();
    return found
        .plan
        .map(
            placed ->
                new Plan(
                    true,
                    found.isProven,
                    tasks(placed),
                    Leeway.of(placed, windows, grid, menu, new MovedDays.Of(menu, rules)),
                    List.of(),
                    Unwatched.of(placed, grid, menu, rules),
                    Needless.of(placed, grid, menu, rules)))
        .orElseGet(() -> without(shortages(), found.isProven));
  }

  private Plan without(List<Conflict> conflicts, boolean isProven) {
    return new Plan(
        false, isProven, List.of(), bounds(), conflicts, Unwatched.begun(menu), List.of());
  }

  private List<Bound> bounds() {
    return windows.stream().flatMap(window -> window.bounds().stream()).toList();
  }

  /** What no other dish is to blame for. */
  private List<Conflict> ownConflicts(RuleSet rules) {
    List<Conflict> found = new ArrayList<>();
    for (Window window : windows) {
      String dish = window.dish().name();
      if (window.reheatsTooLong()) {
        found.add(new Conflict(Why.REHEAT_TOO_LONG, dish, "", 0));
      }
      if (window.keepsTooShort()) {
        found.add(new Conflict(Why.KEEPS_TOO_SHORT, dish, "", 0));
      } else {
        TooLate tooLate = new TooLate(window, menu, rules);
        tooLate.ends().or(tooLate::conflict).ifPresent(found::add);
      }
      needs(window.dish()).forEach((resource, amount) -> tooSmall(dish, resource, amount, found));
    }
    return found;
  }

  private void tooSmall(String dish, String resource, double amount, List<Conflict> found) {
    Integer there = grid.capacity().get(resource);
    if (there != null && Grid.amount(amount) > there) {
      found.add(new Conflict(Why.STEP_NEEDS_MORE, dish, resource, amount));
    }
  }

  /** The most of each thing that a dish holds by itself. */
  private static Map<String, Double> needs(Dish dish) {
    Map<String, Double> most = new HashMap<>();
    List<Step> steps = new ArrayList<>(dish.make());
    steps.addAll(dish.finish());
    steps.forEach(
        step -> step.uses().forEach((name, amount) -> most.merge(name, amount, Math::max)));
    if (dish.route() != Dish.Route.FRESH) {
      keep(dish, Menu.REFRIGERATOR, most);
    }
    if (dish.route() == Dish.Route.FROZEN) {
      keep(dish, Menu.FREEZER, most);
      keep(dish, Menu.FREEZING, most);
    }
    return most;
  }

  private static void keep(Dish dish, String resource, Map<String, Double> most) {
    Optional.ofNullable(dish.keeps().get(resource))
        .ifPresent(amount -> most.merge(resource, amount, Math::max));
  }

  private record Found(Optional<List<Placed>> plan, boolean isProven) {}

  private List<Job> jobs() {
    return Wish.jobs(windows, grid, Wish.NONE);
  }

  private Found find() {
    List<Job> jobs = jobs();
    if (jobs.stream().anyMatch(Planner::isImpossible)) {
      return new Found(Optional.empty(), true);
    }
    for (Wish wish : Wish.ALL) {
      List<Job> wished = Wish.jobs(windows, grid, wish);
      Optional<List<Placed>> first =
          wished.equals(jobs)
              ? Optional.empty()
              : new BackwardList(grid, wished, budget, SOME).best();
      if (first.isPresent()) {
        return better(wished, first);
      }
    }
    return better(jobs, new BackwardList(grid, jobs, budget).best());
  }

  /** What the solver finds, or that nothing is better. */
  private Found better(List<Job> jobs, Optional<List<Placed>> first) {
    BackwardList list = new BackwardList(grid, jobs, budget);
    if (first.isPresent() && list.wait(first.get()) == least(jobs)) {
      return new Found(first, true);
    }
    OptionalInt below =
        first.map(placed -> OptionalInt.of(list.wait(placed))).orElse(OptionalInt.empty());
    Exact.Found better = new Exact(grid, jobs).best(below, MANY, budget, 3);
    return new Found(better.plan().or(() -> first), better.isProven());
  }

  private static boolean isImpossible(Job job) {
    boolean isKept = !job.isFresh();
    return job.finishFrom() > job.finishTo()
        || (isKept && job.makeFrom() > job.makeTo())
        || (job.isFrozen() && job.takeOutFrom() > job.takeOutTo());
  }

  /** What the dishes would wait if each had the kitchen for itself. */
  private int least(List<Job> jobs) {
    return jobs.stream()
        .mapToInt(
            job -> {
              int make = job.isFresh() ? job.finishTo() - job.makeLength() : job.makeTo();
              return new Placed(job, make, make, make, job.finishTo()).waits();
            })
        .sum();
  }

  /** Which single thing, had the kitchen more of it, would make a plan. */
  private List<Conflict> shortages() {
    List<Conflict> found = new ArrayList<>();
    for (String resource : grid.capacity().keySet()) {
      enough(resource).ifPresent(found::add);
    }
    if (!menu.open().isEmpty()) {
      possible(menu.alwaysOpen())
          .map(tasks -> new ClosedHours(menu).conflicts(windows, Planner::alone, tasks))
          .ifPresent(found::addAll);
    }
    return found.isEmpty() ? List.of(new Conflict(Why.TOO_MUCH, "", "", 0)) : found;
  }

  /** The least amount of a thing with which there is a plan, in a few steps upwards. */
  private Optional<Conflict> enough(String resource) {
    double there = menu.has().get(resource);
    double step = Math.max(1, Math.ceil(there / MORE));
    double most = there + MORE * step;
    Optional<List<Task>> plan = possible(menu.with(resource, most));
    if (plan.isEmpty()) {
      return Optional.empty();
    }
    for (double more = there + step; more < most; more += step) {
      double amount = more;
      Optional<List<Task>> less = possible(menu.with(resource, amount));
      if (less.isPresent()) {
        return less.map(tasks -> shortOf(resource, there, amount, tasks));
      }
    }
    return plan.map(tasks -> shortOf(resource, there, most, tasks));
  }

  private static Conflict shortOf(String resource, double there, double enough, List<Task> plan) {
    List<Task> clash = Clash.of(plan, resource, there);
    return new Conflict(Why.SHORT_OF, "", resource, enough, Optional.empty(), List.of(), clash);
  }

  /** What a dish has in a kitchen for itself. */
  private static Function<Window, Optional<List<Task>>> alone(Menu menu) {
    return window -> new Planner(menu, List.of(window), new Budget(1)).possible(menu);
  }

  private Optional<List<Task>> possible(Menu other) {
    Planner planner = new Planner(other, windows, budget);
    List<Job> jobs = planner.jobs();
    if (jobs.stream().anyMatch(Planner::isImpossible)) {
      return Optional.empty();
    }
    return new BackwardList(planner.grid, jobs, budget, 0)
        .best()
        .or(() -> new Exact(planner.grid, jobs).best(OptionalInt.empty(), FEW, budget, 5).plan())
        .map(planner::tasks);
  }

  private List<Task> tasks(List<Placed> plan) {
    Map<String, EarlyThaw.Out> early = EarlyThaw.of(plan, grid, menu);
    return plan.stream()
        .flatMap(placed -> tasks(placed, early).stream())
        .sorted(Comparator.comparing(Task::start).thenComparing(Task::dish))
        .toList();
  }

  private List<Task> tasks(Placed placed, Map<String, EarlyThaw.Out> early) {
    List<Task> tasks = new ArrayList<>();
    Dish dish = placed.job().dish();
    if (placed.job().makeLength() > 0) {
      steps(dish, Kind.MAKE, dish.make(), placed.make(), tasks);
      Optional.ofNullable(early.get(dish.name()))
          .ifPresent(out -> tasks.set(0, tasks.get(0).from(grid.moment(out.at()))));
    }
    if (dish.route() == Dish.Route.FROZEN) {
      cool(dish, placed, tasks);
      stretch(dish, Kind.FREEZE, placed.freeze(), placed.takeOut(), Menu.FREEZER, tasks);
      stretch(dish, Kind.TAKE_OUT, placed.takeOut(), placed.finish(), Menu.REFRIGERATOR, tasks);
    } else if (dish.route() == Dish.Route.CHILLED) {
      stretch(dish, Kind.CHILL, placed.made(), placed.finish(), Menu.REFRIGERATOR, tasks);
    }
    steps(dish, Kind.FINISH, dish.finish(), placed.finish(), tasks);
    stretch(dish, Kind.HOLD, placed.finished(), placed.job().due(), Menu.WARM, tasks);
    return tasks;
  }

  private void cool(Dish dish, Placed placed, List<Task> tasks) {
    if (dish.category().tcs()) {
      stretch(dish, Kind.COOL, placed.made(), placed.freeze(), Menu.REFRIGERATOR, tasks);
    } else {
      stretch(dish, Kind.AIR_COOL, placed.made(), placed.freeze(), "", tasks);
    }
  }

  private void steps(Dish dish, Kind kind, List<Step> steps, int from, List<Task> tasks) {
    int at = from;
    for (Step step : steps) {
      int end = at + Grid.length(step.lasts());
      Instant start = grid.moment(at);
      tasks.add(new Task(dish.name(), kind, step.name(), start, grid.moment(end), step.uses()));
      at = end;
    }
  }

  private void stretch(Dish dish, Kind kind, int from, int to, String resource, List<Task> tasks) {
    if (to > from) {
      Map<String, Double> uses =
          dish.keeps().containsKey(resource)
              ? Map.of(resource, dish.keeps().get(resource))
              : Map.of();
      tasks.add(new Task(dish.name(), kind, "", grid.moment(from), grid.moment(to), uses));
    }
  }
}
