package chillwright.core.plan;

import chillwright.core.keeping.Keeping;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * How far a dish has come, as its lot tells.
 *
 * @param made when it was made, or its making began
 * @param frozen when it went into the freezer; empty where it has not
 * @param takenOut when it came out; empty where it has not
 * @param keeping until when the lot, and each of the parts it was divided into, keeps; none where
 *     that is not known
 */
public record Progress(
    Instant made, Optional<Instant> frozen, Optional<Instant> takenOut, List<Keeping> keeping) {
  public Progress {
    keeping = List.copyOf(keeping);
  }

  /** Of which no more is known. */
  public Progress(Instant made, Optional<Instant> frozen, Optional<Instant> takenOut) {
    this(made, frozen, takenOut, List.of());
  }

  boolean isInFreezer() {
    return frozen.isPresent() && takenOut.isEmpty();
  }
}
