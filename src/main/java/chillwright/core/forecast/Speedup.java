package chillwright.core.forecast;

import chillwright.core.measure.Depth;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;

/**
 * Something a cook can do so that food cools faster. No verdict rests on it.
 *
 * @param depth of the food then
 * @param isDepthAssumed whether nobody logged the depth it is reckoned from
 * @param pans into how many each container is divided; 1 where it stays as it is
 * @param window when the limit is reached then; empty where no printed figure tells
 */
public record Speedup(
    Act act, Depth depth, boolean isDepthAssumed, int pans, Optional<Window> window) {
  /** What is done. */
  public enum Act {
    STIRRED_ICE_BATH("stirred-ice-bath"),
    ICE_BATH("ice-bath"),
    FREEZER("freezer"),
    MOVING_AIR("moving-air"),
    DIVIDE("divide"),
    STIR("stir"),
    ICE_IN_FOOD("ice-in-food");

    private final String key;

    Act(String key) {
      this.key = key;
    }

    /** As it stands in an answer. */
    public String key() {
      return key;
    }
  }

  /**
   * When the limit is reached if it is done now.
   *
   * @param latest empty where nothing bounds it
   */
  public record Window(Instant expected, Instant earliest, Optional<Instant> latest) {}

  public Speedup {
    Objects.requireNonNull(act, "act");
    Objects.requireNonNull(depth, "depth");
  }
}
