package chillwright.core.forecast;

import chillwright.core.forecast.Forecast.Outlook;
import chillwright.core.forecast.Speedup.Act;
import chillwright.core.forecast.Speedup.Window;
import chillwright.core.measure.Depth;
import chillwright.core.measure.Temperature;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.portions.Portion;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What would bring food that cools to its limit sooner. The time that its own readings promise is
 * shortened by what published measurements saved, or lengthened to nothing: formulas that know only
 * the depth promise more than a full refrigerator gives.
 *
 * @param newest reading of the food
 * @param around what it cools towards, °C
 * @param limit °C
 * @param logged how deep the food stands
 */
record Speedups(Temperature newest, double around, double limit, Optional<Depth> logged) {
  /**
   * Shares of the time to go that are left.
   *
   * @param expected as measured most often, or the most careful of the figures
   * @param least the most that was measured to be saved
   * @param most the least
   */
  record Shares(double expected, double least, double most) {}

  /**
   * Beef of 50 mm took 2.1 h in air and 1.2 in water, a joint of 110 mm 5.1 and 3.6 (70 to 10 °C,
   * both at 0 °C), a roast of 130 mm 10.3 and 8.5 (70 to 5 °C, both at 1 °C; James and James, Meat
   * Refrigeration, 2002, table 16.7).
   */
  static final Shares ICE_WATER = new Shares(3.6 / 5.1, 1.2 / 2.1, 8.5 / 10.3);

  /**
   * Pots of 600 g of soup took 272 minutes in air of 0 °C at 1 m/s, 228 at 3, 197 at 6 (James and
   * others, International Institute of Refrigeration, 2010-0537: 70 to 3 °C). At worst nothing.
   */
  static final Shares MOVING_AIR = new Shares(228 / 272.0, 197 / 272.0, 1);

  /**
   * Of half the depth. Rice in a refrigerator took 12.5 to 13.5 h from 50 to 10 °C where it was 10
   * cm deep, about 10 h at 5 cm (Müftügil 2016, doi 10.3153/jfhs16019). At best a quarter: the
   * square of the depth, where the food itself is what holds the heat (Dickerson and Read 1973).
   */
  static final Shares HALF_AS_DEEP = new Shares(10 / 13.0, 1 / 4.0, 10 / 12.5);

  /**
   * Hot soup of 2.5 US quarts in a bowl in ice, stirred all the time, fell from 174 to 80 °F in
   * 11.5 minutes in steel and in 36 in plastic (a test of bowls by a cookery magazine). Minutes in
   * which the difference to ice falls to its e-th part.
   */
  private static final double STEEL = 11.5 / Math.log((174 - 32) / (80.0 - 32));

  private static final double PLASTIC = 36 / Math.log((174 - 32) / (80.0 - 32));

  /**
   * As deep a layer has as much wall under it as that bowl has for its food, metres: half a ball of
   * 2.5 quarts is 0.104 m in radius, its volume over its wall a third of that. Our arithmetic.
   */
  static final double BOWL = 0.035;

  private static final double ICE = 0;

  /** What a freezer is to be kept at (FDA): 0 °F. */
  private static final double FREEZER = -160 / 9.0;

  /** Those for a forecast that is late or may be, the soonest first; else none. */
  List<Speedup> of(Forecast forecast) {
    boolean isSlow = forecast.outlook() == Outlook.LATE || forecast.outlook() == Outlook.UNSURE;
    boolean isOver = forecast.awaited().deadline().filter(forecast.asOf()::isAfter).isPresent();
    if (!isSlow || isOver) {
      return List.of();
    }
    List<Speedup> found = new ArrayList<>();
    stirred(forecast).ifPresent(window -> found.add(still(Act.STIRRED_ICE_BATH, window)));
    shorter(forecast, ICE_WATER).ifPresent(window -> found.add(still(Act.ICE_BATH, window)));
    shorter(forecast, freezer()).ifPresent(window -> found.add(still(Act.FREEZER, window)));
    shorter(forecast, MOVING_AIR).ifPresent(window -> found.add(still(Act.MOVING_AIR, window)));
    divided(forecast).ifPresent(found::add);
    found.sort(Comparator.comparing(speedup -> speedup.window().orElseThrow().expected()));
    found.add(untimed(Act.STIR));
    found.add(untimed(Act.ICE_IN_FOOD));
    return List.copyOf(found);
  }

