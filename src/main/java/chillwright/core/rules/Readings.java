package chillwright.core.rules;

import chillwright.core.log.LogEntry;
import chillwright.core.measure.Temperature;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The readings among some entries, one for each moment: of several at one instant the warmest
 * counts for cooling and cold, the coolest for cooking, reheating and hot holding.
 */
final class Readings {
  private Readings() {}

  static List<LogEntry> warmest(List<LogEntry> entries) {
    return onePerMoment(entries, true);
  }

  static List<LogEntry> coolest(List<LogEntry> entries) {
    return onePerMoment(entries, false);
  }

  private static List<LogEntry> onePerMoment(List<LogEntry> entries, boolean warmest) {
    List<LogEntry> kept = new ArrayList<>();
    for (LogEntry entry : entries) {
      if (entry.temperature().isEmpty()) {
        continue;
      }
      int last = kept.size() - 1;
      if (last < 0 || !kept.get(last).happenedAt().equals(entry.happenedAt())) {
        kept.add(entry);
      } else if (temperature(entry).isWarmerThan(temperature(kept.get(last))) == warmest) {
        kept.set(last, entry);
      }
    }
    return kept;
  }

  /** Whether that very reading, not one that says the same, stands at a place of the list. */
  @SuppressWarnings("ReferenceEquality")
  static boolean isAt(List<LogEntry> readings, int place, LogEntry reading) {
    return place < readings.size() && readings.get(place) == reading;
  }

  static Temperature temperature(LogEntry reading) {
    return reading.temperature().orElseThrow();
  }

  static List<LogEntry> upTo(List<LogEntry> readings, Instant last) {
    if (readings.isEmpty() || last.equals(Instant.MAX)) {
      return readings;
    }
    return readings.stream().filter(reading -> !reading.happenedAt().isAfter(last)).toList();
  }

  static Optional<LogEntry> last(List<LogEntry> readings) {
    return readings.isEmpty() ? Optional.empty() : Optional.of(readings.get(readings.size() - 1));
  }
}
