package chillwright.rulebook;

import chillwright.core.rules.Citation;
import java.util.Objects;

/**
 * A setting of a rule set: one of several published conventions, with who publishes it.
 *
 * @param key as in the file, such as "freezing-day-counts"
 * @param value as in the file, such as "true"
 * @param status law, model-code, guidance, practice or house
 */
public record Choice(String key, String value, String status, Citation citation) {
  public Choice {
    Objects.requireNonNull(key, "key");
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(status, "status");
    Objects.requireNonNull(citation, "citation");
  }
}
