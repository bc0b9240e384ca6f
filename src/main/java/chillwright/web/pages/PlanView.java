package chillwright.web.pages;

import chillwright.print.PlanText.Day;
import java.util.List;

/**
 * A make-ahead plan with the forms that change it.
 *
 * @param verdict whether there is a plan; blank while it has no dish
 * @param leftOut lots that no dish is planned from, with why
 * @param steps what steps hold, such as ovens, and {@code kept} what kept food holds, of what the
 *     kitchen has
 * @param made names lots that dishes became
 * @param thawing what is said of thawing; none where nothing is raw or thawed
 * @param marks lead to the fields that are at fault
 * @param input all of it as text
 * @param volumes the unit of room in its forms; blank for litres
 */
public record PlanView(
    String code,
    String serving,
    String open,
    String verdict,
    PlanRules rules,
    List<Choice> leftOut,
    List<String> conflicts,
    List<String> moved,
    List<Day> days,
    List<String> bounds,
    List<String> pans,
    List<Day> shopping,
    List<Batch> batches,
    PlanForm made,
    List<String> thawing,
    String caution,
    List<String> faults,
    List<Choice> marks,
    PlanForm event,
    PlanForm kitchen,
    List<PlanForm> dishes,
    PlanForm dish,
    List<Choice> steps,
    List<Choice> kept,
    List<Choice> things,
    List<Choice> categories,
    List<String> foods,
    List<Choice> panSizes,
    String input,
    String volumes) {
  /**
   * A dish, and the lots that it became.
   *
   * @param missing how many portions those have too few
   * @param offered other lots of its food, fit to serve it, with where they are
   */
  public record Batch(String dish, List<String> lots, int missing, List<Choice> offered) {
    public Batch {
      offered = List.copyOf(offered);
      lots = List.copyOf(lots);
    }

    /** All of them, as a form sends them. */
    public String known() {
      return String.join(" ", lots);
    }
  }

  public PlanView {
    leftOut = List.copyOf(leftOut);
    conflicts = List.copyOf(conflicts);
    moved = List.copyOf(moved);
    days = List.copyOf(days);
    bounds = List.copyOf(bounds);
    pans = List.copyOf(pans);
    shopping = List.copyOf(shopping);
    panSizes = List.copyOf(panSizes);
    batches = List.copyOf(batches);
    thawing = List.copyOf(thawing);
    faults = List.copyOf(faults);
    marks = List.copyOf(marks);
    dishes = List.copyOf(dishes);
    steps = List.copyOf(steps);
    kept = List.copyOf(kept);
    things = List.copyOf(things);
    categories = List.copyOf(categories);
    foods = List.copyOf(foods);
  }
}
