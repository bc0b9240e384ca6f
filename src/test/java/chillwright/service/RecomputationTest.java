package chillwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.keeping.LotState;
import chillwright.core.log.Incoming;
import chillwright.core.log.LotId;
import chillwright.core.rules.Verdict;
import chillwright.service.Judge.Judged;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What is stored beside the log is what the log says: judged anew, or read again from nothing, it
 * comes out the same, whatever was written late, corrected, divided or combined.
 */
class RecomputationTest {
  private static final Instant START = Instant.parse("2026-03-02T06:00:00Z");
  private static final Instant END = Instant.parse("2026-03-13T06:00:00Z");
  private static final int REQUESTS = 80;

  @TempDir private Path folder;

  static IntStream seeds() {
    return IntStream.rangeClosed(1, 6);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void stored_findings_are_those_of_a_full_recomputation(int seed) {
    try (TestKitchen kitchen = new TestKitchen(folder.resolve("kitchen.db"))) {
      kitchen.at(END.toString());
      List<Incoming> taken = write(kitchen, new RandomLog(seed, START, END));
      LogCheck check = new LogCheck(kitchen.kitchen().judge(), END);
      LogCheck.Checked anew = check.check(taken, END);
      assertThat(anew.problems()).isEmpty();
      assertThat(anew.lots()).hasSizeGreaterThan(5);
      for (Judged lot : anew.lots()) {
        requireSame(kitchen, lot);
      }
      assertThat(kitchen.kitchen().logbook().recompute(Progress.NONE).changedRows()).isZero();
    }
  }

  /** Sends requests one after the other; gives the rows of those that were not refused. */
  private static List<Incoming> write(TestKitchen kitchen, RandomLog random) {
    List<Incoming> taken = new ArrayList<>();
    for (int i = 0; i < REQUESTS; i++) {
      List<Incoming> rows = kitchen.rows(random.next());
      try {
        kitchen.kitchen().logbook().log(rows, Optional.empty());
        taken.addAll(rows);
      } catch (Refused refused) {
        assertThat(refused.problems()).isNotEmpty();
      }
    }
    return taken;
  }

  private static void requireSame(TestKitchen kitchen, Judged anew) {
    LotId lot = anew.timeline().lot();
    LotView stored = kitchen.lot(lot.text());
    LotView.Judged judged = stored.judged().orElseThrow();
    assertThat(judged.timeline()).as("timeline of %s", lot).isEqualTo(anew.timeline());
    assertThat(judged.findings()).as("findings of %s", lot).isEqualTo(anew.findings());
    assertThat(stored.state()).as("state of %s", lot).isEqualTo(anew.state());
  }

  @Test
  void the_made_up_logs_reach_every_verdict_and_are_mostly_taken() {
    Map<Verdict, Integer> seen = new EnumMap<>(Verdict.class);
    int[] made = {0};
    seeds()
        .limit(3)
        .forEach(
            seed -> {
              try (TestKitchen kitchen = new TestKitchen(folder.resolve(seed + ".db"))) {
                kitchen.at(END.toString());
                made[0] += write(kitchen, new RandomLog(seed, START, END)).size();
                Page<LotState> lots =
                    kitchen.kitchen().lots().list(LotQuery.ALL, Page.Wanted.first(Page.MOST));
                for (LotState lot : lots.items()) {
                  LotView view = kitchen.lot(lot.lot().text());
                  view.judged()
                      .orElseThrow()
                      .findings()
                      .forEach(finding -> seen.merge(finding.at(END), 1, Integer::sum));
                }
              }
            });
    assertThat(seen).containsOnlyKeys(Verdict.values());
    assertThat(made[0]).isGreaterThan(REQUESTS);
  }

  @Test
  void recomputing_puts_right_what_was_changed_behind_its_back() throws Exception {
    Path file = folder.resolve("kitchen.db");
    try (TestKitchen kitchen = new TestKitchen(file)) {
      kitchen.at(END.toString());
      write(kitchen, new RandomLog(1, START, END));
    }
    TamperedFile.run(file, "UPDATE finding SET settles_at = settles_at + 1 WHERE seq = 1");
    TamperedFile.run(file, "UPDATE lot SET food = 'other' WHERE id = 1");
    try (TestKitchen kitchen = new TestKitchen(file)) {
      Logbook.Recomputed first = kitchen.kitchen().logbook().recompute(Progress.NONE);
      assertThat(first.changedRows()).isPositive();
      assertThat(kitchen.kitchen().logbook().recompute(Progress.NONE).changedRows()).isZero();
      assertThat(kitchen.lot("L1").state().food()).isEqualTo("Food L1");
    }
  }
}
