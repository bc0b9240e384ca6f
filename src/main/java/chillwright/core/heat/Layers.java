package chillwright.core.heat;

import java.time.Duration;
import java.util.List;

/**
 * The deepest layer of food that still makes its cooling limits, by {@link Cooling}. Times go up
 * with depth, so the depth is found by halving.
 *
 * @param food its properties at the middle of the way
 * @param coefficient of the surface, W/(m2 K)
 * @param isCooledFromBelow whether air gets under the pan
 */
public record Layers(Properties food, double coefficient, boolean isCooledFromBelow) {
  private static final double THINNEST = 0.005;
  private static final double DEEPEST = 0.5;
  private static final int STEPS = 25;

  /**
   * One limit of a rule set.
   *
   * @param fromCelsius where its clock starts; at the start where the food starts colder
   */
  public record Stage(double fromCelsius, double toCelsius, Duration within) {}

  /** The time that a limit's clock shows when a layer reaches the end of the stage. */
  public Answer<Duration> time(double depthMetres, Cooling.Course course, Stage stage) {
    Cooling layer = new Cooling(Body.layer(depthMetres, isCooledFromBelow), food, coefficient);
    Answer<Duration> end = layer.reaches(course, stage.toCelsius());
    if (course.startCelsius() <= stage.fromCelsius()) {
      return end;
    }
    return layer
        .reaches(course, stage.fromCelsius())
        .flatMap(begun -> end.map(reached -> reached.minus(begun)));
  }

  /**
   * Metres of the deepest layer that makes every stage, rounded down to a millimetre; at most 0.5.
   *
   * <p>Where a deeper layer would freeze at its surface, the depth up to which the formula holds.
   *
   * @return a reason where not even 5 mm make it, or where a temperature is never reached
   */
  public Answer<Double> deepest(Cooling.Course course, List<Stage> stages) {
    for (Stage stage : stages) {
      Answer<Duration> thinnest = time(THINNEST, course, stage);
      if (thinnest.reason().isPresent()) {
        return Answer.beyond(thinnest.reason().get());
      }
    }
    if (!makes(THINNEST, course, stages)) {
      return Answer.beyond(Reason.NO_LAYER_IS_THIN_ENOUGH);
    }
    double low = THINNEST;
    double high = DEEPEST;
    for (int i = 0; i < STEPS; i++) {
      double middle = (low + high) / 2;
      if (makes(middle, course, stages)) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return Answer.known(Math.floor(low * 1000) / 1000);
  }

  private boolean makes(double depth, Cooling.Course course, List<Stage> stages) {
    return stages.stream()
        .allMatch(
            stage ->
                time(depth, course, stage)
                    .value()
                    .filter(time -> time.compareTo(stage.within()) <= 0)
                    .isPresent());
  }
}
