package chillwright.core.plan;

import java.util.OptionalDouble;

/**
 * What a dish takes, in the cook's own words.
 *
 * @param amount above 0; empty where the cook gave none
 * @param unit such as "kg"; blank for things that are counted
 */
public record Ingredient(String name, OptionalDouble amount, String unit) {
  public Ingredient {
    if (name.isBlank()) {
      throw new IllegalArgumentException("an ingredient has a name");
    }
    if (amount.isPresent() && !(amount.getAsDouble() > 0)) {
      throw new IllegalArgumentException(amount.getAsDouble() + " of " + name);
    }
  }

  /** Unit and name as they are read, such as "kg flour". */
  String phrase() {
    return unit.isBlank() ? name : unit + " " + name;
  }

  /** The same, so many times as much. */
  public Ingredient times(double factor) {
    return amount.isEmpty()
        ? this
        : new Ingredient(name, OptionalDouble.of(amount.getAsDouble() * factor), unit);
  }
}
