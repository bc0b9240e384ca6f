package chillwright.service;

import chillwright.core.ahead.FrozenLife;
import chillwright.core.ahead.Told;
import chillwright.core.ahead.WarmSpell;
import chillwright.core.heat.FrozenHistory;
import chillwright.core.heat.FrozenHistory.Reading;
import chillwright.core.heat.LifeModel;
import chillwright.core.log.Category;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Timeline;
import chillwright.core.log.Word;
import chillwright.service.Places.PlaceReading;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;

/**
 * What the readings of its freezer cost a frozen lot of its quality. Food that was thawed and
 * frozen again is left out: shares of life do not add up over a thaw.
 */
final class FrozenQuality {
  /** Two a day for more than eight months; older time is reckoned as steady. */
  static final int MOST_READINGS = 500;

  private static final double ZERO_FAHRENHEIT = -160 / 9.0;

  private FrozenQuality() {}

  /** When a lot was frozen that is frozen still and was never thawed between. */
  static Optional<Instant> since(Timeline timeline) {
    List<LogEntry> phases =
        timeline.entries().stream().filter(e -> e.word().phase().isPresent()).toList();
    boolean isFrozen = !phases.isEmpty() && phases.get(phases.size() - 1).word() == Word.FROZEN;
    boolean wasThawed = phases.stream().anyMatch(entry -> entry.word() == Word.THAWING);
    return isFrozen && !wasThawed && timeline.closedAt().isEmpty()
        ? phases.stream()
            .filter(entry -> entry.word() == Word.FROZEN)
            .map(LogEntry::happenedAt)
            .findFirst()
        : Optional.empty();
  }

  /**
   * Sentences of quality, moved by the readings; empty where fewer than two tell anything.
   *
   * @param around readings of its places, in any order
   * @param roomDays of food that needs no cold, as its kitchen states them
   * @param now from which the days left are counted
   */
  static List<Told> of(
      Timeline timeline,
      Instant since,
      List<PlaceReading> around,
      OptionalInt roomDays,
      Instant now) {
    List<Reading> readings =
        around.stream()
            .flatMap(reading -> read(reading, since))
            .sorted(Comparator.comparing(Reading::at))
            .toList();
    if (readings.size() < 2) {
      return List.of();
    }
    Category category = timeline.food().category();
    FrozenHistory history = FrozenHistory.ofReadings(readings);
    FrozenLife life = new FrozenLife(timeline.day(since), history, timeline.day(now));
    Category.Range months = category.freezer();
    boolean isThawed = life.hasThawed() && !category.tcs() && months.max().isPresent();
    Optional<WarmSpell> warm =
        spell(readings, isThawed ? LifeModel.WARMEST : LifeModel.REFERENCE, timeline.zone());
    List<Told> dates =
        isThawed
            ? life.thawedWithoutCold(
                months.min().isPresent() ? months.min() : months.max(),
                roomDays,
                warm.map(spell -> spell.from().toLocalDate()))
            : life.byFactor(months.min(), months.max(), FrozenLife.USUAL_FACTOR);
    return dates.isEmpty()
        ? dates
        : Stream.concat(warm.map(WarmSpell::told).stream(), dates.stream()).toList();
  }

  /** From the first reading above that temperature to the first one after the last of them. */
  private static Optional<WarmSpell> spell(List<Reading> readings, double celsius, ZoneId zone) {
    List<Reading> warm = readings.stream().filter(each -> each.celsius() > celsius).toList();
    if (warm.isEmpty()) {
      return Optional.empty();
    }
    int last = readings.lastIndexOf(warm.get(warm.size() - 1));
    Instant until = readings.get(Math.min(last + 1, readings.size() - 1)).at();
    return Optional.of(
        new WarmSpell(
            warm.get(0).at().atZone(zone).toOffsetDateTime(),
            until.atZone(zone).toOffsetDateTime()));
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
