package chillwright.core.measure;

import java.time.Duration;
import java.util.Optional;

/**
 * An elapsed time known only within bounds, because between two readings nobody looked. {@code
 * shortest} is exclusive where it ends at a reading still on the wrong side of a limit (it was
 * still too warm then); {@code longest} is inclusive. Empty where the record gives no such bound.
 */
public record Elapsed(
    Optional<Duration> shortest, Optional<Duration> longest, Optional<Duration> estimate) {
  /** Nothing is known of this time. */
  public static final Elapsed UNKNOWN =
      new Elapsed(Optional.empty(), Optional.empty(), Optional.empty());
}
