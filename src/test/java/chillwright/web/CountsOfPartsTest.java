package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A freezer that is counted: one box of a batch has fewer than was written, another as many more.
 * That the portions of a lot and of its parts add up is a rule of this project, no source.
 */
class CountsOfPartsTest {
  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void open() {
    served = Served.in(folder);
    served.at("2026-03-06T20:00:00Z");
    visit = new Visit(served);
    visit.open("/");
    visit.submit(
        "/new-batch",
        "lot",
        "BARS",
        "entry",
        "cooked",
        "food",
        "Oat bars",
        "category",
        "bar_cookies_cut_and_wrapped",
        "portions",
        "96");
    assertThat(submit("BARS", "parts", "parts", "3", "portions", "24").status()).isEqualTo(303);
    served.at("2026-03-06T21:00:00Z");
  }

  @AfterEach
  void close() {
    served.close();
  }

  private Reply submit(String lot, String form, String... fields) {
    visit.open("/lots/" + lot);
    return visit.submit("/lots/" + lot + "/" + form, fields);
  }

  private int portions(String lot, String which) {
    return served.get("/api/v1/lots/" + lot).json().at("/portions/" + which).asInt();
  }

  @Test
  void what_one_box_has_more_is_what_the_next_has_fewer() {
    assertThat(submit("BARS-1", "counts", "found", "21").status()).isEqualTo(303);
    Reply more = submit("BARS-2", "counts", "found", "27");
    String page = visit.open(Visit.target(more)).text();
    assertThat(page)
        .contains("name=\"of-BARS-3\"", "BARS-1: 21 left by the log, 3 missing at a count")
        .containsPattern("name=\"of-BARS-1\"[^>]*value=\"3\"")
        .containsPattern("name=\"of-BARS-3\"[^>]*value=\"\"");
    Reply mended =
        visit.submit(
            "/lots/BARS-2/counted-more", "more", "3", "way", "parts", "of-BARS-1", "3", "by", "RO");
    assertThat(mended.status()).as(mended.text()).isEqualTo(303);
    assertThat(visit.open(Visit.target(mended)).text())
        .contains("The counts are corrected: by the log 27 are left", "written for BARS-1");
    assertThat(portions("BARS-1", "made")).isEqualTo(21);
    assertThat(portions("BARS-1", "left")).isEqualTo(21);
    assertThat(portions("BARS-2", "made")).isEqualTo(27);
    assertThat(portions("BARS", "made")).isEqualTo(96);
    assertThat(portions("BARS", "left")).isEqualTo(24);
    // Nothing is gone any more, and both counts stay to be read.
    assertThat(visit.open("/lots/BARS-1").text()).contains("counted 21, the log said 24");
  }

  /** The other box need not be counted before; what is left over asks on. */
  @Test
  void several_boxes_may_give_and_the_rest_is_asked_on() {
    Reply mended =
        submit(
            "BARS-2",
            "counted-more",
            "more",
            "4",
            "way",
            "parts",
            "of-BARS-1",
            "2",
            "of-BARS-3",
            "1");
    assertThat(mended.status()).as(mended.text()).isEqualTo(303);
    assertThat(Visit.target(mended)).isEqualTo("/lots/BARS-2?more=1");
    assertThat(portions("BARS-1", "left")).isEqualTo(22);
    assertThat(portions("BARS-2", "left")).isEqualTo(27);
    assertThat(portions("BARS-3", "left")).isEqualTo(23);
    assertThat(portions("BARS", "left")).isEqualTo(24);
  }

  /** The form of another window, or of a tick ago, was written for what the log said then. */
  @Test
  void what_was_corrected_meanwhile_is_not_corrected_again() {
    String once = Visit.once(visit.open(Visit.target(submit("BARS-2", "counts", "found", "27"))));
    String[] form = {
      "once", once, "more", "3", "left", "24", "way", "parts", "of-BARS-1", "3",
    };
    Reply first = visit.submit("/lots/BARS-2/counted-more", form);
    Reply same = visit.submit("/lots/BARS-2/counted-more", form);
    assertThat(List.of(first.status(), same.status())).containsOnly(303);
    assertThat(portions("BARS-2", "left")).isEqualTo(27);
    form[1] = Visit.once(visit.open("/lots/BARS-2"));
    Reply again = visit.submit("/lots/BARS-2/counted-more", form);
    assertThat(again.status()).as(again.text()).isEqualTo(422);
    assertThat(again.text()).contains("the log said 24", "says 27 now");
    assertThat(portions("BARS-1", "left")).isEqualTo(21);
  }

