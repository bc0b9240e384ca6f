package chillwright.core.kitchen;

import java.util.List;
import java.util.Objects;

/**
 * Allergens that a food was said to hold when a lot of it was there, and is said to hold no more.
 * The lot may hold them all the same, since a description tells of the next batch.
 *
 * @param others further ones, in words
 */
public record TakenOut(String food, List<Allergen> allergens, List<String> others) {
  public TakenOut {
    Objects.requireNonNull(food, "food");
    allergens = List.copyOf(allergens);
    others = List.copyOf(others);
  }
}
