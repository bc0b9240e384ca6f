package chillwright.core.plan;

import java.time.Duration;
import java.util.Map;

/**
 * One step of the cook's own work.
 *
 * @param lasts longer than zero
 * @param uses what it holds while it lasts, by the names of what the kitchen has; amounts above
 *     zero
 */
public record Step(String name, Duration lasts, Map<String, Double> uses) {
  public Step {
    if (lasts.isNegative() || lasts.isZero()) {
      throw new IllegalArgumentException("a step takes time: " + name);
    }
    uses = Map.copyOf(uses);
  }
}
