package chillwright.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chillwright.core.heat.FrozenHistory.Reading;
import chillwright.rulebook.Handbook;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Outside the range of a formula the answer says so, and names no number. */
class RangesTest {
  /** Cooked white rice, USDA food 20045, at 30 °C. */
  private static final Properties RICE = new Properties(1121, 0.531, 3.378);

  private static final Composition STEW = Composition.printed(80.78, 4.41, 5.53, 7.85, 0.9, 1.43);

  /** No food gets colder than what is round it: second law; the cold limit is 3-501.14(A). */
  @ParameterizedTest
  @CsvSource({
    "90, 5, 5, NEVER_GETS_THERE",
    "90, 6, 5, NEVER_GETS_THERE",
    "5, 3, 5, ALREADY_THERE",
    "4, 3, 5, ALREADY_THERE",
    "90, -18, 5, SURFACE_FREEZES"
  })
  void cooling_that_cannot_be_told_has_a_reason(
      double start, double surroundings, double target, Reason reason) {
    Cooling cooling = new Cooling(Body.layer(0.05, true), RICE, 22);
    Cooling.Course course = new Cooling.Course(start, surroundings, FreezingFood.USUAL_POINT);
    assertThat(cooling.reaches(course, target).reason()).contains(reason);
    assertThat(cooling.reaches(course, target).value()).isEmpty();
  }

  @Test
  void one_degree_of_difference_is_enough() {
    Cooling cooling = new Cooling(Body.layer(0.05, true), RICE, 22);
    Cooling.Course course = new Cooling.Course(90, 4, FreezingFood.USUAL_POINT);
    assertThat(cooling.reaches(course, 5).value()).isPresent();
  }

  /** Ranges of the handbook's freezing formulas: to 12 cm, to 40 °C, air -15 to -45 °C, to 500. */
  @ParameterizedTest
  @CsvSource({
    "0.05, 9, 5, -15, -1, AIR_TOO_WARM",
    "0.05, 9, 5, -15, -15, AIR_TOO_WARM",
    "0.05, 9, 5, -1, -18, ENDS_UNFROZEN",
    "0.05, 9, 40.1, -15, -18, TOO_WARM_TO_FREEZE",
    "0.05, 9, -2, -15, -18, ALREADY_THERE",
    "0.05, 9, 5, -10, -14.9, AIR_UNTRIED",
    "0.05, 9, 5, -15, -45.1, AIR_UNTRIED",
    "0.121, 9, 5, -15, -18, TOO_THICK",
    "0.05, 501, 5, -15, -18, SURFACE_UNTRIED"
  })
  void freezing_that_cannot_be_told_has_a_reason(
      double thickness, double coefficient, double start, double end, double air, Reason reason) {
    assertThat(freezing(thickness, coefficient, start, end, air).reason()).contains(reason);
  }

  @ParameterizedTest
  @CsvSource({
    "0.12, 9, 40, -15, -18",
    "0.05, 500, 5, -15, -45",
    "0.05, 9, 5, -10, -15",
    "0.01, 9, -1, -2, -18"
  })
  void freezing_at_the_ends_of_its_range_is_told(
      double thickness, double coefficient, double start, double end, double air) {
    assertThat(freezing(thickness, coefficient, start, end, air).value()).isPresent();
  }

  private static Answer<Freezing.Time> freezing(
      double thickness, double coefficient, double start, double end, double air) {
    FreezingFood food = FreezingFood.of(STEW, -1, end).value().orElseThrow();
    return new Freezing(food, Solid.SLAB, thickness, coefficient)
        .time(new Freezing.Course(start, end, air));
  }

  /** Choi and Okos: -40 to 150 °C. */
  @ParameterizedTest
  @CsvSource({"150.1, OUTSIDE_PROPERTIES", "-40.1, OUTSIDE_PROPERTIES", "-1.1, IS_FROZEN"})
  void properties_outside_their_range_have_a_reason(double celsius, Reason reason) {
    assertThat(STEW.unfrozen(celsius, -1).reason()).contains(reason);
  }

