package chillwright.rulebook;

import chillwright.core.measure.Limit;
import chillwright.core.rules.Citation;
import chillwright.core.rules.Shape;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Reads the figures of one day into a shape, exactly as they are printed. What it is given has
 * passed the schema.
 */
final class Figures {
  private Figures() {}

  /**
   * @param shape the form the rule names, such as "reach"
   * @param day the figures of one day
   */
  static Shape shape(String shape, Spot day) {
    return switch (shape) {
      case "reach" ->
          new Shape.Reach(
              limit(day, "from"),
              limit(day, "to").orElseThrow(),
              time(day, "within"),
              time(day, "stays").orElse(Duration.ZERO),
              time(day, "stands").orElse(Duration.ZERO));
      case "hold" ->
          new Shape.Hold(
              limit(day, "at-most"),
              limit(day, "at-least"),
              time(day, "allowed").orElse(Duration.ZERO));
      case "time-alone" ->
          new Shape.TimeAlone(
              time(day, "within").orElseThrow(),
              limit(day, "ceiling"),
              limit(day, "hot-air"),
              time(day, "within-hot-air"));
      case "day-count" -> new Shape.DayCount(days(day), day.text("first-day").equals("counts"));
      case "stays-frozen" -> new Shape.StaysFrozen(limit(day, "at-most"));
      case "no-figure" -> new Shape.NoFigure();
      default -> throw new IllegalArgumentException("the schema knows no such shape: " + shape);
    };
  }

  static Citation citation(Spot cite) {
    Optional<String> copy = cite.has("copy") ? Optional.of(cite.text("copy")) : Optional.empty();
    return new Citation(cite.text("text"), cite.text("state"), copy);
  }

  private static Optional<Limit> limit(Spot day, String key) {
    if (!day.has(key)) {
      return Optional.empty();
    }
    Spot figure = day.at(key);
    boolean inclusive = !figure.text("passes").equals("beyond");
    return Optional.of(new Limit(hundredths(figure, "c"), hundredths(figure, "f"), inclusive));
  }

  private static OptionalInt hundredths(Spot figure, String scale) {
    if (!figure.has(scale)) {
      return OptionalInt.empty();
    }
    BigDecimal degrees = figure.at(scale).node().decimalValue();
    return OptionalInt.of(degrees.movePointRight(2).intValueExact());
  }

  static Optional<Duration> time(Spot day, String key) {
    return day.has(key) ? Optional.of(Duration.parse(day.text(key))) : Optional.empty();
  }

  private static OptionalInt days(Spot day) {
    return day.text("days").equals("chart")
        ? OptionalInt.empty()
        : OptionalInt.of(day.at("days").node().intValue());
  }
}
