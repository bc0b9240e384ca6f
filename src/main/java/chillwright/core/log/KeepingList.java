package chillwright.core.log;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;

/** The storage categories a kitchen uses, by key, in the order of the list. */
public final class KeepingList {
  private static final int MEANT_AT_MOST = 4;

  private final Map<String, Category> byKey = new LinkedHashMap<>();

  public KeepingList(List<Category> categories) {
    for (Category category : categories) {
      if (byKey.put(category.key(), category) != null) {
        throw new IllegalArgumentException("category twice: " + category.key());
      }
    }
  }

  public Optional<Category> category(String key) {
    return Optional.ofNullable(byKey.get(key));
  }

  /** " Did you mean x or y?" with a space before it, or nothing if no category comes near. */
  public String question(String given) {
    List<String> meant = meant(given);
    return meant.isEmpty() ? "" : " Did you mean " + String.join(" or ", meant) + "?";
  }

  /** Keys that may have been meant: by another word for the food, a slip of the pen, or a part. */
  private List<String> meant(String given) {
    Set<String> meant = new LinkedHashSet<>(keysOf(Nearest.plain(given)));
    meant.addAll(Nearest.to(given, byKey.keySet()));
    Set<String> words = new TreeSet<>();
    byKey.values().forEach(category -> words.addAll(category.also()));
    Nearest.to(given, words).forEach(word -> meant.addAll(keysOf(word)));
    return meant.stream().limit(MEANT_AT_MOST).toList();
  }

  /**
   * What a food may be kept as that goes by a word of people's own: categories with that word, or
   * else with one that is part of it or that it is part of, or else with one nearly so written.
   * What keeps shortest comes first.
   */
  public List<Category> named(String given) {
    String word = Nearest.plain(given).replaceAll("\\s+", " ");
    if (word.isEmpty()) {
      return List.of();
    }
    List<Category> found = new ArrayList<>(having(also -> also.equals(word)));
    if (found.isEmpty()) {
      found.addAll(having(also -> isIn(word, also) || isIn(also, word)));
    } else {
      // "Chicken" may be raw chicken, which keeps shorter: nobody may guess the longer.
      int days = found.stream().mapToInt(KeepingList::days).min().orElseThrow();
      having(also -> isIn(word, also)).stream()
          .filter(category -> days(category) < days)
          .forEach(found::add);
    }
    return found.isEmpty()
        ? shortestFirst(meant(given).stream().map(byKey::get).toList())
        : shortestFirst(found);
  }

  private List<Category> having(Predicate<String> word) {
    return byKey.values().stream()
        .filter(category -> category.also().stream().anyMatch(word))
        .toList();
  }

  /** As whole words, so that "ham" is not in "hamburger". */
  private static boolean isIn(String part, String whole) {
    return (" " + whole + " ").contains(" " + part + " ");
  }

  private static int days(Category category) {
    return category.fridge().max().orElse(Integer.MAX_VALUE);
  }

  private static List<Category> shortestFirst(List<Category> categories) {
    return categories.stream().sorted(Comparator.comparingInt(KeepingList::days)).toList();
  }

  private List<String> keysOf(String word) {
    return byKey.values().stream()
        .filter(category -> category.also().contains(word))
        .map(Category::key)
        .toList();
  }

  public List<Category> categories() {
    return List.copyOf(byKey.values());
  }
}
