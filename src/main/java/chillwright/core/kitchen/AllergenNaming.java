package chillwright.core.kitchen;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * How a food stands to an allergen that is looked for.
 *
 * @param since when it came to stand so, as far as that is on record
 * @param word of its ingredients that tells of the allergen; empty unless that is why
 * @param isCertain whether no label printed before could name it: all that was said is on record
 */
public record AllergenNaming(
    String food, Why why, Optional<Instant> since, Optional<String> word, boolean isCertain) {
  /** What ties a food to the allergen. */
  public enum Why {
    /** The kitchen names it today. */
    NAMED,
    /** It was named once, and is no more. */
    NAMED_BEFORE,
    /** The ingredients tell of it, and it is not named. */
    INGREDIENTS,
    /** Nothing is said of the food at all. */
    NOT_ON_FILE;

    /** As answers and tables have it. */
    public String key() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  /** Whether an allergen is among those that were said of a food. */
  public interface Names {
    /**
     * Whether these name it.
     *
     * @param others in words
     */
    boolean isIn(List<Allergen> allergens, Optional<String> others);

    default boolean isIn(AllergensSaid said) {
      return isIn(said.allergens(), said.others());
    }
  }

  public AllergenNaming {
    Objects.requireNonNull(food, "food");
    Objects.requireNonNull(why, "why");
  }

  /** Whether the kitchen says that it holds it; else it may. */
  public boolean isNamed() {
    return why == Why.NAMED;
  }

  public static AllergenNaming notOnFile(String food) {
    return new AllergenNaming(food, Why.NOT_ON_FILE, Optional.empty(), Optional.empty(), false);
  }

  /**
   * What a kitchen said of a food, held against an allergen; empty where nothing ties them.
   *
   * @param said all that was said of its allergens, the earliest first
   * @param names whether what was said names the allergen
   * @param word of its ingredients that tells of the allergen
   */
  public static Optional<AllergenNaming> of(
      KnownFood food, List<AllergensSaid> said, Names names, Optional<String> word) {
    boolean isNamed = names.isIn(food.allergens(), food.otherAllergens());
    int first = said.size();
    while (first > 0 && names.isIn(said.get(first - 1)) == isNamed) {
      first--;
    }
    // Before the first of these it stood the other way, or nothing was said.
    boolean wasOtherwise = first > 0;
    Optional<Instant> since =
        first < said.size() ? Optional.of(said.get(first).at()) : Optional.empty();
    if (isNamed) {
      boolean isCertain =
          since.isPresent()
              && said.get(0).knowsBefore()
              && said.subList(0, first).stream().noneMatch(names::isIn);
      return Optional.of(
          new AllergenNaming(food.name(), Why.NAMED, since, Optional.empty(), isCertain));
    }
    if (wasOtherwise) {
      return Optional.of(
          new AllergenNaming(food.name(), Why.NAMED_BEFORE, since, Optional.empty(), false));
    }
    boolean isNothingSaid =
        food.allergens().isEmpty()
            && food.otherAllergens().isEmpty()
            && food.ingredients().isEmpty();
    return isNothingSaid
        ? Optional.of(notOnFile(food.name()))
        : word.map(
            found ->
                new AllergenNaming(
                    food.name(), Why.INGREDIENTS, Optional.empty(), Optional.of(found), false));
  }
}
