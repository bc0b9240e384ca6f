package chillwright.service;

import chillwright.core.forecast.Forecast;
import chillwright.core.forecast.Forecaster;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Timeline;
import chillwright.core.measure.Temperature;
import chillwright.core.rules.OpenCooling;
import chillwright.core.rules.RuleSet;
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
    List<LogEntry> standing =
        around.stream().map(PlaceReading::standing).flatMap(Optional::stream).toList();
    return beside(timeline, rules, standing, now);
  }

  /**
   * Of a lot beside what its places read, the newest first. What was read before it began to cool
   * was another place, or another time.
   */
  static List<Forecast> beside(
      Timeline timeline, RuleSet rules, List<LogEntry> around, Instant now) {
    Optional<Instant> since =
        around.isEmpty()
            ? Optional.empty()
            : OpenCooling.of(timeline, rules).map(OpenCooling::since);
    Optional<Temperature> newest =
        around.stream()
            .filter(read -> since.filter(from -> !read.happenedAt().isBefore(from)).isPresent())
            .map(LogEntry::temperature)
            .flatMap(Optional::stream)
            .findFirst();
    return Forecaster.of(timeline, rules, newest, now);
  }

  /** Of a lot; its places are looked up only where it is cooling. */
  static List<Forecast> of(Session session, Timeline timeline, RuleSet rules, Instant now) {
    return OpenCooling.of(timeline, rules).isEmpty()
        ? List.of()
        : of(timeline, rules, Stays.readings(session, timeline, now), now);
  }
}
