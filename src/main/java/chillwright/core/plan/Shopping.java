package chillwright.core.plan;

import chillwright.core.plan.Plan.Kind;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.IsoFields;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;

/** What is to be bought for a plan, by the week in which the dishes that need it are begun. */
public final class Shopping {
  private Shopping() {}

  /**
   * A week with what its dishes need. Weeks begin on Monday and are numbered as in ISO 8601: the
   * first of a year is the one with its first Thursday.
   */
  public record Week(LocalDate monday, List<Item> items) {
    public Week {
      items = List.copyOf(items);
    }

    /** Such as "2026-W50". */
    public String iso() {
      return String.format(
          Locale.ROOT,
          "%04d-W%02d",
          monday.get(IsoFields.WEEK_BASED_YEAR),
          monday.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR));
    }
  }

  /**
   * Something to buy, and for which dishes.
   *
   * @param amount empty where no cook gave one
   */
  public record Item(String name, OptionalDouble amount, String unit, List<String> dishes) {
    public Item {
      dishes = List.copyOf(dishes);
    }

    private Item and(Item more) {
      List<String> all = new ArrayList<>(dishes);
      more.dishes.stream().filter(dish -> !all.contains(dish)).forEach(all::add);
      OptionalDouble sum =
          amount.isEmpty()
              ? amount
              : OptionalDouble.of(amount.getAsDouble() + more.amount.orElse(0));
      return new Item(name, sum, unit, all);
    }
  }

  /**
   * The weeks of a plan, the nearest first, each with its things by name. A dish that was begun
   * needs what its missing portions take, from now on; one of which the plan tells no making needs
   * nothing any more. Equal words are added up, whatever their capitals; kilograms and grams stay
   * apart, as do things of which somebody gave no amount.
   *
   * @param missing how many portions the lots of a dish have too few, by dish
   */
  public static List<Week> of(Menu menu, Plan plan, Map<String, Integer> missing) {
    Map<String, Instant> begins = begins(plan);
    missing.keySet().forEach(dish -> begins.putIfAbsent(dish, menu.from()));
    Map<LocalDate, Map<String, Item>> weeks = new TreeMap<>();
    for (Dish dish : menu.dishes()) {
      Instant begin = begins.get(dish.name());
      if (begin != null && !dish.ingredients().isEmpty()) {
        LocalDate monday = monday(begin.atZone(menu.zone()).toLocalDate());
        double share =
            (double) missing.getOrDefault(dish.name(), dish.portions()) / dish.portions();
        add(dish, share, weeks.computeIfAbsent(monday, week -> new LinkedHashMap<>()));
      }
    }
    return weeks.entrySet().stream()
        .map(week -> new Week(week.getKey(), sorted(week.getValue())))
        .toList();
  }

  private static Map<String, Instant> begins(Plan plan) {
    Map<String, Instant> begins = new LinkedHashMap<>();
    plan.tasks().stream()
        .filter(task -> task.kind() == Kind.MAKE)
        .forEach(
            task ->
                begins.merge(
                    task.dish(), task.start(), (one, two) -> one.isBefore(two) ? one : two));
    return begins;
  }

  private static LocalDate monday(LocalDate day) {
    return day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
  }

  private static void add(Dish dish, double share, Map<String, Item> items) {
    for (Ingredient all : dish.ingredients()) {
      Ingredient one = all.times(share);
      String words = one.phrase().strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
      Item item = new Item(one.name(), one.amount(), one.unit(), List.of(dish.name()));
      items.merge((one.amount().isPresent() ? "1 " : "0 ") + words, item, Item::and);
    }
  }

  private static List<Item> sorted(Map<String, Item> items) {
    return items.values().stream()
        .sorted(Comparator.comparing((Item item) -> item.name().toLowerCase(Locale.ROOT)))
        .toList();
  }
}
