package chillwright.core.plan;

import chillwright.core.log.Category;
import java.time.Instant;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.regex.Pattern;

/** Where a plan thaws food, by what the cook calls the steps. */
public final class Thawing {
  private static final Pattern THAWS = Pattern.compile("thaw|defrost|descongel");

  private static final Pattern IS_COLD =
      Pattern.compile("refriger|fridge|cooler|walk-in|nevera|frigor|heladera|water|agua");

  private static final Pattern IN_WATER = Pattern.compile("water|agua");

  /** FoodSafety.gov, Cold Food Storage Chart: raw poultry 1 to 2 days, thawed or fresh. */
  private static final int POULTRY_DAYS = 2;

  private Thawing() {}

  /** Whether a step's name, in English or Spanish, speaks of thawing. */
  public static boolean isNamed(String step) {
    return THAWS.matcher(step.toLowerCase(Locale.ROOT)).find();
  }

  /** Whether a step thaws in water, which is quicker. */
  public static boolean isInWater(String step) {
    return IN_WATER.matcher(step.toLowerCase(Locale.ROOT)).find();
  }

  /** Whether a step thaws in cold or water, which takes hours; a microwave oven takes minutes. */
  public static boolean isSlow(String step) {
    return isNamed(step)
        && !step.toLowerCase(Locale.ROOT).contains("microw")
        && !step.toLowerCase(Locale.ROOT).contains("microond");
  }

  /** Whether a dish begins with food out of the freezer, which its first step thaws. */
  public static boolean isOutOfFreezer(Dish dish) {
    return isNamed(dish.make().get(0).name());
  }

  /** Whether the first step thaws in the cold, and nobody stands by: it may begin sooner. */
  static boolean isFirst(Dish dish) {
    Step first = dish.make().get(0);
    return isSlow(first.name())
        && !isInWater(first.name())
        && !first.uses().containsKey(Menu.HANDS);
  }

  /**
   * The days within which food that thawed raw is cooked: of raw food by its kind; what becomes
   * cooked poultry was thawed raw. Empty where no figure is known.
   */
  public static OptionalInt days(Category category) {
    if (category.tcs() && !category.readyToEat()) {
      return category.onceThawed().fridge().max();
    }
    return category.key().contains("poultry") ? OptionalInt.of(POULTRY_DAYS) : OptionalInt.empty();
  }

  /** Whether a dish is of a raw kind, or a step of it thaws. */
  public static boolean isIn(Dish dish) {
    boolean isRaw = dish.category().tcs() && !dish.category().readyToEat();
    return isRaw
        || dish.make().stream().anyMatch(step -> isNamed(step.name()))
        || dish.finish().stream().anyMatch(step -> isNamed(step.name()));
  }

  /**
   * Whether a step thaws and nothing says where: neither its name, nor a place in the refrigerator.
   *
   * @param uses what it holds, by name
   */
  public static boolean isNowhere(String step, Map<String, ?> uses) {
    return isNamed(step)
        && !uses.containsKey(Menu.REFRIGERATOR)
        && !IS_COLD.matcher(step.toLowerCase(Locale.ROOT)).find();
  }

  /** What thaws is taken out before the kitchen closes. */
  static Instant takenOut(Instant needed, Menu menu) {
    Instant at = needed;
    while (!menu.isOpen(at) && at.isAfter(menu.from())) {
      at = at.minus(Grid.SLOT);
    }
    return menu.isOpen(at) && !at.isBefore(menu.from()) ? at : needed;
  }
}