  /** What a count becomes is reckoned from what it is, so two at once must not see the same. */
  @Test
  void counts_sent_at_once_lose_no_portions() throws InterruptedException {
    List<Visit> phones = List.of(new Visit(served), new Visit(served));
    phones.forEach(phone -> phone.open("/lots/BARS-2"));
    List<Thread> sent = new ArrayList<>();
    for (int i = 0; i < phones.size(); i++) {
      Visit phone = phones.get(i);
      String giver = "of-BARS-" + (i == 0 ? 1 : 3);
      sent.add(
          new Thread(
              () ->
                  phone.submit(
                      "/lots/BARS-2/counted-more", "more", "2", "way", "parts", giver, "2")));
    }
    sent.forEach(Thread::start);
    for (Thread thread : sent) {
      thread.join();
    }
    assertThat(portions("BARS-1", "left") + portions("BARS-3", "left")).isEqualTo(44);
    assertThat(portions("BARS-2", "left")).isEqualTo(28);
    assertThat(portions("BARS", "left")).isEqualTo(24);
  }

  /** The rest in the whole may have what was written for a box. */
  @Test
  void more_in_the_whole_may_have_been_written_for_a_part() {
    assertThat(visit.open(Visit.target(submit("BARS", "counts", "found", "26"))).text())
        .contains("name=\"of-BARS-1\"");
    Reply mended =
        visit.submit("/lots/BARS/counted-more", "more", "2", "way", "parts", "of-BARS-1", "2");
    assertThat(mended.status()).as(mended.text()).isEqualTo(303);
    assertThat(portions("BARS", "left")).isEqualTo(26);
    assertThat(portions("BARS-1", "left")).isEqualTo(22);
    assertThat(portions("BARS", "made")).isEqualTo(96);
  }

  @ParameterizedTest
  @CsvSource({"4", "0", "'some'", "''", "-1"})
  void what_does_not_add_up_corrects_nothing(String given) {
    Reply refused =
        submit("BARS-2", "counted-more", "more", "3", "way", "parts", "of-BARS-1", given);
    assertThat(refused.status()).as(refused.text()).isEqualTo(422);
    assertThat(refused.text()).contains("no more than the 3 that were found beyond the log");
    assertThat(portions("BARS-1", "left")).isEqualTo(24);
    assertThat(portions("BARS-2", "left")).isEqualTo(24);
  }

  @Test
  void no_box_gives_more_than_it_has() {
    submit("BARS-1", "entries", "entry", "portions", "portions", "22", "to", "Fair");
    Reply refused = submit("BARS-2", "counted-more", "more", "3", "way", "parts", "of-BARS-1", "3");
    assertThat(refused.status()).as(refused.text()).isEqualTo(422);
    assertThat(portions("BARS-1", "left")).isEqualTo(2);
    assertThat(portions("BARS-2", "made")).isEqualTo(24);
  }

  /**
   * Portions bring their days along: a box frozen on another day has used more or fewer of them,
   * FDA Food Code 2022 3-501.18(A)(1), "except time that the product is frozen".
   */
  @Test
  void a_box_that_went_another_way_gives_none() {
    served.post(
        "/api/v1/lots/BARS-1/entries",
        "{'entry':'frozen','when':'2026-03-06T13:50:00-07:00','how':'hard'}");
    Reply more = submit("BARS-2", "counts", "found", "27");
    assertThat(visit.open(Visit.target(more)).text())
        .contains("name=\"of-BARS-3\"")
        .doesNotContain("name=\"of-BARS-1\"");
    Reply refused = submit("BARS-2", "counted-more", "more", "3", "way", "parts", "of-BARS-1", "3");
    assertThat(refused.status()).isEqualTo(422);
    assertThat(portions("BARS-2", "made")).isEqualTo(24);
  }
}
