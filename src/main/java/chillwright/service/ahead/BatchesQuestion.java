package chillwright.service.ahead;

import chillwright.core.ahead.Ahead;
import chillwright.core.ahead.Ahead.Source;
import chillwright.core.ahead.Filled;
import chillwright.core.ahead.Season;
import chillwright.core.ahead.Told;
import chillwright.core.log.Category;
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
        Parameter.needed("category", "CATEGORY", "Key of the keeping list."),
        Parameter.needed("portions", "COUNT", "Portions or pieces wanted in all."),
        Parameter.needed("batch", "COUNT", "Portions that one batch makes."),
        Parameter.needed("last-day", "DATE", "Last day on which it leaves: post, market, feast."),
        Parameter.optional(
            "then-days", "COUNT", "Days it must still be at its best after that (default: 0)."),
        Parameter.optional("stock", "COUNT", "Portions already in the freezer (default: 0)."),
        Parameter.optional("per-day", "COUNT", "Batches you can make in a day (default: 1)."));
  }

  @Override
  public Ahead answer(Given given, Setting setting) throws BadQuestion {
    Category category =
        given.one("category", freezable(setting), Category::key, Optional.<String>empty());
    int portions = needed(given, "portions");
    int batch = needed(given, "batch");
    if (!given.has("last-day")) {
      given.missing("last-day", "a date such as 2026-11-22");
    }
    Optional<LocalDate> last = given.date("last-day");
    int then = given.count("then-days", MOST_DAYS).orElse(0);
    int stock = given.count("stock", MOST_PORTIONS).orElse(0);
    int perDay = given.count("per-day", MOST_PER_DAY).orElse(1);
    given.requireFaultless();
    LocalDate lastOut = last.orElseThrow();
    Season season =
        new Season(
            Math.max(0, portions - stock),
            batch,
            perDay,
            setting.now().toLocalDate(),
            lastOut,
            lastOut.plusDays(then),
            months(category));
    return new Ahead(
        "batches",
        told(season),
        List.of("quality"),
        List.of(new Source(category.title(), category.source(), category.status())));
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
