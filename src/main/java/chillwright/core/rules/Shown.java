package chillwright.core.rules;

import chillwright.core.log.LogEntry;
import java.util.Optional;

/** What the readings of a lot have shown so far, as its entries are walked in order of time. */
final class Shown {
  private final Thresholds thresholds;

  /** The last proof of being hot, until the food is read cold. */
  Optional<LogEntry> hotProof = Optional.empty();

  Optional<LogEntry> lastReading = Optional.empty();
  private Optional<LogEntry> lastCold = Optional.empty();
  private Optional<LogEntry> firstWarm = Optional.empty();

  Shown(Thresholds thresholds) {
    this.thresholds = thresholds;
  }

  /**
   * Takes in a reading.
   *
   * @param neverHot whether no cooling was ever opened, so that a warm reading tells by itself
   */
  void read(LogEntry reading, boolean isHot, boolean neverHot) {
    if (isHot) {
      hotProof = Optional.of(reading);
    }
    noteCold(reading, neverHot);
    lastReading = Optional.of(reading);
  }

  void noteCold(LogEntry reading, boolean neverHot) {
    if (thresholds.isCold(reading)) {
      lastCold = Optional.of(reading);
      firstWarm = Optional.empty();
      hotProof = Optional.empty();
    } else if (firstWarm.isEmpty() && (lastCold.isPresent() || neverHot)) {
      firstWarm = Optional.of(reading);
    }
  }

  /** A new cooling says nothing yet of the food being cold. */
  void startsToCool() {
    lastCold = Optional.empty();
    firstWarm = Optional.empty();
  }

  /** Cold-held food counts as cold until its row, unless a reading says otherwise. */
  Reheat reheatFrom(LogEntry row) {
    boolean readsWarm = row.temperature().isPresent() && !thresholds.isCold(row);
    boolean wasWarm = row.temperature().isEmpty() && firstWarm.isPresent();
    if (!readsWarm && !wasWarm) {
      return Reheat.startingAt(row);
    }
    Optional<LogEntry> exact = lastCold.filter(thresholds::isExactlyCold);
    LogEntry latest = exact.or(() -> lastCold.flatMap(cold -> firstWarm)).orElse(row);
    return Reheat.startingBefore(row, lastCold, latest);
  }
}
