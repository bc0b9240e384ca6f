package chillwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import chillwright.core.keeping.LotState;
import chillwright.core.log.EntryId;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Phase;
import chillwright.core.log.Problem;
import chillwright.core.rules.Finding;
import chillwright.core.rules.Verdict;
import chillwright.logfile.LogFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Telling a kitchen what happened. The limits used are those of the FDA Food Code 2022: 3-501.14(A)
 * (135 °F to 70 °F within 2 hours, to 41 °F within 6 hours in all) and 3-501.17 (seven days, day 1
 * included).
 */
class LogbookTest {
  private static final String HEADER =
      "lot,food,category,when,entry,temperature,from,id,corrects,note\n";
  private static final String COOKED =
      HEADER + "A,Barley soup,soup_or_stew,2026-03-02T16:00:00Z,cooked,135F,,,,\n";

  @TempDir private Path folder;
  private TestKitchen kitchen;

  @BeforeEach
  void open() {
    kitchen = new TestKitchen(folder.resolve("kitchen.db"));
  }

  @AfterEach
  void close() {
    kitchen.close();
  }

  @Test
  void a_first_row_makes_a_lot_and_tells_what_falls_due_next() {
    kitchen.at("2026-03-02T16:01:00Z");
    Written written = kitchen.log(COOKED);
    assertThat(written.entries()).hasSize(1);
    assertThat(written.isReplay()).isFalse();
    Written.Lot lot = written.lots().get(0);
    assertThat(lot.before()).isEmpty();
    assertThat(lot.state().standing().orElseThrow().phase()).isEqualTo(Phase.COOKED);
    Finding due = lot.due().orElseThrow();
    assertThat(due.rule().id()).isEqualTo("cooling.cooked.first-stage");
    assertThat(due.deadline()).contains(Instant.parse("2026-03-02T18:00:00Z"));
    assertThat(lot.state().standing().orElseThrow().keeping().dateMarkLastDay())
        .contains(LocalDate.parse("2026-03-08"));
  }

  @Test
  void a_reading_changes_its_findings_and_leaves_the_others() {
    kitchen.log(COOKED);
    Written written = kitchen.log(HEADER + "A,,,2026-03-02T17:45:00Z,reading,70F,,,,\n");
    Written.Lot lot = written.lots().get(0);
    List<String> changed =
        lot.findings().stream()
            .filter(finding -> !lot.before().contains(finding))
            .map(finding -> finding.rule().id() + " " + finding.settled().text())
            .toList();
    assertThat(changed).contains("cooling.cooked.first-stage in");
    assertThat(lot.before())
        .filteredOn(finding -> finding.rule().id().startsWith("date-mark"))
        .isNotEmpty()
        .allMatch(lot.findings()::contains);
    assertThat(lot.due().orElseThrow().rule().id()).isEqualTo("cooling.cooked.total");
  }

  @Test
  void a_lot_that_others_wrote_to_meanwhile_is_read_again() throws IOException {
    kitchen.at("2026-03-02T19:00:00Z");
    kitchen.log(COOKED);
    kitchen.log(HEADER + "A,,,2026-03-02T17:00:00Z,reading,100F,,,,\n");
    Path file = folder.resolve("more.csv");
    Files.writeString(file, HEADER + "A,,,2026-03-02T17:30:00Z,reading,70F,,,,\n");
    kitchen.kitchen().imports().files(LogFile.of(List.of(file)), false, Progress.NONE);
    Written written = kitchen.log(HEADER + "A,,,2026-03-02T18:30:00Z,reading,60F,,,,\n");
    assertThat(written.record()).hasSize(4);
    assertThat(written.lots().get(0).before())
        .filteredOn(finding -> finding.rule().id().equals("cooling.cooked.first-stage"))
        .first()
        .extracting(Finding::settled)
        .isEqualTo(Verdict.IN);
  }

