package chillwright.core.plan;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/**
 * Places one dish after the other, each as late as room is left, in several orders; keeps the order
 * whose food waits least. Quick, and no proof: where it finds nothing there may still be a plan.
 */
final class BackwardList {
  /** Orders tried besides the first few; with a fixed seed, so that a plan comes out the same. */
  private static final int SHUFFLES = 60;

  /** Moments tried for one order before it is given up. */
  private static final int TRIES = 20_000;

  private static final long SEED = 20_260_302L;

  private final Grid grid;
  private final List<Job> jobs;
  private final Budget budget;
  private int triesLeft;

  private final int shuffles;

  BackwardList(Grid grid, List<Job> jobs, Budget budget) {
    this(grid, jobs, budget, SHUFFLES);
  }

  /**
   * A list with so many orders tried.
   *
   * @param budget of the whole plan
   * @param shuffles how many orders besides the first few are tried
   */
  BackwardList(Grid grid, List<Job> jobs, Budget budget, int shuffles) {
    this.budget = budget;
    this.grid = grid;
    this.jobs = jobs;
    this.shuffles = shuffles;
  }

  Optional<List<Placed>> best() {
    Optional<List<Placed>> best = Optional.empty();
    int left = budget.tries();
    for (List<Job> order : orders()) {
      if (left <= 0 || (best.isPresent() && shuffles == 0)) {
        break;
      }
      int most = Math.min(TRIES, left);
      Optional<List<Placed>> found = place(order, most);
      int tried = Math.min(most, most - triesLeft);
      budget.tried(tried);
      left -= tried;
      boolean isBetter =
          found.isPresent() && (best.isEmpty() || wait(found.get()) < wait(best.get()));
      best = isBetter ? found : best;
    }
    return best;
  }

  int wait(List<Placed> plan) {
    return plan.stream().mapToInt(Placed::waits).sum();
  }

  private List<List<Job>> orders() {
    List<List<Job>> orders = new ArrayList<>();
    Comparator<Job> longest =
        Comparator.comparingInt(job -> -job.makeLength() - job.finishLength());
    orders.add(jobs.stream().sorted(longest).toList());
    orders.add(jobs.stream().sorted(Comparator.comparingInt(job -> -job.finishLength())).toList());
    orders.add(jobs.stream().sorted(Comparator.comparingInt(Job::makeTo)).toList());
    orders.add(jobs.stream().sorted(Comparator.comparingInt(job -> -job.makeTo())).toList());
    Random random = new Random(SEED);
    for (int i = 0; i < shuffles && jobs.size() > 1; i++) {
      List<Job> shuffled = new ArrayList<>(jobs);
      Collections.shuffle(shuffled, random);
      orders.add(shuffled);
    }
    return orders;
  }

  private Optional<List<Placed>> place(List<Job> order, int most) {
    triesLeft = most;
    Timetable table = new Timetable(grid);
    List<Placed> all = new ArrayList<>();
    for (Job job : order) {
      Optional<Placed> placed = place(job, table);
      if (placed.isEmpty()) {
        return Optional.empty();
      }
      table.take(placed.get().uses());
      all.add(placed.get());
    }
    return Optional.of(all);
  }

  private Optional<Placed> place(Job job, Timetable table) {
    for (int finish = job.finishTo(); finish >= job.finishFrom() && triesLeft-- > 0; finish--) {
      if (table.fit(job.finish(), finish)) {
        Optional<Placed> placed = place(job, finish, table);
        if (placed.isPresent()) {
          return placed;
        }
      }
    }
    return Optional.empty();
  }

  private Optional<Placed> place(Job job, int finish, Timetable table) {
    if (job.isFresh()) {
      int make = finish - job.makeLength();
      return fitting(new Placed(job, make, finish, finish, finish), table);
    }
    if (!job.isFrozen()) {
      return made(job, finish - job.cool(), finish, finish, table);
    }
    int latest = Math.min(job.takeOutTo(), finish - job.thaw());
    int room = table.freeSince(Menu.REFRIGERATOR, job.keeps(Menu.REFRIGERATOR), finish);
    int first = Math.max(room, job.takeOutFrom());
    for (int takeOut = latest; takeOut >= first && triesLeft-- > 0; takeOut--) {
      if (job.isOut() || table.fits(new Job.Use(Menu.HANDS, 0, 1, 10), takeOut)) {
        Optional<Placed> placed =
            made(job, takeOut - job.freezes() - job.cool(), takeOut, finish, table);
        if (placed.isPresent()) {
          return placed;
        }
      }
    }
    return Optional.empty();
  }

  /** As late as it can be made to be ready for what comes next. */
  private Optional<Placed> made(Job job, int ready, int takeOut, int finish, Timetable table) {
    int latest = Math.min(job.makeTo(), ready - job.makeLength());
    String store = job.isFrozen() ? Menu.FREEZER : Menu.REFRIGERATOR;
    int room = table.freeSince(store, job.keeps(store), takeOut);
    int stored = job.makeLength() + (job.isFrozen() ? job.cool() + Job.WAITS : 0);
    int first = Math.max(job.makeFrom(), room - stored);
    for (int make = latest; make >= first && triesLeft-- > 0; make--) {
      if (table.fit(job.make(), make)) {
        Optional<Placed> placed =
            fitting(
                new Placed(job, make, freeze(job, make, takeOut, table), takeOut, finish), table);
        if (placed.isPresent()) {
          return placed;
        }
      }
    }
    return Optional.empty();
  }

  /** As soon as it is cold and hands are there. */
  private static int freeze(Job job, int make, int takeOut, Timetable table) {
    if (!job.isFrozen()) {
      return takeOut;
    }
    int first = make + job.makeLength() + job.cool();
    if (job.isInFreezer()) {
      return first;
    }
    int latest = Math.min(takeOut - job.freezes(), job.freezeTo());
    int last = Math.min(latest, first + Job.WAITS);
    for (int freeze = first; freeze <= last; freeze++) {
      if (table.fits(new Job.Use(Menu.HANDS, 0, 1, 10), freeze)) {
        return freeze;
      }
    }
    return -1;
  }

  private Optional<Placed> fitting(Placed placed, Timetable table) {
    boolean isPossible =
        placed.freeze() >= 0 && placed.make() >= 0 && table.fitTogether(placed.uses());
    return isPossible ? Optional.of(placed) : Optional.empty();
  }
}