  @Test
  void ice_cools_nothing_below_its_own_melting_point() {
    IceBath bath = new IceBath(20, 4, 0, 0);
    assertThat(bath.kilograms(95, 0).reason()).contains(Reason.ICE_NOT_COLD_ENOUGH);
    assertThat(bath.kilograms(5, 5).reason()).contains(Reason.ALREADY_THERE);
  }

  /** Measured lives go up to -5 °C (Tsironi et al. 2009); food warmer than that thaws. */
  @ParameterizedTest
  @CsvSource({"-4.9, true", "-5, false", "5, true"})
  void food_that_is_not_frozen_has_no_quality_life(double celsius, boolean isRefused) {
    LifeModel model = new LifeModel.Factor(90, 3);
    FrozenHistory history = new FrozenHistory(List.of(new FrozenHistory.Step(celsius, 7)));
    assertThat(history.used(model).reason().isPresent()).isEqualTo(isRefused);
    assertThat(history.left(model).reason().isPresent()).isEqualTo(isRefused);
    assertThat(history.cost(model).reason().isPresent()).isEqualTo(isRefused);
  }

  /** Own convention: between two readings nobody looked, so the warmer of them counts. */
  @Test
  void between_two_readings_the_warmer_counts() {
    Instant start = Instant.parse("2026-03-01T00:00:00Z");
    FrozenHistory history =
        FrozenHistory.ofReadings(
            List.of(
                new Reading(start, -18),
                new Reading(start.plus(Duration.ofDays(2)), -12),
                new Reading(start.plus(Duration.ofDays(3)), -18)));
    assertThat(history.steps())
        .containsExactly(new FrozenHistory.Step(-12, 2), new FrozenHistory.Step(-12, 1));
  }

  /** A warm week at 10 °F: 5.8 degrees above 0 °F at Q10 3 cost 3^0.58 - 1 weeks (derived). */
  @Test
  void a_warm_week_costs_what_the_rule_says() {
    FrozenHistory week = new FrozenHistory(List.of(new FrozenHistory.Step(-12.2, 7)));
    assertThat(week.cost(new LifeModel.Factor(90, 3)).value().orElseThrow())
        .isCloseTo(7 * (Math.pow(3, 0.58) - 1), within(1e-6));
  }

  /** FDA, food safety in an emergency: about 4, 48 and 24 hours while closed. */
  @ParameterizedTest
  @CsvSource({
    "REFRIGERATOR, 1, 3",
    "FULL_FREEZER, 30, 18",
    "HALF_FREEZER, 24, 0",
    "REFRIGERATOR, 9, 0"
  })
  void hours_without_power_are_taken_off(Outage.Appliance appliance, int gone, int left) {
    assertThat(Handbook.shipped().outage().left(appliance, Duration.ofHours(gone)))
        .isEqualTo(Duration.ofHours(left));
  }

  /** More never thaws sooner, over the joints between the printed rules too. */
  @Test
  void a_larger_piece_never_thaws_sooner() {
    Thawing.Hours before = new Thawing.Hours(0, 0);
    Thawing.Hours beforeCold = before;
    for (double pounds = 0.1; pounds < 30; pounds += 0.1) {
      Thawing piece = new Thawing(pounds, Handbook.shipped().thawing());
      assertThat(piece.coldWater().shortest()).isGreaterThanOrEqualTo(before.shortest());
      assertThat(piece.coldWater().longest()).isGreaterThanOrEqualTo(before.longest());
      assertThat(piece.refrigerator().shortest()).isGreaterThanOrEqualTo(beforeCold.shortest());
      assertThat(piece.refrigerator().longest()).isGreaterThanOrEqualTo(beforeCold.longest());
      before = piece.coldWater();
      beforeCold = piece.refrigerator();
    }
  }
}
