package chillwright.core.plan;

import chillwright.core.plan.Job.Use;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.chocosolver.solver.Model;
import org.chocosolver.solver.Solver;
import org.chocosolver.solver.search.strategy.Search;
import org.chocosolver.solver.search.strategy.selectors.values.IntDomainMax;
import org.chocosolver.solver.search.strategy.selectors.variables.DomOverWDeg;
import org.chocosolver.solver.variables.IntVar;
import org.chocosolver.solver.variables.Task;

/**
 * The same question put to a constraint solver: it finds plans that the list misses, better ones,
 * and can prove that there is none. Bounded by failures, so that a plan comes out the same again.
 */
final class Exact {
  private final Grid grid;
  private final Model model = new Model("plan");
  private final List<Vars> vars = new ArrayList<>();
  private final Map<String, Held> held = new HashMap<>();

  /** When the parts of a job begin. */
  private record Vars(Job job, IntVar make, IntVar freeze, IntVar takeOut, IntVar finish) {}

  /** Tasks that hold a thing, each with its amount. */
  private static final class Held {
    final List<Task> tasks = new ArrayList<>();
    final List<IntVar> amounts = new ArrayList<>();
  }

  /**
   * What came of the search.
   *
   * @param isProven whether the search was complete: of a plan that none waits less, of none that
   *     there is none (better than asked for)
   */
  record Found(Optional<List<Placed>> plan, boolean isProven) {}

  Exact(Grid grid, List<Job> jobs) {
    this.grid = grid;
    jobs.forEach(job -> vars.add(vars(job)));
    vars.forEach(this::hold);
    holdClosed();
    holdUntaken();
    grid.capacity().forEach(this::limit);
    if (!grid.capacity().containsKey(Menu.HANDS) && !grid.closed().isEmpty()) {
      limit(Menu.HANDS, MANY);
    }
    if (!grid.closed().isEmpty()) {
      limit(Menu.TAKER, MANY);
      limit(Menu.SOMEBODY, MANY);
    }
  }

  private static final int MANY = 100_000;

  /**
   * The plan that waits least.
   *
   * @param below only one that waits less than this is looked for
   * @param failures after which the search ends
   * @param budget of the whole plan, which ends it too
   * @param shares by how many searches like this one what is left may have to be shared
   */
  Found best(OptionalInt below, long failures, Budget budget, int shares) {
    long steps = budget.steps(shares);
    if (steps == 0) {
      return new Found(Optional.empty(), false);
    }
    IntVar[] all =
        vars.stream()
            .flatMap(v -> List.of(v.finish(), v.takeOut(), v.make(), v.freeze()).stream())
            .toArray(IntVar[]::new);
    IntVar wait = waiting();
    below.ifPresent(bound -> model.arithm(wait, "<", bound).post());
    Solver solver = model.getSolver();
    solver.setSearch(
        Search.lastConflict(
            Search.intVarSearch(new DomOverWDeg<>(all, 1), new IntDomainMax(), all)));
    solver.limitFail(failures);
    solver.limitNode(steps);
    model.setObjective(Model.MINIMIZE, wait);
    Optional<List<Placed>> best = Optional.empty();
    while (solver.solve()) {
      best = Optional.of(vars.stream().map(Exact::placed).toList());
    }
    budget.take(solver.getNodeCount());
    return new Found(best, !solver.isStopCriterionMet());
  }

  private static Placed placed(Vars vars) {
    return new Placed(
        vars.job(),
        vars.make().getValue(),
        vars.freeze().getValue(),
        vars.takeOut().getValue(),
        vars.finish().getValue());
  }

