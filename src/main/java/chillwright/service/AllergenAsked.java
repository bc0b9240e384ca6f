package chillwright.service;

import chillwright.core.kitchen.Allergen;
import chillwright.core.kitchen.AllergenNaming;
import chillwright.core.log.Folded;
import chillwright.rulebook.AllergenFile;
import chillwright.rulebook.AllergenWords;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * An allergen that a kitchen looks for: one of the law, or one that it names in words of its own.
 *
 * @param ofLaw empty for one in words
 * @param text as asked, or the key of that of the law
 */
public record AllergenAsked(Optional<Allergen> ofLaw, String text) implements AllergenNaming.Names {
  public AllergenAsked {
    Objects.requireNonNull(ofLaw, "ofLaw");
    if (text.isBlank()) {
      throw new IllegalArgumentException("an allergen has a name");
    }
  }

  /**
   * By the key of one of the law, such as "tree_nuts", by a word that tells of one alone, such as
   * "Milk", "leche" or "walnut", or by any other words.
   */
  public static AllergenAsked of(String text) {
    String asked = text.strip();
    List<AllergenWords.Named> told = AllergenFile.shipped().undeclared(asked, Set.of());
    Optional<Allergen> ofLaw =
        Allergen.ofKey(Folded.of(asked).replace(' ', '_').replace('-', '_'))
            .or(() -> told.stream().map(AllergenWords.Named::allergen).findFirst())
            .filter(allergen -> told.size() < 2);
    return new AllergenAsked(ofLaw, ofLaw.map(Allergen::key).orElse(asked));
  }

  @Override
  public boolean isIn(List<Allergen> allergens, Optional<String> others) {
    return ofLaw.filter(allergens::contains).isPresent() || others.flatMap(this::word).isPresent();
  }

  /**
   * The word of a text that tells of it. For one of the law these are the words that tell of it
   * among ingredients; others are looked for as they were asked, wherever they stand.
   */
  public Optional<String> word(String words) {
    if (ofLaw.isPresent()) {
      return AllergenFile.shipped().undeclared(words, Set.of()).stream()
          .filter(named -> named.allergen() == ofLaw.get())
          .map(named -> named.word())
          .findFirst();
    }
    return Optional.of(text).filter(asked -> Folded.isIn(asked, words));
  }
}
