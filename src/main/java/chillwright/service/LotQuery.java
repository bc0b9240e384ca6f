package chillwright.service;

import chillwright.core.keeping.LotOrder;
import chillwright.core.log.Phase;
import chillwright.core.rules.Verdict;
import java.time.LocalDate;
import java.util.Optional;

/**
 * Which lots are asked for; all that is given must hold. With a verdict, a place or a day only lots
 * on hand are listed, unless the phase is one that closes a lot; with an order always. The order
 * is, unless one is named, the newest lot first; for the verdicts {@code out}, {@code not-shown}
 * and {@code pending} and for days the longest overdue, or the next to change, first.
 *
 * @param verdict the lot's verdict now
 * @param lastDayBefore its last day of safety is before this day
 * @param bestQualityBefore it is at its best until a day before this one
 * @param goodOn nothing is owed to it, it is not out and it has life left on that day: its last day
 *     of safety, or of a frozen lot its best quality, is that day or later; in the order of use
 */
public record LotQuery(
    Optional<Phase> phase,
    Optional<String> place,
    Optional<Verdict> verdict,
    Optional<LocalDate> lastDayBefore,
    Optional<LocalDate> bestQualityBefore,
    Optional<LocalDate> goodOn,
    Optional<LotOrder> order) {
  /** Every lot. */
  public static final LotQuery ALL =
      new LotQuery(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty());

  /** Those in one phase. */
  public LotQuery in(Phase wanted) {
    return new LotQuery(
        Optional.of(wanted), place, verdict, lastDayBefore, bestQualityBefore, goodOn, order);
  }

  /** Those in one place. */
  public LotQuery at(String wanted) {
    return new LotQuery(
        phase, Optional.of(wanted), verdict, lastDayBefore, bestQualityBefore, goodOn, order);
  }

  /** Those with one verdict now. */
  public LotQuery with(Verdict wanted) {
    return new LotQuery(
        phase, place, Optional.of(wanted), lastDayBefore, bestQualityBefore, goodOn, order);
  }

  /** Those whose last day of safety is before that day. */
  public LotQuery lastDayBefore(LocalDate day) {
    return new LotQuery(phase, place, verdict, Optional.of(day), bestQualityBefore, goodOn, order);
  }

  /** Those at their best until a day before that one. */
  public LotQuery bestQualityBefore(LocalDate day) {
    return new LotQuery(phase, place, verdict, lastDayBefore, Optional.of(day), goodOn, order);
  }

  /** Those with life left on that day, and nothing against them. */
  public LotQuery goodOn(LocalDate day) {
    return new LotQuery(
        phase, place, verdict, lastDayBefore, bestQualityBefore, Optional.of(day), order);
  }

  /** The same in that order. */
  public LotQuery in(LotOrder wanted) {
    return new LotQuery(
        phase, place, verdict, lastDayBefore, bestQualityBefore, goodOn, Optional.of(wanted));
  }
}
