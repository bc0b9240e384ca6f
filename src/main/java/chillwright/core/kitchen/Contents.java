package chillwright.core.kitchen;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;

/**
 * What is in a lot, as far as the kitchen has it on file: of its own food and of every food that it
 * came from. Where anything is missing the rest says nothing of what is absent from it.
 *
 * @param allergens those of the law, in the order of the law
 * @param otherAllergens further ones, in words
 * @param ingredients food by food, the lot's own first
 * @param notOnFile names of foods that the kitchen has not described
 * @param takenOut what is among its allergens only because it was named when the lot was made
 * @param changed foods of whose allergens something else was said since the lot began: of their
 *     ingredients only today's words are kept
 */
public record Contents(
    List<Allergen> allergens,
    List<String> otherAllergens,
    List<Ingredients> ingredients,
    List<String> notOnFile,
    List<TakenOut> takenOut,
    List<String> changed) {
  /** What a food was made from, in the words of the kitchen, as its lines stand. */
  public record Ingredients(String food, List<String> lines) {
    public Ingredients {
      Objects.requireNonNull(food, "food");
      lines = List.copyOf(lines);
    }
  }

  public Contents {
    allergens = List.copyOf(allergens);
    otherAllergens = List.copyOf(otherAllergens);
    ingredients = List.copyOf(ingredients);
    notOnFile = List.copyOf(notOnFile);
    takenOut = List.copyOf(takenOut);
    changed = List.copyOf(changed);
  }

  /**
   * The union of all that went into a lot: what is in a part is in the whole, and what was named
   * when the part was made stays in it whatever was taken out of the description since.
   */
  public static Contents of(List<FoodInLot> parts) {
    Set<Allergen> allergens = new TreeSet<>();
    Set<String> others = new LinkedHashSet<>();
    Set<Ingredients> ingredients = new LinkedHashSet<>();
    Set<String> notOnFile = new LinkedHashSet<>();
    for (FoodInLot part : parts) {
      part.known()
          .ifPresentOrElse(
              food -> {
                allergens.addAll(food.allergens());
                food.otherAllergens().ifPresent(others::add);
                food.ingredients()
                    .map(Contents::lines)
                    .ifPresent(lines -> ingredients.add(new Ingredients(part.food(), lines)));
              },
              () -> notOnFile.add(part.food()));
    }
    List<TakenOut> takenOut =
        parts.stream().flatMap(part -> part.takenOut(allergens, others).stream()).toList();
    takenOut.forEach(
        out -> {
          allergens.addAll(out.allergens());
          others.addAll(out.others());
        });
    return new Contents(
        new ArrayList<>(allergens),
        new ArrayList<>(others),
        new ArrayList<>(ingredients),
        new ArrayList<>(notOnFile),
        takenOut,
        parts.stream().filter(FoodInLot::isSaidOtherwise).map(FoodInLot::food).toList());
  }

  /** Each without the comma that it may end with. */
  private static List<String> lines(String text) {
    return text.lines()
        .map(line -> line.strip().replaceFirst(",$", ""))
        .filter(line -> !line.isEmpty())
        .toList();
  }

  /** Whether every food that went in is on file. */
  public boolean isComplete() {
    return notOnFile.isEmpty();
  }
}
