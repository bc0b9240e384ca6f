package chillwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.log.LotId;
import chillwright.core.log.Problem;
import chillwright.logfile.LogFile;
import chillwright.service.Imports.Imported;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Taking in log files: whole, or not at all, unless the good lots are asked for. */
class ImportsTest {
  private static final String GOOD =
      """
      lot,food,category,when,entry,temperature,place,from
      A,Barley soup,soup_or_stew,2026-03-02T16:00:00Z,cooked,160F,,
      A,,,2026-03-02T17:30:00Z,reading,69F,,
      B,,,2026-03-02T17:40:00Z,chilled,60F,walk-in,A
      ,,,2026-03-02T17:45:00Z,reading,38F,walk-in,
      """;
  private static final String ALSO_BAD =
      """
      lot,food,category,when,entry,temperature,place,from
      A,Barley soup,soup_or_stew,2026-03-02T16:00:00Z,cooked,160F,,
      A,,,2026-03-02T17:30:00Z,reading,69,,
      B,,,2026-03-02T17:40:00Z,chilled,60F,walk-in,A
      C,Rice,cooked_rice_or_grain,2026-03-02T16:30:00Z,cooked,200F,,
      D,Rice,no_such,2026-03-02T16:30:00Z,cooked,200F,,
      """;

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
  void a_good_file_is_stored_and_judged() throws IOException {
    Imported done = take(false, GOOD);
    assertThat(done).isEqualTo(new Imported(4, 3, 1, 0, 2, List.of(), true));
    assertThat(kitchen.lot("B").sources()).containsExactly(new LotId("A"));
    assertThat(kitchen.lot("A").judged().orElseThrow().findings()).isNotEmpty();
  }

  @Test
  void a_file_that_grew_can_be_taken_in_again() throws IOException {
    take(false, GOOD);
    Imported same = take(false, GOOD);
    assertThat(same).isEqualTo(new Imported(4, 0, 0, 4, 0, List.of(), true));
    Imported grown = take(false, GOOD + "B,,,2026-03-02T17:55:00Z,reading,40F,,\n");
    assertThat(grown).isEqualTo(new Imported(5, 1, 0, 4, 1, List.of(), true));
  }

  @Test
  void with_any_fault_nothing_is_stored_and_every_fault_is_told() throws IOException {
    Imported refused = take(false, ALSO_BAD);
    assertThat(refused.isStored()).isFalse();
    assertThat(refused.problems())
        .extracting(Problem::code)
        .containsExactly("no-scale", "unknown-category");
    assertThat(kitchen.kitchen().lots().list(LotQuery.ALL, Page.Wanted.first(10)).items())
        .isEmpty();
  }

  @Test
  void a_fault_in_one_file_keeps_the_others_out() throws IOException {
    Imported refused = take(false, GOOD, ALSO_BAD.replace("A,", "X,"));
    assertThat(refused.isStored()).isFalse();
    assertThat(kitchen.kitchen().lots().state(new LotId("A"))).isEmpty();
  }

  @Test
  void the_good_lots_alone_can_be_asked_for() throws IOException {
    Imported some = take(true, ALSO_BAD);
    assertThat(some.isStored()).isTrue();
    assertThat(some.lots()).isOne();
    assertThat(some.problems()).hasSize(2);
    assertThat(kitchen.lot("C").entries()).hasSize(1);
    // A has an unreadable row, B came from A, D is no known food.
    assertThat(Stream.of("A", "B", "D").map(LotId::new).map(kitchen.kitchen().lots()::state))
        .allMatch(state -> state.isEmpty());
  }

  @Test
  void a_lot_made_known_before_gets_its_rows_from_a_file() throws IOException {
    kitchen
        .kitchen()
        .logbook()
        .createLot(
            new NewLot(
                Optional.of(new LotId("E")),
                Optional.of("Pea soup"),
                Optional.of("soup_or_stew"),
                List.of(),
                OptionalInt.of(8),
                Optional.empty()),
            Optional.empty());
    take(false, "lot,when,entry,temperature\nE,2026-03-02T16:00:00Z,cooked,160F\n");
    assertThat(kitchen.lot("E").state().portions().made()).hasValue(8);
  }

  @Test
  void whoever_watches_is_told_how_far_it_is() throws IOException {
    List<String> told = new ArrayList<>();
    Path file = Files.writeString(folder.resolve("good.csv"), GOOD);
    kitchen
        .kitchen()
        .imports()
        .files(LogFile.of(List.of(file)), false, (what, count) -> told.add(what + " " + count));
    assertThat(told).containsExactly("rows checked 4", "rows stored 4");
  }

  private Imported take(boolean goodLotsOnly, String... csv) throws IOException {
    List<Path> files = new ArrayList<>();
    for (String text : csv) {
      files.add(Files.writeString(folder.resolve("log-" + files.size() + ".csv"), text));
    }
    return kitchen.kitchen().imports().files(LogFile.of(files), goodLotsOnly, Progress.NONE);
  }
}
