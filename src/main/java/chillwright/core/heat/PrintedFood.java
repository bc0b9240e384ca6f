package chillwright.core.heat;

import java.util.Objects;

/**
 * A food of a food table.
 *
 * @param key such as "beef_stew"
 * @param status verified or reported
 */
public record PrintedFood(
    String key, String title, Composition composition, String source, String status) {
  public PrintedFood {
    Objects.requireNonNull(key, "key");
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(composition, "composition");
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(status, "status");
  }
}
