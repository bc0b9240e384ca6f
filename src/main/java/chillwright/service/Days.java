package chillwright.service;

import chillwright.core.keeping.LotOrder;
import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.kitchen.DaySign;
import chillwright.core.kitchen.Handover;
import chillwright.core.kitchen.KnownPlace;
import chillwright.core.kitchen.PlaceLimit;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Phase;
import chillwright.core.rules.Acts;
import chillwright.core.rules.Finding;
import chillwright.core.rules.RuleSet;
import chillwright.core.rules.Verdict;
import chillwright.logfile.CardCells;
import chillwright.logfile.Cells;
import chillwright.service.Day.Open;
import chillwright.service.Day.PlaceRound;
import chillwright.service.Places.PlaceReading;
import chillwright.service.Reports.Due;
import chillwright.storage.PlaceStore;
import chillwright.storage.Session;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.Stream;

/** Days: the round of places, what is unfinished, who takes it over, and the manager's sign. */
public final class Days {
  /** A place that was read in this time belongs to the round: common practice, no source. */
  private static final Duration LATELY = Duration.ofDays(14);

  /** More readings than any place is asked for in a day. */
  private static final int READINGS = 2 * KnownPlace.MOST_ROUNDS;

  /** A reading so soon after another is no round of its own: common practice, no source. */
  public static final Duration SAME_ROUND = Duration.ofMinutes(15);

  private static final Set<Phase> HELD =
      EnumSet.of(Phase.CHILLED, Phase.FROZEN, Phase.THAWING, Phase.OPENED, Phase.HOT_HOLDING);

  private static final List<String> SIGNS =
      Arrays.stream(DaySign.Word.values()).map(DaySign.Word::key).toList();

  private final Kitchen kitchen;