  @Test
  void nothing_is_remembered_of_a_write_that_was_refused() {
    kitchen.log(COOKED);
    String reading = HEADER + "A,,,2026-03-02T17:45:00Z,reading,70F,,,,\n";
    assertThatThrownBy(() -> kitchen.log(reading + "B,,,2026-03-02T17:45:00Z,reading,70F,,,,\n"))
        .isInstanceOf(Refused.class);
    Written written = kitchen.log(HEADER + "A,,,2026-03-02T17:50:00Z,reading,90F,,,,\n");
    assertThat(written.record()).hasSize(2);
  }

  @Test
  void what_was_written_is_there_when_it_is_opened_again() {
    Written written = kitchen.log(COOKED);
    LotView before = kitchen.lot("A");
    kitchen.reopen();
    LotView after = kitchen.lot("A");
    assertThat(after).isEqualTo(before);
    assertThat(after.entries()).isEqualTo(written.entries());
    assertThat(after.judged().orElseThrow().findings()).isEqualTo(written.lots().get(0).findings());
  }

  @Test
  void rows_with_a_fault_are_refused_with_every_fault_and_nothing_is_stored() {
    kitchen.log(COOKED);
    String rows =
        HEADER
            + "A,,,2026-03-02T17:00:00Z,reading,90F,,,,\n"
            + "B,,,2026-03-02T17:00:00Z,reading,90F,,,,\n"
            + "A,,,2026-03-02T17:10:00Z,correction,91F,,,no-such,typed wrong\n";
    assertThatThrownBy(() -> kitchen.log(rows))
        .asInstanceOf(InstanceOfAssertFactories.type(Refused.class))
        .satisfies(
            refused -> {
              assertThat(refused.why()).isEqualTo(Refused.Why.FAULTS);
              assertThat(refused.problems())
                  .extracting(Problem::code)
                  .contains("missing", "unknown-entry-corrected");
            });
    assertThat(kitchen.lot("A").entries()).hasSize(1);
    assertThat(kitchen.kitchen().lots().state(new LotId("B"))).isEmpty();
  }

  @Test
  void the_same_row_again_is_known_and_makes_no_second_entry() {
    Written first = kitchen.log(COOKED);
    Written again = kitchen.log(COOKED);
    assertThat(again.repeats()).isOne();
    assertThat(again.entries()).isEqualTo(first.entries());
    assertThat(kitchen.lot("A").entries()).hasSize(1);
  }

  @Test
  void a_correction_in_a_source_reaches_the_lots_made_from_it() {
    kitchen.at("2026-03-03T18:00:00Z");
    kitchen.log(
        HEADER
            + "stock,Beef stock,stock_or_meat_broth,2026-03-02T12:00:00Z,cooked,160F,,,,\n"
            + "stock,,,2026-03-02T12:05:00Z,reading,130F,,,,\n"
            + "stock,,,2026-03-02T13:55:00Z,reading,68F,,wrong,,\n"
            + "stock,,,2026-03-02T17:30:00Z,reading,40F,,,,\n"
            + "soup,Onion soup,soup_or_stew,2026-03-03T12:00:00Z,cooked,180F,stock,,,\n"
            + "cup,,,2026-03-03T12:30:00Z,hot-holding,150F,soup,,,\n");
    assertThat(verdictOf("stock", "cooling.cooked.first-stage")).isEqualTo(Verdict.IN);
    Written written =
        kitchen.log(
            HEADER
                + "stock,,,2026-03-03T15:00:00Z,correction,75F,,,wrong,misread\n"
                + "stock,,,2026-03-02T14:10:00Z,reading,72F,,late,,\n");
    assertThat(written.lots().get(0).descendants())
        .containsExactlyInAnyOrder(new LotId("soup"), new LotId("cup"));
    assertThat(verdictOf("stock", "cooling.cooked.first-stage")).isEqualTo(Verdict.OUT);
    for (String made : List.of("soup", "cup")) {
      List<Finding> findings = kitchen.lot(made).judged().orElseThrow().findings();
      assertThat(findings)
          .as(made)
          .anyMatch(f -> f.lot().text().equals("stock") && f.settled() == Verdict.OUT);
      assertThat(kitchen.lot(made).state().standing().orElseThrow().verdicts().at(kitchen.now()))
          .contains(Verdict.OUT);
    }
  }

