package chillwright.web.pages;

import java.util.List;

/**
 * The plans of the kitchen, and the forms for a new one.
 *
 * @param form by name, serving time and guests
 * @param text by a text, for those who have one
 */
public record PlansView(
    List<Kept> kept, PlanRules rules, PlanForm form, List<String> faults, Filled text) {
  /** A plan that is kept: its code, what it is called, and when all is on the table. */
  public record Kept(String code, String name, String serving) {}

  public PlansView {
    kept = List.copyOf(kept);
    faults = List.copyOf(faults);
  }
}
