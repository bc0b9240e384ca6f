package chillwright.service;

import chillwright.core.kitchen.Allergen;
import chillwright.core.kitchen.KnownFood;
import chillwright.core.kitchen.KnownPlace;
import chillwright.core.kitchen.KnownPlace.Kind;
import chillwright.core.kitchen.Person;
import chillwright.core.kitchen.PlaceLimit;
import chillwright.core.log.Category;
import chillwright.core.measure.Temperature;
import chillwright.core.rules.RuleSet;
import chillwright.logfile.CardCells;
import chillwright.logfile.Cells;
import chillwright.storage.Session;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.BiConsumer;

/**
 * What the kitchen says of itself: its name, its foods, its places, its people. Each is said as a
 * whole, by cells of text, and the last word stands.
 */
public final class SetUp {
  /** The most characters of initials. */
  public static final int LONGEST_INITIALS = 20;

  private static final int MOST_PORTIONS = 1_000_000;
  private static final List<String> ALLERGENS =
      Arrays.stream(Allergen.values()).map(Allergen::key).toList();
  private static final List<String> KINDS = Arrays.stream(Kind.values()).map(Kind::key).toList();

  private final Kitchen kitchen;

  SetUp(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /** By name. */
  public List<KnownFood> foods() {
    return kitchen.database().read(session -> session.setUp().foods());
  }

  /** The food that was named exactly so. */
  public Optional<KnownFood> food(String name) {
    return kitchen.database().read(session -> session.setUp().food(name));
  }

  /** By name. */
  public List<KnownPlace> places() {
    return kitchen.database().read(session -> session.setUp().places());
  }

  /** By initials. */
  public List<Person> people() {
    return kitchen.database().read(session -> session.setUp().people());
  }

  /** The rules in force today, by which a place is held. */
  public RuleSet rulesOfToday() {
    return kitchen.judge().book().on(LocalDate.ofInstant(kitchen.now(), kitchen.zone()));
  }

  /**
   * Names the kitchen by the cell "name"; a blank one takes its name away.
   *
   * @throws Refused with every fault
   */
  public Optional<String> name(Map<String, String> given) {
    CardCells cells = new CardCells(given);
    Optional<String> name = cells.line("name", Cells.LONGEST_TEXT);
    return save(cells, name, (session, n) -> session.kitchen().setName(n));
  }

  /**
   * Sets what the code on labels leads to, by the cell "address"; a blank one takes it away.
   *
   * @throws Refused with every fault
   */
  public Optional<String> address(Map<String, String> given) {
    CardCells cells = new CardCells(given);
    Optional<String> address = cells.line(LabelAddress.CELL, LabelAddress.LONGEST);
    Optional<String> normal = address.flatMap(text -> LabelAddress.read(text, cells));
    return save(cells, normal, (session, a) -> session.kitchen().setAddress(a));
  }

  /**
   * Says what a food is.
   *
   * @throws Refused with every fault
   */
  public KnownFood food(Map<String, String> given) {
    CardCells cells = new CardCells(given);
    KnownFood food =
        new KnownFood(
            cells.needed("name", Cells.LONGEST_TEXT),
            category(cells),
            cells.count("portions", 1, MOST_PORTIONS),
            cells.line("container", Cells.LONGEST_TEXT),
            cells.line("place", Cells.LONGEST_TEXT),
            cells.lines("reheating", Cells.LONGEST_TEXT),
            cells.choices("allergens", ALLERGENS, Allergen::ofKey),
            cells.line("otherAllergens", Cells.LONGEST_TEXT),
            cells.lines("ingredients", Cells.LONGEST_NOTE));
    return save(cells, food, (session, f) -> session.setUp().save(f, kitchen.now()));
  }

  private String category(CardCells cells) {
    List<String> keys =
        kitchen.library().keepingList().categories().stream().map(Category::key).toList();
    if (cells.given("category").isEmpty()) {
      cells.missing("category", "a key of /api/v1/keeping");
    }
    return cells
        .choice("category", keys, kitchen.library().keepingList()::category)
        .map(Category::key)
        .orElse("");
  }

  /**
   * Says what a place is.
   *
   * @throws Refused with every fault
   */
  public KnownPlace place(Map<String, String> given) {
    CardCells cells = new CardCells(given);
    String name = cells.needed("name", Cells.LONGEST_TEXT);
    if (cells.given("kind").isEmpty()) {
      cells.missing("kind", String.join(", ", KINDS));
    }
    Kind kind = cells.choice("kind", KINDS, Kind::ofKey).orElse(Kind.OTHER);
    Optional<Temperature> own = ownLimit(cells, kind);
    OptionalInt rounds = cells.count("rounds", 0, KnownPlace.MOST_ROUNDS);
    KnownPlace place = new KnownPlace(name, kind, own, rounds.orElse(usualRounds(kind)));
    return save(cells, place, (session, p) -> session.setUp().save(p, kitchen.now()));
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
        PlaceLimit.printed(kind, rulesOfToday())
            .filter(limit -> limit.source() == PlaceLimit.Source.RULES);
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

  /**
   * Says who somebody is.
   *
   * @throws Refused with every fault
   */
  public Person person(Map<String, String> given) {
    CardCells cells = new CardCells(given);
    Person person =
        new Person(
            cells.needed("initials", LONGEST_INITIALS), cells.line("name", Cells.LONGEST_TEXT));
    return save(cells, person, (session, p) -> session.setUp().save(p, kitchen.now()));
  }

  private <T> T save(CardCells cells, T card, BiConsumer<Session, T> write) {
    if (!cells.problems().isEmpty()) {
      throw new Refused(Refused.Why.FAULTS, cells.problems());
    }
    return kitchen
        .database()
        .write(
            session -> {
              write.accept(session, card);
              return card;
            });
  }
}
