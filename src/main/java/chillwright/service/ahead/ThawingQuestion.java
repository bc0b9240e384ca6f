package chillwright.service.ahead;

import chillwright.core.ahead.Ahead;
import chillwright.core.ahead.Ahead.Source;
import chillwright.core.ahead.Filled;
import chillwright.core.ahead.Told;
import chillwright.core.heat.Thawing;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** How long a piece thaws, and which way still makes dinner. */
final class ThawingQuestion implements Question.Answering {
  @Override
  public List<Parameter> parameters() {
    return List.of(
        Parameter.needed("weight", "WEIGHT", "Of one piece or pack."),
        Parameter.optional("cooking", "TIME", "How long it cooks when thawed."),
        Parameter.optional("kind", "roast|casserole", "For from frozen (default: roast)."),
        Parameter.optional("serve-in", "TIME", "How long until it is served; with cooking."),
        Parameter.optional(
            "serve-at",
            "LOCALTIME",
            "When it is served, such as 2026-12-24T18:00 or tomorrow 6 pm: when to start."));
  }

  @Override
  public Ahead answer(Given given, Setting setting) throws BadQuestion {
    double weight = given.needed("weight", Measured.PIECE);
    OptionalDouble cooking = given.amount("cooking", Measured.TIME);
    OptionalDouble serve = given.amount("serve-in", Measured.TIME);
    boolean isCasserole = given.choice("kind", List.of("roast", "casserole")).equals("casserole");
    Optional<LocalDateTime> at = given.localTime("serve-at", setting.now());
    if (given.has("serve-in") && !given.has("cooking")) {
      given.missing("cooking", Measured.TIME.allowed());
    }
    given.requireFaultless();
    Thawing piece = new Thawing(weight / Common.POUND, setting.handbook().thawing());
    List<Told> told = new ArrayList<>();
    told.add(range("thawing.refrigerator", piece.refrigerator()));
    told.add(range("thawing.water", piece.coldWater()));
    cooking.ifPresent(
        hours -> told.add(range("thawing.from-frozen", piece.fromFrozen(hours, isCasserole))));
    serve.ifPresent(
        hours -> {
          double hot = cooking.orElseThrow();
          told.addAll(dinner(piece, hot, piece.fromFrozen(hot, isCasserole).longest(), hours));
        });
    at.ifPresent(time -> told.addAll(starts(piece, time, cooking, isCasserole, setting.now())));
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
  private static List<Told> dinner(Thawing piece, double cooking, double fromFrozen, double serve) {
    List<Told> told =
        new ArrayList<>(
            List.of(
                way("refrigerator", piece.refrigerator().longest() + cooking, serve),
                way("water", piece.coldWater().longest() + cooking, serve),
                way("from-frozen", fromFrozen, serve)));
    if (told.stream().noneMatch(way -> way.key().endsWith(".makes"))) {
      told.add(Told.of("thawing.none-makes"));
    }
    return told;
  }

  /** When each way has to begin, by its longest time, and which are too late by now. */
  private static List<Told> starts(
      Thawing piece,
      LocalDateTime serve,
      OptionalDouble cooking,
      boolean isCasserole,
      LocalDateTime now) {
    double hot = cooking.orElse(0);
    List<Told> told = new ArrayList<>();
    told.add(start("thawing.pull", serve, piece.refrigerator().longest() + hot, now));
    told.add(start("thawing.soak", serve, piece.coldWater().longest() + hot, now));
    if (cooking.isPresent()) {
      double frozen = piece.fromFrozen(hot, isCasserole).longest();
      told.add(start("thawing.roast", serve, frozen, now));
    } else {
      told.add(Told.of("thawing.no-cooking"));
    }
    if (told.stream().filter(way -> !way.filled().isEmpty()).allMatch(ThawingQuestion::isLate)) {
      told.add(Told.of("thawing.none-makes"));
    }
    return told;
  }

  private static boolean isLate(Told way) {
    return way.key().endsWith(".late");
  }

  private static Told start(String key, LocalDateTime serve, double hours, LocalDateTime now) {
    LocalDateTime start = serve.minusMinutes((long) Math.ceil(hours * 60));
    Filled when = Filled.word("start", start.toLocalDate() + " " + start.toLocalTime());
    return Told.of(start.isBefore(now) ? key + ".late" : key, when);
  }

  private static Told way(String way, double whole, double serve) {
    String ends = whole <= serve ? ".makes" : ".late";
    return Told.of("thawing." + way + ends, Filled.hours("whole", whole));
  }
}
