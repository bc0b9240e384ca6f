package chillwright.service.ahead;

import chillwright.core.ahead.Ahead;
import chillwright.core.ahead.Ahead.Source;
import chillwright.core.ahead.Filled;
import chillwright.core.ahead.Told;
import chillwright.core.heat.Practice;
import chillwright.core.heat.Thawing;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** How long a piece thaws, and which way still makes dinner. */
final class ThawingQuestion implements Question.Answering {
  private static final String EITHER = "Give either how long until it is served, or when.";

  /** The hour at which a way begins that is not too late. */
  private static final Set<String> IN_TIME =
      Set.of("thawing.pull", "thawing.soak", "thawing.roast");

  @Override
  public List<Parameter> parameters() {
    return List.of(
        Parameter.needed("weight", "WEIGHT", "Of one piece or pack."),
        Parameter.optional("cooking", "TIME", "How long it cooks when thawed."),
        Parameter.optional("kind", "roast|casserole", "For from frozen (default: roast)."),
        Parameter.optional("serve-in", "TIME", "How long until it is served."),
        Parameter.optional(
            "serve-at",
            "LOCALTIME",
            "When it is served, such as 2026-12-24T18:00 or tomorrow 6 pm: when to start."));
  }

  @Override
  public Ahead answer(Given given, Setting setting) throws BadQuestion {
    double weight = given.needed("weight", Measured.PIECE);
    OptionalDouble said = given.amount("cooking", Measured.TIME);
    OptionalDouble serve = given.amount("serve-in", Measured.TIME);
    boolean isCasserole = given.choice("kind", List.of("roast", "casserole")).equals("casserole");
    Optional<LocalDateTime> at = given.localTime("serve-at", setting.now());
    if (given.has("serve-in") && given.has("serve-at")) {
      given.refuse("serve-in", "one-of-two", "serve-in or serve-at", EITHER);
    }
    given.requireFaultless();
    Thawing piece = new Thawing(weight / Common.POUND, setting.handbook().thawing());
    Optional<Practice> usual =
        said.isPresent() || isCasserole
            ? Optional.empty()
            : RoastingTime.of(weight / Common.POUND, setting.handbook());
    OptionalDouble cooking = usual.map(chart -> OptionalDouble.of(chart.high())).orElse(said);
    List<Told> told = new ArrayList<>();
    at.ifPresent(time -> told.addAll(starts(piece, time, cooking, isCasserole, setting.now())));
    serve.ifPresent(
        hours -> {
          OptionalDouble frozen =
              cooking.isPresent()
                  ? OptionalDouble.of(
                      piece.fromFrozen(cooking.getAsDouble(), isCasserole).longest())
                  : OptionalDouble.empty();
          told.addAll(dinner(piece, cooking.orElse(0), frozen, hours));
          LocalDateTime then = setting.now().plusMinutes(Math.round(hours * 60));
          starts(piece, then, cooking, isCasserole, setting.now()).stream()
              .filter(start -> IN_TIME.contains(start.key()))
              .map(start -> new Told(start.key() + ".by", start.filled(), Optional.empty()))
              .forEach(told::add);
        });
    int served = told.size();
    told.add(range("thawing.refrigerator", piece.refrigerator()));
    told.add(range("thawing.water", piece.coldWater()));
    cooking.ifPresent(
        hours -> told.add(range("thawing.from-frozen", piece.fromFrozen(hours, isCasserole))));
    usual
        .map(chart -> Told.of("thawing.taken-cooking", Filled.hours("cooking", chart.high())))
        .ifPresent(taken -> told.add(served == 0 ? told.size() : served, taken));
    List<Source> sources = new ArrayList<>();
    for (String figure :
        List.of(
            "thaw-refrigerator",
            "thaw-water-small",
            "thaw-water-middle",
            "thaw-water-large",
            isCasserole ? "from-frozen-casserole" : "from-frozen")) {
      sources.add(Common.source(setting.handbook().figure(figure)));
    }
    usual.map(Common::source).ifPresent(sources::add);
    return new Ahead(
        "thawing", told, List.of("thaw-water", "from-frozen", "cook-through"), sources);
  }

  private static Told range(String key, Thawing.Hours hours) {
    String which = hours.shortest() == hours.longest() ? key + ".one" : key;
    return Told.of(
        which,
        Filled.hours("shortest", hours.shortest()),
        Filled.hours("longest", hours.longest()));
  }

