package chillwright.service.ahead;

import chillwright.core.ahead.Ahead;
import chillwright.core.ahead.Ahead.Source;
import chillwright.core.ahead.Filled;
import chillwright.core.ahead.Season;
import chillwright.core.ahead.Told;
import chillwright.core.log.Category;
import chillwright.logfile.SaidTime;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** How many batches a season of orders takes, and between which days they are frozen. */
final class BatchesQuestion implements Question.Answering {
  private static final int MOST_PORTIONS = 100_000;
  private static final int MOST_PER_DAY = 100;

  /** Longer than any freezer's months of best quality. */
  private static final int MOST_DAYS = 730;

  @Override
  public List<Parameter> parameters() {
    return List.of(
        OwnFood.NAME,
        Parameter.optional("category", "CATEGORY", "Key of the keeping list, or give food-name."),
        Parameter.needed("portions", "COUNT", "Portions or pieces wanted in all."),
        Parameter.needed("batch", "COUNT", "Portions that one batch makes."),
        Parameter.needed("last-day", "DATE", "Last day on which it leaves: post, market, feast."),
        Parameter.optional(
            "then-days", "COUNT", "Days it must still be good after that, out of the freezer."),
        Parameter.optional("stock", "COUNT", "Portions already in the freezer (default: 0)."),
        Parameter.optional("per-day", "COUNT", "Batches you can make in a day (default: 1)."),
        OwnFood.ROOM_DAYS);
  }

  @Override
  public Ahead answer(Given given, Setting setting) throws BadQuestion {
    Category category =
        given.one("category", freezable(setting), Category::key, Optional.<String>empty());
    int portions = needed(given, "portions");
    int batch = needed(given, "batch");
    LocalDate today = setting.now().toLocalDate();
    LocalDate lastOut = lastDay(given, today);
    OptionalInt then = given.days("then-days", MOST_DAYS);
    OptionalInt stock = given.count("stock", MOST_PORTIONS);
    int perDay = given.count("per-day", MOST_PER_DAY).orElse(1);
    OwnFood own = OwnFood.of(given, Optional.of(category), lastOut, setting);
    given.requireFaultless();
    Optional<OutOfFreezer> out =
        then.isPresent()
            ? Optional.of(OutOfFreezer.of(category, own, then.getAsInt(), setting))
            : Optional.empty();
    boolean leavesGood = out.filter(OutOfFreezer::isEnough).isPresent();
    LocalDate goodUntil = leavesGood ? lastOut : lastOut.plusDays(then.orElse(0));
    int needed = Math.max(0, portions - stock.orElse(0));
    Season season = new Season(needed, batch, perDay, today, lastOut, goodUntil, months(category));
    List<Told> told = new ArrayList<>(told(season));
    out.ifPresent(days -> told.add(1, days.told()));
    if (stock.isEmpty()) {
      told.addAll(notCounted(own, lastOut, setting));
    }
    List<Source> sources = new ArrayList<>();
    sources.add(new Source(category.title(), category.source(), category.status()));
    Optional<Source> thawed = out.flatMap(days -> days.source(setting));
    thawed.ifPresent(sources::add);
    List<String> cautions =
        thawed.isPresent() ? List.of("quality", "days-thawed") : List.of("quality");
    return new Ahead("batches", told, cautions, sources);
  }

  private static LocalDate lastDay(Given given, LocalDate today) {
    if (!given.has("last-day")) {
      given.missing("last-day", Given.DAY);
    }
    LocalDate last = given.date("last-day", today, SaidTime.Toward.AHEAD).orElse(today);
    if (last.isBefore(today)) {
      String allowed = "a day from " + today + " on";
      String says = "%s has passed: give %s.".formatted(last, allowed);
      given.refuse("last-day", "past-day", allowed, says);
    }
    return last;
  }

  /** A field left blank counts as none; what the log has of the food is told beside it. */
  private static List<Told> notCounted(OwnFood own, LocalDate day, Setting setting) {
    List<Told> told = new ArrayList<>(List.of(Told.of("batches.stock.blank")));
    if (own.name().isEmpty() || setting.own().isEmpty()) {
      return told;
    }
    String name = own.name().get();
    OwnFoods.Stock stock = setting.own().get().frozen(name, day);
    told.add(
        Told.of(
            stock.isAll() ? "batches.stock.logged" : "batches.stock.logged.least",
            Filled.count("logged", stock.portions()),
            Filled.word("food", name),
            Filled.day("goodOn", day)));
    if (stock.uncounted() > 0) {
      told.add(Told.of("batches.stock.uncounted", Filled.count("lots", stock.uncounted())));
    }
    return told;
  }

  private static List<Told> told(Season season) {
    if (season.batches() == 0) {
      return List.of(Told.of("batches.none"));
    }
    List<Told> told = new ArrayList<>();
    told.add(
        Told.of(
            "batches.count",
            Filled.count("batches", season.batches()),
            Filled.count("batch", season.batch()),
            Filled.count("portions", (long) season.batches() * season.batch())));
    told.add(
        Told.of(
            "batches.earliest",
            Filled.day("earliest", season.earliest()),
            Filled.day("goodUntil", season.goodUntil())));
    if (season.room() < season.batches()) {
      told.add(
          Told.of(
              "batches.late",
              Filled.day("latest", season.latest()),
              Filled.count("room", season.room()),
              Filled.count("perDay", season.perDay())));
      return told;
    }
    told.add(
        Told.of(
            "batches.begin-by",
            Filled.day("beginBy", season.beginBy()),
            Filled.count("perDay", season.perDay()),
            Filled.day("latest", season.latest())));
    if (season.spread() > 1) {
      told.add(Told.of("batches.spread", Filled.count("days", season.spread())));
    }
    return told;
  }

  private static int needed(Given given, String name) {
    if (!given.has(name)) {
      given.missing(name, "a whole number from 1 to " + MOST_PORTIONS);
    }
    OptionalInt count = given.count(name, MOST_PORTIONS);
    return count.orElse(1);
  }

  /** The shorter end where two are printed: an order pays for the best. */
  private static int months(Category category) {
    return category.freezer().min().orElse(category.freezer().max().orElseThrow());
  }

  private static List<Category> freezable(Setting setting) {
    return setting.keeping().categories().stream()
        .filter(category -> category.freezer().max().isPresent())
        .toList();
  }
}
