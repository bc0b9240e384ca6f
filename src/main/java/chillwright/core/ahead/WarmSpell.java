package chillwright.core.ahead;

import java.time.OffsetDateTime;

/**
 * Since when a freezer was too warm, and until when, both as its clock showed.
 *
 * @param until when it was found cold again, or was last looked at
 */
public record WarmSpell(OffsetDateTime from, OffsetDateTime until) {
  public WarmSpell {
    if (until.isBefore(from)) {
      throw new IllegalArgumentException("until " + until + " before " + from);
    }
  }

  /** As a sentence. */
  public Told told() {
    return Told.of(
        "frozen-life.warm", Filled.moment("warmFrom", from), Filled.moment("warmUntil", until));
  }
}
