package chillwright.rulebook;

import chillwright.core.kitchen.Allergen;
import chillwright.rulebook.AllergenWords.Entry;
import java.util.List;

/** The shipped words that tell of allergens, from a file that can be edited without Java. */
public final class AllergenFile {
  /** Read when first asked for. */
  private static final class OfThisJar {
    static final AllergenWords READ = new AllergenWords(entries());
  }

  private AllergenFile() {}

  public static AllergenWords shipped() {
    return OfThisJar.READ;
  }

  static List<Entry> entries() {
    String name = "allergens.yaml";
    Spot whole = new Spot(name, "", YamlText.tree(Shipped.text(name)));
    return whole.at("allergens").items().stream().map(AllergenFile::entry).toList();
  }

  private static Entry entry(Spot spot) {
    return new Entry(
        Allergen.ofKey(spot.text("allergen")).orElseThrow(),
        spot.at("words").items().stream().map(Spot::text).toList(),
        spot.at("but").items().stream().map(Spot::text).toList(),
        spot.text("source"));
  }
}
