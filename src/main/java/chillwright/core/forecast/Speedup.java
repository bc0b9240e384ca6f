package chillwright.core.forecast;

import chillwright.core.heat.Reason;
import chillwright.core.heat.Surface;
import chillwright.core.measure.Temperature;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;

/**
 * Something a cook can do so that food cools faster, and what the formula for food that lies still
 * expects of it. No verdict rests on it.
 *
 * @param pans into how many each container is divided; 1 where it stays as it is
 * @param depthInches of the food then
 * @param isDepthAssumed whether nobody logged the depth it is reckoned from
 * @param around what the food stands in then
 * @param window when the limit is reached; empty where {@code none} says why
 */
public record Speedup(
    Act act,
    int pans,
    double depthInches,
    boolean isDepthAssumed,
    Temperature around,
    Surface surface,
    Optional<Window> window,
    Optional<Reason> none) {
  /** What is done. */
  public enum Act {
    DIVIDE("divide"),
    ICE_BATH("ice-bath"),
    MOVING_AIR("moving-air"),
    FREEZER("freezer"),
    STIR("stir");

    private final String key;

    Act(String key) {
      this.key = key;
    }

    /** As it stands in an answer. */
    public String key() {
      return key;
    }
  }

  /** Best guess, and what it is if the surface is 30 % better or worse than printed. */
  public record Window(Instant expected, Instant earliest, Instant latest) {}

  public Speedup {
    Objects.requireNonNull(act, "act");
    Objects.requireNonNull(around, "around");
    Objects.requireNonNull(surface, "surface");
    if (window.isPresent() == none.isPresent()) {
      throw new IllegalArgumentException("either a window or the reason why there is none");
    }
  }
}
