package chillwright.web.answers;

import chillwright.core.kitchen.Allergen;
import chillwright.core.kitchen.Contents;
import java.util.List;

/**
 * What is in a lot, of its own food and of every food it came from.
 *
 * @param notOnFile foods that the kitchen has not described: of these nothing is known
 * @param takenOut what is among the allergens only because it was named when the lot was made
 */
public record ContentsAnswer(
    List<String> allergens,
    List<String> otherAllergens,
    List<Ingredients> ingredients,
    List<String> notOnFile,
    List<TakenOut> takenOut) {
  /** What a food was made from. */
  public record Ingredients(String food, String text) {}

  /** What was taken out of the description of a food since. */
  public record TakenOut(String food, List<String> allergens, List<String> otherAllergens) {}

  static ContentsAnswer of(Contents contents) {
    return new ContentsAnswer(
        keys(contents.allergens()),
        contents.otherAllergens(),
        contents.ingredients().stream()
            .map(of -> new Ingredients(of.food(), String.join(", ", of.lines())))
            .toList(),
        contents.notOnFile(),
        contents.takenOut().stream()
            .map(out -> new TakenOut(out.food(), keys(out.allergens()), out.others()))
            .toList());
  }

  private static List<String> keys(List<Allergen> allergens) {
    return allergens.stream().map(Allergen::key).toList();
  }
}
