package chillwright.core.forecast;

import chillwright.core.forecast.CoolingCurve.Point;
import chillwright.core.forecast.Forecast.Basis;
import chillwright.core.forecast.Forecast.Doubt;
import chillwright.core.forecast.Forecast.Target;
import chillwright.core.log.Details;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Timeline;
import chillwright.core.measure.Depth;
import chillwright.core.measure.Limit;
import chillwright.core.measure.Temperature;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.OpenCooling;
import chillwright.core.rules.OpenCooling.Awaited;
import chillwright.core.rules.RuleSet;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Forecasts the limits of a cooling by the curve of its newest readings. */
public final class Forecaster {
  /** Scatter above which the readings do not lie on one curve. */
  private static final double SCATTER = 0.05;

  /** A refrigerator as reckoned with where nobody logged the surroundings: 38 °F. */
  private static final Temperature REFRIGERATOR = Temperature.fahrenheit(38);

  /** Long past its last limit nobody waits for food to cool. */
  private static final Duration WAITED_FOR = Duration.ofHours(6);

  private final OpenCooling cooling;
  private final List<LogEntry> readings;
  private final Optional<Temperature> logged;
  private final Optional<Depth> depth;
  private final Instant now;

  private Forecaster(
      OpenCooling cooling, Timeline timeline, Optional<Temperature> around, Instant now) {
    this.cooling = cooling;
    this.now = now;
    Instant since = undisturbedSince(cooling, timeline);
    this.readings =
        cooling.readings().stream().filter(r -> !r.happenedAt().isBefore(since)).toList();
    this.logged = lastAir(timeline, since).or(() -> around);
    this.depth = lastDepth(timeline);
  }

  /**
   * The forecasts of a lot that is cooling, one for each limit it still waits for.
   *
   * @param around what the place of the lot last read, where its own rows do not tell
   * @return empty where nothing is cooling
   */
  public static List<Forecast> of(
      Timeline timeline, RuleSet rules, Optional<Temperature> around, Instant now) {
    Optional<OpenCooling> open =
        OpenCooling.of(timeline, rules).filter(cooling -> isWaitedFor(cooling, now));
    if (open.isEmpty()) {
      return List.of();
    }
    Forecaster forecaster = new Forecaster(open.get(), timeline, around, now);
    return open.get().awaited().stream().map(forecaster::whole).toList();
  }

  private static boolean isWaitedFor(OpenCooling cooling, Instant now) {
    return cooling.awaited().stream()
        .anyMatch(
            awaited -> awaited.deadline().filter(d -> d.plus(WAITED_FOR).isBefore(now)).isEmpty());
  }

  /**
   * From the last row on that moved the food, divided it or did something to it, or from the last
   * reading that rose: what came before lies on another curve.
   */
  private static Instant undisturbedSince(OpenCooling cooling, Timeline timeline) {
    Instant since = Instant.MIN;
    Optional<String> place = Optional.empty();
    for (LogEntry entry : timeline.entries()) {
      Optional<String> next = entry.details().place();
      boolean isElsewhere = next.isPresent() && !next.equals(place);
      boolean isHandled =
          switch (entry.word()) {
            case READING, COOKED, PREPARED, RECEIVED, CORRECTION, SERVED, DISCARDED, PORTIONS ->
                false;
            default -> true;
          };
      if (isElsewhere || isHandled) {
        since = entry.happenedAt();
      }
      place = next.isPresent() ? next : place;
    }
    List<LogEntry> read = cooling.readings();
    for (int i = 1; i < read.size(); i++) {
      boolean isRise = celsius(read.get(i)) > celsius(read.get(i - 1));
      if (isRise && read.get(i).happenedAt().isAfter(since)) {
        since = read.get(i).happenedAt();
      }
    }
    return since;
  }

  private static Optional<Temperature> lastAir(Timeline timeline, Instant since) {
    return timeline.entries().stream()
        .filter(entry -> !entry.happenedAt().isBefore(since))
        .map(LogEntry::details)
        .map(Details::air)
        .flatMap(Optional::stream)
        .reduce((first, later) -> later);
  }

  private static Optional<Depth> lastDepth(Timeline timeline) {
    return timeline.entries().stream()
        .map(entry -> entry.details().depth())
        .flatMap(Optional::stream)
        .reduce((first, later) -> later);
  }

  /** With what would bring it there sooner. */
  private Forecast whole(Awaited awaited) {
    Forecast forecast = forecast(awaited);
    if (readings.isEmpty()) {
      return forecast;
    }
    Temperature newest = readings.get(readings.size() - 1).temperature().orElseThrow();
    double around = logged.orElse(REFRIGERATOR).celsiusDegrees();
    return forecast.with(
        new Speedups(newest, around, celsius(awaited.limit()), depth).of(forecast));
  }

