package chillwright.core.kitchen;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What a kitchen said of the allergens of a food at a time, until it said something else.
 *
 * @param knowsBefore whether all that was said before is on record too
 */
public record AllergensSaid(
    Instant at, List<Allergen> allergens, Optional<String> others, boolean knowsBefore) {
  public AllergensSaid {
    Objects.requireNonNull(at, "at");
    allergens = List.copyOf(allergens);
  }
}
