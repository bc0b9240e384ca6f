package chillwright.storage;

import chillwright.core.keeping.LotOrder;
import chillwright.core.log.Phase;
import chillwright.core.rules.Verdict;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;

/**
 * Which lots a list shows. All that is given must hold. Given an order, the list holds lots on hand
 * only; given a verdict, a place or a day too, unless the phase is one of those that close a lot.
 *
 * @param verdict the lot's verdict at {@code now}
 * @param lastDayBefore its last day of safety is before this day
 * @param bestQualityBefore it is at its best until a day before this one
 * @param goodOn nothing is owed to it, it is not out and it has life left on that day: its last day
 *     of safety, or of a frozen lot its best quality, is that day or later
 * @param order of the list; empty for the one that suits what is asked
 */
public record LotFilter(
    Optional<Phase> phase,
    Optional<String> place,
    Optional<Verdict> verdict,
    Optional<LocalDate> lastDayBefore,
    Optional<LocalDate> bestQualityBefore,
    Optional<LocalDate> goodOn,
    Optional<LotOrder> order,
    Instant now) {
  /** Every lot, as of that moment. */
  public static LotFilter all(Instant now) {
    return new LotFilter(
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        now);
  }
}
