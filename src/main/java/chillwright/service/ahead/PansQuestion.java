package chillwright.service.ahead;

import chillwright.core.ahead.Ahead;
import chillwright.core.ahead.Ahead.Source;
import chillwright.core.ahead.Filled;
import chillwright.core.ahead.Told;
import chillwright.core.heat.Answer;
import chillwright.core.heat.Practice;
import chillwright.core.portions.Measure;
import chillwright.core.portions.Pan;
import chillwright.core.portions.Portion;
import chillwright.core.portions.Shelves;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/** Portions to volume, volume to pans, pans to shelves, and what serves a portion. */
final class PansQuestion implements Question.Answering {
  private static final int MOST_PORTIONS = 100_000;
  private static final int MOST_SHELVES = 100;
  private static final double TWO_INCHES = 2 * Common.INCH;

  private static final Set<String> COOLS =
      Set.of("cooling.makes", "cooling.unsure", "cooling.misses");

  @Override
  public List<Parameter> parameters() {
    return List.of(
        Parameter.optional("volume", "VOLUME", "What is in the pot, or give portions."),
        Parameter.optional("portions", "COUNT", "How many portions, with their size."),
        Parameter.optional("portion", "VOLUME", "Of one portion, such as 8floz."),
        Parameter.optional("pan", "PAN", "Size and depth in inches (default: full-2.5)."),
        Parameter.optional("depth", "LENGTH", "Depth of the food in the pan (default: 2in)."),
        Parameter.optional("shelves", "COUNT", "How many shelves are free; with their size."),
        Parameter.optional("shelf-length", "LENGTH", "Of one shelf."),
        Parameter.optional("shelf-width", "LENGTH", "Of one shelf."));
  }

  /** What was asked, read and sound. */
  private record Asked(
      double fluidOunces,
      OptionalInt portions,
      Optional<Portion> portion,
      Pan pan,
      double depthInches,
      Optional<Shelves> shelves) {}

  @Override
  public Ahead answer(Given given, Setting setting) throws BadQuestion {
    Asked asked = read(given, setting);
    List<Told> told = new ArrayList<>();
    asked.portion.ifPresent(portion -> told.add(volume(asked, portion)));
    Answer<Integer> count = asked.pan.count(asked.fluidOunces, asked.depthInches);
    told.add(count(asked, count));
    if (count.value().isPresent()) {
      told.add(cooling(asked, setting));
    }
    count.value().ifPresent(pans -> asked.shelves.ifPresent(s -> told.add(fit(asked, s, pans))));
    List<Source> sources = new ArrayList<>();
    sources.add(new Source(asked.pan.title(), asked.pan.source(), asked.pan.status()));
    if (asked.shelves.isPresent()) {
      sources.add(Common.source(setting.handbook().figure("pan-gap")));
    }
    asked.portion.ifPresent(
        portion -> tools(portion, setting.handbook().measures(), told, sources));
    return new Ahead("pans", told, List.of("unstacked"), sources);
  }

  private static Asked read(Given given, Setting setting) throws BadQuestion {
    OptionalDouble volume = given.amount("volume", Measured.VOLUME);
    OptionalInt portions = given.count("portions", MOST_PORTIONS);
    OptionalDouble portion = given.amount("portion", Measured.VOLUME);
    Pan pan = given.one("pan", setting.handbook().pans(), Pan::key, Optional.of("full-2.5"));
    double depth = given.amount("depth", Measured.LENGTH, TWO_INCHES) / Common.INCH;
    if (given.has("volume") == given.has("portions")) {
      given.refuse(
          "volume",
          "one-of-two",
          "volume, or portions with portion",
          "Give either volume, or portions with the size of one portion.");
    }
    if (given.has("portions") && !given.has("portion")) {
      given.missing("portion", Measured.VOLUME.allowed());
    }
    Optional<Shelves> shelves = shelves(given, setting.handbook().figure("pan-gap"));
    given.requireFaultless();
    Optional<Portion> size =
        portion.isPresent()
            ? Optional.of(new Portion(ounces(portion.getAsDouble())))
            : Optional.empty();
    double whole =
        volume.isPresent()
            ? ounces(volume.getAsDouble())
            : size.orElseThrow().volume(portions.orElseThrow());
    return new Asked(whole, portions, size, pan, depth, shelves);
  }

