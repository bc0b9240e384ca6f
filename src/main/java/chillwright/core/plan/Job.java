package chillwright.core.plan;

import chillwright.core.plan.Dish.Route;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * One dish on the grid: where its parts may begin and what they hold.
 *
 * @param make what making it holds, from its beginning
 * @param finish what finishing it holds, from its beginning
 * @param thaw slots from taking it out until it may be finished; zero without a freezer
 * @param cool slots from made until it may be frozen or finished
 * @param freezes slots in the freezer before it counts as frozen
 * @param freezeTo the last slot in which it may go into the freezer, for its days
 * @param isInFreezer whether it went into the freezer already, and {@code isOut} whether it came
 *     out
 * @param due the slot at whose beginning it is served
 */
record Job(
    Dish dish,
    int makeFrom,
    int makeTo,
    int takeOutFrom,
    int takeOutTo,
    int finishFrom,
    int finishTo,
    int makeLength,
    int finishLength,
    int cool,
    int freezes,
    int thaw,
    int freezeTo,
    boolean isInFreezer,
    boolean isOut,
    int due,
    List<Use> make,
    List<Use> finish) {
  /** How long food may wait in the refrigerator for hands to bring it to the freezer: 16 h. */
  static final int WAITS = Grid.length(Window.WAITS);

  /**
   * How much earlier what thaws may be taken out, where the kitchen is closed at its hour: a day,
   * as raw poultry keeps one to two once thawed (FoodSafety.gov, Cold Food Storage Chart).
   */
  static final int EARLIER = Grid.length(Duration.ofDays(1));

  /** An amount of a thing held between two slots, counted from the beginning of a part. */
  record Use(String resource, int from, int to, int amount) {}

  static Job of(Window window, Grid grid, Wish wish) {
    Dish dish = window.dish();
    boolean isBegun = window.progress().isPresent();
    boolean isOut = window.progress().flatMap(Progress::takenOut).isPresent();
    int makeFrom = grid.from(window.makeFrom());
    int takeOutFrom = grid.from(window.takeOutFrom());
    Instant makeTo = window.ahead().filter(latest -> wish.isAhead()).orElse(window.makeTo());
    return new Job(
        dish,
        makeFrom,
        // What is done stands at one moment, which need not be the beginning of a slot.
        isBegun ? makeFrom : grid.to(makeTo),
        takeOutFrom,
        isOut ? takeOutFrom : grid.to(window.takeOutTo()),
        grid.from(window.finishFrom()),
        grid.to(window.finishTo()),
        isBegun ? 0 : length(dish.make()),
        length(dish.finish()),
        Grid.length(window.cool()),
        Grid.length(window.freeze()),
        Grid.length(window.thaw()),
        window.freezeTo().map(grid::to).orElse(grid.slots()),
        window.progress().flatMap(Progress::frozen).isPresent(),
        isOut,
        grid.to(window.due()),
        isBegun ? List.of() : made(window, wish),
        uses(dish.finish()));
  }

  boolean isFrozen() {
    return dish.route() == Route.FROZEN;
  }

  boolean isFresh() {
    return dish.route() == Route.FRESH;
  }

  /** What of a thing the dish holds where it is kept; zero where it holds none. */
  int keeps(String resource) {
    return Grid.amount(dish.keeps().getOrDefault(resource, 0.0));
  }

  private static int length(List<Step> steps) {
    return steps.stream().mapToInt(step -> Grid.length(step.lasts())).sum();
  }

  /** Somebody is there when it is made, too, to have it cooled. */
  private static List<Use> made(Window window, Wish wish) {
    Dish dish = window.dish();
    List<Use> uses = uses(dish.make());
    if (Thawing.isFirst(dish)) {
      // It may be taken out before the kitchen closes, and thaws the longer.
      uses.removeIf(use -> use.resource().equals(Menu.SOMEBODY) && use.from() == 0);
      uses.add(new Use(Menu.TAKER, 0, 1, 1));
    }
    int end = length(dish.make());
    uses.add(new Use(Menu.SOMEBODY, end - 1, end, 1));
    if (wish.isWatched()) {
      Readings.coolingTimes(window).stream()
          .map(within -> end + Grid.length(within))
          .forEach(by -> uses.add(new Use(Menu.SOMEBODY, by - 1, by, 1)));
    }
    return uses;
  }

  private static List<Use> uses(List<Step> steps) {
    List<Use> uses = new ArrayList<>();
    int at = 0;
    for (Step step : steps) {
      int end = at + Grid.length(step.lasts());
      if (!step.uses().containsKey(Menu.HANDS)) {
        uses.add(new Use(Menu.SOMEBODY, at, at + 1, 1));
      }
      for (Map.Entry<String, Double> use : step.uses().entrySet()) {
        uses.add(new Use(use.getKey(), at, end, Grid.amount(use.getValue())));
      }
      at = end;
    }
    return uses;
  }
}
