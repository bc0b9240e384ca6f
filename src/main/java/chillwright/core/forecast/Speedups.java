package chillwright.core.forecast;

import chillwright.core.forecast.Forecast.Outlook;
import chillwright.core.forecast.Speedup.Act;
import chillwright.core.forecast.Speedup.Window;
import chillwright.core.heat.Answer;
import chillwright.core.heat.Body;
import chillwright.core.heat.Cooling;
import chillwright.core.heat.Freezing;
import chillwright.core.heat.FreezingFood;
import chillwright.core.heat.PrintedFood;
import chillwright.core.heat.Properties;
import chillwright.core.heat.Reason;
import chillwright.core.heat.Surface;
import chillwright.core.log.Details;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Timeline;
import chillwright.core.measure.Depth;
import chillwright.core.measure.Temperature;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.portions.Pan;
import chillwright.core.portions.Portion;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;

/**
 * What would make food that cools reach its limit sooner, worked out with printed surfaces and pans
 * by {@link Cooling}, which overstates the time of food that is thin or stirred.
 *
 * @param food whose properties are reckoned with
 */
public record Speedups(
    PrintedFood food, Surface stillAir, Surface movingAir, Surface iceBath, List<Pan> pans) {
  private static final double INCH = 0.0254;

  /** Where nobody logged the depth: a deep pan, common practice, no source. */
  private static final double ASSUMED_INCHES = 4;

  /** Depths to divide into: two inches or less is common practice, no source. */
  private static final List<Double> SHALLOW = List.of(2.0, 1.0);

  /** Melting ice. */
  private static final Temperature ICE = Temperature.fahrenheit(32);

  /** What a freezer is to be kept at (FDA): 0 °F. */
  private static final Temperature FREEZER = Temperature.fahrenheit(0);

  /** A refrigerator as reckoned with where nobody logged the surroundings: 38 °F. */
  private static final Temperature REFRIGERATOR = Temperature.fahrenheit(38);

  /** Bounds halving the depth that are equal but for the digits of the unit. */
  private static final double SAME_DEPTH = 0.05;

  public Speedups {
    pans = List.copyOf(pans);
  }

  /** How the food lies and what is round it. */
  private record Way(Act act, int pans, double inches, boolean isBoth, Temperature around) {}

  /**
   * The forecast with what can be done, the soonest first; nothing where it is in time, or where
   * its limit has passed and speed mends nothing.
   */
  public Forecast beside(Forecast forecast, Timeline timeline) {
    boolean isOver =
        forecast.awaited().deadline().filter(last -> forecast.asOf().isAfter(last)).isPresent();
    Optional<LogEntry> newest =
        timeline.entries().stream()
            .filter(entry -> entry.temperature().isPresent())
            .reduce((before, later) -> later);
    if (forecast.outlook() == Outlook.IN_TIME || isOver || newest.isEmpty()) {
      return forecast;
    }
    List<Speedup> found = new ArrayList<>();
    boolean isAssumed = last(timeline, Details::depth).isEmpty();
    for (Way way : ways(forecast, timeline)) {
      found.add(speedup(way, forecast, newest.get(), isAssumed));
    }
    found.sort(
        Comparator.comparing(
            speedup -> speedup.window().map(Window::expected).orElse(Instant.MAX)));
    return forecast.with(found);
  }

  private List<Way> ways(Forecast forecast, Timeline timeline) {
    double inches =
        last(timeline, Details::depth).map(Depth::metres).map(m -> m / INCH).orElse(ASSUMED_INCHES);
    Temperature around = forecast.basis().surroundings().orElse(REFRIGERATOR);
    List<Way> ways = new ArrayList<>();
    for (double shallow : SHALLOW) {
      if (shallow < inches - SAME_DEPTH) {
        int pans = pans(last(timeline, Details::container), inches, shallow);
        ways.add(new Way(Act.DIVIDE, pans, shallow, true, around));
      }
    }
    ways.add(new Way(Act.ICE_BATH, 1, inches, false, ICE));
    ways.add(new Way(Act.MOVING_AIR, 1, inches, true, around));
    ways.add(new Way(Act.FREEZER, 1, inches, true, FREEZER));
    ways.add(new Way(Act.STIR, 1, inches, false, around));
    return ways;
  }

  private static <T> Optional<T> last(Timeline timeline, Function<Details, Optional<T>> cell) {
    return timeline.entries().stream()
        .map(LogEntry::details)
        .map(cell)
        .flatMap(Optional::stream)
        .reduce((before, later) -> later);
  }

  /** By the printed volumes of its size, or straight sides where its name is none of the sizes. */
  int pans(Optional<String> container, double inches, double shallow) {
    Answer<Integer> printed =
        pan(container, inches)
            .flatMap(
                deep ->
                    pan(container, shallow)
                        .map(
                            flat ->
                                deep.fluidOunces(inches)
                                    .flatMap(holds -> flat.count(holds, shallow))))
            .orElse(Answer.beyond(Reason.PAN_TOO_SHALLOW));
    return printed.value().orElseGet(() -> Portion.wholeUp(inches / shallow));
  }

  private Optional<Pan> pan(Optional<String> container, double inches) {
    String name = container.orElse("").toLowerCase(Locale.ROOT);
    return pans.stream()
        .filter(pan -> name.contains(size(pan)) && pan.depthInches() >= inches - SAME_DEPTH)
        .min(Comparator.comparing(Pan::depthInches));
  }

  /** "Full pan, 4 in deep" is a "full pan". */
  private static String size(Pan pan) {
    int end = pan.title().indexOf(',');
    return pan.title().substring(0, Math.max(end, 0)).toLowerCase(Locale.ROOT);
  }

  private Speedup speedup(Way way, Forecast forecast, LogEntry newest, boolean isAssumed) {
    Answer<Window> window =
        way.act() == Act.STIR
            ? Answer.beyond(Reason.NO_FIGURE)
            : window(way, forecast, newest).flatMap(found -> ifEarlier(found, forecast));
    return new Speedup(
        way.act(),
        way.pans(),
        way.inches(),
        isAssumed,
        way.around(),
        surface(way.act()),
        window.value(),
        window.reason());
  }

  private Surface surface(Act act) {
    return switch (act) {
      case ICE_BATH -> iceBath;
      case MOVING_AIR -> movingAir;
      case DIVIDE, FREEZER, STIR -> stillAir;
    };
  }

  private static Answer<Window> ifEarlier(Window window, Forecast forecast) {
    boolean isLater = forecast.expected().filter(as -> !window.expected().isBefore(as)).isPresent();
    return isLater ? Answer.beyond(Reason.NOT_EARLIER) : Answer.known(window);
  }

  /** From now on, as if the food were still as warm as it last read. */
  private Answer<Window> window(Way way, Forecast forecast, LogEntry newest) {
    Temperature read = newest.temperature().orElseThrow();
    Scale scale = read.scale();
    double limit = forecast.awaited().limit().in(scale).celsiusDegrees();
    Instant from =
        forecast.asOf().isAfter(newest.happenedAt()) ? forecast.asOf() : newest.happenedAt();
    Cooling.Course course =
        new Cooling.Course(
            read.celsiusDegrees(), way.around().celsiusDegrees(), FreezingFood.USUAL_POINT);
    double middle = Math.max(FreezingFood.USUAL_POINT, (course.startCelsius() + limit) / 2);
    return food.composition()
        .unfrozen(middle, FreezingFood.USUAL_POINT)
        .flatMap(
            properties ->
                time(way, properties, course, limit, 1)
                    .flatMap(
                        about ->
                            time(way, properties, course, limit, 1 + Freezing.UNSURE)
                                .flatMap(
                                    least ->
                                        time(way, properties, course, limit, 1 - Freezing.UNSURE)
                                            .map(
                                                most ->
                                                    new Window(
                                                        at(from, about),
                                                        at(from, least),
                                                        at(from, most))))));
  }

  private Answer<Duration> time(
      Way way, Properties properties, Cooling.Course course, double limit, double share) {
    Body body = Body.layer(way.inches() * INCH, way.isBoth());
    return new Cooling(body, properties, surface(way.act()).coefficient() * share)
        .reaches(course, limit);
  }

  private static Instant at(Instant from, Duration time) {
    return from.plusSeconds(Math.round(time.toSeconds() / 60.0) * 60);
  }
}
