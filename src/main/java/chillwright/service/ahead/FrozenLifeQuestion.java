package chillwright.service.ahead;

import chillwright.core.ahead.Ahead;
import chillwright.core.ahead.Ahead.Source;
import chillwright.core.ahead.Filled;
import chillwright.core.ahead.Told;
import chillwright.core.heat.Answer;
import chillwright.core.heat.FrozenHistory;
import chillwright.core.heat.LifeModel;
import chillwright.core.log.Category;
import chillwright.core.measure.Temperature;
import chillwright.logfile.Degrees;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** What warm spells of a freezer cost of a food's quality life, and the best-by day they leave. */
final class FrozenLifeQuestion implements Question.Answering {
  private static final double USUAL_FACTOR = 3;
  private static final int MOST_STEPS = 100;
  private static final String STEPS =
      "temperatures and times such as 10F:7d,-5F:12h, at most " + MOST_STEPS;

  @Override
  public List<Parameter> parameters() {
    return List.of(
        Parameter.needed("category", "CATEGORY", "Key of the keeping list."),
        Parameter.needed("frozen", "DATE", "Day it was frozen."),
        Parameter.needed("steps", "STEPS", "Warm spells, such as 10F:7d,15F:12h; else 0F."),
        Parameter.optional(
            "q10", "NUMBER", "How much faster for ten degrees Celsius more (default: 3)."));
  }

  @Override
  public Ahead answer(Given given, Setting setting) throws BadQuestion {
    Category category = given.one("category", freezable(setting), Category::key, Optional.empty());
    Optional<LocalDate> frozen = given.date("frozen");
    if (!given.has("frozen")) {
      given.missing("frozen", "a date such as 2026-11-22");
    }
    double factor = given.number("q10", 1, 10, USUAL_FACTOR);
    Optional<FrozenHistory> history = history(given);
    given.requireFaultless();
    List<Told> told = new ArrayList<>();
    tell(category, frozen.orElseThrow(), factor, history.orElseThrow(), told);
    List<Source> sources =
        List.of(
            new Source(category.title(), category.source(), category.status()),
            new Source(
                "shares of life add up",
                "time-temperature-tolerance work of the USDA Western Regional laboratory",
                "reported"),
            new Source(
                "factor for ten degrees",
                "published factors go from 1.6 to 3.9; 3 is our choice",
                "derived"));
    return new Ahead("frozen-life", told, List.of("quality", "thawed"), sources);
  }

  /** Categories with printed months; only of them can anything be told. */
  private static List<Category> freezable(Setting setting) {
    return setting.keeping().categories().stream()
        .filter(category -> category.freezer().max().isPresent())
        .toList();
  }

  private static Optional<FrozenHistory> history(Given given) {
    Optional<String> text = given.text("steps");
    if (text.isEmpty()) {
      given.missing("steps", STEPS);
      return Optional.empty();
    }
    String[] parts = text.get().split(",", -1);
    List<FrozenHistory.Step> steps = new ArrayList<>();
    for (String part : parts) {
      step(part).ifPresent(steps::add);
    }
    if (steps.size() != parts.length || steps.size() > MOST_STEPS) {
      given.refuse("steps", "bad-steps", STEPS, "steps cannot be read: give " + STEPS + ".");
      return Optional.empty();
    }
    return Optional.of(new FrozenHistory(steps));
  }

  private static Optional<FrozenHistory.Step> step(String text) {
    int colon = text.indexOf(':');
    if (colon < 0) {
      return Optional.empty();
    }
    Optional<Temperature> temperature = Degrees.read(text.substring(0, colon).strip());
    OptionalDouble hours = Measured.TIME.read(text.substring(colon + 1));
    return temperature.isPresent() && hours.isPresent()
        ? Optional.of(
            new FrozenHistory.Step(temperature.get().celsiusDegrees(), hours.getAsDouble() / 24))
        : Optional.empty();
  }

  private static void tell(
      Category category, LocalDate frozen, double factor, FrozenHistory history, List<Told> told) {
    OptionalInt best = category.freezer().min();
    OptionalInt most = category.freezer().max();
    if (best.isPresent() && best.getAsInt() != most.getAsInt()) {
      told.add(moved("frozen-life.best", frozen, best.getAsInt(), factor, history));
    }
    told.add(moved("frozen-life.fades", frozen, most.getAsInt(), factor, history));
  }

  /** A date of quality, moved back by the days that the warm spells cost. */
  private static Told moved(
      String key, LocalDate frozen, int months, double factor, FrozenHistory history) {
    LocalDate before = frozen.plusMonths(months);
    double life = ChronoUnit.DAYS.between(frozen, before);
    LifeModel model = new LifeModel.Factor(life, factor);
    Answer<Double> cost = history.cost(model);
    Filled was = Filled.day("was", before);
    if (cost.reason().isPresent()) {
      return Told.none(key + ".none", cost.reason().get(), was);
    }
    double days = Math.max(0, cost.value().orElseThrow());
    double share = 100 * history.used(model).value().orElseThrow();
    LocalDate now = before.minusDays((long) Math.ceil(days - 1e-9));
    return Told.of(
        key,
        Filled.day("now", now.isBefore(frozen) ? frozen : now),
        was,
        Filled.amount("cost", days, Filled.Unit.DAYS),
        Filled.amount("used", share, Filled.Unit.PERCENT));
  }
}
