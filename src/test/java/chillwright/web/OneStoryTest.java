package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Every page, list and answer tells the same of a lot. FDA Food Code 2022 3-501.14(A): 70 °F within
 * two hours; 3-501.17: seven days, the day of making included; 3-403.11(A): 165 °F; 8-304.11 and
 * 3-701.11: food that is not safe is discarded. What is told of a lot is our own.
 */
class OneStoryTest {
  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void open() {
    served = Served.in(folder);
    served.at("2026-03-06T20:00:00Z");
    served.post(
        "/api/v1/lots", "{'lot':'POT','food':'Rice','category':'soup_or_stew','portions':9}");
    visit = new Visit(served);
  }

  @AfterEach
  void close() {
    served.close();
  }

  private void log(String entry) {
    Reply logged = served.post("/api/v1/lots/POT/entries", "{" + entry + "}");
    assertThat(logged.status()).as(logged.text()).isEqualTo(201);
  }

  private void logMissed() {
    log("'when':'2026-03-06T07:00:00-07:00','entry':'cooked','temperature':'200F'");
    log("'when':'2026-03-06T07:30:00-07:00','entry':'reading','temperature':'130F'");
    log("'when':'2026-03-06T12:00:00-07:00','entry':'cooling','temperature':'99F'");
  }

  private void logGood() {
    log("'when':'2026-03-06T07:00:00-07:00','entry':'cooked','temperature':'200F'");
    log("'when':'2026-03-06T07:30:00-07:00','entry':'cooling','temperature':'130F'");
    log("'when':'2026-03-06T08:30:00-07:00','entry':'reading','temperature':'65F'");
    log("'when':'2026-03-06T11:00:00-07:00','entry':'chilled','temperature':'39F'");
  }

  /** The cell of a column in the only row of a table. */
  private String cell(String address, String column) {
    List<String> lines = visit.open(address).text().lines().toList();
    int at = Arrays.asList(lines.get(0).replace("\uFEFF", "").split(",")).indexOf(column);
    assertThat(at).isNotNegative();
    return lines.get(1).split(",", -1)[at];
  }

  private void assertNoDate() {
    JsonNode lot = served.get("/api/v1/lots/POT").json();
    assertThat(lot.at("/lastDay").isNull()).isTrue();
    assertThat(lot.at("/keeping/governs").isNull()).isTrue();
    assertThat(lot.at("/keeping/dateMarkLastDay").isNull()).isTrue();
    assertThat(lot.at("/keeping/because")).isEmpty();
    JsonNode line = served.get("/api/v1/lots").json().at("/items/0");
    assertThat(line.at("/lastDay").isNull()).isTrue();
    assertThat(line.at("/keeping/dateMarkLastDay").isNull()).isTrue();
    assertThat(cell("/lots.csv", "last_day")).isEmpty();
    assertThat(cell("/lots.csv", "governs")).isEmpty();
    assertThat(visit.open("/lots/POT").text())
        .doesNotContain("discard by", "Thu 12 Mar", "Why these dates");
    assertThat(served.get("/api/v1/due").json().at("/items").toString())
        .doesNotContain("date-mark");
    assertThat(visit.open("/deadlines.ics").text()).doesNotContain("Last day");
  }

  @Test
  void what_is_for_use_has_its_date_everywhere() {
    logGood();
    JsonNode lot = served.get("/api/v1/lots/POT").json();
    assertThat(lot.at("/lastDay").asText()).isEqualTo("2026-03-12");
    assertThat(lot.at("/keeping/dateMarkLastDay").asText()).isEqualTo("2026-03-12");
    assertThat(cell("/lots.csv", "last_day")).isEqualTo("2026-03-12");
    assertThat(visit.open("/lots/POT").text()).contains("Thu 12 Mar", "Why these dates");
    assertThat(visit.open("/deadlines.ics").text()).contains("Last day");
  }

  @ParameterizedTest
  @CsvSource({"discarded", "served"})
  void what_left_the_kitchen_has_no_date(String word) {
    logGood();
    log("'when':'2026-03-06T12:30:00-07:00','entry':'" + word + "'");
    assertNoDate();
  }

  @ParameterizedTest
  @CsvSource({"discarded", "action"})
  void nor_has_what_was_out_and_is_discarded_or_put_aside(String word) {
    logMissed();
    assertNoDate();
    log("'when':'2026-03-06T12:30:00-07:00','entry':'" + word + "','note':'put aside'");
    assertNoDate();
  }

