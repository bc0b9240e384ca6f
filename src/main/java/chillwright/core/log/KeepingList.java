package chillwright.core.log;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

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
