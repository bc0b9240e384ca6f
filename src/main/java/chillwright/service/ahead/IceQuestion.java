package chillwright.service.ahead;

import chillwright.core.ahead.Ahead;
import chillwright.core.ahead.Ahead.Source;
import chillwright.core.ahead.Filled;
import chillwright.core.ahead.Told;
import chillwright.core.heat.Answer;
import chillwright.core.heat.FreezingFood;
import chillwright.core.heat.IceBath;
import chillwright.core.heat.PrintedFood;
import chillwright.core.heat.Properties;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Ice for an ice bath, or as an ingredient, by energy balance. */
final class IceQuestion implements Question.Answering {
  static final Source FUSION =
      new Source(
          "heat of fusion 333.6 kJ/kg",
          "ASHRAE Handbook Refrigeration, Thermal properties of foods",
          "reported");

  private static final String EITHER = "volume or weight";

  @Override
  public List<Parameter> parameters() {
    return List.of(
        Parameter.optional("volume", "VOLUME", "Of the food, or give its weight."),
        Parameter.optional("weight", "WEIGHT", "Of the food, or give its volume."),
        Common.FOOD,
        Parameter.optional("start", Parameter.TEMPERATURE, "Of the food (default: 212F)."),
        Parameter.optional(
            "to",
            Parameter.TEMPERATURE,
            "Of the food in the end, above 32F (default: as cold as the rules ask)."),
        Parameter.optional("water", "VOLUME", "In the bath before the ice (default: none)."),
        Parameter.optional(
            "water-temperature", Parameter.TEMPERATURE, "Of that water (default: 68F)."));
  }

  @Override
  public Ahead answer(Given given, Setting setting) throws BadQuestion {
    PrintedFood food = Common.food(given, setting);
    OptionalDouble volume = given.amount("volume", Measured.VOLUME);
    OptionalDouble weight = given.amount("weight", Measured.MASS);
    double start = given.temperature("start", Common.BOILING);
    CoolingRules rules = new CoolingRules(setting);
    double to = given.temperature("to", rules.end());
    double water = given.amount("water", Measured.VOLUME, 0);
    double tap = given.temperature("water-temperature", Around.TAP_WATER);
    if (given.has("volume") == given.has("weight")) {
      given.refuse("volume", "one-of-two", EITHER, "Give either volume or weight of the food.");
    }
    given.requireFaultless();
    double middle = Math.max(FreezingFood.USUAL_POINT, (start + to) / 2);
    Answer<Double> ice =
        food.composition()
            .unfrozen(middle, FreezingFood.USUAL_POINT)
            .flatMap(
                properties ->
                    new IceBath(
                            weight.orElseGet(() -> kilograms(volume, properties)),
                            properties.specificHeat(),
                            water,
                            tap)
                        .kilograms(start, to));
    List<Source> sources = new ArrayList<>(List.of(Common.source(food), FUSION));
    List<Told> told = new ArrayList<>(List.of(told(ice, start, to)));
    if (!given.has("start")) {
      told.add(Told.of("ice.taken-start", Filled.amount("start", start, Filled.Unit.CELSIUS)));
    }
    if (!given.has("to")) {
      told.add(Told.of("ice.taken-end", Filled.amount("to", to, Filled.Unit.CELSIUS)));
      sources.addAll(rules.endSources());
    }
    Common.tellAssumed(food, given, told);
    return new Ahead("ice", told, List.of("ice-least"), sources);
  }

  private static double kilograms(OptionalDouble litres, Properties food) {
    return litres.orElseThrow() / 1000 * food.density();
  }

  private static Told told(Answer<Double> ice, double start, double to) {
    Filled from = Filled.amount("start", start, Filled.Unit.CELSIUS);
    Filled end = Filled.amount("to", to, Filled.Unit.CELSIUS);
    return ice.value()
        .map(
            kilograms ->
                Told.of(
                    "ice.kilograms",
                    Filled.amount("ice", kilograms, Filled.Unit.KILOGRAMS),
                    from,
                    end))
        .orElseGet(() -> Told.none("ice.kilograms.none", ice.reason().orElseThrow(), from, end));
  }
}
