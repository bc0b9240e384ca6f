package chillwright.rulebook;

import chillwright.core.measure.Limit;
import chillwright.core.measure.Temperature;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Occasion;
import chillwright.core.rules.Shape;
import java.time.Duration;
import java.util.Optional;
import java.util.Set;

/** Finds figures that each look right but cannot stand together. */
final class FigureCheck {
  /** Printed pairs are rounded to whole degrees at worst: 1 °C, counted in 1/900 °C. */
  private static final long ROUNDING = 900;

  private final Faults faults;

  FigureCheck(Faults faults) {
    this.faults = faults;
  }

  /** Before the shape is made: each figure is a temperature, and a pair is one temperature. */
  void checkLimits(Spot day) {
    for (String key : Set.of("from", "to", "at-most", "at-least", "ceiling", "hot-air")) {
      Spot figure = day.at(key);
      if (day.has(key)
          && isInRange(figure, "c", Scale.CELSIUS)
          && isInRange(figure, "f", Scale.FAHRENHEIT)) {
        checkPair(figure);
      }
    }
  }

  private boolean isInRange(Spot figure, String key, Scale scale) {
    if (figure.has(key) && !Temperature.isAccepted(hundredths(figure, key), scale)) {
      Spot place = figure.at(key);
      String says =
          "%s is no temperature of food. Write one from -100 to 600 °F (-73 to 315 °C)."
              .formatted(place.text());
      faults.add(place.fault("out-of-range", "-100 to 600 °F", says));
      return false;
    }
    return true;
  }

  private void checkPair(Spot figure) {
    if (!figure.has("c") || !figure.has("f")) {
      return;
    }
    Temperature celsius = new Temperature(hundredths(figure, "c"), Scale.CELSIUS);
    Temperature fahrenheit = new Temperature(hundredths(figure, "f"), Scale.FAHRENHEIT);
    if (Math.abs(celsius.nineHundredths() - fahrenheit.nineHundredths()) > ROUNDING) {
      String says =
          "%s and %s are not the same temperature. Write both as printed, or only the one that is."
              .formatted(celsius.text(), fahrenheit.text());
      faults.add(figure.fault("scales-disagree", "figures at most 1 °C apart", says));
    }
  }

  private static int hundredths(Spot figure, String key) {
    return figure.at(key).node().decimalValue().movePointRight(2).intValueExact();
  }

  /** Once the shape is made: the figures stand the right way round. */
  void checkOrder(Shape shape, Set<Occasion> occasions, Spot day) {
    if (shape instanceof Shape.Reach reach) {
      checkReach(reach, occasions, day);
    } else if (shape instanceof Shape.Hold hold) {
      checkHold(hold, day);
    } else if (shape instanceof Shape.TimeAlone time) {
      checkTime(time, day);
    }
  }

  private void checkReach(Shape.Reach reach, Set<Occasion> occasions, Spot day) {
    reach.within().ifPresent(within -> checkPositive(within, day));
    if (reach.from().isEmpty()) {
      return;
    }
    Limit from = reach.from().get();
    boolean cools = occasions.stream().anyMatch(o -> o.key().startsWith("cooling-"));
    if (cools && !isWarmer(from, reach.to())) {
      upsideDown(
          day, "from is warmer than to", "cooling falls from the warmer limit to the colder");
    }
    boolean heats = occasions.stream().anyMatch(o -> o.key().startsWith("reheating"));
    if (heats && !isWarmer(reach.to(), from)) {
      upsideDown(
          day, "from is colder than to", "reheating rises from the colder limit to the warmer");
    }
  }

  private void checkHold(Shape.Hold hold, Spot day) {
    if (hold.atMost().isPresent()
        && hold.atLeast().isPresent()
        && !isWarmer(hold.atLeast().get(), hold.atMost().get())) {
      upsideDown(
          day,
          "at-most is colder than at-least",
          "with both, food may be cold (at-most) or hot (at-least)");
    }
  }

  private void checkTime(Shape.TimeAlone time, Spot day) {
    checkPositive(time.within(), day);
    Optional<Duration> hot = time.withinHotAir();
    if (hot.isPresent() && hot.get().compareTo(time.within()) >= 0) {
      upsideDown(day, "within-hot-air is shorter than within", "hot air shortens the time");
    }
  }

  private void checkPositive(Duration within, Spot day) {
    if (within.isZero()) {
      String says = "nothing is done in no time. Write the time as printed, such as PT2H.";
      faults.add(day.at("within").fault("no-time", "more than no time", says));
    }
  }

  private void upsideDown(Spot day, String allowed, String because) {
    String says =
        "these figures are upside down, since %s. Write them so that %s."
            .formatted(because, allowed);
    faults.add(day.fault("upside-down", allowed, says));
  }

  /** Warmer in both scales; a figure printed in one scale only is compared by conversion. */
  private static boolean isWarmer(Limit a, Limit b) {
    return a.in(Scale.CELSIUS).isWarmerThan(b.in(Scale.CELSIUS))
        && a.in(Scale.FAHRENHEIT).isWarmerThan(b.in(Scale.FAHRENHEIT));
  }
}