  private Verdict verdictOf(String lot, String rule) {
    return kitchen.lot(lot).judged().orElseThrow().findings().stream()
        .filter(finding -> finding.rule().id().equals(rule))
        .findFirst()
        .orElseThrow()
        .at(kitchen.now());
  }

  @Test
  void a_key_makes_a_request_count_once() {
    OnceKey key = key("k1", COOKED);
    Written first = kitchen.kitchen().logbook().log(kitchen.rows(COOKED), Optional.of(key));
    kitchen.log(HEADER + "A,,,2026-03-02T17:45:00Z,reading,70F,,,,\n");
    kitchen.reopen();
    Written again = kitchen.kitchen().logbook().log(kitchen.rows(COOKED), Optional.of(key));
    assertThat(again.isReplay()).isTrue();
    assertThat(again.entries()).isEqualTo(first.entries());
    // Today's findings, not those of the first answer.
    assertThat(again.lots().get(0).findings())
        .isEqualTo(kitchen.lot("A").judged().orElseThrow().findings())
        .isNotEqualTo(first.lots().get(0).findings());
    assertThat(kitchen.lot("A").entries()).hasSize(2);
  }

  @Test
  void a_key_that_came_with_another_request_is_refused() {
    kitchen.kitchen().logbook().log(kitchen.rows(COOKED), Optional.of(key("k1", COOKED)));
    String other = HEADER + "A,,,2026-03-02T17:45:00Z,reading,70F,,,,\n";
    assertThatThrownBy(
            () ->
                kitchen.kitchen().logbook().log(kitchen.rows(other), Optional.of(key("k1", other))))
        .asInstanceOf(InstanceOfAssertFactories.type(Refused.class))
        .satisfies(
            refused -> {
              assertThat(refused.why()).isEqualTo(Refused.Why.KEY_REUSED);
              assertThat(refused.problems().get(0).code()).isEqualTo("idempotency-key-reused");
            });
    assertThat(kitchen.lot("A").entries()).hasSize(1);
  }

  @Test
  void a_key_of_a_refused_request_is_free_again() {
    String bad = HEADER + "A,,,2026-03-02T17:45:00Z,reading,70F,,,,\n";
    assertThatThrownBy(
            () -> kitchen.kitchen().logbook().log(kitchen.rows(bad), Optional.of(key("k1", bad))))
        .isInstanceOf(Refused.class);
    kitchen.kitchen().logbook().log(kitchen.rows(COOKED), Optional.of(key("k1", COOKED)));
    assertThat(kitchen.lot("A").entries()).hasSize(1);
  }

  @Test
  void a_key_is_forgotten_after_thirty_days() {
    kitchen.kitchen().logbook().log(kitchen.rows(COOKED), Optional.of(key("k1", COOKED)));
    kitchen.at("2026-04-02T18:00:00Z");
    String other = HEADER + "B,Bean soup,soup_or_stew,2026-04-02T16:00:00Z,cooked,,,,,\n";
    kitchen.kitchen().logbook().log(kitchen.rows(other), Optional.of(key("k2", other)));
    String third = HEADER + "C,Pea soup,soup_or_stew,2026-04-02T16:00:00Z,cooked,,,,,\n";
    kitchen.kitchen().logbook().log(kitchen.rows(third), Optional.of(key("k1", third)));
    assertThat(kitchen.lot("C").entries()).hasSize(1);
  }

  @Test
  void a_key_has_1_to_200_characters() {
    key("k".repeat(200), "");
    assertThatThrownBy(() -> key("k".repeat(201), "")).isInstanceOf(Refused.class);
    assertThatThrownBy(() -> key(" ", "")).isInstanceOf(Refused.class);
  }

  private static OnceKey key(String text, String body) {
    return OnceKey.of(text, "POST /lots/A/entries", body.getBytes(StandardCharsets.UTF_8));
  }