  private Speedup still(Act act, Window window) {
    return new Speedup(act, depth(), logged.isEmpty(), 1, Optional.of(window));
  }

  private Speedup untimed(Act act) {
    return new Speedup(act, depth(), logged.isEmpty(), 1, Optional.empty());
  }

  /** As logged, else a deep pan: 4 in or 10 cm, common practice, no source. */
  private Depth depth() {
    return logged.orElse(inScale(4, 10));
  }

  /** What sheets of health departments call shallow for thick food: 2 in, or 5 cm. */
  private Depth shallow() {
    boolean isInch = depth().unit() == Depth.Unit.INCH;
    return new Depth(BigDecimal.valueOf(isInch ? 2 : 5), depth().unit());
  }

  private Depth inScale(int inches, int centimeters) {
    return newest.scale() == Scale.CELSIUS
        ? new Depth(BigDecimal.valueOf(centimeters), Depth.Unit.CENTIMETER)
        : new Depth(BigDecimal.valueOf(inches), Depth.Unit.INCH);
  }

  private Optional<Speedup> divided(Forecast forecast) {
    double share = depth().metres() / shallow().metres();
    if (share <= 1) {
      return Optional.empty();
    }
    int pans = Portion.wholeUp(share);
    return shorter(forecast, shallower(share))
        .map(
            window ->
                new Speedup(Act.DIVIDE, shallow(), logged.isEmpty(), pans, Optional.of(window)));
  }

  /** Food so many times as deep before: what halving saves, as often as it is halved. */
  static Shares shallower(double times) {
    double halvings = Math.log(times) / Math.log(2);
    return new Shares(
        Math.pow(HALF_AS_DEEP.expected(), halvings),
        Math.pow(HALF_AS_DEEP.least(), halvings),
        Math.pow(HALF_AS_DEEP.most(), halvings));
  }

  /** On the same curve, towards colder surroundings. */
  private Shares freezer() {
    double share = steps(FREEZER) / steps(around);
    return new Shares(share, share, share);
  }

  private double steps(double towards) {
    return Math.log((newest.celsiusDegrees() - towards) / (limit - towards));
  }

  private Optional<Window> shorter(Forecast forecast, Shares shares) {
    Instant now = forecast.asOf();
    return forecast
        .expected()
        .map(
            expected ->
                new Window(
                    after(now, expected, shares.expected()),
                    after(now, forecast.earliest().orElseThrow(), shares.least()),
                    forecast.latest().map(latest -> after(now, latest, shares.most()))))
        .filter(window -> isSooner(window, forecast));
  }

  /** From now on, as if it were still as warm as it last read. */
  private Optional<Window> stirred(Forecast forecast) {
    if (limit <= ICE) {
      return Optional.empty();
    }
    Instant now = forecast.asOf();
    double deeper = Math.max(1, depth().metres() / BOWL);
    double steel = STEEL * steps(ICE);
    Window window =
        new Window(
            minutes(now, steel * deeper),
            minutes(now, steel),
            Optional.of(minutes(now, PLASTIC * steps(ICE) * deeper)));
    return Optional.of(window).filter(found -> isSooner(found, forecast));
  }

  private static boolean isSooner(Window window, Forecast forecast) {
    return forecast.expected().filter(as -> !window.expected().isBefore(as)).isEmpty();
  }

  private static Instant after(Instant now, Instant moment, double share) {
    return minutes(now, (moment.getEpochSecond() - now.getEpochSecond()) / 60.0 * share);
  }

  /** To the next whole minute; what is over by now is told for now. */
  private static Instant minutes(Instant now, double minutes) {
    double seconds = now.getEpochSecond() + Math.max(0, minutes) * 60;
    return Instant.ofEpochSecond(60 * (long) Math.ceil(Math.round(seconds) / 60.0));
  }
}
