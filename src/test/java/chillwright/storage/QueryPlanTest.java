package chillwright.storage;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.keeping.LotOrder;
import chillwright.core.keeping.LotState;
import chillwright.core.log.EntryId;
import chillwright.core.log.LotId;
import chillwright.core.log.Phase;
import chillwright.core.log.Portions;
import chillwright.core.rules.Verdict;
import chillwright.storage.Slice.Position;
import java.nio.file.Path;
import java.sql.Connection;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.jooq.DSLContext;
import org.jooq.ExecuteContext;
import org.jooq.ExecuteListener;
import org.jooq.SQLDialect;
import org.jooq.impl.DSL;
import org.jooq.impl.DefaultConfiguration;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * No question reads through a table that grows with the kitchen's history: SQLite is asked how it
 * would answer each. What the words of a plan mean is told at sqlite.org/eqp.html.
 */
class QueryPlanTest {
  private static final Instant NOW = Instant.parse("2026-03-02T12:00:00Z");
  private static final Optional<String> NONE = Optional.empty();
  private static final Optional<LocalDate> NO_DAY = Optional.empty();
  private static final Optional<Position> START = Optional.empty();
  private static final Optional<Position> LATER = Optional.of(new Position(5, 6, 7));
  private static final List<LotId> LOTS = List.of(new LotId("A"), new LotId("B"));
  private static final List<EntryId> ENTRIES = List.of(new EntryId("e1"), new EntryId("e2"));

  @TempDir private Path folder;

  /** Questions about a few lots or entries: each goes straight to its rows. */
  static Stream<Arguments> lookups() {
    return Stream.of(
        question("lots by code", s -> s.lots().find(LOTS)),
        question("sources", s -> s.lots().sources(LOTS.get(0))),
        question("keys", s -> s.lots().keys(LOTS)),
        question("codes that begin so", s -> s.lots().codesBeginning("260302-")),
        question("logs", s -> s.log().logs(LOTS)),
        question("sizes", s -> s.log().sizes(LOTS)),
        question("ancestry", s -> s.log().ancestry(LOTS)),
        question("descendants", s -> s.log().descendants(LOTS)),
        question("an entry", s -> s.log().entry(ENTRIES.get(0))),
        question("entries", s -> s.log().entries(ENTRIES)),
        question("findings", s -> s.findings().of(LOTS)),
        question("a reading of a place", s -> s.places().entry(ENTRIES.get(0))),
        question("readings of one moment", s -> s.places().at(NOW)),
        question("corrections of readings", s -> s.places().corrections(ENTRIES)),
        question("an answered request", s -> s.keys().answered("k")),
        question("old requests", s -> s.keys().forgetBefore(NOW)),
        question("hand-overs of a day", s -> s.days().handovers(LocalDate.EPOCH)),
        question("signs of a day", s -> s.days().signs(LocalDate.EPOCH)),
        question("a food", s -> s.setUp().food("rice")),
        question("an access key", s -> s.keys().isAccessKey("k")),
        question("a lot changed", QueryPlanTest::saveTwice));
  }

  private static void saveTwice(Session session) {
    for (Optional<String> note : List.of(Optional.of("a"), Optional.of("b"))) {
      Portions portions =
          new Portions(OptionalInt.empty(), OptionalInt.of(note.get().length()), Optional.empty());
      LotState state =
          new LotState(LOTS.get(0), "rice " + note.get(), "rice", note, portions, Optional.empty());
      session.lots().save(List.of(new Assessed(state, List.of(), List.of())), NOW);
    }
  }

  /** Pages of lists: each goes along an index, and stops when it has enough. */
  static Stream<Arguments> pages() {
    List<Arguments> pages = new ArrayList<>();
    for (Optional<Position> after : List.of(START, LATER)) {
      String end = after.isEmpty() ? ", first page" : ", later page";
      pages.add(question("all lots" + end, s -> s.lots().list(filter(), 50, after)));
      for (Phase phase : Phase.values()) {
        pages.add(question(phase + end, s -> s.lots().list(filter(phase), 50, after)));
      }
      for (Verdict verdict : Verdict.values()) {
        pages.add(question(verdict + end, s -> s.lots().list(filter(verdict), 50, after)));
      }
      pages.add(question("a place" + end, s -> s.lots().list(filter("walk-in"), 50, after)));
      pages.add(
          question(
              "last days" + end,
              s -> s.lots().list(filter(LocalDate.parse("2026-03-03")), 50, after)));
      LocalDate day = LocalDate.parse("2026-03-03");
      pages.add(question("best until" + end, s -> s.lots().list(bestBefore(day), 50, after)));
      pages.add(question("good on a day" + end, s -> s.lots().list(goodOn(NONE, day), 50, after)));
      Optional<String> there = Optional.of("walk-in");
      pages.add(question("good there" + end, s -> s.lots().list(goodOn(there, day), 50, after)));
      for (LotOrder order : LotOrder.values()) {
        pages.add(question(order + end, s -> s.lots().list(ordered(order), 50, after)));
        LotFilter narrow =
            ordered(
                order,
                Optional.of(Phase.FROZEN),
                Optional.of("walk-in"),
                Optional.of(Verdict.PENDING));
        pages.add(question(order + " of some" + end, s -> s.lots().list(narrow, 50, after)));
      }
      pages.add(question("every lot" + end, s -> s.lots().all(50, after)));
      pages.add(question("due next" + end, s -> s.findings().due(NOW, 50, after)));
      pages.add(
          question(
              "out of compliance" + end, s -> s.findings().trouble(Instant.EPOCH, NOW, 50, after)));
      for (Optional<String> place : List.of(Optional.of("walk-in"), Optional.<String>empty())) {
        PlaceStore.Filter filter = new PlaceStore.Filter(place, Instant.EPOCH, NOW);
        pages.add(
            question("readings of " + place + end, s -> s.places().readings(filter, 50, after)));
      }
    }
    return pages.stream();
  }

