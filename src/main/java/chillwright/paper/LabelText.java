package chillwright.paper;

import java.util.List;

/**
 * What a label says of the food itself, as the kitchen worded it.
 *
 * @param gap that some allergens are not on file, in words; blank where all are. Without it a label
 *     could be read as naming all
 * @param allergens printed bold after "contains"
 * @param ingredients in the order of their weight, the heaviest first
 */
public record LabelText(String gap, List<String> allergens, List<String> ingredients) {
  /** Nothing is known. */
  public static final LabelText NONE = new LabelText("", List.of(), List.of());

  public LabelText {
    allergens = List.copyOf(allergens);
    ingredients = List.copyOf(ingredients);
  }
}
