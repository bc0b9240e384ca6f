package chillwright.service.ahead;

import chillwright.core.ahead.Ahead.Source;
import chillwright.core.ahead.Filled;
import chillwright.core.ahead.Told;
import chillwright.core.heat.IceBath;
import chillwright.core.heat.Practice;
import chillwright.core.heat.Properties;
import chillwright.rulebook.Handbook;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a cook can do so that hot food cools in time, as it is published: shallow pans, an ice bath,
 * ice as an ingredient.
 *
 * @param start of the food, °C
 * @param end to which ice is to take it, °C
 * @param litres of the whole batch, where its size is known
 * @param isStillTooSlow whether a pan at rest is not in time there, however shallow
 */
record CoolingActs(
    Handbook handbook,
    Properties food,
    double start,
    double end,
    OptionalDouble litres,
    boolean isStillTooSlow) {
  /** A layer below this is no pan of food, metres: 1 in, common practice, no source. */
  static final double THINNEST = 0.0254;

  private static final String LAYER = "cooling-layer";
  private static final String STIRRING = "ice-bath-stirring";
  private static final String STEEL = "ice-bowl-steel";
  private static final String PLASTIC = "ice-bowl-plastic";

  /** The bowls of the test: 174 to 80 °F, 2.5 US quarts. */
  private static final double HOT = (174 - 32) / 1.8;

  private static final double WARM = (80 - 32) / 1.8;
  private static final double BOWL = 2.5 * Common.QUART;

  /** In the order in which a cook would take them: pans alone first, where they can do it. */
  List<Told> told() {
    List<Told> told = new ArrayList<>(bath());
    String key = "cooling.do.shallow" + (isStillTooSlow ? ".after" : "");
    told.add(
        isStillTooSlow ? told.size() : 0,
        Told.of(key, millimetres("layer", figure(LAYER) * Common.INCH)));
    ingredient().ifPresent(told::add);
    return told;
  }

  private List<Told> bath() {
    List<Told> told = new ArrayList<>();
    told.add(
        Told.of(
            "cooling.do.ice",
            Filled.hours("every", figure(STIRRING)),
            litres("bowl", BOWL),
            Filled.amount("hot", HOT, Filled.Unit.CELSIUS),
            Filled.amount("warm", WARM, Filled.Unit.CELSIUS),
            Filled.hours("steel", figure(STEEL)),
            Filled.hours("plastic", figure(PLASTIC))));
    ice(volume())
        .map(
            kilograms ->
                Told.of(
                    "cooling.do.bath-ice" + each(),
                    kilograms("ice", kilograms),
                    litres("of", volume()),
                    celsius("start", start),
                    celsius("end", end)))
        .ifPresent(told::add);
    return told;
  }

  /** The ice stands for water of the recipe, a litre for a kilogram, so the batch stays as big. */
  private Optional<Told> ingredient() {
    return ice(1)
        .map(
            perLitre -> {
              double hot = volume() / (1 + perLitre);
              double ice = volume() - hot;
              return Told.of(
                  "cooling.do.ingredient" + each(),
                  kilograms("ice", ice),
                  litres("water", ice),
                  litres("hot", hot),
                  celsius("start", start),
                  celsius("end", end),
                  litres("of", volume()));
            });
  }

  /** Where nobody said how much there is, it is told of a quart. */
  private String each() {
    return litres.isPresent() ? "" : ".each";
  }

  private double volume() {
    return litres.orElse(Common.QUART);
  }

  private Optional<Double> ice(double volume) {
    return new IceBath(volume / 1000 * food.density(), food.specificHeat(), 0, 0)
        .kilograms(start, end)
        .value();
  }

  private double figure(String key) {
    return handbook.figure(key).low();
  }

  private static Filled celsius(String name, double celsius) {
    return Filled.amount(name, celsius, Filled.Unit.CELSIUS);
  }

  private static Filled kilograms(String name, double kilograms) {
    return Filled.amount(name, kilograms, Filled.Unit.KILOGRAMS);
  }

  private static Filled litres(String name, double litres) {
    return Filled.amount(name, litres, Filled.Unit.LITRES);
  }

  private static Filled millimetres(String name, double millimetres) {
    return Filled.amount(name, millimetres, Filled.Unit.MILLIMETRES);
  }

  static List<Source> sources(Handbook handbook) {
    List<Source> sources = new ArrayList<>();
    for (String key : List.of(LAYER, STIRRING, STEEL)) {
      Practice figure = handbook.figure(key);
      sources.add(Common.source(figure));
    }
    sources.add(IceQuestion.FUSION);
    return sources;
  }
}
