package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Readings that can hardly be of food that is frozen, and those that only look so. */
class ReadingDoubtsTest {
  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void open() {
    served = Served.in(folder);
    visit = new Visit(served);
    visit.open("/new-batch");
  }

  @AfterEach
  void close() {
    served.close();
  }

  private void lot(String lot, String category) {
    String made = "{'lot':'%s','food':'Our own','category':'%s'}".formatted(lot, category);
    assertThat(served.post("/api/v1/lots", made).status()).isEqualTo(201);
  }

  private void log(String lot, String entry) {
    Reply logged = served.post("/api/v1/lots/" + lot + "/entries", "{" + entry + "}");
    assertThat(logged.status()).as(logged.text()).isEqualTo(201);
  }

  private Reply read(String lot, String word, String how, String figure, String scale) {
    return visit.submit(
        "/lots/" + lot + "/entries",
        "entry",
        word,
        "how",
        how,
        "temperature",
        figure,
        "scale",
        scale);
  }

  /** Common practice, no source: no pot falls 20 °F below 135 °F in ten minutes. */
  @ParameterizedTest
  @CsvSource({"60, 1, 422", "114, 10, 422", "116, 10, 303", "60, 11, 303", "130, 0, 303"})
  void what_was_held_hot_until_just_now_is_not_cool(String figure, int minutes, int status) {
    lot("POT", "soup_or_stew");
    log("POT", "'entry':'cooked','temperature':'180F','when':'2026-03-03T07:00:00Z'");
    log("POT", "'entry':'hot-holding','temperature':'150F','when':'2026-03-03T07:10:00Z'");
    log("POT", "'entry':'cooling','when':'2026-03-03T16:00:00Z'");
    served.at(Instant.parse("2026-03-03T16:00:00Z").plusSeconds(60L * minutes).toString());
    visit.open("/lots/POT");
    Reply reply = read("POT", "reading", "", figure, "F");
    assertThat(reply.status()).as(reply.text()).isEqualTo(status);
    assertThat(reply.text().contains("When was it taken off the heat?")).isEqualTo(status == 422);
  }

  /** Water freezes at 32 °F (0 °C); 41 °F and 45 °F are common practice, no source. */
  @ParameterizedTest
  @CsvSource({
    "reading, '', 180, F, 422",
    "reading, '', 45.1, F, 422",
    "reading, '', 45, F, 303",
    "reading, '', 7.1, C, 422",
    "frozen, hard, 64, F, 422",
    "reading, hard, 41.1, F, 422",
    "reading, hard, 41, F, 303",
    "reading, crystals, 46, F, 422",
    "reading, soft, 64, F, 303",
    "thawing, refrigerator, 50, F, 303",
  })
  void what_is_too_warm_to_be_frozen_is_asked_about(
      String word, String how, String figure, String scale, int status) {
    lot("B-1", "yeast_bread_baked");
    log("B-1", "'entry':'frozen','when':'2026-03-03T08:00:00-07:00'");
    Reply reply = read("B-1", word, how, figure, scale);
    assertThat(reply.status()).as(reply.text()).isEqualTo(status);
    if (status == 422) {
      assertThat(reply.text()).contains(figure + " °" + scale, "food that is frozen");
    }
  }

  /** What was put into the freezer hot is not frozen yet: 3-501.15 asks only that it cools. */
  @Test
  void what_still_cools_in_a_freezer_may_be_warm() {
    served.cookSoup("S-1");
    log("S-1", "'entry':'frozen','when':'2026-03-03T10:05:00-07:00'");
    assertThat(read("S-1", "reading", "", "165", "F").status()).isEqualTo(303);
  }

  @Test
  void a_batch_that_begins_frozen_is_asked_about_too() {
    String[] fields = {
      "entry", "frozen", "food", "Rye", "category", "yeast_bread_baked", "temperature", "180"
    };
    assertThat(visit.submit("/new-batch", fields).status()).isEqualTo(422);
    fields[7] = "5";
    assertThat(visit.submit("/new-batch", fields).status()).isEqualTo(422);
  }

