package chillwright.service.ahead;

import chillwright.core.kitchen.KnownFood;
import chillwright.core.log.Category;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The food of the kitchen that a question bears on, with the days it has at room temperature. They
 * are a figure of the kitchen's own, and only of food that needs no cold.
 *
 * @param name as it is on file, or as the log has it
 * @param roomDays as given with the question, or else as on file
 */
record OwnFood(Optional<String> name, OptionalInt roomDays) {
  static final Parameter NAME =
      Parameter.optional(
          "food-name", Parameter.OWN_FOOD, "Which of the kitchen's own foods, by its name.");
  static final Parameter ROOM_DAYS =
      Parameter.optional(
          "room-days",
          "COUNT",
          "Of food that needs no cold: your own days at room temperature (default: as on file).");

  private static final String CATEGORY = "category";
  private static final int MOST_ROOM_DAYS = 365;

  /** A food on file brings its kind along, where neither a kind nor a printed life is given. */
  static Map<String, String> withKind(Map<String, String> given, Setting setting) {
    boolean isTold = given.containsKey(CATEGORY) || given.containsKey("life");
    Optional<KnownFood> known =
        Optional.ofNullable(given.get(NAME.name()))
            .filter(name -> !isTold)
            .flatMap(name -> setting.own().flatMap(foods -> foods.food(name.strip())));
    Map<String, String> filled = new HashMap<>(given);
    known.ifPresent(food -> filled.put(CATEGORY, food.category()));
    return filled;
  }

  /**
   * Reads both.
   *
   * @param day on which what the log has would have to be at its best
   */
  static OwnFood of(Given given, Optional<Category> category, LocalDate day, Setting setting) {
    boolean isCold = category.filter(Category::tcs).isPresent();
    OptionalInt days = given.days("room-days", MOST_ROOM_DAYS);
    if (isCold && days.isPresent()) {
      given.refuse(
          "room-days",
          "needs-cold",
          "none for this food",
          "This food needs the cold: it has no days at room temperature.");
    }
    Optional<String> name = given.text("food-name").map(String::strip);
    Optional<KnownFood> known =
        name.flatMap(one -> setting.own().flatMap(foods -> foods.food(one)));
    if (name.isPresent() && known.isEmpty() && !isLogged(name.get(), day, setting)) {
      String says = "There is no food \"%s\" in this kitchen, on file or in the freezer.";
      given.refuse(
          "food-name",
          "unknown-food-name",
          "the name of a food of the kitchen",
          says.formatted(name.get()));
    }
    known
        .filter(food -> category.filter(kind -> !kind.key().equals(food.category())).isPresent())
        .ifPresent(
            food ->
                given.refuse(
                    "food-name",
                    "other-kind",
                    "a food of that kind",
                    "%s is on file as %s: give that kind, or another food."
                        .formatted(food.name(), food.category())));
    OptionalInt onFile = known.map(KnownFood::roomDays).orElse(OptionalInt.empty());
    return new OwnFood(
        known.map(KnownFood::name).or(() -> name), days.isPresent() || isCold ? days : onFile);
  }

  private static boolean isLogged(String name, LocalDate day, Setting setting) {
    return setting.own().filter(foods -> foods.frozen(name, day).lots() > 0).isPresent();
  }
}
