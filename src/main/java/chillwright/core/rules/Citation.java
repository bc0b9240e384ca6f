package chillwright.core.rules;

import java.util.Objects;
import java.util.Optional;

/**
 * Where a figure is printed.
 *
 * @param text the clause, such as "3-501.14(A)(1)"
 * @param state "verified", "reported", "house" for a kitchen's own rule, or "none" for common
 *     practice without a source
 * @param copy the copy that was read
 */
public record Citation(String text, String state, Optional<String> copy) {
  public Citation {
    Objects.requireNonNull(text, "text");
    Objects.requireNonNull(state, "state");
  }
}
