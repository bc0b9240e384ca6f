package chillwright.core.forecast;

import chillwright.core.forecast.CoolingCurve.Point;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * When readings on a cooling curve will cross a temperature, in hours on the clock of the readings.
 *
 * <p>The window adds up, as independent faults: the scatter of the readings (95 %), a probe and a
 * thermometer of the surroundings that are off by what the FDA Food Code 2022 allows them
 * (4-203.11, 1 °C; 4-203.12, 1.5 °C), and a share of the time still to go, because no kitchen keeps
 * to the curve. That share was chosen so that published series fall inside; a test measures how
 * many do.
 *
 * @param latest empty where the window has no end worth telling
 * @param readings how many were used
 * @param scatter of these about the curve, see {@link CoolingCurve#scatter}
 */
record CurveForecast(
    double earliest, double expected, OptionalDouble latest, int readings, double scatter) {
  private static final double PROBE = 1.0;
  private static final double AROUND = 1.5;

  /** Share of the time to go, by the number of readings: two, three, more. Our own. */
  private static final double[] OFF_THE_CURVE = {0.45, 0.35, 0.25};

  /** Hours between two readings that count: closer ones tell the probe's last digit. Our own. */
  private static final double APART = 0.05;

  /** Newest readings used. */
  private static final int MOST = 5;

  /** Open liquid loses heat by steam above it (150 °F) and runs ahead of the curve. */
  private static final double STEAMING = 65.0;

  /** A crossing farther off than this, in hours, is none. */
  private static final double FARTHEST = 96;

  /** The curve through the readings used; every limit is crossed on the same one. */
  record Fit(CoolingCurve curve, List<Point> used) {
    /**
     * When it crosses a temperature.
     *
     * @param limit °C, above the surroundings
     * @return empty where it is too far off to be told
     */
    Optional<CurveForecast> crossing(double limit) {
      CurveForecast window = CurveForecast.crossing(curve, used, limit);
      double togo = window.expected() - used.get(used.size() - 1).hours();
      return togo < FARTHEST ? Optional.of(window) : Optional.empty();
    }
  }

  /**
   * The curve from readings.
   *
   * @param apart readings of undisturbed food in order of time, {@link #apart apart}, two or more
   * @param surroundings °C
   * @return empty where the readings do not fall towards the surroundings
   */
  static Optional<Fit> fit(List<Point> apart, double surroundings) {
    List<Point> used = used(apart);
    return CoolingCurve.through(used, surroundings).map(curve -> new Fit(curve, used));
  }

  /** The newest, without those at which it still steamed where two others are left. */
  private static List<Point> used(List<Point> apart) {
    List<Point> calm = new ArrayList<>(apart.size());
    for (Point point : apart) {
      if (point.celsius() <= STEAMING) {
        calm.add(point);
      }
    }
    List<Point> used = calm.size() < 2 ? apart : calm;
    return used.subList(Math.max(0, used.size() - MOST), used.size());
  }

  /** Of readings close together the newest. */
  static List<Point> apart(List<Point> all) {
    List<Point> kept = new ArrayList<>(all.size());
    for (int i = all.size() - 1; i >= 0; i--) {
      Point point = all.get(i);
      if (kept.isEmpty() || kept.get(kept.size() - 1).hours() - point.hours() >= APART) {
        kept.add(point);
      }
    }
    Collections.reverse(kept);
    return List.copyOf(kept);
  }

  private static CurveForecast crossing(CoolingCurve curve, List<Point> used, double limit) {
    Point last = used.get(used.size() - 1);
    double expected = Math.max(last.hours(), curve.hoursTo(limit).orElseThrow());
    double width =
        Math.sqrt(
            square(curve.halfWidth(expected))
                + square(curve.shiftByReading(PROBE, limit))
                + square(curve.shiftBySlope(PROBE, expected))
                + square(curve.shiftBySurroundings(AROUND, limit, last.celsius()))
                + square(OFF_THE_CURVE[Math.min(used.size(), 4) - 2] * (expected - last.hours())));
    double latest = expected + width;
    return new CurveForecast(
        Math.max(last.hours(), expected - width),
        expected,
        latest - last.hours() < FARTHEST ? OptionalDouble.of(latest) : OptionalDouble.empty(),
        used.size(),
        curve.scatter());
  }

  private static double square(double figure) {
    return figure * figure;
  }
}
