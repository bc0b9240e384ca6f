package chillwright.core.plan;

import chillwright.core.plan.Job.Use;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/**
 * When food comes out of the freezer whose first step thaws it in the cold: a day before it must,
 * where there is room, since a large piece is often icy still after the hours it is given (common
 * practice, no source); never so early that it is made after its last day once thawed.
 */
final class EarlyThaw {
  /** The hour planned, and between which moments any other does; in slots. */
  record Out(int from, int at, int to, List<Use> uses) {}

  /** So much sooner than it must. */
  private static final int AHEAD = Grid.length(Duration.ofDays(1));

  private final Grid grid;
  private final Menu menu;
  private final Timetable table;

  private EarlyThaw(List<Placed> plan, Grid grid, Menu menu) {
    this.grid = grid;
    this.menu = menu;
    this.table = new Timetable(grid);
    plan.forEach(placed -> table.take(placed.uses()));
  }

  /** Of each dish that thaws so, by name. */
  static Map<String, Out> of(List<Placed> plan, Grid grid, Menu menu) {
    EarlyThaw early = new EarlyThaw(plan, grid, menu);
    Map<String, Out> found = new HashMap<>();
    plan.stream()
        .filter(placed -> placed.job().makeLength() > 0)
        .filter(placed -> Thawing.isFirst(placed.job().dish()))
        .forEach(placed -> found.put(placed.job().dish().name(), early.out(placed)));
    return found;
  }

  /** How early a dish may need the kitchen that else begins at a moment. */
  static Instant reach(Dish dish, Instant begins) {
    // From the first hour of its first day on.
    int days = Thawing.isFirst(dish) ? Thawing.days(dish.category()).orElse(0) + 1 : 0;
    return begins.minus(Duration.ofDays(days));
  }

  private Out out(Placed placed) {
    Instant needed = grid.moment(placed.make());
    int last = grid.from(Thawing.takenOut(needed, menu));
    int first = Math.min(last, first(placed));
    int wished = placed.make() - AHEAD;
    int at = last;
    for (int slot = last; slot >= first; slot--) {
      if (isOpen(slot) && Math.abs(slot - wished) <= Math.abs(at - wished)) {
        at = slot;
      }
    }
    int from = at;
    while (from > first && isOpen(from - 1)) {
      from--;
    }
    int to = at;
    while (to < last && isOpen(to + 1)) {
      to++;
    }
    List<Use> uses = uses(placed.job().dish().make().get(0), from, placed.make());
    table.take(uses);
    return new Out(from, at, to, uses);
  }

  private boolean isOpen(int slot) {
    return menu.isOpen(grid.moment(slot));
  }

  /** The first slot in which it may come out, by its days and by what the kitchen has. */
  private int first(Placed placed) {
    Dish dish = placed.job().dish();
    Step thaw = dish.make().get(0);
    OptionalInt days = Thawing.days(dish.category());
    if (days.isEmpty() || Thawing.isNowhere(thaw.name(), thaw.uses())) {
      return placed.make();
    }
    LocalDate thawed = day(grid.moment(placed.made())).minusDays(days.getAsInt());
    Instant kept = thawed.atStartOfDay(menu.zone()).toInstant().minus(thaw.lasts());
    int first = Math.max(grid.from(kept), grid.from(menu.from()));
    for (Map.Entry<String, Double> use : thaw.uses().entrySet()) {
      int amount = Grid.amount(use.getValue());
      first = Math.max(first, table.freeSince(use.getKey(), amount, placed.make()));
    }
    return first;
  }

  private LocalDate day(Instant moment) {
    return moment.atZone(menu.zone()).toLocalDate();
  }

  private static List<Use> uses(Step thaw, int from, int to) {
    List<Use> uses = new ArrayList<>();
    if (from < to) {
      thaw.uses().forEach((name, has) -> uses.add(new Use(name, from, to, Grid.amount(has))));
    }
    return uses;
  }
}
