package chillwright.service.ahead;

import chillwright.core.ahead.Ahead.Source;
import chillwright.core.ahead.Filled;
import chillwright.core.ahead.Told;
import chillwright.core.heat.Answer;
import chillwright.core.heat.IceBath;
import chillwright.core.heat.Practice;
import chillwright.core.heat.Properties;
import chillwright.rulebook.Handbook;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What a cook can do so that hot food cools in time, as it is published: shallow pans, an ice bath,
 * ice as an ingredient.
 *
 * @param start of the food, °C
 * @param end to which ice is to take it, °C
 * @param litres in the pot, where its size is known
 */
record CoolingActs(
    Handbook handbook, Properties food, double start, double end, OptionalDouble litres) {
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

  /** In the order in which a cook would take them. */
  List<Told> told() {
    List<Told> told = new ArrayList<>();
    double layer = figure(LAYER) * Common.INCH;
    told.add(Told.of("cooling.do.shallow", millimetres("layer", layer)));
    told.add(
        Told.of(
            "cooling.do.ice",
            Filled.hours("every", figure(STIRRING)),
            litres("bowl", BOWL),
            Filled.amount("hot", HOT, Filled.Unit.CELSIUS),
            Filled.amount("warm", WARM, Filled.Unit.CELSIUS),
            Filled.hours("steel", figure(STEEL)),
            Filled.hours("plastic", figure(PLASTIC))));
    double volume = litres.orElse(Common.QUART);
    Answer<Double> ice =
        new IceBath(volume / 1000 * food.density(), food.specificHeat(), 0, 0)
            .kilograms(start, end);
    ice.value()
        .ifPresent(
            kilograms ->
                told.add(
                    Told.of(
                        "cooling.do.ingredient",
                        Filled.amount("ice", kilograms, Filled.Unit.KILOGRAMS),
                        litres("of", volume),
                        Filled.amount("start", start, Filled.Unit.CELSIUS),
                        Filled.amount("end", end, Filled.Unit.CELSIUS))));
    return told;
  }

  private double figure(String key) {
    return handbook.figure(key).low();
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
