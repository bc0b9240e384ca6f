package chillwright.web.answers;

import chillwright.core.kitchen.Allergen;
import chillwright.core.kitchen.Contents;
import java.util.List;

/**
 * What is in a lot, of its own food and of every food it came from.
 *
 * @param notOnFile foods that the kitchen has not described: of these nothing is known
 */
public record ContentsAnswer(
    List<String> allergens,
    List<String> otherAllergens,
    List<Ingredients> ingredients,
    List<String> notOnFile) {
  /** What a food was made from. */
  public record Ingredients(String food, String text) {}

  static ContentsAnswer of(Contents contents) {
    return new ContentsAnswer(
        contents.allergens().stream().map(Allergen::key).toList(),
        contents.otherAllergens(),
        contents.ingredients().stream()
            .map(of -> new Ingredients(of.food(), String.join(", ", of.lines())))
            .toList(),
        contents.notOnFile());
  }
}
