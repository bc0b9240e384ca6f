package chillwright.core.kitchen;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A food that is made again and again, so that a batch of it need not be described anew.
 *
 * @param category key of the keeping list
 * @param portions that a batch usually makes
 * @param container what it is put into, in words
 * @param place where it usually goes
 * @param reheating words for whoever reheats it
 * @param thawing words for whoever thaws it, on the label of a frozen lot
 * @param roomDays days that it is at its best at room temperature once made or thawed, a figure of
 *     the kitchen's own about quality; only of food that needs no cold for safety
 * @param allergens those of the law, in the order of the law
 * @param otherAllergens further ones, in words
 * @param ingredients in words, as a label names them
 */
public record KnownFood(
    String name,
    String category,
    OptionalInt portions,
    Optional<String> container,
    Optional<String> place,
    Optional<String> reheating,
    Optional<String> thawing,
    OptionalInt roomDays,
    List<Allergen> allergens,
    Optional<String> otherAllergens,
    Optional<String> ingredients) {
  public KnownFood {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(category, "category");
    allergens = allergens.stream().distinct().sorted().toList();
  }
}
