package chillwright.service.ahead;

import chillwright.core.ahead.Ahead;
import chillwright.core.ahead.Filled;
import chillwright.core.ahead.Told;
import chillwright.core.heat.FreezerLoad;
import chillwright.core.heat.Practice;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** How much new food a freezer can take in 24 hours, and over how many days to spread more. */
final class FreezerLoadQuestion implements Question.Answering {
  @Override
  public List<Parameter> parameters() {
    return List.of(
        Parameter.needed("freezer", "VOLUME", "Of the freezer, such as 15ft3 or 420L."),
        Parameter.optional(
            "kind", "mixed|meat|vegetables", "What is frozen (default: mixed dishes)."),
        Parameter.optional("weight", "WEIGHT", "Of all that is to be frozen."));
  }

  @Override
  public Ahead answer(Given given, Setting setting) throws BadQuestion {
    double cubicFeet = given.needed("freezer", Measured.VOLUME) / Common.CUBIC_FOOT;
    String kind = given.choice("kind", List.of("mixed", "meat", "vegetables"));
    OptionalDouble weight = given.amount("weight", Measured.MASS);
    given.requireFaultless();
    Practice figure =
        setting.handbook().figure(kind.equals("mixed") ? "freezer-load" : "freezer-load-" + kind);
    FreezerLoad load = new FreezerLoad(cubicFeet, figure);
    List<Told> told = new ArrayList<>();
    told.add(
        Told.of(
            "freezer-load.day",
            Filled.amount("perDay", load.poundsPerDay() * Common.POUND, Filled.Unit.KILOGRAMS)));
    weight.ifPresent(
        kilograms ->
            told.add(
                Told.of(
                    "freezer-load.days",
                    Filled.amount("weight", kilograms, Filled.Unit.KILOGRAMS),
                    Filled.count("days", load.days(kilograms / Common.POUND)))));
    return new Ahead("freezer-load", told, List.of("apart"), List.of(Common.source(figure)));
  }
}
