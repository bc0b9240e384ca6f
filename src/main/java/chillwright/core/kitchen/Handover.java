package chillwright.core.kitchen;

import chillwright.core.log.LotId;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;

/**
 * Who goes on with a lot after the shift. A later one of the same lot stands before an earlier.
 *
 * @param by initials of who takes it over
 */
public record Handover(
    LocalDate day, LotId lot, String by, Optional<String> note, Instant writtenAt) {
  public Handover {
    Objects.requireNonNull(day, "day");
    Objects.requireNonNull(lot, "lot");
    Objects.requireNonNull(by, "by");
    Objects.requireNonNull(note, "note");
    Objects.requireNonNull(writtenAt, "writtenAt");
  }
}