  /** FDA Food Code 2022 3-403.11: 165 °F within two hours; 40, 100, 150 °F on the way there. */
  @ParameterizedTest
  @CsvSource({"F, 40, 100, 150", "C, 4, 38, 66"})
  void what_is_reheated_gets_warmer_and_nobody_asks(
      String scale, String cold, String warm, String hot) {
    lot("R-1", "soup_or_stew");
    log("R-1", "'entry':'prepared','when':'2026-03-03T09:00:00-07:00','temperature':'40F'");
    log(
        "R-1",
        "'entry':'reheating','when':'2026-03-03T09:25:00-07:00','temperature':'%s%s'"
            .formatted(cold, scale));
    served.at("2026-03-03T16:50:00Z");
    assertThat(read("R-1", "reading", "", warm, scale).status()).isEqualTo(303);
    served.at("2026-03-03T17:15:00Z");
    assertThat(read("R-1", "reading", "", hot, scale).status()).isEqualTo(303);
    assertThat(read("R-1", "reading", "", cold, scale).status()).as("it fell").isEqualTo(422);
  }

  /** By conversion, 180 °F is 82.2 °C; food with water in it gets no hotter than some 121 °C. */
  @Test
  void a_figure_of_the_other_scale_is_suggested_before_a_missing_point() {
    assertThat(visit.submit("/ways", "scale", "C").status()).isEqualTo(303);
    String[] fields = {
      "entry",
      "cooked",
      "food",
      "Soup",
      "category",
      "soup_or_stew",
      "temperature",
      "180",
      "scale",
      "C"
    };
    Reply asked = visit.submit("/new-batch", fields);
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text())
        .containsSubsequence("Did you mean 180 °F (82.2 °C)?", "Did you mean 18 °C?");
  }

  private Reply readAt(String lot, String word, String clock, String figure) {
    String when = "2026-03-03T" + clock;
    String[] fields = {"entry", word, "temperature", figure, "scale", "F", "when", when};
    return visit.submit("/lots/" + lot + "/entries", fields);
  }

  /** Our own: what is entered late is held against what was read before and after it. */
  @ParameterizedTest
  @CsvSource({"10:20, 140, 303", "10:20, 101, 303", "10:20, 60, 422", "14:35, 140, 422"})
  void what_is_entered_late_is_held_against_its_neighbours(
      String clock, String figure, int status) {
    served.cookSoup("S-1");
    served.at("2026-03-03T21:40:00Z");
    log("S-1", "'entry':'reading','when':'2026-03-03T11:10:00-07:00','temperature':'100F'");
    log("S-1", "'entry':'reading','when':'2026-03-03T14:30:00-07:00','temperature':'40F'");
    Reply reply = readAt("S-1", "reading", clock, figure);
    assertThat(reply.status()).as(reply.text()).isEqualTo(status);
  }

  /** FDA Food Code 2022 3-501.16(A)(1): hot from 135 °F on. Food gets no warmer by itself. */
  @ParameterizedTest
  @CsvSource({
    "reading, 166, 422",
    "hot-holding, 150, 422",
    "portions, 166, 422",
    "served, 166, 422",
    "chilled, 166, 422",
    "moved, 166, 422",
    "reading, 95, 303",
    "portions, 95, 303",
    "reheating, 166, 303",
  })
  void what_cools_and_reads_hot_again_was_reheated(String word, String figure, int status) {
    served.cookSoup("S-1");
    served.at("2026-03-03T19:00:00Z");
    log("S-1", "'entry':'cooling','when':'2026-03-03T11:00:00-07:00','temperature':'90F'");
    String portions = word.equals("portions") ? "1" : "";
    String[] fields = {
      "entry", word, "temperature", figure, "scale", "F", "portions", portions, "place", "Line"
    };
    Reply reply = visit.submit("/lots/S-1/entries", fields);
    assertThat(reply.status()).as(reply.text()).isEqualTo(status);
    if (status == 422) {
      assertThat(reply.text()).contains("no reheating is logged", figure + " °F", "90 °F");
    }
  }

  /** FDA Food Code 2022 3-501.16(A)(1): 135 °F; 3-501.14(A)(1): 70 °F two after 10:00. */
  @Test
  void what_is_held_hot_after_a_reheat_nobody_logged_is_told_the_hot_limit_first() {
    served.cookSoup("S-1");
    served.at("2026-03-03T18:55:00Z");
    log("S-1", "'entry':'cooling','when':'2026-03-03T10:50:00-07:00','temperature':'65F'");
    log("S-1", "'entry':'hot-holding','when':'2026-03-03T11:50:00-07:00','temperature':'150F'");
    for (String page : new String[] {"/lots/S-1", "/", "/day"}) {
      assertThat(visit.open(page).text())
          .as(page)
          .containsSubsequence("Held hot: ", "135 °F", "no reheating is logged", "70 °F by 12:00");
    }
  }

  /** Our own: a figure that was written beside a count is as much at hand as the count. */
  @ParameterizedTest
  @CsvSource({"139F, true", "'', false"})
  void a_figure_beside_a_count_is_at_hand_where_it_is_mended(String figure, boolean isAtHand) {
    served.cookSoup("S-1");
    String read = figure.isEmpty() ? "" : "'temperature':'" + figure + "',";
    log("S-1", "'entry':'portions'," + read + "'portions':1,'when':'2026-03-03T10:12:00-07:00'");
    String list = visit.open("/lots/S-1/correct").text();
    String way = list.replaceAll("(?s).*?(/lots/S-1/correct\\?entry=[^\"]+).*", "$1");
    String page = visit.open(way).text();
    int folded = page.indexOf("<summary>More");
    assertThat(page.indexOf("id=\"portions\"")).isBetween(1, folded);
    assertThat(page.indexOf("id=\"temperature\"") < folded).isEqualTo(isAtHand);
    assertThat(page.contains("<summary>More: temperature")).isNotEqualTo(isAtHand);
  }

  /** Our own: what is caught up late is asked about as the food was then, not as it stands now. */
  @ParameterizedTest
  @CsvSource({"12:30, reading, 166, 303", "13:30, reading, 166, 422", "11:50, reading, 166, 422"})
  void what_is_caught_up_late_is_of_the_phase_it_was_read_in(
      String clock, String word, String figure, int status) {
    served.cookSoup("S-1");
    served.at("2026-03-03T22:00:00Z");
    log("S-1", "'entry':'chilled','when':'2026-03-03T11:00:00-07:00','temperature':'40F'");
    log("S-1", "'entry':'reheating','when':'2026-03-03T12:00:00-07:00'");
    log("S-1", "'entry':'chilled','when':'2026-03-03T13:00:00-07:00'");
    assertThat(readAt("S-1", word, clock, figure).status()).isEqualTo(status);
  }

  /** Our own: a code that is made here is in capitals, and a phone types small letters. */
  @Test
  void a_code_in_small_letters_finds_its_lot_where_no_other_is_written_so() {
    served.cookSoup("S-1");
    assertThat(visit.open("/lots/s-1").text()).contains("<span class=\"code\">S-1</span>");
    assertThat(visit.open("/trace?lot=s-1").status()).isEqualTo(200);
    assertThat(visit.open("/lots/s-2").status()).isEqualTo(404);
    String[] made = {
      "entry", "prepared", "food", "Stew", "category", "soup_or_stew", "lot", "M-1", "from", "s-1"
    };
    assertThat(visit.confirm("/new-batch", made).status()).isEqualTo(303);
    served.cookSoup("s-1");
    assertThat(visit.open("/lots/s-1").text()).contains("<span class=\"code\">s-1</span>");
  }
}
