package chillwright.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * One label, in words.
 *
 * @param food its name; shortened where it does not fit
 * @param address of the lot's page, printed as a QR code
 * @param governs what to do and by when; always printed whole
 * @param facts the lot's code first, then dates and what else helps; the last ones give way first
 *     where there is no room
 * @param allergens printed bold, and what of them is not known; blank for none
 * @param ingredients blank for none
 * @param statement of the kitchen, on every label; blank for none
 * @param notes what stands before the room to write
 * @param boxes said only where letters of the label cannot be drawn, and stand as boxes
 */
public record Label(
    String food,
    String address,
    List<String> governs,
    List<String> facts,
    String allergens,
    String ingredients,
    String statement,
    String notes,
    String boxes) {
  public Label {
    Objects.requireNonNull(food, "food");
    Objects.requireNonNull(address, "address");
    governs = List.copyOf(governs);
    facts = List.copyOf(facts);
    Objects.requireNonNull(boxes, "boxes");
  }

  /** All that people wrote into it. */
  String written() {
    return food + allergens + ingredients + String.join("", facts);
  }

  /** The same, with a word on its boxes before anything else that must be printed. */
  Label withBoxes() {
    List<String> first = new ArrayList<>(List.of(boxes));
    first.addAll(governs);
    return new Label(food, address, first, facts, allergens, ingredients, statement, notes, boxes);
  }
}
