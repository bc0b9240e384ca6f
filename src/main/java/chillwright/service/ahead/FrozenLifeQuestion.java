package chillwright.service.ahead;

import chillwright.core.ahead.Ahead;
import chillwright.core.ahead.Ahead.Source;
import chillwright.core.ahead.Filled;
import chillwright.core.ahead.FrozenLife;
import chillwright.core.ahead.Told;
import chillwright.core.ahead.WarmSpell;
import chillwright.core.heat.FrozenHistory;
import chillwright.core.heat.LifeModel;
import chillwright.core.heat.PrintedLife;
import chillwright.core.log.Category;
import chillwright.core.measure.Temperature;
import chillwright.core.rules.Rule;
import chillwright.core.rules.Shape;
import chillwright.logfile.Degrees;
import chillwright.logfile.SaidTime;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;

/** What warm spells of a freezer cost of a food's quality life, and the best-by day they leave. */
final class FrozenLifeQuestion implements Question.Answering {
  private static final int MOST_STEPS = 100;
  private static final double HOURS_IN_DAY = 24;
  private static final double MINUTES_IN_DAY = HOURS_IN_DAY * 60;

  /** No limit is missed by the last digit of a double. */
  private static final double ROUNDING = 1e-6;

  private static final String STEPS =
      "temperatures and times such as 10F:7d,-5F:12h, at most " + MOST_STEPS;

  @Override
  public List<Parameter> parameters() {
    return List.of(
        OwnFood.NAME,
        Parameter.optional(
            "category", "CATEGORY", "Key of the keeping list, or give life or food-name."),
        Parameter.optional(
            "life", "LIFE", "A food with printed lives at several temperatures: beef_minced."),
        Parameter.needed("frozen", "DATE", "Day it was frozen."),
        Parameter.needed("steps", "STEPS", "Warm spells, such as 10F:7d,15F:12h; else 0F."),
        Parameter.optional(
            "since", "TIME", "When the first of them began; each follows the one before it."),
        Parameter.optional(
            "q10", "NUMBER", "How much faster for ten degrees Celsius more (default: 3)."),
        OwnFood.ROOM_DAYS);
  }

  /** What was asked, read and sound; either a category or a printed life. */
  private record Asked(
      Optional<Category> category,
      Optional<PrintedLife> life,
      LocalDate frozen,
      double factor,
      FrozenHistory history,
      OwnFood own,
      Optional<OffsetDateTime> since,
      LocalDate today) {
    /** Nothing of it is a question of safety, however warm it was. */
    boolean isWithoutCold() {
      return category.filter(kind -> !kind.tcs()).isPresent();
    }

    /** From the first step above that temperature to the end of the last; empty without a day. */
    Optional<WarmSpell> warm(double celsius) {
      if (since.isEmpty()) {
        return Optional.empty();
      }
      OffsetDateTime at = since.get();
      Optional<OffsetDateTime> from = Optional.empty();
      OffsetDateTime until = at;
      for (FrozenHistory.Step step : history.steps()) {
        OffsetDateTime end = at.plusMinutes(Math.round(step.length() * MINUTES_IN_DAY));
        if (step.celsius() > celsius) {
          from = Optional.of(from.orElse(at));
          until = end;
        }
        at = end;
      }
      OffsetDateTime last = until;
      return from.map(first -> new WarmSpell(first, last));
    }

    FrozenLife dates() {
      return new FrozenLife(frozen, history, today);
    }

    static Asked of(Given given, Setting setting) throws BadQuestion {
      if (given.has("category") == given.has("life")) {
        String says = "Give either a category of the keeping list or a printed life.";
        given.refuse("category", "one-of-two", "category or life", says);
      }
      Optional<Category> category = given.oneIfGiven("category", freezable(setting), Category::key);
      Optional<PrintedLife> life =
          given.oneIfGiven("life", setting.handbook().lives(), PrintedLife::key);
      Optional<LocalDate> frozen =
          given.date("frozen", setting.now().toLocalDate(), SaidTime.Toward.PAST);
      if (!given.has("frozen")) {
        given.missing("frozen", Given.DAY);
      }
      double factor = given.number("q10", 1, 10, FrozenLife.USUAL_FACTOR);
      Optional<FrozenHistory> history = FrozenLifeQuestion.steps(given);
      OwnFood own = OwnFood.of(given, category, setting.now().toLocalDate(), setting);
      Optional<OffsetDateTime> since = began(given, frozen, setting);
      given.requireFaultless();
      Asked asked =
          new Asked(
              category,
              life,
              frozen.orElseThrow(),
              factor,
              history.orElseThrow(),
              own,
              since,
              setting.now().toLocalDate());
      asked.requireOver(given, setting);
      return asked;
    }

    /** What is to come costs nothing that anybody can know. */
    private void requireOver(Given given, Setting setting) throws BadQuestion {
      OffsetDateTime now = setting.asked().toOffsetDateTime();
      if (warm(LifeModel.REFERENCE).filter(spell -> spell.until().isAfter(now)).isPresent()) {
        String allowed = "warm spells that are over by now";
        String says = "A warm spell would end in the future: give " + allowed + ".";
        given.refuse("since", "not-over", allowed, says);
      }
      given.requireFaultless();
    }
  }

