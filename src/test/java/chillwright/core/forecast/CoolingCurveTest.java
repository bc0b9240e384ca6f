package chillwright.core.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chillwright.core.forecast.CoolingCurve.Point;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Fits and crossings. The readings are published (named at each); the fits were worked apart from
 * this program, by the formulas of least squares and of the prediction interval of a straight line.
 */
class CoolingCurveTest {
  /**
   * Hourly temperatures of cooked rice that cools exponentially towards 0 °C, °C: demonstration
   * profile of the USDA-ARS predictive microbiology model 2021166 (B. cereus in rice).
   */
  static final double[] RICE = {
    54.59, 45.99, 38.94, 32.92, 27.86, 23.43, 19.89, 16.71, 14.14, 11.94, 10.13, 8.48, 7.21
  };

  /**
   * One cup of boiled water, open, in a room of 71 °F, °F by the minute: University of Georgia,
   * course EMAT 6680, write-up 12.
   */
  static final double[] CUP = {
    212, 207, 202, 198, 194, 189, 185, 180, 176, 173, 169, 166, 162, 159, 156, 153, 151, 150, 148,
    146, 144, 141, 140, 139, 137, 135, 133, 132, 131, 130, 129
  };

  static List<Point> hourly(double[] celsius, int count) {
    List<Point> points = new ArrayList<>();
    for (int hour = 0; hour < count; hour++) {
      points.add(new Point(hour, celsius[hour]));
    }
    return points;
  }

  private static List<Point> cup(int from, int to) {
    List<Point> points = new ArrayList<>();
    for (int minute = from; minute <= to; minute++) {
      points.add(new Point(minute / 60.0, (CUP[minute] - 32) / 1.8));
    }
    return points;
  }

  private static CoolingCurve curve(List<Point> points, double surroundings) {
    return CoolingCurve.through(points, surroundings).orElseThrow();
  }

  @Test
  void the_rice_of_the_model_page() {
    CoolingCurve rice = curve(hourly(RICE, 13), 0);
    assertThat(rice.rate()).isCloseTo(0.16881, within(2e-5));
    assertThat(rice.halving()).isCloseTo(4.1062, within(4e-4));
    assertThat(rice.tenfold()).isCloseTo(13.640, within(1.4e-3));
    assertThat(rice.celsiusAt(0)).isCloseTo(54.583, within(6e-3));
    assertThat(rice.scatter()).isCloseTo(0.00263, within(1e-5));
  }

  /** 21 °C is passed between hours 5 and 6, 7.21 °C at hour 12. */
  @ParameterizedTest
  @CsvSource({"21, 5.667, 0.089", "7.21, 12.016, 0.199"})
  void a_crossing_from_the_first_four_hours(double limit, double expected, double half) {
    CoolingCurve rice = curve(hourly(RICE, 4), 0);
    double hours = rice.hoursTo(limit).orElseThrow();
    assertThat(hours).isCloseTo(expected, within(0.003));
    assertThat(rice.halfWidth(hours)).isCloseTo(half, within(0.003));
  }

  /** Beef slab of 50 mm in air of 0 °C (James and James, Meat Refrigeration, 2002, table 16.7). */
  @Test
  void two_readings_lie_on_the_curve() {
    CoolingCurve slab = curve(List.of(new Point(0.4, 50), new Point(2.1, 10)), 0);
    assertThat(slab.halving()).isCloseTo(0.732, within(0.002));
    assertThat(slab.celsiusAt(0) / 70).isCloseTo(1.043, within(0.002));
    assertThat(slab.scatter()).isZero();
    assertThat(slab.halfWidth(3)).isZero();
  }

  /** Beef roast of 3.75 kg in water of 1 °C (the same table). */
  @Test
  void a_roast_in_water() {
    CoolingCurve roast =
        curve(
            List.of(new Point(1.5, 50), new Point(5.7, 12), new Point(6.9, 8), new Point(8.5, 5)),
            1);
    assertThat(roast.rate()).isCloseTo(0.3585, within(0.0018));
    assertThat(roast.tenfold()).isCloseTo(6.42, within(0.03));
    assertThat((roast.celsiusAt(0) - 1) / 69).isCloseTo(1.218, within(0.006));
  }

  /** The same roast in moving air: 12 to 5 °C took 4.6 h where the slope before says 2.84. */
  @Test
  void air_that_changed_shows_as_scatter() {
    List<Point> read =
        List.of(new Point(1.5, 50), new Point(5.7, 12), new Point(8.1, 8), new Point(10.3, 5));
    assertThat(curve(read, 1).scatter()).isCloseTo(0.173, within(0.001)).isGreaterThan(0.05);
    CoolingCurve before = curve(read.subList(0, 2), 1);
    double more = before.hoursTo(5).orElseThrow() - before.hoursTo(12).orElseThrow();
    assertThat(more).isCloseTo(2.84, within(0.01));
  }

