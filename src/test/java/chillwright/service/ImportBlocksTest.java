package chillwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.log.LogEntry;
import chillwright.core.log.Problem;
import chillwright.core.rules.Finding;
import chillwright.core.rules.Verdict;
import chillwright.logfile.LogFile;
import chillwright.service.Imports.Imported;
import chillwright.storage.PlaceStore;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A file that is stored in several blocks comes out as it would in one: rows that have to do with
 * one another stay together, however far apart they stand. The expected outcomes are those of the
 * same rows in a file of one block.
 */
class ImportBlocksTest {
  private static final String HEADER =
      "lot,food,category,when,entry,temperature,place,from,id,corrects,note\n";

  @TempDir private Path folder;
  private TestKitchen kitchen;

  @BeforeEach
  void open() {
    kitchen = new TestKitchen(folder.resolve("kitchen.db"));
    kitchen.at("2026-03-05T12:00:00Z");
  }

  @AfterEach
  void close() {
    kitchen.close();
  }

  private Imported take(String... rows) throws IOException {
    String text = HEADER + String.join("\n", rows) + "\n";
    Path file = Files.writeString(folder.resolve("log.csv"), text);
    return kitchen.kitchen().imports().files(LogFile.of(List.of(file)), false, Progress.NONE);
  }

  /** Enough rows of another lot to fill a block. */
  private static String filler() {
    StringBuilder rows = new StringBuilder();
    Instant start = Instant.parse("2026-03-02T06:00:00Z");
    rows.append("FILL,Stock,stock_or_meat_broth,%s,cooked,180F,,,,,".formatted(start));
    for (int i = 1; i <= 4200; i++) {
      rows.append("\nFILL,,,%s,reading,170F,,,,,".formatted(start.plusSeconds(i)));
    }
    return rows.toString();
  }

  private long changedByRecomputing() {
    return kitchen.kitchen().logbook().recompute(Progress.NONE).changedRows();
  }

  @Test
  void a_lot_is_judged_with_what_the_same_file_says_of_its_stored_source() throws IOException {
    take(
        "A,Soup,soup_or_stew,2026-03-02T10:00:00Z,cooked,180F,,,,,",
        "A,,,2026-03-02T11:50:00Z,reading,136F,,,r1,,",
        "B,,,2026-03-02T12:00:00Z,cooling,,,A,,,",
        "B,,,2026-03-02T13:45:00Z,reading,68F,,,,,");
    Imported second =
        take(
            "A,,,2026-03-02T16:00:00Z,correction,80F,,,,r1,misread",
            filler(),
            "B,,,2026-03-02T15:00:00Z,reading,40F,,,,,");
    assertThat(second.problems()).isEmpty();
    List<Finding> findings = kitchen.lot("B").judged().orElseThrow().findings();
    assertThat(findings)
        .filteredOn(f -> f.rule().id().equals("cooling.cooked.first-stage"))
        .extracting(Finding::settled)
        .containsExactly(Verdict.NOT_SHOWN);
    assertThat(changedByRecomputing()).isZero();
  }

  /** A rule of this project, no source. */
  @Test
  void portions_into_a_lot_of_another_block_are_seen() throws IOException {
    String rows =
        """
        lot,food,category,when,entry,temperature,portions,to
        A,Soup,soup_or_stew,2026-03-02T10:00:00Z,cooked,180F,20,
        A,,,2026-03-02T12:00:00Z,portions,,5,B
        %s
        B,Soup,soup_or_stew,2026-03-02T10:00:00Z,cooked,180F,10,
        """
            .formatted(filler().replace("0F,,,,,", "0F,,"));
    Path file = Files.writeString(folder.resolve("log.csv"), rows);
    Imported imported =
        kitchen.kitchen().imports().files(LogFile.of(List.of(file)), false, Progress.NONE);
    assertThat(imported.problems()).extracting(Problem::code).containsExactly("not-made-of");
  }

  @Test
  void ids_made_of_long_codes_never_meet() throws IOException {
    String code = "X".repeat(64);
    Imported imported =
        take(
            code + ",Soup,soup_or_stew,2026-03-02T10:00:00Z,cooked,180F,,,,,",
            filler(),
            "M,Soup,soup_or_stew,2026-03-02T10:00:00Z,cooked,180F,,," + "X".repeat(62) + ".1,,");
    assertThat(imported.problems()).isEmpty();
    assertThat(imported.entries()).isEqualTo(4203);
  }