  @Test
  void nor_has_a_cooling_that_is_not_shown_although_words_were_written_down() {
    log("'when':'2026-03-06T07:00:00-07:00','entry':'cooked','temperature':'200F'");
    log("'when':'2026-03-06T12:00:00-07:00','entry':'chilled','temperature':'39F'");
    log("'when':'2026-03-06T12:30:00-07:00','entry':'action','note':'asked the cook'");
    assertThat(served.get("/api/v1/lots/POT").json().at("/verdict").asText())
        .isEqualTo("not-shown");
    assertNoDate();
  }

  /** A log that is only checked has the same dates. */
  @Test
  void nor_has_a_log_that_is_checked() {
    String rows =
        "[{'lot':'POT','when':'2026-03-06T07:00:00-07:00','entry':'cooked','temperature':'200F',"
            + "'food':'Rice','category':'soup_or_stew'},"
            + "{'lot':'POT','when':'2026-03-06T12:00:00-07:00','entry':'cooling',"
            + "'temperature':'99F'}]";
    Reply checked = served.post("/api/v1/checks", "{'rows':" + rows + "}");
    assertThat(checked.status()).as(checked.text()).isEqualTo(200);
    assertThat(checked.json().at("/lots/0/keeping/dateMarkLastDay").isNull()).isTrue();
  }

  /** After the leave of the authority and a full reheat, then cooled again within its times. */
  @Test
  void what_was_mended_is_for_use_on_every_page() {
    logMissed();
    log("'when':'2026-03-06T12:10:00-07:00','entry':'action','how':'allowed'");
    log("'when':'2026-03-06T12:15:00-07:00','entry':'reheating','temperature':'99F'");
    log("'when':'2026-03-06T12:45:00-07:00','entry':'reading','temperature':'166F'");
    String fit = "So it is for use, and its dates hold; what was missed stays on record.";
    String now = visit.open("/").text();
    assertThat(now).contains("no action is owed", fit);
    assertThat(visit.open("/lots/POT").text())
        .contains(fit, "Thu 12 Mar")
        .doesNotContain("Act now", "Use it only if");
    String day = visit.open("/day").text();
    assertThat(day).contains(fit).doesNotContain("Discard, or");
    assertThat(served.get("/api/v1/lots/POT").json().at("/verdict").asText()).isEqualTo("out");
    assertThat(served.get("/api/v1/lots/POT").json().at("/lastDay").asText())
        .isEqualTo("2026-03-12");
    assertThat(cell("/lots.csv", "last_day")).isEqualTo("2026-03-12");
  }

  /** 3-501.13(A): thawed in a refrigerator the food stays at 41 °F or below; nobody read it. */
  @Test
  void why_a_thawed_lot_is_not_shown_stands_beside_the_mark() {
    log("'when':'2026-03-04T07:00:00-07:00','entry':'prepared','temperature':'39F'");
    log("'when':'2026-03-04T08:00:00-07:00','entry':'frozen','temperature':'20F'");
    log("'when':'2026-03-05T08:00:00-07:00','entry':'thawing','how':'refrigerator'");
    String page = visit.open("/lots/POT").text();
    String top = page.substring(page.indexOf("<p class=\"where\">"), page.indexOf("id=\"entry\""));
    assertThat(top)
        .contains("Not shown", "No reading was taken", "Read the food now, and log the figure");
  }

  /** 3-403.11(D): 165 °F within 2 hours; what the authority lets go is not told to be discarded. */
  @Test
  void a_late_reheat_that_the_authority_allowed_gives_one_order() {
    log("'when':'2026-03-05T09:00:00-07:00','entry':'prepared','temperature':'39F'");
    log("'when':'2026-03-05T10:00:00-07:00','entry':'chilled','temperature':'39F'");
    log("'when':'2026-03-06T09:00:00-07:00','entry':'reheating','temperature':'40F'");
    log("'when':'2026-03-06T11:15:00-07:00','entry':'reading','temperature':'170F'");
    assertThat(visit.open("/lots/POT").text()).contains("Discard");
    log("'when':'2026-03-06T11:30:00-07:00','entry':'action','how':'allowed','note':'office'");
    String page = visit.open("/lots/POT").text();
    assertThat(page)
        .contains("The leave of your authority is logged: do as it said")
        .doesNotContain("Discard.");
  }

