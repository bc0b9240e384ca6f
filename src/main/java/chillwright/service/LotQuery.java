package chillwright.service;

import chillwright.core.log.Phase;
import chillwright.core.rules.Verdict;
import java.time.LocalDate;
import java.util.Optional;

/**
 * Which lots are asked for; all that is given must hold. With a verdict, a place or a last day only
 * lots on hand are listed, unless the phase is one that closes a lot. The order is the newest lot
 * first; for the verdicts {@code out}, {@code not-shown} and {@code pending} and for last days the
 * longest overdue, or the next to change, first.
 *
 * @param verdict the lot's verdict now
 * @param lastDayBefore its last day of safety is before this day
 */
public record LotQuery(
    Optional<Phase> phase,
    Optional<String> place,
    Optional<Verdict> verdict,
    Optional<LocalDate> lastDayBefore) {
  /** Every lot. */
  public static final LotQuery ALL =
      new LotQuery(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
}
