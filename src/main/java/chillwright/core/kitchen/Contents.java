package chillwright.core.kitchen;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
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
 */
public record Contents(
    List<Allergen> allergens,
    List<String> otherAllergens,
    List<Ingredients> ingredients,
    List<String> notOnFile) {
  /** What a food was made from, in the words of the kitchen, as its lines stand. */
  public record Ingredients(String food, List<String> lines) {
    public Ingredients {
      Objects.requireNonNull(food, "food");
      lines = List.copyOf(lines);
    }
  }

  /**
   * A food that went into a lot.
   *
   * @param known what the kitchen said of it; empty where it said nothing
   */
  public record Part(String food, Optional<KnownFood> known) {
    public Part {
      Objects.requireNonNull(food, "food");
      Objects.requireNonNull(known, "known");
    }
  }

  public Contents {
    allergens = List.copyOf(allergens);
    otherAllergens = List.copyOf(otherAllergens);
    ingredients = List.copyOf(ingredients);
    notOnFile = List.copyOf(notOnFile);
  }

  /** The union of all that went into a lot: what is in a part is in the whole. */
  public static Contents of(List<Part> parts) {
    Set<Allergen> allergens = new TreeSet<>();
    Set<String> others = new LinkedHashSet<>();
    Set<Ingredients> ingredients = new LinkedHashSet<>();
    Set<String> notOnFile = new LinkedHashSet<>();
    for (Part part : parts) {
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
    return new Contents(
        new ArrayList<>(allergens),
        new ArrayList<>(others),
        new ArrayList<>(ingredients),
        new ArrayList<>(notOnFile));
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
