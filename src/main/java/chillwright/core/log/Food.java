package chillwright.core.log;

import java.util.Objects;

/** What a lot is: its name, and the storage category that decides which rules bear on it. */
public record Food(String name, Category category) {
  public Food {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(category, "category");
  }
}
