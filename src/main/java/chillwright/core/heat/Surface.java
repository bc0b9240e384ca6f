package chillwright.core.heat;

import java.util.Objects;
import java.util.Optional;

/**
 * How readily a surface gives its heat to what is round it.
 *
 * @param key such as "still_air"
 * @param coefficient W/(m2 K), uncertain by 30 % either way
 * @param status verified or reported
 */
public record Surface(
    String key,
    String title,
    double coefficient,
    String source,
    String status,
    Optional<String> note) {
  public Surface {
    Objects.requireNonNull(key, "key");
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(status, "status");
    Objects.requireNonNull(note, "note");
    if (!(coefficient > 0)) {
      throw new IllegalArgumentException(key + " has a coefficient of " + coefficient);
    }
  }
}
