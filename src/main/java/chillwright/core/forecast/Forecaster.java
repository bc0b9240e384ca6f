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
import java.util.function.Function;

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
  private final List<Point> points;
  private final Optional<Temperature> logged;
  private final Temperature around;
  private final Optional<Depth> depth;
  private final Instant now;

  /** Of the readings that count; empty where they do not fall. Fitted once for all limits. */
  private final Optional<CurveForecast.Fit> fit;

  private Forecaster(
      OpenCooling cooling, Timeline timeline, Optional<Temperature> placeRead, Instant now) {
    this.cooling = cooling;
    this.now = now;
    Instant since = undisturbedSince(cooling, timeline);
    this.readings = since(since, cooling.readings());
    this.points = CurveForecast.apart(points(readings));
    this.logged = newest(timeline, since, Details::air).or(() -> placeRead);
    this.around = logged.orElse(REFRIGERATOR);
    this.depth = newest(timeline, Instant.MIN, Details::depth);
    this.fit =
        points.size() < 2 ? Optional.empty() : CurveForecast.fit(points, around.celsiusDegrees());
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

  private static List<LogEntry> since(Instant since, List<LogEntry> all) {
    int first = 0;
    while (first < all.size() && all.get(first).happenedAt().isBefore(since)) {
      first++;
    }
    return all.subList(first, all.size());
  }

  private static List<Point> points(List<LogEntry> readings) {
    List<Point> points = new ArrayList<>(readings.size());
    for (LogEntry reading : readings) {
      double hours = hours(readings.get(0).happenedAt(), reading.happenedAt());
      points.add(new Point(hours, celsius(reading)));
    }
    return points;
  }

  /** What the newest row says that has the cell, of those since a moment. */
  private static <T> Optional<T> newest(
      Timeline timeline, Instant since, Function<Details, Optional<T>> cell) {
    List<LogEntry> entries = timeline.entries();
    for (int i = entries.size() - 1; i >= 0; i--) {
      LogEntry entry = entries.get(i);
      if (entry.happenedAt().isBefore(since)) {
        return Optional.empty();
      }
      Optional<T> found = cell.apply(entry.details());
      if (found.isPresent()) {
        return found;
      }
    }
    return Optional.empty();
  }

  /** With what would bring it there sooner. */
  private Forecast whole(Awaited awaited) {
    double limit = celsius(awaited.limit());
    Forecast forecast = forecast(awaited, limit);
    if (readings.isEmpty()) {
      return forecast;
    }
    Temperature newest = readings.get(readings.size() - 1).temperature().orElseThrow();
    List<Speedup> sooner = new Speedups(newest, around.celsiusDegrees(), limit, depth).of(forecast);
    return sooner.isEmpty() ? forecast : forecast.with(sooner);
  }

  private Forecast forecast(Awaited awaited, double limit) {
    if (points.size() < 2) {
      return untold(awaited, limit, Doubt.ONE_READING);
    }
    if (limit <= around.celsiusDegrees()) {
      return untold(
          awaited, limit, logged.isPresent() ? Doubt.NEVER_THERE : Doubt.SURROUNDINGS_NOT_LOGGED);
    }
    return fit.flatMap(curve -> curve.crossing(limit))
        .map(window -> told(awaited, limit, window))
        .orElseGet(() -> untold(awaited, limit, Doubt.NOT_FALLING));
  }

  private Forecast untold(Awaited awaited, double limit, Doubt doubt) {
    Optional<Temperature> reckoned =
        doubt == Doubt.SURROUNDINGS_NOT_LOGGED ? Optional.of(around) : logged;
    Basis basis = new Basis(readings.size(), reckoned, List.of(doubt));
    return new Forecast(
        awaited,
        now,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        target(awaited, limit),
        basis);
  }

  private Forecast told(Awaited awaited, double limit, CurveForecast window) {
    Optional<Instant> latest = window.latest().stream().mapToObj(this::moment).findFirst();
    return new Forecast(
        awaited,
        now,
        Optional.of(moment(window.expected())),
        Optional.of(moment(window.earliest())),
        latest.filter(moment -> logged.isPresent()),
        target(awaited, limit),
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

  /**
   * What the food must read half way to the limit's last moment to be on the curve that meets it.
   * Down to a whole degree, in the scale of the newest reading.
   */
  private Optional<Target> target(Awaited awaited, double limit) {
    Optional<Instant> last = awaited.deadline();
    if (readings.isEmpty() || last.filter(now::isBefore).isEmpty()) {
      return Optional.empty();
    }
    LogEntry newest = readings.get(readings.size() - 1);
    double air = around.celsiusDegrees();
    double from = celsius(newest);
    Instant by = halfWay(newest.happenedAt(), last.get());
    double whole = hours(newest.happenedAt(), last.get());
    if (limit <= air || from <= limit || whole <= 0) {
      return Optional.empty();
    }
    double share = hours(newest.happenedAt(), by) / whole;
    double there = air + (from - air) * Math.pow((limit - air) / (from - air), share);
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

  /** In the scale of the readings, as the judge compares it; in Celsius where there are none. */
  private double celsius(Limit limit) {
    Scale scale =
        cooling.readings().stream()
            .reduce((before, last) -> last)
            .flatMap(LogEntry::temperature)
            .map(Temperature::scale)
            .orElse(Scale.CELSIUS);
    return limit.in(scale).celsiusDegrees();
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
