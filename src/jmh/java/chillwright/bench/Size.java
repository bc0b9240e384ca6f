package chillwright.bench;

import java.util.List;

/**
 * How much is measured.
 *
 * @param importLots lots of the imported file, of twenty rows each
 * @param historyLots how many lots a kitchen once had, smallest first
 * @param rounds how often an import is run; the best counts
 * @param millis how long a rate is measured, once for each side of a pair and round
 */
record Size(boolean isFull, int importLots, List<Integer> historyLots, int rounds, long millis) {
  /** Lots enough that any start of the service has something to hold. */
  static final int STARTED_LOTS = 10_000;

  Size {
    historyLots = List.copyOf(historyLots);
  }

  static Size of(String name) {
    return switch (name) {
      case "short" -> new Size(false, 5_000, List.of(1_000, STARTED_LOTS), 2, 600);
      case "full" -> new Size(true, 50_000, List.of(1_000, 100_000, 1_000_000), 3, 3_000);
      default -> throw new IllegalArgumentException("the bench is short or full, not " + name);
    };
  }

  /** So often in the full form, half as often in the short one. */
  int samples(int full) {
    return isFull ? full : (full + 1) / 2;
  }

  String importRows() {
    return "%,d rows".formatted(importLots * BenchLog.ROWS_PER_LOT);
  }
}
