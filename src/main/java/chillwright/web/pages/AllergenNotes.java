package chillwright.web.pages;

import chillwright.core.kitchen.Allergen;
import chillwright.core.kitchen.Contents;
import chillwright.core.kitchen.KnownFood;
import chillwright.rulebook.AllergenFile;
import chillwright.rulebook.AllergenWords;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Where ingredients name what belongs to an allergen that is not declared, the page asks to look
 * again. It adds nothing by itself, and where it is silent it says nothing.
 */
final class AllergenNotes {
  private final AllergenWords words = AllergenFile.shipped();
  private final Visitor visitor;

  AllergenNotes(Visitor visitor) {
    this.visitor = visitor;
  }

  /** Blank where there is nothing to ask. */
  String of(KnownFood food) {
    return of(food.ingredients().orElse(""), food.allergens(), food.otherAllergens().orElse(""));
  }

  String of(Contents contents) {
    String ingredients =
        contents.ingredients().stream()
            .flatMap(food -> food.lines().stream())
            .collect(Collectors.joining("\n"));
    return of(ingredients, contents.allergens(), String.join(", ", contents.otherAllergens()));
  }

  private String of(String ingredients, List<Allergen> allergens, String others) {
    Set<Allergen> declared = new HashSet<>(allergens);
    words.undeclared(others, Set.of()).forEach(named -> declared.add(named.allergen()));
    List<String> says = new ArrayList<>();
    for (AllergenWords.Named named : words.undeclared(ingredients, declared)) {
      String allergen = visitor.say("allergen." + named.allergen().key());
      says.add(visitor.say("contents.named", named.word(), allergen));
    }
    if (!says.isEmpty()) {
      says.add(visitor.say("contents.named.says"));
    }
    return String.join(" ", says);
  }
}
