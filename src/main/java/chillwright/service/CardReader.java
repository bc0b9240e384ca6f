package chillwright.service;

import chillwright.core.kitchen.Allergen;
import chillwright.core.kitchen.KnownFood;
import chillwright.core.kitchen.KnownPlace;
import chillwright.core.kitchen.KnownPlace.Kind;
import chillwright.core.kitchen.KnownProbe;
import chillwright.core.kitchen.Person;
import chillwright.core.kitchen.PlaceLimit;
import chillwright.core.log.Category;
import chillwright.core.log.KeepingList;
import chillwright.core.measure.Temperature;
import chillwright.core.rules.RuleSet;
import chillwright.logfile.CardCells;
import chillwright.logfile.Cells;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Reads what a kitchen says of a food, a place, a person or a probe. What is wrong is noted with
 * the cells; what is read is worth something only if they have no fault.
 */
final class CardReader {
  private static final int MOST_PORTIONS = 1_000_000;
  private static final int MOST_ROOM_DAYS = 365;
  private static final List<String> ALLERGENS =
      Arrays.stream(Allergen.values()).map(Allergen::key).toList();
  private static final List<String> KINDS = Arrays.stream(Kind.values()).map(Kind::key).toList();
  private static final List<String> SCALES =
      Arrays.stream(KnownProbe.Scales.values()).map(KnownProbe.Scales::key).toList();

  private final KeepingList keeping;
  private final RuleSet rules;

  /**
   * @param rules those of today, than which a kitchen may only be stricter
   */
  CardReader(KeepingList keeping, RuleSet rules) {
    this.keeping = keeping;
    this.rules = rules;
  }

  KnownFood food(CardCells cells) {
    return new KnownFood(
        cells.needed("name", Cells.LONGEST_TEXT),
        category(cells),
        cells.count("portions", 1, MOST_PORTIONS),
        cells.line("container", Cells.LONGEST_TEXT),
        cells.line("place", Cells.LONGEST_TEXT),
        cells.lines("reheating", Cells.LONGEST_TEXT),
        cells.lines("thawing", Cells.LONGEST_TEXT),
        roomDays(cells),
        cells.choices("allergens", ALLERGENS, Allergen::ofKey),
        cells.line("otherAllergens", Cells.LONGEST_TEXT),
        cells.lines("ingredients", Cells.LONGEST_NOTE));
  }

  /** Food that needs the cold for safety has no days outside it, however good it still looks. */
  private OptionalInt roomDays(CardCells cells) {
    OptionalInt days = cells.days("roomDays", 1, MOST_ROOM_DAYS);
    boolean needsCold = keeping.category(cells.given("category")).filter(Category::tcs).isPresent();
    if (days.isPresent() && needsCold) {
      cells.refuse(
          "roomDays",
          "needs-cold",
          "left out",
          "Food of this kind needs the cold for safety and has no days at room temperature:"
              + " leave the figure out.");
    }
    return days;
  }

  private String category(CardCells cells) {
    List<String> keys = keeping.categories().stream().map(Category::key).toList();
    if (cells.given("category").isEmpty()) {
      cells.missing("category", "a key of /api/v1/keeping");
    }
    return cells.choice("category", keys, keeping::category).map(Category::key).orElse("");
  }

  KnownPlace place(CardCells cells) {
    String name = cells.needed("name", Cells.LONGEST_TEXT);
    if (cells.given("kind").isEmpty()) {
      cells.missing("kind", String.join(", ", KINDS));
    }
    Kind kind = cells.choice("kind", KINDS, Kind::ofKey).orElse(Kind.OTHER);
    Optional<Temperature> own = ownLimit(cells, kind);
    OptionalInt rounds = cells.count("rounds", 0, KnownPlace.MOST_ROUNDS);
    return new KnownPlace(name, kind, own, rounds.orElse(usualRounds(kind)));
  }

  private static int usualRounds(Kind kind) {
    return kind.hasLimit() ? KnownPlace.USUAL_ROUNDS : 0;
  }

  /** A kitchen may ask more of itself than its authority does, never less. */
  private Optional<Temperature> ownLimit(CardCells cells, Kind kind) {
    Optional<Temperature> own = cells.temperature("ownLimit");
    if (own.isEmpty()) {
      return Optional.empty();
    }
    if (!kind.hasLimit()) {
      cells.refuse(
          "ownLimit",
          "no-limit-here",
          "left out",
          "A place of kind %s has no limit of its own: leave the figure out."
              .formatted(kind.key()));
      return Optional.empty();
    }
    if (kind == Kind.FREEZER && !PlaceLimit.isFreezing(own.get())) {
      cells.refuse(
          "ownLimit",
          "above-freezing",
          "at most 32 °F (0 °C)",
          "Food does not stay frozen above 32 °F (0 °C): give a lower figure.");
    }
    // What is printed for a freezer is advice about quality: a kitchen may set a warmer figure.
    Optional<PlaceLimit> printed =
        PlaceLimit.printed(kind, rules).filter(limit -> limit.source() == PlaceLimit.Source.RULES);
    if (printed.filter(limit -> !limit.isMet(own.get())).isPresent()) {
      String limit = printed.get().limit().text();
      cells.refuse(
          "ownLimit",
          "laxer-than-rules",
          (printed.get().isColdSide() ? "at most " : "at least ") + limit,
          "A figure of the kitchen's own may only be stricter than %s of the rule set."
              .formatted(limit));
    }
    return own;
  }

  Person person(CardCells cells) {
    return new Person(
        cells.needed("initials", SetUp.LONGEST_INITIALS), cells.line("name", Cells.LONGEST_TEXT));
  }

  KnownProbe probe(CardCells cells) {
    return new KnownProbe(
        cells.needed("name", Cells.LONGEST_TEXT),
        cells.choice("scales", SCALES, KnownProbe.Scales::ofKey).orElse(KnownProbe.Scales.BOTH),
        cells.line("note", Cells.LONGEST_TEXT));
  }
}
