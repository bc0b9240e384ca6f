package chillwright.core.kitchen;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * The nine major food allergens of United States law: eight of the Food Allergen Labeling and
 * Consumer Protection Act of 2004, and sesame by the FASTER Act of 2021.
 */
public enum Allergen {
  MILK,
  EGGS,
  FISH,
  CRUSTACEAN_SHELLFISH,
  TREE_NUTS,
  PEANUTS,
  WHEAT,
  SOYBEANS,
  SESAME;

  /** As it is written in requests and kept, such as "tree_nuts". */
  public String key() {
    return name().toLowerCase(Locale.ROOT);
  }

  public static Optional<Allergen> ofKey(String key) {
    return Arrays.stream(values()).filter(allergen -> allergen.key().equals(key)).findFirst();
  }
}