  /** Each way with the cooking after it, held against the time there is. */
  private static List<Told> dinner(
      Thawing piece, double cooking, OptionalDouble fromFrozen, double serve) {
    List<Told> told = new ArrayList<>();
    if (fromFrozen.isEmpty()) {
      told.add(Told.of("thawing.no-cooking"));
    }
    told.add(refrigerator(piece, cooking, serve));
    told.add(way("water", piece.coldWater().longest() + cooking, serve));
    fromFrozen.ifPresent(hours -> told.add(way("from-frozen", hours, serve)));
    if (told.stream().noneMatch(way -> way.key().matches(".*[.](makes|perhaps)"))) {
      told.add(Told.of("thawing.none-makes"));
    }
    return told;
  }

  /** Where only the longest time is too long it may do, with cold water for what is still icy. */
  private static Told refrigerator(Thawing piece, double cooking, double serve) {
    Thawing.Hours hours = piece.refrigerator();
    double icy = serve - cooking - piece.coldWater().longest();
    if (isPerhaps(piece, serve - cooking)) {
      return Told.of(
          "thawing.refrigerator.perhaps",
          Filled.hours("shortest", hours.shortest() + cooking),
          Filled.hours("whole", hours.longest() + cooking),
          Filled.hours("icyIn", icy));
    }
    return way("refrigerator", hours.longest() + cooking, serve);
  }

  /** Whether so many hours lie within the range of the refrigerator, with time for cold water. */
  private static boolean isPerhaps(Thawing piece, double hours) {
    Thawing.Hours range = piece.refrigerator();
    return range.longest() > hours
        && range.shortest() <= hours
        && piece.coldWater().longest() < hours;
  }

  /** When each way has to begin, by its longest time, and which are too late by now. */
  private static List<Told> starts(
      Thawing piece,
      LocalDateTime serve,
      OptionalDouble cooking,
      boolean isCasserole,
      LocalDateTime now) {
    double hot = cooking.orElse(0);
    List<Told> ways = new ArrayList<>();
    double left = now.until(serve, ChronoUnit.MINUTES) / 60.0 - hot;
    ways.add(
        isPerhaps(piece, left)
            ? Told.of("thawing.pull.now", icyAt(serve, hot + piece.coldWater().longest()))
            : start("thawing.pull", serve, piece.refrigerator().longest() + hot, now));
    ways.add(start("thawing.soak", serve, piece.coldWater().longest() + hot, now));
    double frozen = cooking.isPresent() ? piece.fromFrozen(hot, isCasserole).longest() : 0;
    if (cooking.isPresent()) {
      ways.add(start("thawing.roast", serve, frozen, now));
    }
    List<Told> told = new ArrayList<>();
    if (cooking.isEmpty()) {
      told.add(Told.of("thawing.no-cooking"));
    }
    if (isLate(ways.get(0))) {
      told.addAll(instead(ways, Filled.hours("frozen", frozen), Filled.hours("thawed", hot), now));
    }
    told.addAll(ways);
    return told;
  }

  /** What can be done now, once it should have been in the refrigerator already. */
  private static List<Told> instead(
      List<Told> ways, Filled frozen, Filled thawed, LocalDateTime now) {
    if (!isLate(ways.get(1))) {
      return List.of(new Told("thawing.now.water", ways.get(1).filled(), Optional.empty()));
    }
    if (ways.size() < 3) {
      return List.of(Told.of("thawing.now.unknown"));
    }
    if (!isLate(ways.get(2))) {
      return List.of(
          new Told("thawing.now.roast", ways.get(2).filled(), Optional.empty())
              .with(frozen)
              .with(thawed));
    }
    double hours = ((Filled.Amount) frozen.value()).amount();
    Filled soonest = when("soonest", now.plusMinutes((long) Math.ceil(hours * 60)));
    return List.of(Told.of("thawing.none-makes"), Told.of("thawing.now.none", soonest, frozen));
  }

  private static boolean isLate(Told way) {
    return way.key().endsWith(".late");
  }

  private static Told start(String key, LocalDateTime serve, double hours, LocalDateTime now) {
    LocalDateTime start = serve.minusMinutes((long) Math.ceil(hours * 60));
    return Told.of(start.isBefore(now) ? key + ".late" : key, when("start", start));
  }

  private static Filled icyAt(LocalDateTime serve, double hours) {
    return when("icyAt", serve.minusMinutes((long) Math.ceil(hours * 60)));
  }

  private static Filled when(String name, LocalDateTime time) {
    LocalDateTime minute = time.truncatedTo(ChronoUnit.MINUTES);
    return Filled.word(name, minute.toLocalDate() + " " + minute.toLocalTime());
  }

  private static Told way(String way, double whole, double serve) {
    String ends = whole <= serve ? ".makes" : ".late";
    return Told.of("thawing." + way + ends, Filled.hours("whole", whole));
  }
}
