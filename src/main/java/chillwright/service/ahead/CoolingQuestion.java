package chillwright.service.ahead;

import chillwright.core.ahead.Ahead;
import chillwright.core.ahead.Ahead.Source;
import chillwright.core.ahead.Filled;
import chillwright.core.ahead.Told;
import chillwright.core.heat.Answer;
import chillwright.core.heat.Body;
import chillwright.core.heat.Cooling;
import chillwright.core.heat.Freezing;
import chillwright.core.heat.FreezingFood;
import chillwright.core.heat.Layers;
import chillwright.core.heat.PrintedFood;
import chillwright.core.heat.Properties;
import chillwright.core.heat.Reason;
import chillwright.core.heat.Surface;
import chillwright.core.measure.Limit;
import chillwright.core.rules.Shape;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** How long a layer or a pot cools, and the deepest layer that makes the limits. */
final class CoolingQuestion implements Question.Answering {
  /** A surface that gives its heat away less well than printed, by what is unsure. */
  private static final double WORSE = 1 - Freezing.UNSURE;

  /** Foods that move as they cool: common practice, no source. */
  private static final Set<String> THIN = Set.of("chicken_stock", "vegetable_soup");

  @Override
  public List<Parameter> parameters() {
    return List.of(
        Common.FOOD,
        Common.surface(
            "What it stands in: still_air (default), moving_air, counter, running_water or"
                + " stirred_bath."),
        Parameter.optional(
            "surroundings",
            Parameter.TEMPERATURE,
            "Temperature of the air or water round it (default: air 38F, a counter 75F, water 68F,"
                + " an ice bath 32F)."),
        Parameter.optional("depth", "LENGTH", "Depth of the food; left out: only the deepest."),
        Parameter.optional("volume", "VOLUME", "Of the whole batch, for its ice; with its depth."),
        Parameter.optional("diameter", "LENGTH", "Of a pot; left out: a wide pan."),
        Parameter.optional(
            "faces", "top|both", "Cooled from the top (default), or with air under the pan too."),
        Parameter.optional("start", Parameter.TEMPERATURE, "Of the food (default: 212F)."),
        Parameter.optional(
            "to", Parameter.TEMPERATURE, "One more temperature to tell the time to."));
  }

  /** What was asked, read and sound. */
  private record Asked(
      PrintedFood food,
      Around around,
      OptionalDouble depth,
      OptionalDouble volume,
      OptionalDouble diameter,
      boolean isBoth,
      double start,
      OptionalDouble to) {
    static Asked of(Given given, Setting setting) throws BadQuestion {
      Asked asked =
          new Asked(
              Common.food(given, setting),
              Around.of(given, setting.handbook()),
              given.amount("depth", Measured.LENGTH),
              given.amount("volume", Measured.VOLUME),
              given.amount("diameter", Measured.LENGTH),
              given.choice("faces", List.of("top", "both")).equals("both"),
              given.temperature("start", Common.BOILING),
              given.temperature("to"));
      boolean isDeep =
          asked.to.isPresent() || asked.diameter.isPresent() || asked.volume.isPresent();
      if (isDeep && !given.has("depth")) {
        given.missing("depth", Measured.LENGTH.allowed());
      }
      given.requireFaultless();
      asked.requireWarmer(given);
      return asked;
    }

    /** Nothing cools in what is as warm as itself. */
    private void requireWarmer(Given given) throws BadQuestion {
      if (start <= around.celsius()) {
        String name = given.has("start") || !given.has("surroundings") ? "start" : "surroundings";
        given.refuse(
            name,
            "not-warmer",
            "a start warmer than what is round the food",
            "The food is not warmer than what is round it: it does not cool there.");
      }
      given.requireFaultless();
    }

    Surface surface() {
      return around.surface();
    }

    double surroundings() {
      return around.celsius();
    }

    Cooling.Course course() {
      return new Cooling.Course(start, surroundings(), FreezingFood.USUAL_POINT);
    }

    /** The same food elsewhere. */
    Asked in(Surface other) {
      return new Asked(food, around.in(other), depth, volume, diameter, isBoth, start, to);
    }

    /** What there is of it, as given or in a pot of that size. */
    OptionalDouble litres() {
      if (volume.isPresent() || diameter.isEmpty() || depth.isEmpty()) {
        return volume;
      }
      double radius = diameter.getAsDouble() / 2;
      return OptionalDouble.of(Math.PI * radius * radius * depth.getAsDouble() / 1e6);
    }

    Body body() {
      double metres = depth.orElseThrow() / Common.MILLIMETRES;
      return diameter.isPresent()
          ? Body.pot(diameter.getAsDouble() / Common.MILLIMETRES, metres, isBoth)
          : Body.layer(metres, isBoth);
    }
  }

