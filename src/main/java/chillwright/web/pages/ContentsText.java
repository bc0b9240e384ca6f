package chillwright.web.pages;

import chillwright.core.kitchen.Allergen;
import chillwright.core.kitchen.Contents;
import chillwright.core.kitchen.Contents.Ingredients;
import chillwright.core.kitchen.TakenOut;
import chillwright.core.log.Folded;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** What is in a lot, in words: on its page, and shorter on its labels. */
final class ContentsText {
  /** So many foods are named on a label, each at that length: the warning must fit whole. */
  private static final int NAMED = 2;

  private static final int NAME_LENGTH = 60;

  private final String food;
  private final Contents contents;
  private final Visitor visitor;

  /**
   * @param food of the lot itself
   */
  ContentsText(String food, Contents contents, Visitor visitor) {
    this.food = food;
    this.contents = contents;
    this.visitor = visitor;
  }

  List<String> allergens() {
    return names(visitor, contents.allergens(), contents.otherAllergens());
  }

  /** Each once, however it was named. */
  static List<String> names(Visitor visitor, List<Allergen> allergens, List<String> others) {
    Map<String, String> names = new LinkedHashMap<>();
    Stream.concat(
            allergens.stream().map(allergen -> visitor.say("allergen." + allergen.key())),
            others.stream())
        .forEach(name -> names.putIfAbsent(Folded.of(name), name));
    return List.copyOf(names.values());
  }

  private String says(TakenOut out) {
    String names = String.join(", ", names(visitor, out.allergens(), out.others()));
    return visitor.say("contents.taken-out", names, out.food());
  }

  /** That the ingredients are those of today, where that may matter; blank where it does not. */
  private String changed() {
    List<String> changed =
        contents.ingredients().stream()
            .map(Ingredients::food)
            .filter(contents.changed()::contains)
            .toList();
    return changed.isEmpty() ? "" : visitor.say("contents.changed", String.join(", ", changed));
  }

  /**
   * What each food was made from. Those of other foods stand in brackets after the name, as 21 CFR
   * 101.4(b)(2) has it for an ingredient that is made of several (the number from memory). The
   * heaviest stands first, 101.4(a)(1), if the kitchen wrote them so.
   */
  List<String> ingredients() {
    boolean isOne = contents.ingredients().size() == 1 && contents.isComplete();
    List<String> all = new ArrayList<>();
    for (Ingredients of : contents.ingredients()) {
      if (isOne || of.food().equals(food)) {
        all.addAll(of.lines());
      } else {
        all.add(of.food() + " (" + String.join(", ", of.lines()) + ")");
      }
    }
    return all;
  }

  /** That something is not known, with every food; blank where all is on file. */
  String gap() {
    return contents.isComplete()
        ? ""
        : visitor.say("contents.gap", String.join(", ", contents.notOnFile()));
  }

  /** The same as a label has room for it. */
  String shortGap() {
    List<String> missing = contents.notOnFile();
    if (missing.isEmpty()) {
      return "";
    }
    if (missing.equals(List.of(food))) {
      return visitor.say("label.gap.own");
    }
    List<String> named = missing.stream().limit(NAMED).map(ContentsText::cut).toList();
    String more = missing.size() > NAMED ? " +" + (missing.size() - NAMED) : "";
    return visitor.say("label.gap", String.join(", ", named) + more);
  }

  private static String cut(String name) {
    boolean fits = name.codePointCount(0, name.length()) <= NAME_LENGTH;
    return fits ? name : name.substring(0, name.offsetByCodePoints(0, NAME_LENGTH)) + "…";
  }

  /** What stands on the page of the lot. */
  LotPageView.Contents shown() {
    List<String> says = new ArrayList<>();
    if (!allergens().isEmpty()) {
      says.add(visitor.say("label.contains", String.join(", ", allergens())));
    } else if (contents.isComplete()) {
      says.add(visitor.say("contents.none-named"));
    }
    contents.takenOut().forEach(out -> says.add(says(out)));
    if (!ingredients().isEmpty()) {
      says.add(visitor.say("label.ingredients", String.join(", ", ingredients())));
    }
    return new LotPageView.Contents(
        gap(), says, changed(), new AllergenNotes(visitor).of(contents));
  }
}