  Days(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  public LocalDate today() {
    return LocalDate.ofInstant(kitchen.now(), kitchen.zone());
  }

  /**
   * What was written of the days from one to another, both included; those without are left out.
   */
  public List<DayWritten> written(LocalDate from, LocalDate to) {
    return kitchen
        .database()
        .read(
            session ->
                from.datesUntil(to.isBefore(from) ? from : to.plusDays(1))
                    .map(
                        day ->
                            new DayWritten(
                                session.days().handovers(day), session.days().signs(day)))
                    .filter(day -> !day.handovers().isEmpty() || !day.signs().isEmpty())
                    .toList());
  }

  /** What people wrote of a day, in the order of writing. */
  public record DayWritten(List<Handover> handovers, List<DaySign> signs) {
    public DayWritten {
      handovers = List.copyOf(handovers);
      signs = List.copyOf(signs);
    }
  }

  /** The day as it stands now. */
  public Day day(LocalDate date) {
    boolean isToday = date.equals(today());
    List<LotState> onHand = isToday ? onHand() : List.of();
    List<PlaceRound> places =
        kitchen.database().read(session -> places(session, date, onHand)).stream()
            .map(new LotsInside(kitchen)::of)
            .toList();
    Page.Wanted wanted = Page.Wanted.first(Page.MOST);
    Page<LotState> owed = kitchen.lots().list(LotQuery.ALL.in(LotOrder.OWED), wanted);
    Page<Due> dues = kitchen.reports().dueNext(wanted);
    Page<LotState> out = kitchen.lots().list(LotQuery.ALL.with(Verdict.OUT), wanted);
    List<LotState> wrong = new ArrayList<>(out.items());
    wrong.addAll(kitchen.lots().list(LotQuery.ALL.with(Verdict.NOT_SHOWN), wanted).items());
    List<Open> open = isToday ? open(owed.items(), wrong, dues.items()) : List.of();
    boolean hasMore =
        isToday && Stream.of(owed, out, dues).anyMatch(page -> page.next().isPresent());
    return kitchen
        .database()
        .read(
            session ->
                new Day(
                    date,
                    isToday,
                    places,
                    open,
                    hasMore,
                    session.days().handovers(date),
                    session.days().signs(date)));
  }

  /** Each lot once: what is owed first, then what is out, then what only runs. */
  private List<Open> open(List<LotState> owed, List<LotState> wrong, List<Due> dues) {
    Map<LotId, Open> open = new LinkedHashMap<>();
    Stream.concat(owed.stream(), wrong.stream())
        .filter(lot -> !open.containsKey(lot.lot()))
        .forEach(lot -> wrong(lot.lot()).ifPresent(found -> open.put(lot.lot(), found)));
    for (Due due : dues) {
      Optional<Open> before = Optional.ofNullable(open.get(due.lot().lot()));
      Open runs =
          new Open(
              due.lot(), before.flatMap(Open::owed), before.flatMap(Open::out), Optional.of(due));
      open.put(due.lot().lot(), runs);
    }
    return List.copyOf(open.values());
  }

  /** A lot to which something is owed, or that is unfit for use; empty where neither is so. */
  private Optional<Open> wrong(LotId lot) {
    Instant now = kitchen.now();
    return kitchen
        .lots()
        .lot(lot)
        .flatMap(view -> view.judged().flatMap(found -> wrong(view.state(), found, now)));
  }

  private static Optional<Open> wrong(LotState lot, LotView.Judged found, Instant now) {
    Optional<Finding> owed = Acts.owed(found.timeline(), found.findings(), now);
    Optional<Finding> out = Acts.unfit(found.timeline(), found.findings(), found.ruleSet(), now);
    return owed.or(() -> out)
        .map(finding -> new Due(lot, found.timeline(), found.ruleSet(), finding, Optional.empty()))
        .map(Optional::of)
        .map(
            due ->
                new Open(
                    lot,
                    owed.isPresent() ? due : Optional.empty(),
                    owed.isPresent() ? Optional.empty() : due,
                    Optional.empty()));
  }

  private List<LotState> onHand() {
    LotQuery query = LotQuery.ALL.in(LotOrder.USE_FIRST);
    return kitchen.lots().list(query, Page.Wanted.first(Page.MOST)).items();
  }

  private List<PlaceRound> places(Session session, LocalDate date, List<LotState> onHand) {
    Instant start = date.atStartOfDay(kitchen.zone()).toInstant();
    Instant end = date.plusDays(1).atStartOfDay(kitchen.zone()).toInstant().minusMillis(1);
    Map<String, KnownPlace> known = new TreeMap<>();
    session.setUp().places().forEach(place -> known.put(place.name(), place));
    Set<String> names = new TreeSet<>(known.keySet());
    onHand.stream()
        .flatMap(lot -> lot.standing().filter(Days::isHeld).flatMap(Standing::place).stream())
        .forEach(names::add);
    readings(session, Optional.empty(), end.minus(LATELY), end, Page.MOST)
        .forEach(entry -> entry.details().place().ifPresent(names::add));
    RuleSet rules = kitchen.judge().book().on(date);
    List<PlaceRound> rounds = new ArrayList<>();
    for (String name : names) {
      Optional<KnownPlace> place = Optional.ofNullable(known.get(name));
      List<LogEntry> read = readings(session, Optional.of(name), Instant.EPOCH, end, READINGS);
      rounds.add(
          new PlaceRound(
              name,
              place,
              place.flatMap(p -> PlaceLimit.of(p, rules)),
              read.stream().findFirst(),
              rounds(read.stream().filter(entry -> !entry.happenedAt().isBefore(start)).toList()),
              List.of(),
              false,
              written(session, name, start, end)));
    }
    return rounds;
  }

  /** Whether food stands where it is kept cold or hot, which no stove is that a pot is on. */
  private static boolean isHeld(Standing standing) {
    return HELD.contains(standing.phase());
  }

  /** How many rounds those readings are: one soon after another is the same round, read again. */
  private static int rounds(List<LogEntry> readings) {
    int rounds = 0;
    Instant last = Instant.EPOCH;
    for (Instant at : readings.stream().map(LogEntry::happenedAt).sorted().toList()) {
      if (!at.isBefore(last.plus(SAME_ROUND))) {
        rounds++;
        last = at;
      }
    }
    return rounds;
  }

  /** What was written of a place, the oldest first. */
  private static List<PlaceReading> written(
      Session session, String place, Instant from, Instant to) {
    PlaceStore.Filter filter = new PlaceStore.Filter(Optional.of(place), from, to);
    List<LogEntry> written = session.places().readings(filter, Page.MOST, Optional.empty()).items();
    return Places.corrected(session, written).stream()
        .sorted(Comparator.comparing(reading -> reading.written().happenedAt()))
        .toList();
  }

  /** Readings that stand, with what was read; the newest first. */
  private static List<LogEntry> readings(
      Session session, Optional<String> place, Instant from, Instant to, int most) {
    PlaceStore.Filter filter = new PlaceStore.Filter(place, from, to);
    List<LogEntry> written = session.places().readings(filter, most, Optional.empty()).items();
    return Places.corrected(session, written).stream()
        .flatMap(reading -> reading.standing().stream())
        .filter(entry -> entry.temperature().isPresent())
        .toList();
  }

  /**
   * Notes who goes on with the lots of the cell "lots", codes with blanks between them: the one
   * whose initials stand in "by", with a "note" where there is something to say.
   *
   * @throws Refused with every fault, where the day is closed, or where the key was used for
   *     another request
   */
  public Day handOver(LocalDate date, Map<String, String> given, Optional<OnceKey> key) {
    CardCells cells = new CardCells(given);
    List<LotId> lots = lots(cells);
    String by = cells.needed("by", SetUp.LONGEST_INITIALS);
    Optional<String> note = cells.lines("note", Cells.LONGEST_NOTE);
    write(
        date,
        key,
        cells,
        session -> {
          requireOnHand(session, lots, cells);
          requireOpen(session, date, cells);
          requireFaultless(cells);
          for (LotId lot : lots) {
            session.days().add(new Handover(date, lot, by, note, kitchen.now()));
          }
        });
    return day(date);
  }

  private static List<LotId> lots(CardCells cells) {
    List<LotId> lots = new ArrayList<>();
    for (String code : cells.words("lots").stream().distinct().toList()) {
      if (LotId.isCode(code)) {
        lots.add(new LotId(code));
      } else {
        cells.refuse("lots", "bad-code", "codes of lots", "One of these is no code of a lot.");
      }
    }
    if (lots.size() > Page.MOST) {
      cells.refuse("lots", "too-many", "at most " + Page.MOST, "These are too many lots at once.");
    }
    if (cells.words("lots").isEmpty()) {
      cells.missing("lots", "at least one code of a lot");
    }
    return lots;
  }

  private static void requireOnHand(Session session, List<LotId> lots, CardCells cells) {
    for (LotId lot : lots) {
      Optional<LotState> state = session.lots().find(lot);
      if (state.filter(LotState::isOnHand).isEmpty()) {
        cells.refuse(
            "lots",
            state.isEmpty() ? "unknown-lot" : "closed-lot",
            "lots on hand",
            state.isEmpty()
                ? "There is no lot %s here.".formatted(lot)
                : "Lot %s is not on hand any more.".formatted(lot));
      }
    }
  }

  /**
   * Closes a day, or opens it again: the cell "word" says which, "by" holds the initials. Opening
   * it again needs a reason in "note". What was signed stays as it is.
   *
   * @throws Refused with every fault, where the day stands so already, or where the key was used
   *     for another request
   */
  public Day sign(LocalDate date, Map<String, String> given, Optional<OnceKey> key) {
    CardCells cells = new CardCells(given);
    if (cells.given("word").isEmpty()) {
      cells.missing("word", String.join(", ", SIGNS));
    }
    DaySign.Word word =
        cells.choice("word", SIGNS, DaySign.Word::ofKey).orElse(DaySign.Word.CLOSED);
    String by = cells.needed("by", SetUp.LONGEST_INITIALS);
    Optional<String> note = cells.lines("note", Cells.LONGEST_NOTE);
    if (word == DaySign.Word.REOPENED && cells.given("note").isEmpty()) {
      cells.missing("note", "why the day is opened again");
    }
    Day before = day(date);
    DaySign sign =
        new DaySign(
            date,
            word,
            by,
            note,
            before.open().size(),
            before.isToday() ? OptionalInt.of(before.out()) : OptionalInt.empty(),
            before.unread(),
            kitchen.now());
    write(
        date,
        key,
        cells,
        session -> {
          if (word == DaySign.Word.CLOSED) {
            requireOpen(session, date, cells);
          } else if (!Day.isClosed(session.days().signs(date))) {
            throw stands(cells, "word", "day-open", "The day " + date + " is not closed.");
          }
          requireFaultless(cells);
          session.days().add(sign);
        });
    return day(date);
  }

  /** Once for each key. */
  private void write(
      LocalDate date, Optional<OnceKey> key, CardCells cells, Consumer<Session> work) {
    if (date.isAfter(today())) {
      cells.refuse("date", "day-ahead", "today or before", date + " has not come yet.");
    }
    kitchen
        .database()
        .write(
            session -> {
              if (key.flatMap(k -> Logbook.answered(session, k)).isEmpty()) {
                work.accept(session);
                key.ifPresent(
                    k -> Logbook.remember(session, k, kitchen.now(), Optional.empty(), List.of()));
              }
              return date;
            });
  }

  private static void requireFaultless(CardCells cells) {
    if (!cells.problems().isEmpty()) {
      throw new Refused(Refused.Why.FAULTS, cells.problems());
    }
  }

  /** Faults come first: who mends them hears then that the day is closed. */
  private static void requireOpen(Session session, LocalDate date, CardCells cells) {
    if (Day.isClosed(session.days().signs(date))) {
      String says = "The day %s is closed. Open it again first, with a reason.".formatted(date);
      throw stands(cells, "date", "day-closed", says);
    }
  }

  private static Refused stands(CardCells cells, String field, String code, String says) {
    requireFaultless(cells);
    cells.refuse(field, code, "", says);
    return new Refused(Refused.Why.DAY_STANDS, cells.problems());
  }
}
