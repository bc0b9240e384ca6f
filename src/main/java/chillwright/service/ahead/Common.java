package chillwright.service.ahead;

import chillwright.core.ahead.Ahead.Source;
import chillwright.core.ahead.Filled;
import chillwright.core.ahead.Told;
import chillwright.core.heat.Practice;
import chillwright.core.heat.PrintedFood;
import chillwright.core.heat.Surface;
import chillwright.core.measure.Limit;
import chillwright.core.measure.Temperature.Scale;
import chillwright.rulebook.Handbook;
import java.util.List;
import java.util.Optional;

/** Parameters and figures that several questions share. */
final class Common {
  static final Parameter FOOD =
      Parameter.optional(
          "food", "FOOD", "What it is made of like, such as chili or rice (default: beef_stew).");

  /** Where no food gets cold. */
  static final String COUNTER = "counter";

  static final Optional<String> STILL_AIR = Optional.of("still_air");
  static final double MILLIMETRES = 1000;
  static final double INCH = 25.4;
  static final double POUND = 0.45359237;
  static final double QUART = 0.946352946;
  static final double CUBIC_FOOT = 28.316846592;

  /** Where water boils at sea level: the warmest start of soup. */
  static final double BOILING = 100;

  private Common() {}

  static Parameter surface(String says) {
    return Parameter.optional("surface", "SURFACE", says);
  }

  static PrintedFood food(Given given, Setting setting) {
    List<PrintedFood> like = given.text("food").map(new LikeFood(setting)::of).orElse(List.of());
    if (like.size() > 1) {
      String either = like.get(0).title() + " or " + like.get(1).title();
      String says = "\"%s\" may be %s: give one of them.".formatted(given.shown("food"), either);
      given.refuse("food", "two-foods", either, says);
    }
    return like.stream()
        .findFirst()
        .orElseGet(
            () ->
                given.one(
                    "food",
                    setting.handbook().foods(),
                    PrintedFood::key,
                    Optional.of("beef_stew")));
  }

  /** Where no food was chosen, or another one than the tables have, which the figures are of. */
  static void tellAssumed(PrintedFood food, Given given, List<Told> told) {
    if (!given.has("food")) {
      told.add(Told.of("assumed-food", Filled.word("food", food.title())));
    }
    given
        .text("food")
        .filter(word -> !LikeFood.isNamed(food, word.strip()))
        .ifPresent(word -> told.add(Told.of("like-food", Filled.word("food", food.title()))));
  }

  static Surface surface(Given given, Question question, Handbook handbook) {
    return given.one("surface", question.surfaces(handbook), Surface::key, STILL_AIR);
  }

  static Source source(PrintedFood food) {
    return new Source(food.title(), food.source() + "; by Choi and Okos", food.status());
  }

  static Source source(Surface surface) {
    return new Source(surface.title(), surface.source(), surface.status());
  }

  static Source source(Practice figure) {
    return new Source(figure.key().replace('-', ' '), figure.source(), figure.status());
  }

  /** A printed limit for arithmetic on curves, by its figure in Celsius where there is one. */
  static double celsius(Limit limit) {
    return limit.in(Scale.CELSIUS).celsiusDegrees();
  }
}