  @Override
  public Ahead answer(Given given, Setting setting) throws BadQuestion {
    Asked asked = Asked.of(given, setting);
    double middle = Math.max(FreezingFood.USUAL_POINT, (asked.start + asked.surroundings()) / 2);
    Answer<Properties> food = asked.food.composition().unfrozen(middle, FreezingFood.USUAL_POINT);
    List<Told> told = new ArrayList<>();
    if (food.reason().isPresent()) {
      told.add(Told.none("cooling.none", food.reason().get()));
    } else {
      tell(asked, food.value().orElseThrow(), setting, told);
    }
    asked.around.told().ifPresent(told::add);
    Common.tellAssumed(asked.food, given, told);
    List<Source> sources = new ArrayList<>();
    sources.add(Common.source(asked.food));
    sources.add(Common.source(asked.surface()));
    if (told.stream().anyMatch(one -> one.key().startsWith("cooling.do."))) {
      sources.addAll(CoolingActs.sources(setting.handbook()));
    }
    sources.addAll(new CoolingRules(setting).sources());
    return new Ahead("cooling", told, List.of("estimate", "still-food", "read"), sources);
  }

  /** What must be done at once comes first, then how long it takes as it is, then what helps. */
  private static void tell(Asked asked, Properties food, Setting setting, List<Told> told) {
    CoolingRules rules = new CoolingRules(setting);
    List<Layers.Stage> stages =
        rules.limits().stream().map(rule -> layerStage(asked, (Shape.Reach) rule.shape())).toList();
    boolean isJudged = asked.depth.isPresent() && !stages.isEmpty();
    boolean isSure = isJudged && makes(asked, food, stages, WORSE);
    boolean isLikely = isJudged && makes(asked, food, stages, 1);
    String ends =
        !isJudged
            ? ""
            : isSure
                ? ".makes"
                : isLikely ? ".unsure" : isTooWarm(asked, stages) ? ".never" : ".misses";
    Optional<Told> verdict =
        rules.isAdvised()
            ? Optional.of(ends).filter(end -> !stages.isEmpty()).map(rules::advice)
            : Optional.of(ends).filter(end -> isJudged).map(end -> Told.of("cooling" + end));
    if (rules.isAdvised()) {
      rules.outside().ifPresent(told::add);
    }
    int ofTables = told.size();
    verdict.ifPresent(told::add);
    if (asked.depth.isPresent()) {
      List<Told> times = times(asked, food, rules);
      boolean isTold = times.stream().anyMatch(time -> time.reason().isEmpty());
      if (isTold && THIN.contains(asked.food.key())) {
        told.add(ofTables, Told.of("cooling.times.thin"));
        times.forEach(time -> told.add(atMost(time)));
      } else {
        told.addAll(times);
        told.addAll(isTold ? List.of(Told.of("cooling.times.still")) : List.of());
      }
    }
    if (!isSure && !stages.isEmpty()) {
      told.addAll(acts(asked, food, setting, stages).told());
    }
    if (isSure && told.stream().anyMatch(one -> isLonger(one, stages))) {
      told.add(rules.advice(".long"));
    }
    if (!stages.isEmpty()) {
      told.add(deepest(asked, food, stages));
    }
    if (isJudged && !isSure) {
      told.addAll(ways(asked, food, stages, setting));
      told.add(Told.of("cooling.way.stir"));
    }
  }

  /** Of food that moves as it cools a time for food that cannot is the longest it may take. */
  private static Told atMost(Told time) {
    return time.reason().isEmpty()
        ? new Told(time.key() + ".most", time.filled(), Optional.empty())
        : time;
  }

