package chillwright.core.log;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
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

  /** They tell how a food is, and lead to no kind by themselves. */
  private static final Set<String> STATES =
      Set.of(
          "raw", "cooked", "baked", "roasted", "grilled", "fried", "crudo", "cruda", "cocido",
          "cocida");

  /** A word of a kind, as it is written and as it is compared. */
  record Word(Category category, String spelled, String folded) {}

  private final KeepingList list;
  private final List<Category> categories;

  public FoodWords(KeepingList list) {
    this.list = list;
    this.categories = list.categories();
  }

  /**
   * The kinds that a food may be.
   *
   * @param kinds the likeliest first: what goes by that very word, but before it the same food raw,
   *     which keeps shorter, and one alone where all keep alike; all else with those that need the
   *     cold first, of these the one that keeps shortest
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
    List<Category> named = goingBy(phrase);
    if (!named.isEmpty()) {
      return new Found(one(withShorter(named, spelled(given))), true);
    }
    if (untold(given).isPresent()) {
      return new Found(like(phrase), false);
    }
    String plain = Describing.without(spelled(given));
    named = goingBy(folded(plain));
    return named.isEmpty()
        ? new Found(like(folded(plain)), false)
        : new Found(one(Describing.fitting(spelled(given), withShorter(named, plain))), true);
  }

  /** Whether the words say that the food is frozen. */
  public static boolean isFrozen(String given) {
    return Describing.isFrozen(spelled(given));
  }

  /**
   * What is said of a food that no kind may stand for; empty where it goes by a kind's own word.
   */
  public Optional<Untold> untold(String given) {
    return Stream.of(folded(given), folded(Describing.without(spelled(given))))
        .filter(phrase -> goingBy(phrase).isEmpty())
        .flatMap(phrase -> new UntoldFoods(list).find(phrase).stream())
        .findFirst();
  }

  /** The first, where all keep alike: which of them it is changes no answer. */
  private static List<Category> one(List<Category> kinds) {
    boolean isAlike = kinds.stream().allMatch(kind -> kind.keepsAs(kinds.get(0)));
    return isAlike ? kinds.subList(0, 1) : kinds;
  }

  private List<Category> goingBy(String phrase) {
    return having(phrase::equals);
  }

  private List<Category> like(String phrase) {
    Set<Category> like = new LinkedHashSet<>(having(also -> isEitherIn(phrase, also)));
    categories.stream()
        .filter(category -> isIn(phrase, folded(category.title())))
        .forEach(like::add);
    like.addAll(raw(phrase));
    if (like.stream().noneMatch(Category::tcs)) {
      Set<String> words = telling(phrase);
      words.removeAll(STATES);
      like.addAll(having(also -> telling(also).stream().anyMatch(words::contains)));
    }
    Set<Category> all = new LinkedHashSet<>();
    if (like.isEmpty()) {
      all.addAll(shortestFirst(having(also -> Nearest.isSlip(phrase, also)), phrase));
    } else if (hasUnknown(phrase)) {
      all.addAll(shortestFirst(having(also -> isSlipInWords(phrase, also)), phrase));
    }
    all.addAll(shortestFirst(like, phrase));
    return List.copyOf(all);
  }

  /** The same food raw, where a phrase has the word of a food in it that may be meant raw. */
  private List<Category> raw(String phrase) {
    List<String> in =
        list.words().stream()
            .map(Word::folded)
            .filter(word -> isIn(word, phrase))
            .distinct()
            .toList();
    return in.stream()
        .filter(word -> in.stream().noneMatch(other -> isPart(word, other)))
        .flatMap(word -> having(also -> isPart(word, also)).stream())
        .filter(category -> category.tcs() && !category.readyToEat())
        .toList();
  }

  private static boolean isPart(String word, String longer) {
    return !word.equals(longer) && isIn(word, longer);
  }

  /** "chicken stok": every word is that of the list, or nearly so. */
  private static boolean isSlipInWords(String phrase, String also) {
    String[] given = phrase.split(" ", -1);
    String[] listed = also.split(" ", -1);
    return given.length == listed.length
        && IntStream.range(0, given.length)
            .allMatch(i -> given[i].equals(listed[i]) || Nearest.isSlip(given[i], listed[i]));
  }

  /** Whether a word of it stands in none of the list's. */
  private boolean hasUnknown(String phrase) {
    return telling(phrase).stream()
        .anyMatch(word -> having(also -> telling(also).contains(word)).isEmpty());
  }

  /** Whether the kind is told of that food only for want of a figure of its own. */
  public static boolean isStandIn(Category category, String given) {
    String phrase = folded(given);
    return category.standsInFor().stream().anyMatch(word -> folded(word).equals(phrase));
  }

  /**
   * "Chicken" may be raw chicken, which keeps shorter: nobody may guess the longer, so raw kinds
   * stand first. Other food that is such food too, as tres leches cake is cake, stands last; what
   * merely has the word in its name, such as bread stuffing, is not meant.
   */
  private List<Category> withShorter(List<Category> named, String word) {
    int days = named.stream().mapToInt(FoodWords::days).min().orElseThrow();
    boolean needsCold = named.stream().anyMatch(Category::tcs);
    List<Category> shorter =
        kinds(also -> isIn(word, also.spelled())).stream()
            .filter(category -> days(category) < days && !named.contains(category))
            .toList();
    List<Category> such = kinds(also -> isHead(word, also.spelled()));
    Predicate<Category> isRaw = category -> needsCold && category.tcs() && !category.readyToEat();
    return Stream.of(
            shorter.stream().filter(isRaw).toList(),
            named,
            shorter.stream().filter(isRaw.negate()).filter(such::contains).toList())
        .flatMap(kinds -> shortestFirst(kinds, word).stream())
        .toList();
  }

  private List<Category> having(Predicate<String> folded) {
    return kinds(word -> folded.test(word.folded()));
  }

  private List<Category> kinds(Predicate<Word> isMeant) {
    return list.words().stream().filter(isMeant).map(Word::category).distinct().toList();
  }

  static Stream<Word> words(Category category) {
    return Stream.concat(category.also().stream(), Stream.of(category.key().replace('_', ' ')))
        .map(word -> new Word(category, spelled(word), folded(word)));
  }

  private static boolean isEitherIn(String one, String other) {
    return isIn(one, other) || isIn(other, one);
  }

  /** What the phrase is, as "cake" of "tres leches cake" and "pan" of "pan de carne". */
  private static boolean isHead(String word, String phrase) {
    if (phrase.endsWith(" " + word)) {
      String before = phrase.substring(0, phrase.length() - word.length());
      return !hasJoining(before.replaceAll(" (and|y) ", " "));
    }
    String after = phrase.startsWith(word + " ") ? phrase.substring(word.length() + 1) : "";
    return isJoined(after) && !after.matches("(and|y) .*");
  }

  /** As whole words, so that "ham" is not in "hamburger". */
  private static boolean isIn(String part, String whole) {
    return (" " + whole + " ").contains(" " + part + " ");
  }

  static boolean hasJoining(String phrase) {
    return Arrays.stream(phrase.split(" ", -1)).anyMatch(JOINING::contains);
  }

  /** Whether it begins with a word that joins it to what stands before. */
  static boolean isJoined(String phrase) {
    return JOINING.contains(phrase.split(" ", -1)[0]);
  }

  private static Set<String> telling(String phrase) {
    return Arrays.stream(phrase.split(" ", -1))
        .filter(word -> !word.isEmpty() && !JOINING.contains(word))
        .collect(Collectors.toSet());
  }

  /** In lower case without accents and punctuation, a blank between words. */
  static String spelled(String text) {
    return Normalizer.normalize(text, Normalizer.Form.NFKD)
        .toLowerCase(Locale.ROOT)
        .replaceAll("[\\p{M}'\u2019]", "")
        .replace("&", " and ")
        .replaceAll("[^\\p{L}\\p{N}]+", " ")
        .strip();
  }

  /** The same with every word so cut that its singular and its plural are alike. */
  static String folded(String text) {
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