  @Test
  void an_id_is_given_once_among_lots_and_places() throws IOException {
    take(
        "A,Soup,soup_or_stew,2026-03-02T10:00:00Z,cooked,180F,,,,,",
        filler(),
        ",,,2026-03-02T10:00:00Z,reading,38F,walk-in,,A.1,,");
    assertThat(kitchen.lot("A").entries().get(0).id().text()).isNotEqualTo("A.1");
  }

  @Test
  void a_reading_of_a_place_is_corrected_by_its_made_id() throws IOException {
    Imported imported =
        take(
            ",,,2026-03-02T17:00:00Z,reading,48F,fridge,,,,",
            filler(),
            ",,,2026-03-02T17:05:00Z,correction,38F,,,,place-20260302T170000Z.1,misread");
    assertThat(imported.problems()).isEmpty();
    assertThat(imported.readings()).isEqualTo(2);
  }

  @Test
  void a_correction_of_a_place_may_stand_before_what_it_corrects() throws IOException {
    Imported imported =
        take(
            ",,,2026-03-02T10:05:00Z,correction,41F,,,c1,p1,misread",
            ",,,2026-03-02T10:00:00Z,reading,48F,fridge,,p1,,");
    assertThat(imported.problems()).isEmpty();
    assertThat(imported.readings()).isEqualTo(2);
  }

  @Test
  void a_reading_is_listed_where_its_standing_corrections_say() throws IOException {
    take(
        ",,,2026-03-02T10:00:00Z,reading,38F,fridge,,p1,,",
        ",,,2026-03-02T10:05:00Z,correction,,freezer,,c1,p1,wrong place",
        ",,,2026-03-02T10:10:00Z,correction,,,,c2,c1,it was right",
        ",,,2026-03-02T11:00:00Z,reading,38F,fridge,,q1,,",
        ",,,2026-03-02T11:05:00Z,correction,39F,,,d1,q1,misread",
        ",,,2026-03-02T11:10:00Z,correction,,freezer,,d2,d1,wrong place");
    assertThat(listed("fridge")).containsExactly("p1");
    assertThat(listed("freezer")).containsExactly("q1");
  }

  @Test
  void what_a_phone_writes_meanwhile_counts() throws IOException {
    String header = "lot,food,category,when,entry,temperature\n";
    kitchen.log(header + "A,Soup,soup_or_stew,2026-03-02T10:00:00Z,cooked,180F\n");
    Path file =
        Files.writeString(
            folder.resolve("late.csv"),
            header
                + "A,,,2026-03-02T15:00:00Z,reading,40F\n"
                + "B,Soup,soup_or_stew,2026-03-02T10:00:00Z,cooked,180F\n");
    Imported imported =
        kitchen
            .kitchen()
            .imports()
            .files(
                LogFile.of(List.of(file)),
                false,
                (what, count) -> {
                  if (what.equals("rows checked")) {
                    kitchen.log(header + "A,,,2026-03-02T14:00:00Z,served,\n");
                  }
                });
    assertThat(imported.problems()).extracting(Problem::code).containsExactly("lot-closed");
    assertThat(kitchen.lot("A").entries()).hasSize(2);
    assertThat(kitchen.lot("B").entries()).hasSize(1);
    assertThat(changedByRecomputing()).isZero();
  }

  @Test
  void a_reading_of_a_place_that_a_phone_sends_meanwhile_is_stored_once() throws IOException {
    String row = ",2026-03-02T15:00:00Z,reading,38F,walk-in,";
    String header = "lot,when,entry,temperature,place,id\n";
    Path file = Files.writeString(folder.resolve("places.csv"), header + row + "\n");
    Imported imported =
        kitchen
            .kitchen()
            .imports()
            .files(
                LogFile.of(List.of(file)),
                false,
                (what, count) -> {
                  if (what.equals("rows checked")) {
                    kitchen.log(header + row + "phone-1\n");
                  }
                });
    assertThat(imported.readings()).isZero();
    assertThat(imported.repeats()).isEqualTo(1);
    assertThat(listed("walk-in")).hasSize(1);
  }

  private List<String> listed(String place) {
    PlaceStore.Filter filter =
        new PlaceStore.Filter(Optional.of(place), Instant.EPOCH, kitchen.now());
    return kitchen
        .kitchen()
        .database()
        .read(session -> session.places().readings(filter, 50, Optional.empty()))
        .items()
        .stream()
        .map(LogEntry::id)
        .map(Object::toString)
        .toList();
  }
}