  private static LotFilter filter() {
    return LotFilter.all(NOW);
  }

  private static LotFilter filter(Phase phase) {
    return new LotFilter(
        Optional.of(phase), NONE, Optional.empty(), NO_DAY, NO_DAY, NO_DAY, Optional.empty(), NOW);
  }

  private static LotFilter filter(Verdict verdict) {
    return new LotFilter(
        Optional.empty(),
        NONE,
        Optional.of(verdict),
        NO_DAY,
        NO_DAY,
        NO_DAY,
        Optional.empty(),
        NOW);
  }

  private static LotFilter filter(String place) {
    return new LotFilter(
        Optional.empty(),
        Optional.of(place),
        Optional.empty(),
        NO_DAY,
        NO_DAY,
        NO_DAY,
        Optional.empty(),
        NOW);
  }

  private static LotFilter filter(LocalDate day) {
    return new LotFilter(
        Optional.empty(),
        NONE,
        Optional.empty(),
        Optional.of(day),
        NO_DAY,
        NO_DAY,
        Optional.empty(),
        NOW);
  }

  private static LotFilter bestBefore(LocalDate day) {
    return new LotFilter(
        Optional.empty(),
        NONE,
        Optional.empty(),
        NO_DAY,
        Optional.of(day),
        NO_DAY,
        Optional.empty(),
        NOW);
  }

  private static LotFilter goodOn(Optional<String> place, LocalDate day) {
    return new LotFilter(
        Optional.empty(),
        place,
        Optional.empty(),
        NO_DAY,
        NO_DAY,
        Optional.of(day),
        Optional.empty(),
        NOW);
  }

  private static LotFilter ordered(LotOrder order) {
    return ordered(order, Optional.empty(), NONE, Optional.empty());
  }

  private static LotFilter ordered(
      LotOrder order, Optional<Phase> phase, Optional<String> place, Optional<Verdict> verdict) {
    return new LotFilter(phase, place, verdict, NO_DAY, NO_DAY, NO_DAY, Optional.of(order), NOW);
  }

  private static Arguments question(String name, Consumer<Session> asked) {
    return Arguments.of(name, asked);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource({"lookups", "pages"})
  void no_question_reads_through_a_growing_table(String name, Consumer<Session> asked)
      throws Exception {
    assertThat(plans(asked))
        .isNotEmpty()
        .noneMatch(step -> step.startsWith("SCAN") && !step.equals("SCAN CONSTANT ROW"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("pages")
  void no_page_sorts_more_than_it_shows(String name, Consumer<Session> asked) throws Exception {
    assertThat(plans(asked)).noneMatch(step -> step.contains("TEMP B-TREE"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("partial")
  void lists_of_lots_on_hand_go_along_an_index_of_such(String index, Consumer<Session> asked)
      throws Exception {
    assertThat(plans(asked)).anyMatch(step -> step.contains("INDEX " + index + " "));
  }

  static Stream<Arguments> partial() {
    return Stream.of(
        question("lot_out", s -> s.lots().list(filter(Verdict.OUT), 50, LATER)),
        question("lot_not_shown", s -> s.lots().list(filter(Verdict.NOT_SHOWN), 50, LATER)),
        question("lot_pending", s -> s.lots().list(filter(Verdict.PENDING), 50, LATER)),
        question("lot_worst", s -> s.lots().list(filter(Verdict.IN), 50, LATER)),
        question("lot_place", s -> s.lots().list(filter("walk-in"), 50, LATER)),
        question(
            "lot_last_day", s -> s.lots().list(filter(LocalDate.parse("2026-03-03")), 50, LATER)),
        question(
            "lot_best_quality",
            s -> s.lots().list(bestBefore(LocalDate.parse("2026-03-03")), 50, LATER)),
        question("lot_use_first", s -> s.lots().list(ordered(LotOrder.USE_FIRST), 50, START)),
        question("lot_began", s -> s.lots().list(ordered(LotOrder.OLDEST), 50, LATER)),
        question("lot_owed", s -> s.lots().list(ordered(LotOrder.OWED), 50, LATER)),
        question("finding_calls", s -> s.findings().due(NOW, 50, LATER)),
        question("finding_calls", s -> s.findings().trouble(Instant.EPOCH, NOW, 50, LATER)));
  }

  /** Asks, and gives the steps of the plans of all statements that were run. */
  private List<String> plans(Consumer<Session> asked) throws Exception {
    try (Connection connection = Connections.writer(folder.resolve("kitchen.db"))) {
      Migrations.carried().apply(connection);
      Set<String> statements = new LinkedHashSet<>();
      Session session = new Session(connection, watched(connection, statements));
      asked.accept(session);
      statements.addAll(session.prepared());
      List<String> steps = new ArrayList<>();
      DSLContext plain = DSL.using(connection, SQLDialect.SQLITE, Session.settings());
      for (String statement : statements) {
        plain
            .fetch("EXPLAIN QUERY PLAN " + statement)
            .forEach(row -> steps.add(row.get("detail", String.class)));
      }
      return steps;
    }
  }

  private static DSLContext watched(Connection connection, Set<String> statements) {
    ExecuteListener listener =
        new ExecuteListener() {
          @Override
          public void executeStart(ExecuteContext context) {
            statements.add(DSL.using(context.configuration()).renderInlined(context.query()));
          }
        };
    return DSL.using(
        new DefaultConfiguration()
            .set(connection)
            .set(SQLDialect.SQLITE)
            .set(Session.settings())
            .set(listener));
  }
}
