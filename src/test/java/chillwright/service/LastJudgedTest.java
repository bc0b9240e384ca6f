package chillwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.log.LotId;
import chillwright.core.log.LotLog;
import chillwright.service.Judge.Judged;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is remembered of the lots that were written last. */
class LastJudgedTest {
  private static final String ROWS =
      """
      lot,food,category,when,entry,temperature,from
      A,Barley soup,soup_or_stew,2026-03-02T10:00:00Z,cooked,165F,
      B,Barley soup,soup_or_stew,2026-03-02T10:00:00Z,cooked,165F,
      C,,,2026-03-02T10:30:00Z,cooling,,A
      """;

  @TempDir private Path folder;
  private TestKitchen kitchen;

  @BeforeEach
  void open() {
    kitchen = new TestKitchen(folder.resolve("kitchen.db"));
    kitchen.at("2026-03-02T19:00:00Z");
    kitchen.log(ROWS);
  }

  @AfterEach
  void close() {
    kitchen.close();
  }

  private Judged judged(String lot) {
    return kitchen.kitchen().judge().judge(log(lot));
  }

  private LotLog log(String lot) {
    return kitchen
        .kitchen()
        .database()
        .read(session -> session.log().log(new LotId(lot)).orElseThrow());
  }

  @Test
  void the_lot_used_longest_ago_makes_room() {
    LastJudged last = new LastJudged(2);
    last.keep(List.of(judged("A"), judged("B")));
    assertThat(last.beginning(new LotId("A"))).hasSize(1);
    // With the entry of its source it has two.
    last.keep(List.of(judged("C")));
    assertThat(last.has(new LotId("C"))).isTrue();
    assertThat(last.has(new LotId("A"))).isFalse();
    assertThat(last.has(new LotId("B"))).isFalse();
  }

  @Test
  void a_lot_too_long_to_remember_drives_no_other_out() {
    LastJudged last = new LastJudged(1);
    last.keep(List.of(judged("A")));
    last.keep(List.of(judged("C")));
    assertThat(last.has(new LotId("A"))).isTrue();
    assertThat(last.has(new LotId("C"))).isFalse();
  }

  @Test
  void what_was_found_is_told_of_the_very_log_alone() {
    LastJudged last = new LastJudged(10);
    Judged judged = judged("C");
    last.keep(List.of(judged));
    assertThat(last.of(judged.log())).containsSame(judged);
    assertThat(last.of(log("C"))).isEmpty();
  }

  @Test
  void nothing_is_left_once_a_disk_has_failed() {
    LastJudged last = new LastJudged(10);
    last.keep(List.of(judged("A")));
    last.clear();
    assertThat(last.has(new LotId("A"))).isFalse();
  }
}
