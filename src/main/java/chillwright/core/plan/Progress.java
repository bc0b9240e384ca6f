package chillwright.core.plan;

import java.time.Instant;
import java.util.Optional;

/**
 * How far a dish has come, as its lot tells.
 *
 * @param made when it was made, or its making began
 * @param frozen when it went into the freezer; empty where it has not
 * @param takenOut when it came out; empty where it has not
 */
public record Progress(Instant made, Optional<Instant> frozen, Optional<Instant> takenOut) {}
