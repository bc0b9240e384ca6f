package chillwright.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What must hold whatever the figures: it follows from the equation of heat itself (its maximum
 * principle) and from adding up shares, so no source is needed for a single value.
 */
class HeatPropertiesTest {
  private static final int RUNS = 48;
  private static final List<Solid> SOLIDS = List.of(Solid.values());
  private static final double FREEZING = FreezingFood.USUAL_POINT;

  static IntStream seeds() {
    return IntStream.range(0, 12);
  }

  /** Soup to cooked meat. */
  private static Properties food(SplittableRandom random) {
    return new Properties(
        random.nextDouble(1000, 1150), random.nextDouble(0.40, 0.62), random.nextDouble(3.0, 4.1));
  }

  private static Duration time(
      double depth, Properties food, double coefficient, double surroundings) {
    Cooling.Course course = new Cooling.Course(90, surroundings, -100);
    return new Cooling(Body.layer(depth, true), food, coefficient)
        .reaches(course, 21)
        .value()
        .orElseThrow();
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void deeper_is_never_faster_and_colder_or_better_cooled_never_slower(int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    for (int run = 0; run < RUNS; run++) {
      Properties food = food(random);
      double depth = random.nextDouble(0.005, 0.3);
      double coefficient = random.nextDouble(3, 900);
      double surroundings = random.nextDouble(-20, 18);
      double more = random.nextDouble(1.001, 3);
      Duration time = time(depth, food, coefficient, surroundings);
      assertThat(time(depth * more, food, coefficient, surroundings)).isGreaterThanOrEqualTo(time);
      assertThat(time(depth, food, coefficient * more, surroundings)).isLessThanOrEqualTo(time);
      assertThat(time(depth, food, coefficient, surroundings - more)).isLessThanOrEqualTo(time);
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void a_share_lies_between_0_and_1_and_only_falls(int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    for (int run = 0; run < RUNS / 6; run++) {
      double size = random.nextDouble(0.02, 0.3);
      List<Body> bodies =
          List.of(
              Body.layer(size, random.nextBoolean()),
              Body.pot(size, size * 1.2, random.nextBoolean()),
              Body.brick(size, size * 2, size / 2),
              Body.sphere(size));
      for (Body body : bodies) {
        Cooling cooling = new Cooling(body, food(random), random.nextDouble(1, 2000));
        double before = 1;
        for (double seconds = 1; seconds < 400_000; seconds *= 1.3) {
          double share = cooling.centreShare(seconds);
          assertThat(share).isBetween(0.0, before + 1e-9);
          assertThat(cooling.surfaceShare(seconds)).isLessThanOrEqualTo(share + 1e-9);
          before = share;
        }
      }
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void more_cooled_faces_are_never_slower(int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    for (int run = 0; run < RUNS; run++) {
      Properties food = food(random);
      double depth = random.nextDouble(0.01, 0.2);
      double coefficient = random.nextDouble(3, 500);
      double seconds = random.nextDouble(60, 100_000);
      double top = new Cooling(Body.layer(depth, false), food, coefficient).centreShare(seconds);
      double both = new Cooling(Body.layer(depth, true), food, coefficient).centreShare(seconds);
      double pot = new Cooling(Body.pot(0.4, depth, true), food, coefficient).centreShare(seconds);
      assertThat(both).isLessThanOrEqualTo(top + 1e-12);
      assertThat(pot).isLessThanOrEqualTo(both + 1e-12);
    }
  }

  /** Limits as 16 Del. Admin. Code 3-501.14(A) prints them: 57 to 21 °C in 2 h, to 5 °C in 6 h. */
  private static final List<Layers.Stage> STAGES =
      List.of(
          new Layers.Stage(57, 21, Duration.ofHours(2)),
          new Layers.Stage(57, 5, Duration.ofHours(6)));

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void the_deepest_layer_makes_its_limits_and_a_deeper_one_does_not(int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    for (int run = 0; run < RUNS / 6; run++) {
      Layers layers = new Layers(food(random), random.nextDouble(5, 400), random.nextBoolean());
      Cooling.Course course =
          new Cooling.Course(random.nextDouble(50, 98), random.nextDouble(-0.9, 4.5), FREEZING);
      Answer<Double> deepest = layers.deepest(course, STAGES);
      if (deepest.value().isPresent()) {
        double depth = deepest.value().get();
        assertThat(makes(layers, course, depth)).isTrue();
        assertThat(depth >= 0.499 || !makes(layers, course, depth + 0.002)).isTrue();
      } else {
        assertThat(deepest.reason()).contains(Reason.NO_LAYER_IS_THIN_ENOUGH);
        assertThat(makes(layers, course, 0.006)).isFalse();
      }
    }
  }

  private static boolean makes(Layers layers, Cooling.Course course, double depth) {
    return STAGES.stream()
        .allMatch(
            stage ->
                layers.time(depth, course, stage).value().orElseThrow().compareTo(stage.within())
                    <= 0);
  }

  private static FreezingFood freezingFood(SplittableRandom random) {
    double water = random.nextDouble(0.55, 0.92);
    double protein = random.nextDouble(0.01, (1 - water) / 2);
    Composition made = new Composition(water, protein, 0, 1 - water - protein, 0, 0);
    return FreezingFood.of(made, FREEZING, -18).value().orElseThrow();
  }

  private static Freezing.Time freezing(
      FreezingFood food, double thickness, double coefficient, double start, double air) {
    return new Freezing(food, Solid.SLAB, thickness, coefficient)
        .time(new Freezing.Course(start, -15, air))
        .value()
        .orElseThrow();
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void freezing_has_no_jumps_and_more_is_never_faster(int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    for (int run = 0; run < RUNS; run++) {
      FreezingFood food = freezingFood(random);
      double thick = random.nextDouble(0.01, 0.11);
      double coefficient = random.nextDouble(5, 400);
      double start = random.nextDouble(0, 39);
      double air = random.nextDouble(-44, -16);
      Freezing.Time time = freezing(food, thick, coefficient, start, air);
      assertThat(time.shortest()).isLessThan(time.expected());
      assertThat(time.expected()).isLessThan(time.longest());
      List<Freezing.Time> slower =
          List.of(
              freezing(food, thick * 1.0001, coefficient, start, air),
              freezing(food, thick, coefficient * 0.9999, start, air),
              freezing(food, thick, coefficient, start + 0.001, air),
              freezing(food, thick, coefficient, start, air + 0.001));
      for (Freezing.Time other : slower) {
        assertThat(other.expected()).isGreaterThanOrEqualTo(time.expected());
        assertThat((double) other.expected().toSeconds() - time.expected().toSeconds())
            .isLessThan(2 + time.expected().toSeconds() * 0.002);
      }
    }
  }

  /** Plank's equation leaves out cooling before and after, so it is always the shorter. */
  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void freezing_through_takes_longer_than_the_change_of_phase_alone(int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    for (int run = 0; run < RUNS; run++) {
      Freezing freezing =
          new Freezing(
              freezingFood(random),
              SOLIDS.get(random.nextInt(SOLIDS.size())),
              random.nextDouble(0.01, 0.12),
              random.nextDouble(5, 400));
      Freezing.Course course =
          new Freezing.Course(random.nextDouble(0, 39), -15, random.nextDouble(-44, -16));
      assertThat(freezing.pham1984Hours(course))
          .isGreaterThan(freezing.plankHours(FREEZING - course.airCelsius()));
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void ice_only_grows_as_it_gets_colder_and_heat_content_only_falls(int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double water = random.nextDouble(0.4, 0.95);
    Composition made = new Composition(water, 0, 0, 1 - water, 0, 0);
    double ice = 0;
    double content = Double.MAX_VALUE;
    for (double celsius = 20; celsius > -40; celsius -= 0.05) {
      assertThat(made.ice(celsius, FREEZING)).isBetween(ice - 1e-12, water);
      assertThat(made.heatContent(celsius, FREEZING)).isLessThan(content);
      ice = made.ice(celsius, FREEZING);
      content = made.heatContent(celsius, FREEZING);
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void a_frozen_history_may_come_in_any_order_and_warmer_never_costs_less(int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    for (int run = 0; run < RUNS; run++) {
      LifeModel model = new LifeModel.Factor(random.nextDouble(30, 400), random.nextDouble(1.5, 4));
      List<FrozenHistory.Step> steps = new ArrayList<>();
      for (int i = 0; i < 2 + random.nextInt(8); i++) {
        steps.add(new FrozenHistory.Step(random.nextDouble(-30, -6), random.nextDouble(0, 40)));
      }
      double used = new FrozenHistory(steps).used(model).value().orElseThrow();
      List<FrozenHistory.Step> shuffled = new ArrayList<>(steps);
      Collections.shuffle(shuffled, new Random(seed));
      assertThat(new FrozenHistory(shuffled).used(model).value().orElseThrow())
          .isCloseTo(used, within(1e-9));
      List<FrozenHistory.Step> warmer =
          steps.stream()
              .map(step -> new FrozenHistory.Step(step.celsius() + 0.9, step.length()))
              .toList();
      assertThat(new FrozenHistory(warmer).used(model).value().orElseThrow())
          .isGreaterThanOrEqualTo(used);
    }
  }
}
