package chillwright.core.heat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * The temperatures that frozen food was kept at, and what they cost of its quality life: shares of
 * life add up, {@code used = sum dt / life(T)}, in any order.
 *
 * <p>Source: the additive rule of the time-temperature-tolerance work of the USDA Western Regional
 * laboratory, 1948 on; the six published pea histories fit it within a day. Not for food that
 * thawed and was frozen again, nor where drying in a bad wrapping does the harm.
 *
 * @param steps at least one
 */
public record FrozenHistory(List<Step> steps) {
  /**
   * A time at one temperature.
   *
   * @param length in the unit of the life model, above or at 0
   */
  public record Step(double celsius, double length) {
    public Step {
      if (!(length >= 0)) {
        throw new IllegalArgumentException("a step of " + length);
      }
    }
  }

  /** A reading of the freezer. */
  public record Reading(Instant at, double celsius) {}

  private static final double MILLIS_IN_DAY = Duration.ofDays(1).toMillis();

  public FrozenHistory {
    steps = List.copyOf(steps);
    if (steps.isEmpty()) {
      throw new IllegalArgumentException("a history needs a step");
    }
  }

  /**
   * Steps in days between readings, each at the warmer of its two ends: nobody looked between, and
   * the answer must not flatter.
   *
   * @param readings at least two, in order of time
   */
  public static FrozenHistory ofReadings(List<Reading> readings) {
    List<Step> steps = new ArrayList<>();
    for (int i = 1; i < readings.size(); i++) {
      Reading before = readings.get(i - 1);
      Reading after = readings.get(i);
      double days = Duration.between(before.at(), after.at()).toMillis() / MILLIS_IN_DAY;
      steps.add(new Step(Math.max(before.celsius(), after.celsius()), days));
    }
    return new FrozenHistory(steps);
  }

  /** How long the history is. */
  public double length() {
    return steps.stream().mapToDouble(Step::length).sum();
  }

  /** The share of life used, 0 and up; a reason where a step was too warm to be called frozen. */
  public Answer<Double> used(LifeModel model) {
    Answer<Double> used = Answer.known(0.0);
    for (Step step : steps) {
      used =
          used.flatMap(sum -> model.life(step.celsius()).map(life -> sum + step.length() / life));
    }
    return used;
  }

  /** Life left at -18 °C; 0 once it is used up. */
  public Answer<Double> left(LifeModel model) {
    double whole = model.lifeFrozen(LifeModel.REFERENCE);
    return used(model).map(used -> Math.max(0, (1 - used) * whole));
  }

  /** How much less life is left than steady storage at -18 °C would have left; may be below 0. */
  public Answer<Double> cost(LifeModel model) {
    double whole = model.lifeFrozen(LifeModel.REFERENCE);
    return used(model).map(used -> used * whole - length());
  }
}
