package chillwright.service;

import chillwright.core.ahead.FrozenLife;
import chillwright.core.ahead.Told;
import chillwright.core.heat.FrozenHistory;
import chillwright.core.heat.FrozenHistory.Reading;
import chillwright.core.heat.LifeModel;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Timeline;
import chillwright.core.log.Word;
import chillwright.service.Places.PlaceReading;
import chillwright.storage.Session;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What the readings of its freezer cost a frozen lot of its quality. Food that was thawed and
 * frozen again is left out: shares of life do not add up over a thaw.
 */
final class FrozenQuality {
  /** Two a day for more than eight months; older time is reckoned as steady. */
  private static final int MOST_READINGS = 500;

  private static final double ZERO_FAHRENHEIT = -160 / 9.0;

  private FrozenQuality() {}

  /** Sentences of quality, moved by the readings; empty where fewer than two tell anything. */
  static List<Told> of(Session session, Timeline timeline, Instant now) {
    List<LogEntry> phases =
        timeline.entries().stream().filter(e -> e.word().phase().isPresent()).toList();
    Optional<LogEntry> frozen =
        phases.stream().filter(entry -> entry.word() == Word.FROZEN).findFirst();
    boolean isFrozen = !phases.isEmpty() && phases.get(phases.size() - 1).word() == Word.FROZEN;
    boolean wasThawed = phases.stream().anyMatch(entry -> entry.word() == Word.THAWING);
    if (frozen.isEmpty() || !isFrozen || wasThawed || timeline.closedAt().isPresent()) {
      return List.of();
    }
    Instant since = frozen.get().happenedAt();
    List<Reading> readings =
        Stays.readings(session, timeline, now, MOST_READINGS).stream()
            .flatMap(reading -> read(reading, since))
            .sorted(Comparator.comparing(Reading::at))
            .toList();
    var months = timeline.food().category().freezer();
    return readings.size() < 2
        ? List.of()
        : new FrozenLife(
                since.atZone(timeline.zone()).toLocalDate(), FrozenHistory.ofReadings(readings))
            .byFactor(months.min(), months.max(), FrozenLife.USUAL_FACTOR);
  }

  private static Stream<Reading> read(PlaceReading reading, Instant since) {
    return reading.standing().stream()
        .filter(entry -> !entry.happenedAt().isBefore(since))
        .flatMap(
            entry ->
                entry
                    .temperature()
                    .map(read -> new Reading(entry.happenedAt(), asPrinted(read.celsiusDegrees())))
                    .stream());
  }

  /** 0 °F and -18 °C are printed as one; a freezer that reads 0 °F loses nothing by the third. */
  private static double asPrinted(double celsius) {
    return celsius <= ZERO_FAHRENHEIT ? Math.min(celsius, LifeModel.REFERENCE) : celsius;
  }
}
