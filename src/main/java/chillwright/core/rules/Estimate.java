package chillwright.core.rules;

import chillwright.core.log.Details;
import chillwright.core.log.LogEntry;
import chillwright.core.measure.Limit;
import chillwright.core.measure.Temperature;
import chillwright.core.rules.Shape.Reach;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * The best guess at how long a cooling took, for information only: it never makes a verdict.
 *
 * <p>A crossing between two readings is read off the curve along which the difference to the
 * surroundings falls exponentially, T(t) = Ta + (T1 - Ta) e^(-kt) (Newton's law of cooling), where
 * the surroundings were logged and are colder than the limit and both readings; else off a straight
 * line. Where the start is only known by a row without a temperature, that row counts as the start.
 */
record Estimate(Optional<Duration> elapsed, boolean isLogLinear) {
  private static final Estimate NONE = new Estimate(Optional.empty(), false);

  static Estimate of(Cycle cycle, Rule rule, Crossing crossing) {
    Optional<Temperature> air = lastAir(crossing.considered());
    Optional<Instant> start = start(cycle, rule, air);
    Optional<Instant> end = end(rule, crossing, air);
    if (start.isEmpty() || end.isEmpty() || end.get().isBefore(start.get())) {
      return NONE;
    }
    boolean isLogLinear = air.isPresent() && isBelow(air.get(), crossing, Crossing.to(rule));
    return new Estimate(
        Optional.of(Duration.ofSeconds(Duration.between(start.get(), end.get()).toSeconds())),
        isLogLinear);
  }

  private static Optional<Temperature> lastAir(List<LogEntry> readings) {
    return readings.stream()
        .map(LogEntry::details)
        .map(Details::air)
        .flatMap(Optional::stream)
        .reduce((first, later) -> later);
  }

  private static Optional<Instant> start(Cycle cycle, Rule rule, Optional<Temperature> air) {
    Cycle.Start bounds = cycle.start(rule);
    if (bounds.proof().isEmpty()) {
      return Optional.empty();
    }
    LogEntry proof = bounds.proof().get();
    Optional<LogEntry> below = bounds.latest();
    Optional<Limit> from = ((Reach) rule.shape()).from();
    boolean canInterpolate =
        !cycle.startsAtRow
            && proof.temperature().isPresent()
            && below.isPresent()
            && below.get().happenedAt().isAfter(proof.happenedAt())
            && from.isPresent();
    return Optional.of(
        canInterpolate ? between(proof, below.get(), from.get(), air) : proof.happenedAt());
  }

  private static Optional<Instant> end(Rule rule, Crossing crossing, Optional<Temperature> air) {
    if (crossing.reached().isEmpty()) {
      return Optional.empty();
    }
    LogEntry reached = crossing.reached().get();
    if (Crossing.to(rule).isExactly(Readings.temperature(reached))) {
      return Optional.of(reached.happenedAt());
    }
    return crossing.lastAbove().map(above -> between(above, reached, Crossing.to(rule), air));
  }

  private static boolean isBelow(Temperature air, Crossing crossing, Limit limit) {
    return crossing
            .reached()
            .map(Readings::temperature)
            .filter(r -> r.isWarmerThan(air))
            .isPresent()
        && limit.in(air.scale()).isWarmerThan(air);
  }

  /** The moment between two readings at which the limit was crossed. */
  private static Instant between(
      LogEntry warm, LogEntry cold, Limit limit, Optional<Temperature> air) {
    double from = Readings.temperature(warm).celsiusDegrees();
    double to = Readings.temperature(cold).celsiusDegrees();
    double at = limit.in(Readings.temperature(cold).scale()).celsiusDegrees();
    double share = (from - at) / (from - to);
    if (air.isPresent()) {
      double around = air.get().celsiusDegrees();
      if (around < to && around < at) {
        share =
            Math.log((from - around) / (at - around)) / Math.log((from - around) / (to - around));
      }
    }
    double millis = Duration.between(warm.happenedAt(), cold.happenedAt()).toMillis();
    return warm.happenedAt().plusMillis(Math.round(millis * Math.max(0, Math.min(1, share))));
  }
}