  /** Open hot water runs ahead while it steams, so an early forecast is too hopeful. */
  @Test
  void a_cup_of_boiled_water() {
    double room = (71 - 32) / 1.8;
    CoolingCurve early = curve(cup(0, 10), room);
    assertThat(early.rate() / 60).isCloseTo(0.03650, within(1e-5));
    assertThat(early.celsiusAt(0.5) * 1.8 + 32).isCloseTo(118.3, within(0.1)).isLessThan(CUP[30]);
    CoolingCurve late = curve(cup(15, 30), room);
    assertThat(late.rate() / 60).isCloseTo(0.02420, within(1e-5));
    assertThat(late.celsiusAt(0.5) * 1.8 + 32).isCloseTo(128.1, within(0.1));
  }

  /** Textbook exercise: soup at 100 °C in water held at 10 °C reads 60 °C after 10 minutes. */
  @Test
  void a_pot_of_soup_in_water() {
    CoolingCurve soup = curve(List.of(new Point(0, 100), new Point(10 / 60.0, 60)), 10);
    assertThat(soup.rate() / 60).isCloseTo(0.05878, within(1e-5));
    assertThat(soup.hoursTo(20).orElseThrow() * 60).isCloseTo(37.4, within(0.05));
  }

  /**
   * Two readings an hour apart in air of 38 °F by the method of Hedeen, Schaffner and Brown (J
   * Environ Health, March 2022), °F; hours from 135 °F to 70 and to 41 °F.
   */
  @ParameterizedTest
  @CsvSource({"95, 2.09, 6.54", "80, 1.325, 4.15", "110, 3.72, 11.66"})
  void the_screen_of_two_readings(double second, double toSeventy, double toFortyOne) {
    List<Point> read = List.of(new Point(0, celsius(135)), new Point(1, celsius(second)));
    CoolingCurve curve = curve(read, celsius(38));
    assertThat(curve.hoursTo(celsius(70)).orElseThrow()).isCloseTo(toSeventy, within(0.01));
    assertThat(curve.hoursTo(celsius(41)).orElseThrow()).isCloseTo(toFortyOne, within(0.01));
  }

  /**
   * A straight line through the first hour flatters: at 102.5 °F it promises 70 °F at two hours,
   * the curve is at 80.9 °F then (135 °F at the start, air of 38 °F; our arithmetic).
   */
  @Test
  void a_straight_line_through_the_first_hour_is_wrong() {
    CoolingCurve curve =
        curve(List.of(new Point(0, celsius(135)), new Point(1, celsius(102.5))), celsius(38));
    assertThat(135 - 2 * (135 - 102.5)).isEqualTo(70);
    assertThat(curve.celsiusAt(2) * 1.8 + 32).isCloseTo(80.9, within(0.1));
  }

  @Test
  void what_the_surroundings_never_reach_is_not_crossed() {
    CoolingCurve curve = curve(List.of(new Point(0, 57), new Point(1, 40)), 5);
    assertThat(curve.hoursTo(5)).isEmpty();
    assertThat(curve.hoursTo(4)).isEmpty();
  }

  @Test
  void food_that_does_not_fall_is_on_no_curve() {
    assertThat(CoolingCurve.through(List.of(new Point(0, 57), new Point(1, 57)), 5)).isEmpty();
    assertThat(CoolingCurve.through(List.of(new Point(0, 50), new Point(1, 57)), 5)).isEmpty();
    assertThat(CoolingCurve.through(List.of(new Point(0, 57), new Point(1, 5)), 5)).isEmpty();
    assertThat(CoolingCurve.through(List.of(new Point(1, 57), new Point(1, 50)), 5)).isEmpty();
    assertThat(CoolingCurve.through(List.of(), 5)).isEmpty();
  }

  /**
   * With a half-time of 1.73 h in air of 3 °C one degree of the probe is 8 minutes at 21 °C, 21 at
   * 10, 38 at 7 and 75 at 5 °C (our arithmetic from the derivative of the curve).
   */
  @ParameterizedTest
  @CsvSource({"21, 8.3", "10, 21.4", "7, 37.4", "5, 74.9"})
  void one_degree_of_the_probe_in_minutes(double limit, double minutes) {
    double rate = Math.log(2) / 1.73;
    List<Point> read = List.of(new Point(0, 57), new Point(1, 3 + 54 * Math.exp(-rate)));
    assertThat(curve(read, 3).shiftByReading(1, limit) * 60).isCloseTo(minutes, within(0.3));
  }

  private static double celsius(double fahrenheit) {
    return (fahrenheit - 32) / 1.8;
  }
}