  /** Phones that retry at once, all together: one entry each, whatever the order. */
  @Test
  void many_phones_sending_twice_make_each_entry_once() throws Exception {
    kitchen.log(COOKED);
    ExecutorService phones = Executors.newFixedThreadPool(8);
    List<Future<Written>> answers =
        IntStream.range(0, 40)
            .mapToObj(
                i -> {
                  String row =
                      HEADER
                          + "A,,,2026-03-02T17:%02d:00Z,reading,%dF,,,,\n"
                              .formatted(i / 2, 100 - i / 2);
                  return phones.submit(
                      () ->
                          kitchen
                              .kitchen()
                              .logbook()
                              .log(kitchen.rows(row), Optional.of(key("k" + i / 2, row))));
                })
            .toList();
    for (Future<Written> answer : answers) {
      assertThat(answer.get().entries()).hasSize(1);
    }
    phones.shutdown();
    kitchen.reopen();
    assertThat(kitchen.lot("A").entries()).hasSize(21);
    assertThat(kitchen.lot("A").entries().stream().map(LogEntry::id)).doesNotHaveDuplicates();
  }

  @Test
  void a_lot_can_be_made_known_before_anything_is_written_of_it() {
    LotState made =
        create(
            new NewLot(
                id("A"),
                text("Barley soup"),
                text("soup_or_stew"),
                List.of(),
                n(12),
                text("big pot")));
    assertThat(made.standing()).isEmpty();
    assertThat(kitchen.lot("A").entries()).isEmpty();
    kitchen.log("lot,when,entry,temperature\nA,2026-03-02T16:00:00Z,cooked,135F\n");
    LotView view = kitchen.lot("A");
    assertThat(view.state().food()).isEqualTo("Barley soup");
    assertThat(view.state().note()).contains("big pot");
    assertThat(view.state().portions().made()).hasValue(12);
    assertThat(view.entries().get(0).details().food()).contains("Barley soup");
    kitchen.log("lot,when,entry,portions\nA,2026-03-02T17:00:00Z,portions,5\n");
    assertThat(kitchen.lot("A").state().portions().left()).hasValue(7);
  }

  @Test
  void a_row_that_makes_an_announced_lot_something_else_is_refused() {
    create(new NewLot(id("A"), text("Barley soup"), text("soup_or_stew"), List.of(), none(), no()));
    String rows = HEADER + "A,Onion soup,,2026-03-02T16:00:00Z,cooked,135F,,,,\n";
    assertThatThrownBy(() -> kitchen.log(rows))
        .asInstanceOf(InstanceOfAssertFactories.type(Refused.class))
        .satisfies(
            refused ->
                assertThat(refused.problems())
                    .extracting(Problem::code)
                    .containsExactly("differs-from-lot"));
  }

  @Test
  void a_lot_made_from_one_takes_over_its_food() {
    kitchen.log(COOKED);
    LotState made = create(new NewLot(no(), no(), no(), List.of(new LotId("A")), none(), no()));
    assertThat(made.food()).isEqualTo("Barley soup");
    assertThat(made.lot().text()).isEqualTo("260302-A");
    kitchen.log(
        "lot,when,entry,temperature\n%s,2026-03-02T17:00:00Z,cooling,120F\n".formatted(made.lot()));
    LotView view = kitchen.lot(made.lot().text());
    assertThat(view.sources()).containsExactly(new LotId("A"));
    assertThat(view.judged().orElseThrow().timeline().inherited()).hasSize(1);
    assertThat(kitchen.lot("A").descendants()).containsExactly(made.lot());
  }

  /** Our own: they sort as they were made, and a part's number is not mistaken for a batch's. */
  @Test
  void made_codes_sort_in_their_order_past_the_alphabet() {
    NewLot lot = new NewLot(no(), text("Rice"), text("soup_or_stew"), List.of(), none(), no());
    create(new NewLot(id("260302-1"), text("Rice"), text("soup_or_stew"), List.of(), none(), no()));
    List<String> made = IntStream.range(0, 50).mapToObj(i -> create(lot).lot().text()).toList();
    assertThat(made)
        .isSorted()
        .doesNotHaveDuplicates()
        .contains("260302-A", "260302-Y", "260302-ZA", "260302-ZZA")
        .noneMatch(code -> code.matches(".*-.*[0-9IO].*"));
  }

