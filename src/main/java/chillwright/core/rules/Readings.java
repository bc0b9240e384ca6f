package chillwright.core.rules;

import chillwright.core.log.LogEntry;
import chillwright.core.log.Phase;
import chillwright.core.log.Portions;
import chillwright.core.measure.Temperature;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The readings among some entries, one for each moment of a phase: of several at one instant the
 * warmest counts for cooling and cold, the coolest for cooking, reheating and hot holding. A form
 * gives minutes, so a reading and the row of the next phase often share one: what was written
 * before that row was read in the phase before.
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
    Optional<Phase> phase = Optional.empty();
    boolean isNewPhase = true;
    for (LogEntry entry : entries) {
      boolean isLeaving = Portions.isOutgoing(entry.word());
      Optional<Phase> entered = entry.word().phase().filter(to -> !isLeaving);
      isNewPhase |= entered.isPresent() && !entered.equals(phase);
      phase = entered.isPresent() ? entered : phase;
      if (entry.temperature().isEmpty()) {
        continue;
      }
      int last = kept.size() - 1;
      if (isNewPhase || !kept.get(last).happenedAt().equals(entry.happenedAt())) {
        kept.add(entry);
      } else if (temperature(entry).isWarmerThan(temperature(kept.get(last))) == warmest) {
        kept.set(last, entry);
      }
      isNewPhase = false;
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
