package chillwright.core.log;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The storage categories a kitchen uses, by key, in the order of the list. */
public final class KeepingList {
  private static final int MEANT_AT_MOST = 4;

  private final Map<String, Category> byKey = new LinkedHashMap<>();
  private final List<Untold> untold;

  /** Found once, when words are first asked about: there are many. */
  private volatile List<FoodWords.Word> words = List.of();

  private volatile List<UntoldFoods.Word> untoldWords = List.of();

  public KeepingList(List<Category> categories) {
    this(categories, List.of());
  }

  public KeepingList(List<Category> categories, List<Untold> untold) {
    this.untold = List.copyOf(untold);
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

  /** Keys that may have been meant: by another word for the food, or by a key nearly the same. */
  private List<String> meant(String given) {
    FoodWords.Found found = new FoodWords(this).kinds(given);
    List<String> named = found.kinds().stream().map(Category::key).toList();
    List<String> near = Nearest.to(given, byKey.keySet());
    Set<String> meant = new LinkedHashSet<>(found.isCertain() ? named : near);
    meant.addAll(found.isCertain() ? near : named);
    return meant.stream().limit(MEANT_AT_MOST).toList();
  }

  public List<Category> categories() {
    return List.copyOf(byKey.values());
  }

  /** Foods that no category may stand for. */
  public List<Untold> untold() {
    return untold;
  }

  /** All words for foods that no category may stand for, as they are compared. */
  List<UntoldFoods.Word> untoldWords() {
    if (untoldWords.isEmpty()) {
      untoldWords = untold.stream().flatMap(UntoldFoods::words).toList();
    }
    return untoldWords;
  }

  /** All words that lead to a category, as they are compared. */
  List<FoodWords.Word> words() {
    if (words.isEmpty()) {
      words = byKey.values().stream().flatMap(FoodWords::words).toList();
    }
    return words;
  }
}
