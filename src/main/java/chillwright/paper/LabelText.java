package chillwright.paper;

import java.util.List;

/**
 * What a label says of the food itself, as the kitchen worded it.
 *
 * @param allergens printed bold after "contains"
 * @param ingredients in the order of their weight, the heaviest first
 */
public record LabelText(List<String> allergens, List<String> ingredients) {
  /** Nothing is known. */
  public static final LabelText NONE = new LabelText(List.of(), List.of());

  public LabelText {
    allergens = List.copyOf(allergens);
    ingredients = List.copyOf(ingredients);
  }
}
