package chillwright.service.ahead;

import chillwright.core.heat.PrintedFood;
import chillwright.core.log.Category;
import chillwright.core.log.FoodWords;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * The foods of the tables that a word means: by their own names, else by the kind of food that the
 * same word leads to where its keeping is asked about. Which food is like a kind is our own, no
 * source; of two the one that cools slower.
 */
record LikeFood(Setting setting) {
  private static final Map<String, String> BY_KIND =
      Map.ofEntries(
          Map.entry("soup_or_stew", "beef_stew"),
          Map.entry("soup_cream_or_flour_thickened", "beef_stew"),
          Map.entry("stock_or_meat_broth", "chicken_stock"),
          Map.entry("gravy", "gravy"),
          Map.entry("sauce_salsa_or_dip", "tomato_sauce"),
          Map.entry("casserole_meat", "lasagna"),
          Map.entry("casserole_poultry", "lasagna"),
          Map.entry("casserole_vegetable_or_pasta", "lasagna"),
          Map.entry("cooked_poultry_plain", "turkey_breast"),
          Map.entry("cooked_poultry_in_sauce", "beef_stew"),
          Map.entry("cooked_rice_or_grain", "rice"),
          Map.entry("cooked_pasta_plain", "pasta"),
          Map.entry("cooked_beans", "beans"),
          Map.entry("cooked_vegetables", "mashed_potato"),
          Map.entry("raw_meat_ground", "ground_beef_raw"));

  /** Words of a kind with several foods, and which of them they mean. */
  private static final Map<String, String> BY_WORD =
      Map.of(
          "soup", "vegetable_soup",
          "sopa", "vegetable_soup",
          "vegetable soup", "vegetable_soup",
          "sopa de verduras", "vegetable_soup",
          "chilli", "chili",
          "chile con carne", "chili",
          "chili con carne", "chili");

  /** None where the word is not known, several where it may mean any of them. */
  List<PrintedFood> of(String word) {
    String key = word.strip().toLowerCase(Locale.ROOT);
    List<PrintedFood> named =
        setting.handbook().foods().stream().filter(food -> isNamed(food, key)).toList();
    if (!named.isEmpty()) {
      return named;
    }
    Optional<PrintedFood> known = food(BY_WORD.getOrDefault(key, ""));
    if (known.isPresent()) {
      return List.of(known.get());
    }
    FoodWords.Found found = new FoodWords(setting.keeping()).kinds(word);
    List<Category> kinds = found.isCertain() ? found.kinds() : kind(word);
    // What is cooled or warmed is mostly cooked: raw kinds only where the word means no other.
    boolean isAnyCooked = kinds.stream().anyMatch(Category::readyToEat);
    return kinds.stream()
        .filter(kind -> kind.readyToEat() || !isAnyCooked)
        .map(kind -> BY_KIND.getOrDefault(kind.key(), ""))
        .distinct()
        .flatMap(like -> food(like).stream())
        .toList();
  }

  private List<Category> kind(String word) {
    return setting.keeping().categories().stream()
        .filter(kind -> kind.key().equals(word) || kind.title().equalsIgnoreCase(word))
        .toList();
  }

  private Optional<PrintedFood> food(String key) {
    return setting.handbook().foods().stream().filter(food -> food.key().equals(key)).findFirst();
  }

  /** Whether that is its key or its title. */
  static boolean isNamed(PrintedFood food, String word) {
    return food.key().replace('_', ' ').equalsIgnoreCase(word.replace('_', ' '))
        || food.title().equalsIgnoreCase(word);
  }
}