  private Vars vars(Job job) {
    String name = job.dish().name();
    IntVar finish = var(name + " finish", job.finishFrom(), job.finishTo());
    if (job.isFresh()) {
      return new Vars(job, model.offset(finish, -job.makeLength()), finish, finish, finish);
    }
    IntVar make = var(name + " make", job.makeFrom(), job.makeTo());
    IntVar made = model.offset(make, job.makeLength());
    if (!job.isFrozen()) {
      model.arithm(model.offset(made, job.cool()), "<=", finish).post();
      return new Vars(job, make, finish, finish, finish);
    }
    IntVar takeOut = var(name + " take out", job.takeOutFrom(), job.takeOutTo());
    IntVar freeze = var(name + " freeze", job.makeFrom(), job.takeOutTo());
    model.arithm(model.offset(made, job.cool()), "<=", freeze).post();
    int waits = job.isInFreezer() ? 0 : job.cool() + Job.WAITS;
    model.arithm(freeze, "<=", model.offset(made, waits)).post();
    model.arithm(freeze, "<=", Math.max(job.makeFrom(), job.freezeTo())).post();
    model.arithm(model.offset(freeze, job.freezes()), "<=", takeOut).post();
    model.arithm(model.offset(takeOut, job.thaw()), "<=", finish).post();
    return new Vars(job, make, freeze, takeOut, finish);
  }

  private IntVar var(String name, int from, int to) {
    return from == to ? model.intVar(name, from) : model.intVar(name, from, to, true);
  }

  private IntVar waiting() {
    IntVar[] begins =
        vars.stream().flatMap(v -> List.of(v.make(), v.finish()).stream()).toArray(IntVar[]::new);
    int most = vars.stream().mapToInt(v -> 2 * v.job().due() - v.job().finishLength()).sum();
    IntVar sum = model.intVar("begins", 0, most, true);
    model.sum(begins, "=", sum).post();
    return model.intView(-1, sum, most);
  }

  private void hold(Vars v) {
    Job job = v.job();
    job.make().forEach(use -> hold(use, v.make()));
    job.finish().forEach(use -> hold(use, v.finish()));
    IntVar made = model.offset(v.make(), job.makeLength());
    IntVar finished = model.offset(v.finish(), job.finishLength());
    if (job.isFrozen()) {
      hold(Menu.REFRIGERATOR, job, made, v.freeze());
      hold(Menu.FREEZER, job, v.freeze(), v.takeOut());
      hold(Menu.REFRIGERATOR, job, v.takeOut(), v.finish());
      if (!job.isInFreezer()) {
        hold(new Use(Menu.FREEZING, 0, job.freezes(), job.keeps(Menu.FREEZING)), v.freeze());
        hold(new Use(Menu.HANDS, 0, 1, 10), v.freeze());
      }
      if (!job.isOut()) {
        hold(new Use(Menu.HANDS, 0, 1, 10), v.takeOut());
      }
    } else if (!job.isFresh()) {
      hold(Menu.REFRIGERATOR, job, made, v.finish());
    }
    hold(Menu.WARM, job, finished, model.intVar(job.due()));
  }

  private void hold(Use use, IntVar begin) {
    if (use.amount() > 0) {
      add(
          use.resource(),
          new Task(model.offset(begin, use.from()), use.to() - use.from()),
          use.amount());
    }
  }

  private void hold(String resource, Job job, IntVar from, IntVar to) {
    int amount = job.keeps(resource);
    if (amount > 0) {
      IntVar lasts = model.intVar(0, grid.slots(), true);
      add(resource, new Task(from, lasts, to), amount);
    }
  }

  private void add(String resource, Task task, int amount) {
    Held of = held.computeIfAbsent(resource, name -> new Held());
    of.tasks.add(task);
    of.amounts.add(model.intVar(amount));
  }

  private void holdClosed() {
    int all = grid.capacity().getOrDefault(Menu.HANDS, MANY);
    for (int[] closed : grid.closed()) {
      if (all > 0) {
        add(Menu.HANDS, new Task(model.intVar(closed[0]), closed[1] - closed[0]), all);
      }
      add(Menu.SOMEBODY, new Task(model.intVar(closed[0]), closed[1] - closed[0]), MANY);
    }
  }

  private void holdUntaken() {
    for (int[] closed : grid.untaken()) {
      add(Menu.TAKER, new Task(model.intVar(closed[0]), closed[1] - closed[0]), MANY);
    }
  }

  private void limit(String resource, int capacity) {
    Held of = held.get(resource);
    if (of != null) {
      model
          .cumulative(
              of.tasks.toArray(Task[]::new),
              of.amounts.toArray(IntVar[]::new),
              model.intVar(capacity))
          .post();
    }
  }
}
