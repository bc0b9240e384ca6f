package chillwright.service;

import chillwright.core.forecast.Forecast;
import chillwright.core.forecast.Forecaster;
import chillwright.core.forecast.Speedups;
import chillwright.core.heat.Surface;
import chillwright.core.log.Details;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Timeline;
import chillwright.core.measure.Temperature;
import chillwright.core.rules.OpenCooling;
import chillwright.core.rules.RuleSet;
import chillwright.rulebook.Handbook;
import chillwright.service.Places.PlaceReading;
import chillwright.storage.Session;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Forecasts of stored lots: what is around the food is what its place last read. */
final class Forecasts {
  private Forecasts() {}

  /** Of a lot whose readings of places are at hand, the newest first. */
  static List<Forecast> of(
      Timeline timeline, RuleSet rules, List<PlaceReading> around, Instant now) {
    return told(timeline, rules, newest(around), now);
  }

  /** Of a lot; its places are looked up only where it is cooling. */
  static List<Forecast> of(Session session, Timeline timeline, RuleSet rules, Instant now) {
    return OpenCooling.of(timeline, rules).isEmpty()
        ? List.of()
        : of(timeline, rules, Stays.readings(session, timeline, now), now);
  }

  /** Each limit's forecast with what would bring the food there sooner. */
  static List<Forecast> told(
      Timeline timeline, RuleSet rules, Optional<Temperature> around, Instant now) {
    List<Forecast> forecasts = Forecaster.of(timeline, rules, around, now);
    if (forecasts.isEmpty()) {
      return forecasts;
    }
    Speedups speedups = speedups(Handbook.shipped());
    return forecasts.stream().map(forecast -> speedups.beside(forecast, timeline)).toList();
  }

  private static Speedups speedups(Handbook handbook) {
    return new Speedups(
        handbook.foods().stream()
            .filter(food -> food.key().equals("beef_stew"))
            .findFirst()
            .orElseThrow(),
        surface(handbook, "still_air"),
        surface(handbook, "moving_air"),
        surface(handbook, "stirred_bath"),
        handbook.pans());
  }

  private static Surface surface(Handbook handbook, String key) {
    return handbook.surfaces().stream()
        .filter(surface -> surface.key().equals(key))
        .findFirst()
        .orElseThrow();
  }

  private static Optional<Temperature> newest(List<PlaceReading> readings) {
    return readings.stream()
        .map(PlaceReading::standing)
        .flatMap(Optional::stream)
        .map(LogEntry::details)
        .map(Details::temperature)
        .flatMap(Optional::stream)
        .findFirst();
  }
}
