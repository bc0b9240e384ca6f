package chillwright.core.log;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The storage categories a kitchen uses, by key, in the order of the list. */
public final class KeepingList {
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

  public List<Category> categories() {
    return List.copyOf(byKey.values());
  }
}