  private Forecast forecast(Awaited awaited) {
    List<Point> points = points();
    if (CurveForecast.apart(points).size() < 2) {
      return untold(awaited, Doubt.ONE_READING);
    }
    Temperature around = logged.orElse(REFRIGERATOR);
    double limit = celsius(awaited.limit());
    if (limit <= around.celsiusDegrees()) {
      return untold(
          awaited, logged.isPresent() ? Doubt.NEVER_THERE : Doubt.SURROUNDINGS_NOT_LOGGED);
    }
    return CurveForecast.of(points, around.celsiusDegrees(), limit)
        .map(window -> told(awaited, around, window))
        .orElseGet(() -> untold(awaited, Doubt.NOT_FALLING));
  }

  private Forecast untold(Awaited awaited, Doubt doubt) {
    Optional<Temperature> around =
        doubt == Doubt.SURROUNDINGS_NOT_LOGGED ? Optional.of(REFRIGERATOR) : logged;
    Basis basis = new Basis(readings.size(), around, List.of(doubt));
    return new Forecast(
        awaited, now, Optional.empty(), Optional.empty(), Optional.empty(), target(awaited), basis);
  }

  private Forecast told(Awaited awaited, Temperature around, CurveForecast window) {
    Optional<Instant> latest = window.latest().stream().mapToObj(this::moment).findFirst();
    return new Forecast(
        awaited,
        now,
        Optional.of(moment(window.expected())),
        Optional.of(moment(window.earliest())),
        latest.filter(moment -> logged.isPresent()),
        target(awaited),
        new Basis(window.readings(), Optional.of(around), doubts(window)));
  }

  private List<Doubt> doubts(CurveForecast window) {
    List<Doubt> doubts = new ArrayList<>();
    if (logged.isEmpty()) {
      doubts.add(Doubt.SURROUNDINGS_NOT_LOGGED);
    }
    if (window.readings() == 2) {
      doubts.add(Doubt.TWO_READINGS);
    }
    if (window.scatter() > SCATTER) {
      doubts.add(Doubt.NOT_ONE_CURVE);
    }
    return doubts;
  }

  private List<Point> points() {
    return readings.stream().map(reading -> new Point(hours(reading), celsius(reading))).toList();
  }

  /**
   * What the food must read half way to the limit's last moment to be on the curve that meets it.
   * Down to a whole degree, in the scale of the newest reading.
   */
  private Optional<Target> target(Awaited awaited) {
    Optional<Instant> last = awaited.deadline();
    if (readings.isEmpty() || last.filter(now::isBefore).isEmpty()) {
      return Optional.empty();
    }
    LogEntry newest = readings.get(readings.size() - 1);
    double around = logged.orElse(REFRIGERATOR).celsiusDegrees();
    double limit = celsius(awaited.limit());
    double from = celsius(newest);
    Instant by = halfWay(newest.happenedAt(), last.get());
    double whole = hours(newest.happenedAt(), last.get());
    if (limit <= around || from <= limit || whole <= 0) {
      return Optional.empty();
    }
    double share = hours(newest.happenedAt(), by) / whole;
    double there = around + (from - around) * Math.pow((limit - around) / (from - around), share);
    return Optional.of(new Target(floor(there, newest.temperature().orElseThrow().scale()), by));
  }

  private Instant halfWay(Instant newest, Instant last) {
    Instant from = now.isAfter(newest) ? now : newest;
    Duration half = Duration.between(from, last).dividedBy(2);
    return from.plus(half).truncatedTo(ChronoUnit.MINUTES);
  }

  private static Temperature floor(double celsius, Scale scale) {
    return scale == Scale.CELSIUS
        ? Temperature.celsius(Math.floor(celsius))
        : Temperature.fahrenheit(Math.floor(celsius * 9 / 5 + 32));
  }

  private static double celsius(LogEntry reading) {
    return reading.temperature().orElseThrow().celsiusDegrees();
  }

  /** In the scale of the readings, as the judge compares it. */
  private double celsius(Limit limit) {
    LogEntry newest = cooling.readings().get(cooling.readings().size() - 1);
    return limit.in(newest.temperature().orElseThrow().scale()).celsiusDegrees();
  }

  private double hours(LogEntry reading) {
    return hours(readings.get(0).happenedAt(), reading.happenedAt());
  }

  private static double hours(Instant from, Instant to) {
    return Duration.between(from, to).toMillis() / 3_600_000.0;
  }

  /** What the newest reading does not show to be there, is told for a minute after it or later. */
  private Instant moment(double hours) {
    Instant newest = readings.get(readings.size() - 1).happenedAt();
    Instant next = newest.truncatedTo(ChronoUnit.MINUTES).plusSeconds(60);
    Instant told = readings.get(0).happenedAt().plusSeconds(Math.round(hours * 60) * 60);
    return told.isAfter(next) ? told : next;
  }
}
