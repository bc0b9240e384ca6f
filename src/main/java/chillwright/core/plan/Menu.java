package chillwright.core.plan;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * What is to be served, and what the kitchen has for it.
 *
 * @param serving when all of it is on the table
 * @param from no work begins before it
 * @param has how much there is of each thing that work or food holds; what is not named here is
 *     never short
 * @param open when hands are there; always, where the list is empty
 * @param progress of dishes that were begun, by name
 * @param guests how many are served; empty where nobody said
 */
public record Menu(
    Instant serving,
    ZoneId zone,
    Instant from,
    Map<String, Double> has,
    List<Hours> open,
    List<Dish> dishes,
    Map<String, Progress> progress,
    OptionalInt guests) {
  /** People, who are there only while the kitchen is open. */
  public static final String HANDS = "hands";

  /** Litres, held from when a dish is made until it is frozen, and while it thaws. */
  public static final String REFRIGERATOR = "refrigerator";

  /** Litres, held while it is frozen. */
  public static final String FREEZER = "freezer";

  /** Kilograms that freeze within any 24 hours. */
  public static final String FREEZING = "freezing";

  /** Litres, held while a dish waits hot. */
  public static final String WARM = "warm";

  /** Whoever begins a step that takes no hands, or ends the last one: there while it is open. */
  static final String SOMEBODY = "Somebody";

  /** Whoever takes food out to thaw, at the latest before the kitchen closes. */
  static final String TAKER = "Taker";

  /** A stretch of the day on which the kitchen is open; {@code to} midnight is the day's end. */
  public record Hours(Set<DayOfWeek> days, LocalTime from, LocalTime to) {
    public Hours {
      days = Set.copyOf(days);
    }
  }

  public Menu {
    has = Map.copyOf(has);
    open = List.copyOf(open);
    dishes = List.copyOf(dishes);
    progress = Map.copyOf(progress);
    if (!from.isBefore(serving)) {
      throw new IllegalArgumentException("work begins before serving");
    }
  }

  /** What any dish holds, by name; hands always, which bring food to the freezer and back. */
  Set<String> used() {
    Set<String> used = new HashSet<>(Set.of(HANDS));
    for (Dish dish : dishes) {
      used.addAll(dish.keeps().keySet());
      dish.make().forEach(step -> used.addAll(step.uses().keySet()));
      dish.finish().forEach(step -> used.addAll(step.uses().keySet()));
    }
    return used;
  }

  /** Of which nothing is begun yet. */
  public Menu(
      Instant serving,
      ZoneId zone,
      Instant from,
      Map<String, Double> has,
      List<Hours> open,
      List<Dish> dishes) {
    this(serving, zone, from, has, open, dishes, Map.of(), OptionalInt.empty());
  }

  /** The same for so many guests. */
  public Menu serving(OptionalInt people) {
    return new Menu(serving, zone, from, has, open, dishes, progress, people);
  }

  /** The same as it stands at a moment, from which on work goes on. */
  public Menu at(Instant moment, Map<String, Progress> begun) {
    return new Menu(serving, zone, moment, has, open, dishes, begun, guests);
  }

  /** The same, where so many portions of dishes, by name, are frozen already. */
  public Menu frozen(Map<String, Integer> already) {
    List<Dish> left =
        dishes.stream().map(dish -> dish.frozen(already.getOrDefault(dish.name(), 0))).toList();
    return new Menu(serving, zone, from, has, open, left, progress, guests);
  }

  /** Whether anybody is there at a moment. */
  boolean isOpen(Instant moment) {
    return open.isEmpty() || open.stream().anyMatch(hours -> isWithin(hours, moment));
  }

  private boolean isWithin(Hours hours, Instant moment) {
    LocalDateTime local = LocalDateTime.ofInstant(moment, zone);
    boolean isOverMidnight = !hours.to().isAfter(hours.from());
    boolean isAfterOpening = !local.toLocalTime().isBefore(hours.from());
    boolean isBeforeClosing = local.toLocalTime().isBefore(hours.to());
    boolean isOfToday = hours.days().contains(local.getDayOfWeek());
    boolean isOfYesterday = hours.days().contains(local.getDayOfWeek().minus(1));
    return isOverMidnight
        ? (isOfToday && isAfterOpening) || (isOfYesterday && isBeforeClosing)
        : isOfToday && isAfterOpening && isBeforeClosing;
  }

  /** When a dish is served: at a moment of its own, or with the others. */
  public Instant due(Dish dish) {
    return dish.due().orElse(serving);
  }

  Optional<Progress> progress(Dish dish) {
    return Optional.ofNullable(progress.get(dish.name()));
  }

  /** The same with another amount of one thing. */
  Menu with(String resource, double amount) {
    Map<String, Double> more = new HashMap<>(has);
    more.put(resource, amount);
    return new Menu(serving, zone, from, more, open, dishes, progress, guests);
  }

  /** The same with hands at all hours. */
  Menu alwaysOpen() {
    return new Menu(serving, zone, from, has, List.of(), dishes, progress, guests);
  }
}
