package chillwright.service.ahead;

import java.util.Objects;

/**
 * What a question asks for.
 *
 * @param name in lower case with hyphens, such as "shelf-length"
 * @param label how a value looks, such as "LENGTH"
 * @param says what it is, with what is taken where it is left out
 * @param isNeeded whether it must be given
 */
public record Parameter(String name, String label, String says, boolean isNeeded) {
  /** The label of a temperature. */
  public static final String TEMPERATURE = "TEMP";

  /** The label of a food of the kitchen's own, asked only where a kitchen is at hand. */
  public static final String OWN_FOOD = "OWN-FOOD";

  public Parameter {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(label, "label");
    Objects.requireNonNull(says, "says");
  }

  static Parameter needed(String name, String label, String says) {
    return new Parameter(name, label, says, true);
  }

  static Parameter optional(String name, String label, String says) {
    return new Parameter(name, label, says, false);
  }
}