  /** Whether it never gets cold there, however long it stands. */
  private static boolean isTooWarm(Asked asked, List<Layers.Stage> stages) {
    return asked.surroundings() >= stages.get(stages.size() - 1).toCelsius();
  }

  private static CoolingActs acts(
      Asked asked, Properties food, Setting setting, List<Layers.Stage> stages) {
    Answer<Double> deepest = layers(asked, food, WORSE).deepest(asked.course(), stages);
    return new CoolingActs(
        setting.handbook(),
        food,
        asked.start,
        stages.get(0).toCelsius(),
        asked.litres(),
        deepest.reason().isPresent() || isThin(deepest));
  }

  private static Layers layers(Asked asked, Properties food, double share) {
    return new Layers(food, asked.surface().coefficient() * share, asked.isBoth);
  }

  /** How long until each limit; by advice alone, until it may be called cold. */
  private static List<Told> times(Asked asked, Properties food, CoolingRules rules) {
    List<Told> told = new ArrayList<>();
    List<Double> ends = new ArrayList<>();
    if (rules.isAdvised()) {
      rules.limits().stream()
          .limit(1)
          .forEach(rule -> ends.add(CoolingRules.degrees(((Shape.Reach) rule.shape()).to())));
      rules.coldEnough().ifPresent(ends::add);
    } else {
      rules.limits().forEach(rule -> told.add(stage(asked, food, (Shape.Reach) rule.shape())));
    }
    asked.to.stream().filter(to -> !ends.contains(to)).forEach(ends::add);
    ends.forEach(end -> told.add(reached(asked, food, end)));
    return told;
  }

  /** Whether a time is told that is longer than the last limit allows. */
  private static boolean isLonger(Told told, List<Layers.Stage> stages) {
    double limit = CoolingRules.inHours(stages.get(stages.size() - 1).within());
    return told.filled().stream()
        .filter(filled -> filled.name().equals("longest"))
        .map(Filled::value)
        .anyMatch(value -> value instanceof Filled.Amount time && time.amount() > limit);
  }

  /** Whether it makes every stage with a surface that is so much as good as printed. */
  private static boolean makes(
      Asked asked, Properties food, List<Layers.Stage> stages, double share) {
    return stages.stream().allMatch(stage -> makes(hours(asked, food, stage, share), stage));
  }

  private static boolean makes(Answer<Double> hours, Layers.Stage stage) {
    return hours
        .value()
        .map(taken -> taken <= CoolingRules.inHours(stage.within()))
        .orElse(hours.reason().filter(Reason.ALREADY_THERE::equals).isPresent());
  }

  /** The same food in air that moves, and in melting ice: what each does, by the same formula. */
  private static List<Told> ways(
      Asked asked, Properties food, List<Layers.Stage> stages, Setting setting) {
    List<Told> told = new ArrayList<>();
    for (Surface surface : setting.handbook().surfaces()) {
      boolean isIce = surface.key().equals("stirred_bath");
      boolean isBetter = surface.coefficient() > asked.surface().coefficient();
      if (isBetter && (isIce || surface.key().equals("moving_air"))) {
        told.add(way(asked.in(surface), food, stages));
        if (isIce) {
          told.add(Told.of("cooling.way.bath"));
        }
      }
    }
    return told;
  }

  private static Told way(Asked asked, Properties food, List<Layers.Stage> stages) {
    Filled name = Filled.word("surface", asked.surface().title());
    Filled at = Filled.amount("surroundings", asked.surroundings(), Filled.Unit.CELSIUS);
    if (makes(asked, food, stages, WORSE)) {
      return Told.of("cooling.way.makes", name, at);
    }
    Answer<Double> deepest = layers(asked, food, WORSE).deepest(asked.course(), stages);
    if (deepest.reason().isPresent()) {
      return Told.of("cooling.way.none", name, at);
    }
    String key = "cooling.way.shallower" + (isThin(deepest) ? ".thin" : "");
    return Told.of(key, name, at, depth("deepest", deepest));
  }

