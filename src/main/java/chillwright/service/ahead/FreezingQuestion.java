package chillwright.service.ahead;

import chillwright.core.ahead.Ahead;
import chillwright.core.ahead.Ahead.Source;
import chillwright.core.ahead.Filled;
import chillwright.core.ahead.Told;
import chillwright.core.heat.Answer;
import chillwright.core.heat.Freezing;
import chillwright.core.heat.FreezingFood;
import chillwright.core.heat.PrintedFood;
import chillwright.core.heat.Solid;
import chillwright.core.heat.Surface;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** How long a pack takes to freeze through. */
final class FreezingQuestion implements Question.Answering {
  private static final double COLD = 5;
  private static final double HARD = -15;

  @Override
  public List<Parameter> parameters() {
    return List.of(
        Common.FOOD,
        Parameter.needed("thickness", "LENGTH", "Of the pack, or its diameter; to 12 cm."),
        Parameter.optional(
            "shape", "slab|cylinder|sphere", "A flat pack (default), a tub, a ball."),
        Common.surface(
            "What it lies in: still_air (default), moving_air, or stirred_bath for a brine."),
        Parameter.optional("start", Parameter.TEMPERATURE, "Of the food, to 104F (default: 41F)."),
        Parameter.optional("to", Parameter.TEMPERATURE, "Of its middle (default: 5F)."),
        Parameter.optional(
            "air", Parameter.TEMPERATURE, "Of the freezer, 5F to -49F (default: 0F)."));
  }

  @Override
  public Ahead answer(Given given, Setting setting) throws BadQuestion {
    PrintedFood food = Common.food(given, setting);
    Surface surface = Common.surface(given, Question.FREEZING, setting.handbook());
    double thickness = given.needed("thickness", Measured.LENGTH) / Common.MILLIMETRES;
    Solid solid =
        Solid.valueOf(
            given.choice("shape", List.of("slab", "cylinder", "sphere")).toUpperCase(Locale.ROOT));
    Freezing.Course course =
        new Freezing.Course(
            given.temperature("start", COLD),
            given.temperature("to", HARD),
            given.temperature("air", -18));
    given.requireFaultless();
    Answer<Freezing.Time> time =
        FreezingFood.of(food.composition(), FreezingFood.USUAL_POINT, course.endCelsius())
            .flatMap(
                freezing ->
                    new Freezing(freezing, solid, thickness, surface.coefficient()).time(course));
    List<Source> sources =
        List.of(
            Common.source(food),
            Common.source(surface),
            new Source(
                "time",
                "Pham, Int. J. Refrig. 7 (1984) 377, and J. Food Technol. 21 (1986) 209",
                "reported"));
    List<Told> told = new ArrayList<>(List.of(told(time, course)));
    Common.tellAssumed(food, given, told);
    return new Ahead("freezing", told, List.of("apart", "estimate"), sources);
  }

  private static Told told(Answer<Freezing.Time> time, Freezing.Course course) {
    Filled to = Filled.amount("to", course.endCelsius(), Filled.Unit.CELSIUS);
    return time.value()
        .map(
            known ->
                Told.of(
                    "freezing.time",
                    to,
                    hours("expected", known.expected()),
                    hours("shortest", known.shortest()),
                    hours("longest", known.longest())))
        .orElseGet(() -> Told.none("freezing.time.none", time.reason().orElseThrow(), to));
  }

  private static Filled hours(String name, Duration time) {
    return Filled.hours(name, time.toSeconds() / 3600.0);
  }
}
