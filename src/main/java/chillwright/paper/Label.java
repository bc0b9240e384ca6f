package chillwright.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * One label, in words. All but the extras is printed on every sheet.
 *
 * @param food its name; shortened only where it does not fit in its lines at the least size
 * @param address of the lot's page, printed as a QR code; blank for none
 * @param governs what to do and by when
 * @param allergens printed bold, and what of them is not known
 * @param facts the lot's code, which is always there, then the days on which it was made, frozen or
 *     thawed
 * @param extras what else helps, the most important first; the last ones give way where there is no
 *     room
 * @param statement of the kitchen, on every label; blank for none
 * @param terms the label's own words
 */
public record Label(
    String food,
    String address,
    List<String> governs,
    String allergens,
    List<String> facts,
    List<Extra> extras,
    String statement,
    Terms terms) {
  /**
   * A line that gives way where there is no room.
   *
   * @param name what it is, to say that it was left out
   * @param text as it is printed
   */
  public record Extra(String name, String text) {
    public Extra {
      Objects.requireNonNull(name, "name");
      Objects.requireNonNull(text, "text");
    }
  }

  /**
   * Words that the label needs beside what it says of the food.
   *
   * @param notes what stands before the room to write; blank where there is none
   * @param boxes said only where letters of the label cannot be drawn, and stand as boxes
   * @param wholeName what is left out where the name of the food is shortened
   * @param code what is left out where the QR code is
   * @param legible what is left out where letters are smaller than they should be
   */
  public record Terms(String notes, String boxes, String wholeName, String code, String legible) {}

  public Label {
    Objects.requireNonNull(food, "food");
    Objects.requireNonNull(address, "address");
    governs = List.copyOf(governs);
    Objects.requireNonNull(allergens, "allergens");
    facts = List.copyOf(facts);
    extras = List.copyOf(extras);
    Objects.requireNonNull(statement, "statement");
    Objects.requireNonNull(terms, "terms");
  }

  /** All that people wrote into it. */
  String written() {
    StringBuilder all = new StringBuilder(food + allergens + String.join("", facts) + statement);
    extras.forEach(extra -> all.append(extra.text()));
    return all.toString();
  }

  /** The same, with a word on its boxes before anything else that must be printed. */
  Label withBoxes() {
    List<String> first = new ArrayList<>(List.of(terms.boxes()));
    first.addAll(governs);
    return new Label(food, address, first, allergens, facts, extras, statement, terms);
  }

  /** The same with other extras. */
  Label with(List<Extra> others) {
    return new Label(food, address, governs, allergens, facts, others, statement, terms);
  }
}