  private static Layers.Stage layerStage(Asked asked, Shape.Reach reach) {
    return new Layers.Stage(
        reach.from().map(Common::celsius).orElse(asked.start),
        Common.celsius(reach.to()),
        reach.within().orElseThrow());
  }

  /** Hours that a limit's clock shows; the clock starts where the food passes its start. */
  private static Answer<Double> hours(
      Asked asked, Properties food, Layers.Stage stage, double share) {
    Cooling cooling = new Cooling(asked.body(), food, asked.surface().coefficient() * share);
    Answer<Duration> end = cooling.reaches(asked.course(), stage.toCelsius());
    if (asked.start <= stage.fromCelsius()) {
      return end.map(CoolingRules::inHours);
    }
    return cooling
        .reaches(asked.course(), stage.fromCelsius())
        .flatMap(begun -> end.map(reached -> CoolingRules.inHours(reached.minus(begun))));
  }

  private static Told stage(Asked asked, Properties food, Shape.Reach reach) {
    Layers.Stage stage = layerStage(asked, reach);
    Optional<Limit> passed = reach.from().filter(limit -> asked.start >= Common.celsius(limit));
    Filled from =
        passed
            .map(limit -> Filled.word("from", limit.text()))
            .orElseGet(() -> Filled.amount("from", asked.start, Filled.Unit.CELSIUS));
    Filled to = Filled.word("to", reach.to().text());
    return ranged("cooling.stage", asked, food, stage, List.of(from, to))
        .with(Filled.hours("limit", CoolingRules.inHours(stage.within())));
  }

  private static Told reached(Asked asked, Properties food, double to) {
    Layers.Stage stage = new Layers.Stage(asked.start, to, Duration.ofDays(1));
    return ranged(
        "cooling.reaches",
        asked,
        food,
        stage,
        List.of(Filled.amount("to", to, Filled.Unit.CELSIUS)));
  }

  /** A time, with what it is if the surface is 30 % better or worse than printed. */
  private static Told ranged(
      String key, Asked asked, Properties food, Layers.Stage stage, List<Filled> names) {
    Answer<Double> expected = hours(asked, food, stage, 1);
    Answer<Double> shortest = hours(asked, food, stage, 1 + Freezing.UNSURE);
    Answer<Double> longest = hours(asked, food, stage, WORSE);
    for (Answer<Double> answer : List.of(expected, shortest, longest)) {
      if (answer.reason().isPresent()) {
        return new Told(key + ".none", names, answer.reason());
      }
    }
    List<Filled> filled = new ArrayList<>(names);
    filled.add(Filled.hours("expected", expected.value().orElseThrow()));
    filled.add(Filled.hours("shortest", shortest.value().orElseThrow()));
    filled.add(Filled.hours("longest", longest.value().orElseThrow()));
    return new Told(key, filled, Optional.empty());
  }

  private static Told deepest(Asked asked, Properties food, List<Layers.Stage> stages) {
    Answer<Double> safe = layers(asked, food, WORSE).deepest(asked.course(), stages);
    Answer<Double> expected = layers(asked, food, 1).deepest(asked.course(), stages);
    if (expected.reason().isPresent()) {
      return Told.none("cooling.deepest.none", expected.reason().get());
    }
    if (safe.reason().isPresent()) {
      return Told.none("cooling.deepest.unsure", safe.reason().get(), depth("expected", expected));
    }
    // In deep cold a better surface may fail: food that would freeze there has no time to tell.
    Answer<Double> surely = safe.flatMap(depth -> expected.map(other -> Math.min(depth, other)));
    String key = "cooling.deepest" + (isThin(surely) ? ".thin" : "");
    return Told.of(key, depth("surely", surely), depth("expected", expected))
        .with(Filled.word("surface", asked.surface().title()));
  }

  private static boolean isThin(Answer<Double> metres) {
    return metres.value().filter(depth -> depth < CoolingActs.THINNEST).isPresent();
  }

  private static Filled depth(String name, Answer<Double> metres) {
    return Filled.amount(
        name, metres.value().orElseThrow() * Common.MILLIMETRES, Filled.Unit.MILLIMETRES);
  }
}
