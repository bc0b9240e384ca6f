package chillwright.core.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.forecast.CoolingCurve.Point;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What must hold for any readings that lie on one curve: it follows from the curve itself, so no
 * source is needed for a single value.
 */
class ForecastPropertiesTest {
  private static final int RUNS = 60;

  /** Below it no reading is left out as one at which the food still steamed, °C. */
  private static final double START = 60;

  private static final double LIMIT = 21;
  private static final double TINY = 1e-6;

  static IntStream seeds() {
    return IntStream.range(0, 12);
  }

  private static List<Point> exact(int count, double step, double rate, double around) {
    List<Point> points = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double hours = i * step;
      points.add(new Point(hours, around + (START - around) * Math.exp(-rate * hours)));
    }
    return points;
  }

  private static CurveForecast forecast(List<Point> points, double around) {
    return CurveForecast.fit(CurveForecast.apart(points), around)
        .flatMap(fit -> fit.crossing(LIMIT))
        .orElseThrow();
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void more_readings_never_widen_a_perfect_fit(int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    for (int run = 0; run < RUNS; run++) {
      double around = random.nextDouble(-18, 15);
      double rate = random.nextDouble(0.1, 2);
      double crossing = Math.log((START - around) / (LIMIT - around)) / rate;
      double step = Math.max(0.06, crossing / random.nextInt(3, 12));
      double before = Double.MAX_VALUE;
      for (int count = 2; count * step < crossing; count++) {
        CurveForecast window = forecast(exact(count, step, rate, around), around);
        double late = window.latest().orElse(Double.MAX_VALUE) - window.expected();
        assertThat(late).isLessThanOrEqualTo(before + TINY);
        assertThat(window.expected()).isBetween(crossing - TINY, crossing + TINY);
        before = late;
      }
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void food_of_the_same_rate_in_colder_surroundings_is_never_expected_later(int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    for (int run = 0; run < RUNS; run++) {
      double around = random.nextDouble(-10, 15);
      double rate = random.nextDouble(0.1, 1);
      double colder = around - random.nextDouble(0.1, 8);
      double warm = forecast(exact(3, 0.1, rate, around), around).expected();
      assertThat(forecast(exact(3, 0.1, rate, colder), colder).expected())
          .isLessThanOrEqualTo(warm + TINY);
    }
  }

  /**
   * Measured once for twice as deep (see the figure); for any depth the shares keep their order.
   */
  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void more_depth_to_divide_never_leaves_more_of_the_time(int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    for (int run = 0; run < RUNS; run++) {
      double times = random.nextDouble(1, 8);
      Speedups.Shares less = Speedups.shallower(times);
      Speedups.Shares more = Speedups.shallower(times * random.nextDouble(1, 2));
      assertThat(more.expected()).isLessThanOrEqualTo(less.expected());
      assertThat(less.least()).isLessThanOrEqualTo(less.expected());
      assertThat(less.expected()).isLessThanOrEqualTo(less.most());
    }
  }
}
