package chillwright.core.forecast;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.stat.regression.SimpleRegression;

/**
 * The curve on which food cools towards steady surroundings: the difference to them falls by the
 * same share in equal times, {@code ln(T - Ts) = a - k t}. Fitted to readings by least squares; in
 * the form with f and j (ASHRAE Handbook Refrigeration, cooling times of foods), f is {@code ln 10
 * / k}.
 *
 * <p>Food does not follow it from the start: a solid's middle lags at first, and open hot liquid
 * runs ahead while it steams. Whoever forecasts with it must allow for that.
 */
public final class CoolingCurve {
  /** A reading: hours since any fixed moment, and degrees Celsius. */
  public record Point(double hours, double celsius) {}

  /** Share of such intervals that would hold the reading. */
  private static final double LEVEL = 0.95;

  /** Of Student's t by degrees of freedom: worked out once, since that takes longer than a fit. */
  private static final double[] QUANTILES =
      IntStream.range(0, 8).mapToDouble(n -> n == 0 ? 0 : quantile(n)).toArray();

  private final SimpleRegression line;
  private final double surroundings;
  private final double mean;
  private final double rate;

  private CoolingCurve(SimpleRegression line, double mean, double surroundings) {
    this.line = line;
    this.mean = mean;
    this.surroundings = surroundings;
    this.rate = -line.getSlope();
  }

  /**
   * The curve through readings.
   *
   * @param surroundings temperature that the food cools towards, °C
   * @return empty with fewer than two moments, with a reading at or below the surroundings, or
   *     where the food does not get colder
   */
  public static Optional<CoolingCurve> through(List<Point> readings, double surroundings) {
    SimpleRegression line = new SimpleRegression();
    double sum = 0;
    for (Point point : readings) {
      if (point.celsius() <= surroundings) {
        return Optional.empty();
      }
      line.addData(point.hours(), Math.log(point.celsius() - surroundings));
      sum += point.hours();
    }
    if (line.getN() < 2 || line.getXSumSquares() == 0) {
      return Optional.empty();
    }
    CoolingCurve curve = new CoolingCurve(line, sum / readings.size(), surroundings);
    return curve.rate > 0 ? Optional.of(curve) : Optional.empty();
  }

  /** k: the share of the difference lost in a moment, per hour. */
  public double rate() {
    return rate;
  }

  /** How long the difference takes to halve, in hours. */
  public double halving() {
    return Math.log(2) / rate;
  }

  /** f: how long the difference takes to fall to a tenth, in hours. */
  public double tenfold() {
    return Math.log(10) / rate;
  }

  /** The temperature that the curve gives for a moment, °C. */
  public double celsiusAt(double hours) {
    return surroundings + Math.exp(line.predict(hours));
  }

  /**
   * How far the readings lie off the curve: the standard deviation of their logarithms. Zero for
   * two readings, which lie on it whatever they are.
   */
  public double scatter() {
    return line.getN() < 3 ? 0 : Math.sqrt(Math.max(0, line.getMeanSquareError()));
  }

  /** When it reaches a temperature, in hours; empty for one at or below the surroundings. */
  public OptionalDouble hoursTo(double celsius) {
    return celsius <= surroundings
        ? OptionalDouble.empty()
        : OptionalDouble.of((line.getIntercept() - Math.log(celsius - surroundings)) / rate);
  }

  /**
   * Half the width of the interval in which one further reading reaches a moment's temperature, in
   * hours, from the scatter of the readings alone (prediction interval of a straight line, read
   * along time, 95 %). Zero for two readings.
   *
   * @param hours the moment the curve reaches it
   */
  public double halfWidth(double hours) {
    if (line.getN() < 3) {
      return 0;
    }
    int freedom = (int) line.getN() - 2;
    double quantile = freedom < QUANTILES.length ? QUANTILES[freedom] : quantile(freedom);
    double off = hours - mean;
    double spread = 1 + 1.0 / line.getN() + off * off / line.getXSumSquares();
    return quantile * scatter() / rate * Math.sqrt(spread);
  }

  private static double quantile(int freedom) {
    return new TDistribution(freedom).inverseCumulativeProbability((1 + LEVEL) / 2);
  }

  /**
   * How much faults in the single readings turn the curve, as that moves a moment on it, in hours.
   * The closer together the readings, the more.
   */
  public double shiftBySlope(double fault, double hours) {
    double middle = Math.exp(line.predict(mean));
    return Math.abs(hours - mean) * fault / (middle * rate * Math.sqrt(line.getXSumSquares()));
  }

  /** How much a fault in the food's temperature moves the crossing of one, in hours. */
  public double shiftByReading(double fault, double celsius) {
    return fault / (rate * (celsius - surroundings));
  }

  /**
   * How much a fault in the temperature of the surroundings moves it, after a reading, in hours.
   */
  public double shiftBySurroundings(double fault, double celsius, double lastRead) {
    return Math.abs(fault / rate * (1 / (celsius - surroundings) - 1 / (lastRead - surroundings)));
  }
}