  @Test
  void made_codes_never_repeat() {
    NewLot lot = new NewLot(no(), text("Rice"), text("soup_or_stew"), List.of(), none(), no());
    create(new NewLot(id("260302-B"), text("Rice"), text("soup_or_stew"), List.of(), none(), no()));
    assertThat(IntStream.range(0, 3).mapToObj(i -> create(lot).lot().text()))
        .containsExactly("260302-A", "260302-C", "260302-D");
  }

  @Test
  void a_lot_that_exists_is_a_refusal_of_its_own() {
    kitchen.log(COOKED);
    assertThatThrownBy(
            () ->
                create(
                    new NewLot(
                        id("A"), text("Rice"), text("soup_or_stew"), List.of(), none(), no())))
        .asInstanceOf(InstanceOfAssertFactories.type(Refused.class))
        .satisfies(refused -> assertThat(refused.why()).isEqualTo(Refused.Why.LOT_EXISTS));
  }

  @Test
  void every_fault_of_a_new_lot_is_listed() {
    NewLot lot =
        new NewLot(
            id("A"), no(), text("no_such"), List.of(new LotId("X"), new LotId("Y")), n(0), no());
    assertThatThrownBy(() -> create(lot))
        .asInstanceOf(InstanceOfAssertFactories.type(Refused.class))
        .satisfies(
            refused ->
                assertThat(refused.problems())
                    .extracting(Problem::code)
                    .containsExactly(
                        "unknown-source",
                        "unknown-source",
                        "missing",
                        "unknown-category",
                        "bad-portions"));
  }

  @Test
  void making_a_lot_twice_with_one_key_makes_one() {
    NewLot lot = new NewLot(no(), text("Rice"), text("soup_or_stew"), List.of(), none(), no());
    Optional<OnceKey> key = Optional.of(key("k1", "rice"));
    LotState first = kitchen.kitchen().logbook().createLot(lot, key);
    assertThat(kitchen.kitchen().logbook().createLot(lot, key)).isEqualTo(first);
    assertThat(kitchen.kitchen().lots().list(LotQuery.ALL, Page.Wanted.first(10)).items())
        .hasSize(1);
  }

  @Test
  void readings_of_places_are_kept_and_corrected() {
    String header = "lot,when,entry,temperature,place,id,corrects,note\n";
    kitchen.log(header + ",2026-03-02T16:00:00Z,reading,41F,walk-in,r1,,\n");
    kitchen.log(header + ",2026-03-02T17:00:00Z,reading,44F,walk-in,r2,,\n");
    kitchen.log(header + ",2026-03-02T17:30:00Z,correction,40F,,c1,r2,misread\n");
    kitchen.log(header + ",2026-03-02T17:40:00Z,correction,,freezer,c2,r1,other door\n");
    List<Places.PlaceReading> walkIn = readings("walk-in");
    assertThat(walkIn).hasSize(1);
    assertThat(walkIn.get(0).written().temperature().orElseThrow().text()).isEqualTo("44 °F");
    assertThat(walkIn.get(0).standing().orElseThrow().temperature().orElseThrow().text())
        .isEqualTo("40 °F");
    assertThat(walkIn.get(0).corrections())
        .extracting(LogEntry::id)
        .containsExactly(new EntryId("c1"));
    assertThat(readings("freezer").get(0).written().details().place()).contains("walk-in");
    assertThat(kitchen.log(header + ",2026-03-02T16:00:00Z,reading,41F,walk-in,r1,,\n").repeats())
        .isOne();
  }

  private List<Places.PlaceReading> readings(String place) {
    return kitchen
        .kitchen()
        .places()
        .readings(Optional.of(place), Optional.empty(), Optional.empty(), Page.Wanted.first(10))
        .items();
  }

  private LotState create(NewLot lot) {
    return kitchen.kitchen().logbook().createLot(lot, Optional.empty());
  }

  private static Optional<LotId> id(String code) {
    return Optional.of(new LotId(code));
  }

  private static Optional<String> text(String text) {
    return Optional.of(text);
  }

  private static OptionalInt n(int count) {
    return OptionalInt.of(count);
  }

  private static OptionalInt none() {
    return OptionalInt.empty();
  }

  private static <T> Optional<T> no() {
    return Optional.empty();
  }
}