  /** As long as it goes on a reading can show it: it waits for one, and is for use all the same. */
  @Test
  void a_thaw_that_nobody_has_read_needs_a_hand_until_it_is_read() {
    log("'when':'2026-03-04T07:00:00-07:00','entry':'prepared','temperature':'39F'");
    log("'when':'2026-03-04T08:00:00-07:00','entry':'frozen','temperature':'20F'");
    log("'when':'2026-03-05T08:00:00-07:00','entry':'thawing','how':'refrigerator'");
    String now = visit.open("/").text();
    assertThat(now.substring(0, now.indexOf("id=\"due\"")))
        .contains("/lots/POT", "No reading was taken", "Read the food now", "name=\"temperature\"");
    log("'when':'2026-03-06T08:00:00-07:00','entry':'reading','temperature':'41F'");
    assertThat(visit.open("/").text()).contains("no action is owed");
  }

  /** The same once it is over: a reading of the food of today tells nothing of it. */
  @Test
  void a_thaw_that_is_over_asks_for_no_reading() {
    log("'when':'2026-03-04T07:00:00-07:00','entry':'prepared','temperature':'39F'");
    log("'when':'2026-03-04T08:00:00-07:00','entry':'frozen','temperature':'20F'");
    log("'when':'2026-03-05T08:00:00-07:00','entry':'thawing','how':'refrigerator'");
    log("'when':'2026-03-06T08:00:00-07:00','entry':'reheating'");
    log("'when':'2026-03-06T08:40:00-07:00','entry':'reading','temperature':'168F'");
    log("'when':'2026-03-06T08:45:00-07:00','entry':'hot-holding','temperature':'160F'");
    assertThat(visit.open("/lots/POT").text())
        .contains("Not shown", "No reading was taken", "The thaw is over, so no reading of today")
        .doesNotContain("Read the food now");
    assertThat(visit.open("/").text()).contains("no action is owed");
  }

  /** 3-501.14(A)(2): 41 °F within six hours, which the last reading shows. */
  @Test
  void food_that_is_cold_is_to_be_logged_as_chilled() {
    log("'when':'2026-03-06T07:00:00-07:00','entry':'cooked','temperature':'200F'");
    log("'when':'2026-03-06T07:30:00-07:00','entry':'cooling','temperature':'130F'");
    log("'when':'2026-03-06T08:30:00-07:00','entry':'reading','temperature':'65F'");
    String says = "It is cold: log it as chilled, with its place.";
    assertThat(visit.open("/lots/POT").text()).doesNotContain(says);
    log("'when':'2026-03-06T11:00:00-07:00','entry':'reading','temperature':'41F'");
    assertThat(visit.open("/lots/POT").text()).contains(says);
    log("'when':'2026-03-06T11:10:00-07:00','entry':'chilled','temperature':'40F'");
    assertThat(visit.open("/lots/POT").text()).doesNotContain(says);
  }

  @Test
  void entries_stand_in_the_order_of_the_day_however_late_they_are_written() {
    log("'when':'2026-03-06T07:00:00-07:00','entry':'cooked','temperature':'200F'");
    log("'when':'2026-03-06T11:00:00-07:00','entry':'reading','temperature':'41F'");
    log("'when':'2026-03-06T08:30:00-07:00','entry':'reading','temperature':'65F'");
    String page = visit.open("/lots/POT").text();
    assertThat(page.substring(page.indexOf("id=\"entries\"")))
        .containsSubsequence("41 °F", "65 °F", "200 °F");
  }

  @Test
  void a_part_that_was_discarded_says_that_it_is_gone() {
    logGood();
    visit.open("/lots/POT");
    String[] parts = {"parts", "2", "portions", "4", "food", "Rice"};
    assertThat(visit.submit("/lots/POT/parts", parts).status()).isEqualTo(303);
    String row = "{'when':'2026-03-06T13:00:00-07:00','entry':'discarded'}";
    Reply gone = served.post("/api/v1/lots/POT-1/entries", row);
    assertThat(gone.status()).as(gone.text()).isEqualTo(201);
    assertThat(visit.open("/lots/POT-1").text())
        .contains("no date applies any more")
        .doesNotContain("the dates stand on the page of each part");
  }
}