  private static Optional<OffsetDateTime> began(
      Given given, Optional<LocalDate> frozen, Setting setting) {
    if (!given.has("since")) {
      return Optional.empty();
    }
    OffsetDateTime since = given.since("since", setting.asked());
    if (frozen.filter(since.toLocalDate()::isBefore).isPresent()) {
      String allowed = "a time from " + frozen.get() + " on";
      String says = "It was not frozen yet then: give " + allowed + ".";
      given.refuse("since", "before-frozen", allowed, says);
    }
    return Optional.of(since);
  }

  @Override
  public Ahead answer(Given given, Setting setting) throws BadQuestion {
    Asked asked = Asked.of(given, setting);
    List<Told> told = new ArrayList<>();
    List<Source> sources = new ArrayList<>();
    asked.warm(LifeModel.REFERENCE).map(WarmSpell::told).ifPresent(told::add);
    if (asked.isWithoutCold() && asked.dates().hasThawed()) {
      return thawedWithoutCold(asked);
    }
    Optional<Rule> limit = setting.rules().thawedLimit();
    if (!asked.isWithoutCold() && limit.filter(rule -> isBeyond(asked, rule)).isPresent()) {
      return discarded(limit.get(), told);
    }
    asked.category.ifPresent(category -> byFactor(category, asked, told, sources));
    asked.life.ifPresent(life -> byTable(life, asked, told, sources));
    sources.add(
        new Source(
            "shares of life add up",
            "time-temperature-tolerance work of the USDA Western Regional laboratory",
            "reported"));
    String thawed = asked.isWithoutCold() ? "thawed-without-cold" : "thawed";
    return new Ahead("frozen-life", told, List.of("quality", thawed), sources);
  }

  /** Whether its freezer was warmer in one stretch, and for longer, than thawed food may be. */
  private static boolean isBeyond(Asked asked, Rule rule) {
    Shape.Hold hold = (Shape.Hold) rule.shape();
    double most = hold.atMost().map(CoolingRules::degrees).orElse(Double.MAX_VALUE) + ROUNDING;
    double allowed = CoolingRules.inHours(hold.allowed()) / HOURS_IN_DAY + ROUNDING;
    double stretch = 0;
    for (FrozenHistory.Step step : asked.history.steps()) {
      stretch = step.celsius() > most ? stretch + step.length() : 0;
      if (stretch > allowed) {
        return true;
      }
    }
    return false;
  }

  /** No date of quality is told of food that may have to be discarded. */
  private static Ahead discarded(Rule rule, List<Told> told) {
    Shape.Hold hold = (Shape.Hold) rule.shape();
    told.add(
        Told.of(
            "frozen-life.discard",
            Filled.word("limit", hold.atMost().orElseThrow().text()),
            Filled.hours("allowed", CoolingRules.inHours(hold.allowed()))));
    return new Ahead("frozen-life", told, List.of("thawed"), List.of(CoolingRules.source(rule)));
  }

  private static Ahead thawedWithoutCold(Asked asked) {
    Category category = asked.category.orElseThrow();
    Optional<WarmSpell> warm = asked.warm(LifeModel.WARMEST);
    List<Told> told = new ArrayList<>(warm.map(WarmSpell::told).stream().toList());
    Optional<LocalDate> from = warm.map(spell -> spell.from().toLocalDate());
    Category.Range months = category.freezer();
    OptionalInt best = months.min().isPresent() ? months.min() : months.max();
    told.addAll(asked.dates().thawedWithoutCold(best, asked.own.roomDays(), from));
    return new Ahead(
        "frozen-life",
        told,
        List.of("wrapped"),
        List.of(new Source(category.title(), category.source(), category.status())));
  }

  /** Categories with printed months; only of them can anything be told. */
  private static List<Category> freezable(Setting setting) {
    return setting.keeping().categories().stream()
        .filter(category -> category.freezer().max().isPresent())
        .toList();
  }

  private static Optional<FrozenHistory> steps(Given given) {
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

  private static void byFactor(
      Category category, Asked asked, List<Told> told, List<Source> sources) {
    told.addAll(
        asked.dates().byFactor(category.freezer().min(), category.freezer().max(), asked.factor));
    sources.add(new Source(category.title(), category.source(), category.status()));
    sources.add(
        new Source(
            "factor for ten degrees",
            "published factors go from 1.6 to 3.9; 3 is our choice",
            "derived"));
  }

  /** The printed months as days, each by the calendar from the day of freezing. */
  private static void byTable(
      PrintedLife life, Asked asked, List<Told> told, List<Source> sources) {
    TreeMap<Double, Double> days = new TreeMap<>();
    life.months()
        .lives()
        .forEach((celsius, months) -> days.put(celsius, (double) days(asked.frozen, months)));
    LocalDate before =
        asked.frozen.plusDays(days(asked.frozen, life.months().lifeFrozen(LifeModel.REFERENCE)));
    told.add(asked.dates().moved("frozen-life.fades", before, new LifeModel.Table(days)));
    sources.add(new Source(life.title(), life.source(), life.status()));
  }

  private static long days(LocalDate from, double months) {
    return ChronoUnit.DAYS.between(from, from.plusMonths(Math.round(months)));
  }
}
