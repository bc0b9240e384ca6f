package chillwright.core.plan;

import chillwright.core.log.Category;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A dish of a menu.
 *
 * @param make steps until it is made, one right after the other; at least one
 * @param finish steps from the refrigerator to the table, one right after the other: reheating
 * @param keeps what it holds where it is stored: litres of refrigerator, of freezer, of a warm
 *     place, and kilograms that freeze; by the names of {@link Menu}
 * @param thaw how long it thaws in the refrigerator; zero for food heated from frozen
 * @param hold how long it may be held hot before it is served without losing quality
 * @param filling into what it is filled; empty where nobody said
 * @param ingredients what all its portions take; empty where nobody said
 * @param due when it is served or handed over; with the others where it is empty
 * @param madeBy the last day on which it is made, where the cook wants it earlier than it need be
 */
public record Dish(
    String name,
    Category category,
    int portions,
    Route route,
    List<Step> make,
    List<Step> finish,
    Map<String, Double> keeps,
    Duration thaw,
    Duration hold,
    Optional<Filling> filling,
    List<Ingredient> ingredients,
    Optional<Instant> due,
    Optional<LocalDate> madeBy) {
  /** How a dish goes from the pot to the table. */
  public enum Route {
    /** Made for the hour it is served. */
    FRESH("fresh"),
    CHILLED("chilled"),
    FROZEN("frozen");

    private final String text;

    Route(String text) {
      this.text = text;
    }

    /** As written in a plan file. */
    public String text() {
      return text;
    }
  }

  public Dish {
    make = List.copyOf(make);
    finish = List.copyOf(finish);
    keeps = Map.copyOf(keeps);
    ingredients = List.copyOf(ingredients);
    if (make.isEmpty()) {
      throw new IllegalArgumentException("a dish is made in at least one step: " + name);
    }
  }

  /** Of whose ingredients nobody told. */
  public Dish(
      String name,
      Category category,
      int portions,
      Route route,
      List<Step> make,
      List<Step> finish,
      Map<String, Double> keeps,
      Duration thaw,
      Duration hold,
      Optional<Filling> filling) {
    this(
        name,
        category,
        portions,
        route,
        make,
        finish,
        keeps,
        thaw,
        hold,
        filling,
        List.of(),
        Optional.empty(),
        Optional.empty());
  }

  /** The same, handed over at a moment of its own. */
  public Dish dueAt(Optional<Instant> moment) {
    return with(keeps, moment, madeBy);
  }

  /** The same, made by the end of a day. */
  Dish by(Optional<LocalDate> day) {
    return with(keeps, due, day);
  }

  /** The same, of which so many portions are frozen already and take no more freezing. */
  Dish frozen(int already) {
    Map<String, Double> left = new HashMap<>(keeps);
    double open = Math.max(0, portions - already) / (double) portions;
    left.computeIfPresent(Menu.FREEZING, (thing, amount) -> amount * open);
    return with(left, due, madeBy);
  }

  private Dish with(Map<String, Double> kept, Optional<Instant> moment, Optional<LocalDate> day) {
    return new Dish(
        name,
        category,
        portions,
        route,
        make,
        finish,
        kept,
        thaw,
        hold,
        filling,
        ingredients,
        moment,
        day);
  }
}
