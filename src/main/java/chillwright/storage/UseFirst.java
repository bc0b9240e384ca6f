package chillwright.storage;

import chillwright.core.keeping.Keeping;
import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import java.time.LocalDate;
import java.util.Optional;

/**
 * The order of use as one number, so that one index leads along it: days of safety first, whatever
 * their date, then days of quality, then lots that have neither. No day comes near the steps
 * between: local days since 1970 have five digits until the year 2243.
 */
final class UseFirst {
  private static final long QUALITY = 10_000_000;
  private static final long NEITHER = 2 * QUALITY;

  private UseFirst() {}

  static long of(LotState state) {
    Optional<LocalDate> safety = state.standing().flatMap(Standing::lastDay);
    if (safety.isPresent()) {
      return safety.get().toEpochDay();
    }
    return state
        .standing()
        .map(Standing::keeping)
        .flatMap(UseFirst::quality)
        .map(day -> QUALITY + day.toEpochDay())
        .orElse(NEITHER);
  }

  private static Optional<LocalDate> quality(Keeping keeping) {
    return keeping.bestQualityBy().or(keeping::qualityLimit);
  }
}
