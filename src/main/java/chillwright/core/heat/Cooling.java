package chillwright.core.heat;

import java.time.Duration;
import java.util.List;

/**
 * How food that lies still cools (or warms) in constant surroundings, by conduction: the slowest
 * point is the centre. Immutable.
 *
 * <p>Range: any size, any surface coefficient above 0. Source: the series of Cengel and Ghajar,
 * Heat and Mass Transfer, chapter 4, multiplied over the directions as in the ASHRAE Handbook
 * Refrigeration. Its error for food is that of its inputs: a surface coefficient worked back from
 * measured curves is uncertain by 30 % (ASHRAE paper 4707), so a time is uncertain by a third and
 * more. It overstates the time of thin soup, which circulates, and understates that of a covered or
 * stacked container.
 */
public final class Cooling {
  private static final double SECONDS_IN_HOUR = 3600;
  private static final int STEPS = 80;

  private final Properties food;
  private final List<Body.Direction> directions;
  private final List<Series> series;

  /**
   * @param coefficient of the surface, W/(m2 K), above 0
   */
  public Cooling(Body body, Properties food, double coefficient) {
    if (!(coefficient > 0)) {
      throw new IllegalArgumentException("a surface coefficient of " + coefficient);
    }
    this.food = food;
    this.directions = body.directions();
    this.series =
        directions.stream()
            .map(
                direction ->
                    new Series(
                        direction.solid(),
                        coefficient * direction.halfMetres() / food.conductivity()))
            .toList();
  }

  /** The share of the first difference from the surroundings that is left at the centre. */
  public double centreShare(double seconds) {
    double share = 1;
    for (int i = 0; i < series.size(); i++) {
      share *= series.get(i).centre(fourier(i, seconds));
    }
    return share;
  }

  /** The share left where the body is coldest: at its surface, or at a corner. */
  public double surfaceShare(double seconds) {
    double share = 1;
    for (int i = 0; i < series.size(); i++) {
      share *= series.get(i).surface(fourier(i, seconds));
    }
    return share;
  }

  private double fourier(int direction, double seconds) {
    double half = directions.get(direction).halfMetres();
    return food.diffusivity() * seconds / (half * half);
  }

  /** f of the handbook: hours in which the difference falls to a tenth, once the lag is over. */
  public double tenfoldHours() {
    double rate = 0;
    for (int i = 0; i < series.size(); i++) {
      double half = directions.get(i).halfMetres();
      rate += series.get(i).firstSquare() * food.diffusivity() / (half * half);
    }
    return Math.log(10) / rate / SECONDS_IN_HOUR;
  }

  /** j of the handbook, 1 to 8: how far the centre lags behind a curve without a lag. */
  public double lag() {
    return series.stream().mapToDouble(Series::firstCoefficient).reduce(1, (a, b) -> a * b);
  }

  /**
   * The time until the slowest point has reached a temperature.
   *
   * @return a reason where it never gets there, is there already, or would freeze on the way
   */
  public Answer<Duration> reaches(Course course, double targetCelsius) {
    double whole = course.startCelsius() - course.surroundingsCelsius();
    double left = targetCelsius - course.surroundingsCelsius();
    if (left * Math.signum(whole) <= 0) {
      return Answer.beyond(Reason.NEVER_GETS_THERE);
    }
    if (left / whole >= 1) {
      return Answer.beyond(Reason.ALREADY_THERE);
    }
    double seconds = secondsToShare(left / whole);
    double coldest = course.surroundingsCelsius() + whole * surfaceShare(seconds);
    if (whole > 0 && coldest < course.freezingCelsius()) {
      return Answer.beyond(Reason.SURFACE_FREEZES);
    }
    return Answer.known(duration(seconds));
  }

  /**
   * Where food starts, where it stands, and when it freezes.
   *
   * @param surroundingsCelsius constant
   * @param freezingCelsius below it the answer is refused; -1 serves most cooked food
   */
  public record Course(double startCelsius, double surroundingsCelsius, double freezingCelsius) {}

  /**
   * The time until so much of the difference is left at the centre.
   *
   * @param share above 0, below 1
   */
  public double secondsToShare(double share) {
    double high = 1;
    while (centreShare(high) > share) {
      high *= 2;
    }
    double low = 0;
    for (int i = 0; i < STEPS; i++) {
      double middle = (low + high) / 2;
      if (centreShare(middle) > share) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  private static Duration duration(double seconds) {
    return Duration.ofMillis(Math.round(seconds * 1000));
  }
}
