package chillwright.service;

import chillwright.core.kitchen.KnownFood;
import chillwright.core.kitchen.KnownPlace;
import chillwright.core.kitchen.KnownProbe;
import chillwright.core.kitchen.Person;
import chillwright.core.log.Problem;
import chillwright.core.rules.RuleSet;
import chillwright.logfile.CardCells;
import chillwright.logfile.Cells;
import chillwright.storage.Retiring;
import chillwright.storage.Session;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Consumer;

/**
 * What the kitchen says of itself: its name, its foods, its places, its people, its probes. Each is
 * said as a whole, by cells of text, and the last word stands.
 */
public final class SetUp {
  /** The most characters of initials. */
  public static final int LONGEST_INITIALS = 20;

  private final Kitchen kitchen;

  SetUp(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /** By name. */
  public List<KnownFood> foods() {
    return kitchen.database().read(session -> session.setUp().foods());
  }

  /** Retired or not. */
  List<KnownFood> everyFood() {
    return kitchen.database().read(session -> session.setUp().everyFood());
  }

  /** The food that was named exactly so, retired or not. */
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

  /** Those in use, by name. */
  public List<KnownProbe> probes() {
    return kitchen.database().read(session -> session.probes().probes());
  }

  /** What is printed on every label, such as the words that a cottage-food law asks for. */
  public Optional<String> labelStatement() {
    return kitchen.database().read(session -> session.kitchen().labelStatement());
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
   * Says by the cell "statement" what every label bears; a blank one takes it away.
   *
   * @throws Refused with every fault
   */
  public Optional<String> labelStatement(Map<String, String> given) {
    CardCells cells = new CardCells(given);
    Optional<String> statement = cells.lines("statement", Cells.LONGEST_TEXT);
    return save(cells, statement, (session, s) -> session.kitchen().setLabelStatement(s));
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
    return save(
        cells, reader().food(cells), (session, f) -> session.setUp().save(f, kitchen.now()));
  }

  /**
   * Says what a place is.
   *
   * @throws Refused with every fault
   */
  public KnownPlace place(Map<String, String> given) {
    CardCells cells = new CardCells(given);
    return save(
        cells, reader().place(cells), (session, p) -> session.setUp().save(p, kitchen.now()));
  }

  /**
   * Says who somebody is.
   *
   * @throws Refused with every fault
   */
  public Person person(Map<String, String> given) {
    CardCells cells = new CardCells(given);
    return save(
        cells, reader().person(cells), (session, p) -> session.setUp().save(p, kitchen.now()));
  }

  /**
   * Says what a probe is.
   *
   * @throws Refused with every fault
   */
  public KnownProbe probe(Map<String, String> given) {
    CardCells cells = new CardCells(given);
    return save(
        cells, reader().probe(cells), (session, p) -> session.probes().save(p, kitchen.now()));
  }

  private CardReader reader() {
    return new CardReader(kitchen.library().keepingList(), rulesOfToday());
  }

  /**
   * Offers something no more; what was written of it stays, and is still explained by it. Saying
   * what it is takes it back into use.
   *
   * @return whether there was one of that name in use
   */
  public boolean retire(CardKind kind, String name) {
    return kitchen.database().write(session -> retiring(session, kind).retire(name, kitchen.now()));
  }

  /**
   * Offers something again, as it was.
   *
   * @return whether there was one of that name out of use
   */
  public boolean restore(CardKind kind, String name) {
    return kitchen.database().write(session -> retiring(session, kind).restore(name));
  }

  /** Names of what is offered no more, in order. */
  public List<String> retired(CardKind kind) {
    return kitchen.database().read(session -> retiring(session, kind).names());
  }

  private static Retiring retiring(Session session, CardKind kind) {
    return switch (kind) {
      case FOODS -> session.setUp().foodsInUse();
      case PLACES -> session.setUp().placesInUse();
      case PEOPLE -> session.setUp().peopleInUse();
      case PROBES -> session.probes().inUse();
    };
  }

  /**
   * Says what many things are at once: all of them, or with any fault none.
   *
   * @throws Refused with every fault of every one
   */
  public void all(CardKind kind, List<CardCells> cards) {
    CardReader reader = reader();
    List<Problem> problems = new ArrayList<>();
    List<Consumer<Session>> writes = new ArrayList<>();
    for (CardCells cells : cards) {
      writes.add(write(kind, reader, cells));
      problems.addAll(cells.problems());
    }
    if (!problems.isEmpty()) {
      throw new Refused(Refused.Why.FAULTS, problems);
    }
    kitchen
        .database()
        .write(
            session -> {
              writes.forEach(write -> write.accept(session));
              return kind;
            });
  }

  private Consumer<Session> write(CardKind kind, CardReader reader, CardCells cells) {
    return switch (kind) {
      case FOODS -> saved(reader.food(cells), (s, f) -> s.setUp().save(f, kitchen.now()));
      case PLACES -> saved(reader.place(cells), (s, p) -> s.setUp().save(p, kitchen.now()));
      case PEOPLE -> saved(reader.person(cells), (s, p) -> s.setUp().save(p, kitchen.now()));
      case PROBES -> saved(reader.probe(cells), (s, p) -> s.probes().save(p, kitchen.now()));
    };
  }

  private static <T> Consumer<Session> saved(T card, BiConsumer<Session, T> write) {
    return session -> write.accept(session, card);
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