  private static Optional<Shelves> shelves(Given given, Practice gap) {
    OptionalInt count = given.count("shelves", MOST_SHELVES);
    boolean isAsked =
        List.of("shelves", "shelf-length", "shelf-width").stream().anyMatch(given::has);
    if (!isAsked) {
      return Optional.empty();
    }
    if (!given.has("shelves")) {
      given.missing("shelves", "a whole number from 1 to " + MOST_SHELVES);
    }
    double length = given.needed("shelf-length", Measured.LENGTH) / Common.INCH;
    double width = given.needed("shelf-width", Measured.LENGTH) / Common.INCH;
    return Optional.of(new Shelves(count.orElse(1), length, width, gap.high()));
  }

  private static double ounces(double litres) {
    return litres * 1000 / Portion.MILLILITRES;
  }

  private static double litres(double ounces) {
    return ounces * Portion.MILLILITRES / 1000;
  }

  private static Told volume(Asked asked, Portion portion) {
    int portions = asked.portions.orElseGet(() -> portion.in(asked.fluidOunces));
    return Told.of(
        "pans.volume",
        Filled.count("portions", portions),
        Filled.amount("portion", litres(portion.fluidOunces()), Filled.Unit.LITRES),
        Filled.amount("volume", litres(asked.fluidOunces), Filled.Unit.LITRES));
  }

  private static Told count(Asked asked, Answer<Integer> count) {
    Filled pan = Filled.word("pan", asked.pan.title());
    Filled depth = depth(asked);
    if (count.reason().isPresent()) {
      return Told.none("pans.count.none", count.reason().get(), pan, depth);
    }
    double each = asked.pan.fluidOunces(asked.depthInches).value().orElseThrow();
    return Told.of(
        "pans.count",
        Filled.count("count", count.value().orElseThrow()),
        pan,
        depth,
        Filled.amount("each", litres(each), Filled.Unit.LITRES));
  }

  /** What a stew so deep does in a still refrigerator of 38 °F, as the question on cooling says. */
  private static Told cooling(Asked asked, Setting setting) throws BadQuestion {
    Filled air = Filled.amount("air", Around.COLD_AIR, Filled.Unit.CELSIUS);
    double millimetres = asked.depthInches * Common.INCH;
    Map<String, String> pan =
        Map.of("surroundings", "38F", "depth", String.format(Locale.ROOT, "%.1fmm", millimetres));
    return Question.COOLING.answer(pan, setting).told().stream()
        .filter(told -> COOLS.contains(told.key()))
        .findFirst()
        .map(told -> Told.of("pans." + told.key(), depth(asked), air))
        .orElseGet(() -> Told.of("pans.cooling", depth(asked)));
  }

  private static Filled depth(Asked asked) {
    return Filled.amount("depth", asked.depthInches * Common.INCH, Filled.Unit.MILLIMETRES);
  }

  private static Told fit(Asked asked, Shelves shelves, int pans) {
    int fit = shelves.fit(asked.pan);
    return Told.of(
        fit >= pans ? "pans.fit" : "pans.fit.not",
        Filled.count("fit", fit),
        Filled.count("shelves", shelves.count()),
        Filled.count("left", Math.max(0, pans - fit)));
  }

  private static void tools(
      Portion portion, List<Measure> measures, List<Told> told, List<Source> sources) {
    for (String kind : List.of("ladle", "scoop")) {
      List<Measure> of = measures.stream().filter(m -> m.key().startsWith(kind)).toList();
      portion
          .tool(of)
          .ifPresent(
              tool -> {
                String number = tool.key().substring(kind.length() + 1);
                told.add(
                    Told.of(
                        "pans." + kind,
                        Filled.word("number", number),
                        Filled.amount("holds", litres(tool.fluidOunces()), Filled.Unit.LITRES)));
                sources.add(new Source(tool.key().replace('-', ' '), tool.source(), tool.status()));
              });
    }
  }
}
