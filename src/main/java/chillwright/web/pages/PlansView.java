package chillwright.web.pages;

import java.util.List;

/**
 * The plans of the kitchen, and the forms for a new one.
 *
 * @param form by name, serving time and guests
 * @param marks lead to the fields that are at fault
 * @param text by a text, for those who have one
 */
public record PlansView(
    List<Kept> kept,
    PlanRules rules,
    PlanForm form,
    List<String> faults,
    List<Choice> marks,
    Filled text) {
  /** A plan that is kept: its code, what it is called, and when all is on the table. */
  public record Kept(String code, String name, String serving) {}

  public PlansView {
    kept = List.copyOf(kept);
    faults = List.copyOf(faults);
    marks = List.copyOf(marks);
  }
}
