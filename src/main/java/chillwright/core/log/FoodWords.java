package chillwright.core.log;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What a food may be kept as that goes by words of people's own. Only a phrase that is a word of
 * the list, plural and accents aside, leads to its kind; one that merely shares words with the list
 * is to be asked about, since "cottage cheese" is no hard cheese. Parts of words tell nothing.
 */
public final class FoodWords {
  private static final Set<String> JOINING =
      Set.of(
          "a", "and", "in", "of", "on", "or", "the", "to", "with", "without", "al", "con", "de",
          "del", "el", "en", "la", "las", "los", "o", "sin", "y");

  private final List<Category> categories;

  public FoodWords(KeepingList list) {
    this.categories = list.categories();
  }

  /**
   * The kinds that a food may be.
   *
   * @param kinds the likeliest first: what goes by that very word, but before it the same food raw,
   *     which keeps shorter; all else with those that need the cold first, of these the one that
   *     keeps shortest
   * @param isCertain whether they were found by the whole phrase; else a person is to be asked
   */
  public record Found(List<Category> kinds, boolean isCertain) {
    public Found {
      kinds = List.copyOf(kinds);
    }
  }

  /** The kinds that go by those words, or else share some, or else by words nearly so written. */
  public Found kinds(String given) {
    String phrase = folded(given);
    if (telling(phrase).isEmpty()) {
      return new Found(List.of(), false);
    }
    List<Category> named = having(also -> folded(also).equals(phrase));
    if (!named.isEmpty()) {
      return new Found(withShorter(named, spelled(given)), true);
    }
    Set<Category> like = new LinkedHashSet<>(having(also -> isEitherIn(phrase, folded(also))));
    categories.stream()
        .filter(category -> isIn(phrase, folded(category.title())))
        .forEach(like::add);
    if (like.stream().noneMatch(Category::tcs)) {
      Set<String> words = telling(phrase);
      like.addAll(having(also -> telling(folded(also)).stream().anyMatch(words::contains)));
    }
    if (like.isEmpty()) {
      like.addAll(having(also -> Nearest.isSlip(phrase, folded(also))));
    }
    return new Found(shortestFirst(like, phrase), false);
  }

  /** Whether the kind is told of that food only for want of a figure of its own. */
  public static boolean isStandIn(Category category, String given) {
    String phrase = folded(given);
    return category.standsInFor().stream().anyMatch(word -> folded(word).equals(phrase));
  }

  /**
   * "Chicken" may be raw chicken, which keeps shorter: nobody may guess the longer, so raw kinds
   * stand first. Dishes that merely have the word in their name, such as bread stuffing of bread,
   * stand last.
   */
  private List<Category> withShorter(List<Category> named, String word) {
    int days = named.stream().mapToInt(FoodWords::days).min().orElseThrow();
    boolean needsCold = named.stream().anyMatch(Category::tcs);
    List<Category> shorter =
        having(also -> isIn(word, spelled(also))).stream()
            .filter(category -> days(category) < days && !named.contains(category))
            .toList();
    Predicate<Category> isRaw = category -> needsCold && category.tcs() && !category.readyToEat();
    return Stream.of(
            shorter.stream().filter(isRaw).toList(),
            named,
            shorter.stream().filter(isRaw.negate()).toList())
        .flatMap(kinds -> shortestFirst(kinds, word).stream())
        .toList();
  }

  private List<Category> having(Predicate<String> word) {
    return categories.stream().filter(category -> words(category).anyMatch(word)).toList();
  }

  private static Stream<String> words(Category category) {
    return Stream.concat(category.also().stream(), Stream.of(category.key().replace('_', ' ')));
  }

  private static boolean isEitherIn(String one, String other) {
    return isIn(one, other) || isIn(other, one);
  }

  /** As whole words, so that "ham" is not in "hamburger". */
  private static boolean isIn(String part, String whole) {
    return (" " + whole + " ").contains(" " + part + " ");
  }

  private static Set<String> telling(String phrase) {
    return Arrays.stream(phrase.split(" ", -1))
        .filter(word -> !word.isEmpty() && !JOINING.contains(word))
        .collect(Collectors.toSet());
  }

  /** In lower case without accents and punctuation, a blank between words. */
  private static String spelled(String text) {
    return Normalizer.normalize(text, Normalizer.Form.NFKD)
        .toLowerCase(Locale.ROOT)
        .replaceAll("[\\p{M}'\u2019]", "")
        .replace("&", " and ")
        .replaceAll("[^\\p{L}\\p{N}]+", " ")
        .strip();
  }

  /** The same with every word so cut that its singular and its plural are alike. */
  private static String folded(String text) {
    return Arrays.stream(spelled(text).split(" ", -1))
        .map(word -> JOINING.contains(word) ? word : cut(word))
        .collect(Collectors.joining(" "));
  }

  private static String cut(String word) {
    return word.replaceFirst("(?<=..)s$", "").replaceFirst("(?<=..)e$", "").replaceFirst("y$", "i");
  }

  private static int days(Category category) {
    return category.fridge().max().orElse(Integer.MAX_VALUE);
  }

  /** Of those that keep as long the ones with the word in their title. */
  private static List<Category> shortestFirst(Iterable<Category> categories, String word) {
    List<Category> sorted = new ArrayList<>();
    categories.forEach(sorted::add);
    sorted.sort(
        Comparator.comparing((Category category) -> !category.tcs())
            .thenComparingInt(FoodWords::days)
            .thenComparing(category -> !isIn(folded(word), folded(category.title()))));
    return sorted;
  }
}
