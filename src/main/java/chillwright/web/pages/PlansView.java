package chillwright.web.pages;

import chillwright.print.PlanText.Day;
import java.util.List;

/**
 * A make-ahead plan, or the form for one.
 *
 * @param code of the plan; blank where a new one is asked for
 * @param kept codes of all plans
 * @param serving when all is on the table; blank without a plan
 * @param verdict whether there is a plan; blank without one
 * @param batches the dishes, for a batch of each
 */
public record PlansView(
    String code,
    List<String> kept,
    String serving,
    String verdict,
    List<String> conflicts,
    List<Day> days,
    List<String> bounds,
    List<Batch> batches,
    String caution,
    Filled form) {
  /** A dish that may become a batch, with the address that offers it. */
  public record Batch(String dish, String address) {}

  public PlansView {
    kept = List.copyOf(kept);
    conflicts = List.copyOf(conflicts);
    days = List.copyOf(days);
    bounds = List.copyOf(bounds);
    batches = List.copyOf(batches);
  }
}
