package chillwright.core.log;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Words beside a food that only describe it, in both languages: how much there is of it, how it was
 * kept, for which day. What remains leads as it does alone.
 */
final class Describing {
  /** Left over is what was cooked. */
  private static final Set<String> LEFT_OVER =
      Set.of("leftover", "leftovers", "sobras", "sobrante", "sobrantes");

  private static final Set<String> WORDS =
      Set.of(
          "frozen",
          "thawed",
          "defrosted",
          "whole",
          "homemade",
          "organic",
          "thanksgiving",
          "christmas",
          "holiday",
          "easter",
          "sunday",
          "big",
          "large",
          "small",
          "my",
          "our",
          "some",
          "congelado",
          "congelada",
          "congelados",
          "congeladas",
          "descongelado",
          "descongelada",
          "descongelados",
          "descongeladas",
          "entero",
          "entera",
          "enteros",
          "enteras",
          "casero",
          "casera",
          "caseros",
          "caseras",
          "organico",
          "organica",
          "navidad",
          "navideno",
          "navidena",
          "mi",
          "grande",
          "pequeno",
          "pequena");

  private static final Set<String> FROZEN =
      Set.of("frozen", "congelado", "congelada", "congelados", "congeladas");

  private static final Set<String> THAWED =
      Set.of(
          "thawed", "defrosted", "descongelado", "descongelada", "descongelados", "descongeladas");

  private static final Set<String> UNITS =
      Set.of(
          "lb", "lbs", "pound", "pounds", "oz", "ounce", "ounces", "kg", "kilo", "kilos", "g",
          "gram", "grams", "libra", "libras", "onza", "onzas", "gramos", "quart", "quarts", "cup",
          "cups", "taza", "tazas", "litro", "litros");

  private static final Pattern AMOUNT = Pattern.compile("\\d+(lbs?|oz|kg|g)?");

  private static final Pattern JOINING_END =
      Pattern.compile("^(?:(?:of|the|a|de|del|el|la) )+|(?: (?:of|the|a|for|de|del|para))+$");

  private Describing() {}

  /** The phrase without them; the whole of it where nothing else would remain. */
  static String without(String spelled) {
    List<String> words = Arrays.asList(spelled.split(" ", -1));
    boolean isMeasured = words.stream().anyMatch(word -> AMOUNT.matcher(word).matches());
    String plain =
        words.stream()
            .filter(word -> !WORDS.contains(word) && !LEFT_OVER.contains(word))
            .filter(word -> !AMOUNT.matcher(word).matches())
            .filter(word -> !(isMeasured && UNITS.contains(word)))
            .collect(Collectors.joining(" "));
    String bare = JOINING_END.matcher(plain).replaceAll("").strip();
    return bare.isEmpty() ? spelled : bare;
  }

  /** Whether the phrase says that the food is frozen, and not that it has thawed. */
  static boolean isFrozen(String spelled) {
    List<String> words = Arrays.asList(spelled.split(" ", -1));
    return words.stream().anyMatch(FROZEN::contains) && words.stream().noneMatch(THAWED::contains);
  }

  /** Without raw kinds where the phrase says that the food is left over. */
  static List<Category> fitting(String spelled, List<Category> kinds) {
    boolean isLeftOver = Arrays.stream(spelled.split(" ", -1)).anyMatch(LEFT_OVER::contains);
    List<Category> cooked = kinds.stream().filter(Category::readyToEat).toList();
    return isLeftOver && !cooked.isEmpty() ? cooked : kinds;
  }
}
