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
  /** A share that is short of a whole by less is whole: pounds and kilograms are rounded. */
  private static final double ROUNDING = 1e-6;

  @Override
  public List<Parameter> parameters() {
    return List.of(
        Parameter.needed("freezer", "VOLUME", "Of the freezer, such as 15ft3 or 420L."),
        Parameter.optional(
            "kind", "mixed|meat|vegetables", "What is frozen (default: mixed dishes)."),
        Parameter.optional("weight", "WEIGHT", "Of all that is to be frozen."),
        Parameter.optional("pack", "WEIGHT", "Of one pack; with weight."));
  }

  @Override
  public Ahead answer(Given given, Setting setting) throws BadQuestion {
    double cubicFeet = given.needed("freezer", Measured.VOLUME) / Common.CUBIC_FOOT;
    String kind = given.choice("kind", List.of("mixed", "meat", "vegetables"));
    OptionalDouble weight = given.amount("weight", Measured.MASS);
    OptionalDouble pack = given.amount("pack", Measured.MASS);
    if (given.has("pack") && !given.has("weight")) {
      given.missing("weight", Measured.MASS.allowed());
    }
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
    pack.ifPresent(each -> told.add(packs(load, weight.orElseThrow(), each)));
    Practice holds = setting.handbook().figure("freezer-holds");
    told.add(
        Told.of(
            "freezer-load.holds",
            Filled.amount("holds", cubicFeet * holds.low() * Common.POUND, Filled.Unit.KILOGRAMS)));
    return new Ahead(
        "freezer-load",
        told,
        List.of("apart"),
        List.of(Common.source(figure), Common.source(holds)));
  }

  /** Packs in all, and whole packs in a day's load. */
  private static Told packs(FreezerLoad load, double weight, double each) {
    return Told.of(
        "freezer-load.packs",
        Filled.count("packs", (long) Math.ceil(weight / each - ROUNDING)),
        Filled.count(
            "perDay", (long) Math.floor(load.poundsPerDay() * Common.POUND / each + ROUNDING)));
  }
}
