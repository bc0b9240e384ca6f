package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The page of the day, without any script. */
class DayPageTest {
  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void open() {
    served = Served.in(folder);
    served.cookSoup("S-1");
    served.cookSoup("S-2");
    visit = new Visit(served);
    visit.open("/kitchen");
    taken("/kitchen/places", "name", "Walk-in", "kind", "refrigerator");
    taken("/kitchen/places", "name", "Chest", "kind", "freezer", "rounds", "1");
  }

  @AfterEach
  void close() {
    served.close();
  }

  private void taken(String address, String... fields) {
    Reply reply = visit.submit(address, fields);
    assertThat(reply.status()).as(reply.text()).isEqualTo(303);
  }

  private void read(String place, String figure) {
    taken("/day/readings", "entry", "reading", "place", place, "temperature", figure, "scale", "F");
  }

  private JsonNode day() {
    return served.get("/api/v1/days/2026-03-03").json();
  }

  /** FDA Food Code 2022 3-501.16(A)(2): 41 °F. Twice a day is common practice, no source. */
  @Test
  void the_round_says_how_each_place_stands() {
    assertThat(visit.open("/day").text()).contains("Walk-in", "not read yet", "read 0 of 2 times");
    read("Walk-in", "41");
    assertThat(visit.open("/day").text()).contains("within its limit", "41 °F (5 °C) or below");
    served.at("2026-03-03T17:20:00Z");
    taken("/lots/S-1/entries", "entry", "cooling", "place", "Walk-in");
    read("Walk-in", "46");
    assertThat(visit.open("/day").text())
        .containsSubsequence("beyond its limit", "Inside now, read them:", "S-1");
  }

  /** FoodSafety.gov, Cold Food Storage Chart: 0 °F; what stays frozen above it is no less safe. */
  @Test
  void a_freezer_above_its_figure_is_not_called_out() {
    read("Chest", "5");
    assertThat(visit.open("/day").text())
        .contains("about quality, not safety")
        .containsPattern("(?s)Chest.*class=\"mark none\">warmer than")
        .doesNotContain("class=\"mark out\"");
  }

  /** Water freezes at 32 °F (0 °C), and stored frozen food stays frozen (3-501.11). */
  @Test
  void a_freezer_above_freezing_calls_for_a_look_at_the_food() {
    read("Chest", "32");
    assertThat(visit.open("/day").text()).doesNotContain("above freezing");
    served.at("2026-03-03T17:20:00Z");
    read("Chest", "33");
    assertThat(visit.open("/day").text())
        .contains("class=\"mark not-shown\">above freezing", "card not-shown");
    assertThat(day().at("/places/0/thawing").asBoolean()).isTrue();
  }

  /** FDA Food Code 2022 3-501.14(A), 3-501.16(A)(2): 70 °F within two hours, and 41 °F. */
  @Test
  void a_lot_is_listed_once_with_what_is_owed_and_what_runs() {
    served.at("2026-03-03T19:10:00Z");
    String page = visit.open("/day").text();
    assertThat(page.split("value=\"S-1\" form=\"over\"", -1)).hasSize(2);
    assertThat(page).containsPattern("(?s)S-1.*<bdi>Owed: .*70 °F");
    JsonNode open = day().at("/open");
    assertThat(open.findValuesAsText("lot")).containsExactlyInAnyOrder("S-1", "S-2");
    assertThat(open.findValuesAsText("owed")).containsOnly("true");
    assertThat(open.get(0).at("/says").asText()).contains("70 °F");
  }

  @Test
  void what_calls_stands_first_the_others_by_name_and_the_rest_is_folded() {
    taken("/kitchen/places", "name", "Attic", "kind", "counter", "rounds", "0");
    read("Chest", "-1");
    read("Porch", "39");
    read("Walk-in", "46");
    taken("/kitchen/places", "name", "Larder", "kind", "refrigerator");
    assertThat(visit.open("/day").text())
        .containsSubsequence(
            ">Walk-in<",
            ">Chest<",
            ">Larder<",
            ">Porch<",
            "Places that need no reading",
            ">Attic<");
  }

  @Test
  void the_count_of_places_to_be_read_is_that_of_the_marks() {
    taken("/kitchen/places", "name", "Bench", "kind", "counter", "rounds", "0");
    read("Garage", "39");
    String page = visit.open("/day").text();
    assertThat(page)
        .contains("Places still to be read: 2", "no reading of it is asked for")
        .containsOnlyOnce("read today");
    assertThat(page.split(">to be read<", -1)).hasSize(3);
    served.at("2026-03-04T17:00:00Z");
    assertThat(visit.open("/day").text()).contains("Places still to be read: 3");
  }

  /** FDA Food Code 2022 3-501.16(A)(2): 41 °F. */
  @Test
  void what_was_done_about_a_place_is_kept_with_its_day() {
    read("Walk-in", "41");
    assertThat(visit.open("/day").text()).doesNotContain("What was done about it");
    served.at("2026-03-03T17:20:00Z");
    read("Walk-in", "46");
    assertThat(visit.open("/day").text()).contains("What was done about it");
    Reply refused =
        visit.submit("/day/readings", "entry", "action", "place", "Walk-in", "note", "");
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.text()).contains("Say what was done");
    String note = "moved the <soups>, called the repair";
    taken("/day/readings", "entry", "action", "place", "Walk-in", "note", note, "by", "RO");
    assertThat(visit.open("/day").text()).contains("Done, 10:20, RO: moved the &lt;soups");
    JsonNode walkIn = day().at("/places/1");
    assertThat(walkIn.at("/acts/0/note").asText()).isEqualTo(note);
    assertThat(walkIn.at("/read").asInt()).as("five minutes apart").isEqualTo(1);
    served.at("2026-03-04T17:20:00Z");
    assertThat(served.get("/api/v1/days/2026-03-04").json().at("/places/1/acts")).isEmpty();
  }

  @Test
  void what_is_ticked_is_handed_over() {
    String page = visit.open("/day").text();
    assertThat(page).contains("value=\"S-1\" form=\"over\"", "value=\"S-2\" form=\"over\"");
    Reply sent =
        served.send(
            served
                .request(
                    "/day/handovers",
                    "Content-Type",
                    "application/x-www-form-urlencoded",
                    "Cookie",
                    "visit=" + visit.cookie("visit"))
                .POST(
                    BodyPublishers.ofString(
                        "token=" + visit.token() + "&once=o1&lots=S-1&lots=S-2&by=RO")));
    assertThat(sent.status()).as(sent.text()).isEqualTo(303);
    assertThat(day().at("/handovers").findValuesAsText("lot")).containsExactly("S-1", "S-2");
    assertThat(visit.open("/day").text()).contains("taken over by RO, 10:15");
  }

  @Test
  void nobody_ticked_is_a_fault_that_is_told() {
    Reply refused = visit.submit("/day/handovers", "by", "RO");
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.text())
        .contains("role=\"alert\"", "value=\"RO\"", "tick at least one lot")
        .doesNotContain("checked");
    assertThat(day().at("/handovers")).isEmpty();
  }

  @Test
  void a_signed_day_shows_its_sign_and_takes_no_other() {
    Reply page = visit.open("/day");
    String[] sign = {
      "once", Visit.once(page), "word", "closed", "by", "MK", "sure", "unread:2026-03-03:2"
    };
    taken("/day/signatures", sign);
    taken("/day/signatures", sign);
    assertThat(day().at("/signatures")).hasSize(1);
    assertThat(visit.open("/day").text())
        .contains("Closed by MK", "Unfinished lots: 2", "Places still to be read: 2")
        .contains(
            "Places beyond their limit with nothing done: 0. Lots out, or treated as missed: ")
        .doesNotContain("action=\"/day/handovers\"", "form=\"over\"");
    assertThat(visit.submit("/day/signatures", "word", "closed", "by", "XX").status())
        .isEqualTo(409);
    assertThat(visit.submit("/day/signatures", "word", "reopened", "by", "MK").status())
        .isEqualTo(422);
    taken("/day/signatures", "word", "reopened", "by", "MK", "note", "soup was missed");
    assertThat(visit.open("/day").text())
        .contains("Closed by MK", "Opened again by MK", "soup was missed", "/day/handovers");
  }

  /** FDA Food Code 2022 3-501.16(A)(2): 41 °F. */
  @Test
  void a_place_beyond_its_limit_counts_at_the_close_until_something_was_done() {
    read("Walk-in", "46");
    served.at("2026-03-03T17:20:00Z");
    assertThat(visit.open("/day").text()).contains("with nothing done about it: 1");
    String undone = "unread:2026-03-03:2 unanswered:2026-03-03:Walk-in";
    taken("/day/signatures", "word", "closed", "by", "MK", "sure", undone);
    served.at("2026-03-03T17:30:00Z");
    taken("/day/readings", "entry", "action", "place", "Walk-in", "note", "door shut", "by", "RO");
    assertThat(visit.open("/day").text()).contains("beyond their limit with nothing done: 1");
    taken("/day/signatures", "word", "reopened", "by", "MK", "note", "look again");
    assertThat(visit.open("/day").text())
        .contains("beyond their limit with nothing done: 0", "with nothing done about it: 0");
  }

  @Test
  void a_wrong_reading_of_a_place_is_corrected_here_and_both_stay_visible() {
    read("Walk-in", "73");
    Reply page = visit.open("/day");
    assertThat(page.text()).contains("beyond its limit", ">10:15: 73 °F<", "Correct this");
    String id = page.text().replaceAll("(?s).*name=\"corrects\" value=\"([^\"]+)\".*", "$1");
    String[] wrong = {"entry", "correction", "corrects", id, "scale", "F", "by", "RO"};
    Reply blank = visit.submit("/day/readings", plus(wrong, "note", "misread"));
    assertThat(blank.status()).isEqualTo(422);
    assertThat(blank.text()).contains("Write the figure as it should be");
    Reply unsaid = visit.submit("/day/readings", plus(wrong, "temperature", "39"));
    assertThat(unsaid.status()).isEqualTo(422);
    served.at("2026-03-03T17:40:00Z");
    taken("/day/readings", plus(wrong, "temperature", "39", "note", "read off the oven"));
    assertThat(visit.open("/day").text())
        .contains(">10:15: 39 °F<", "was 73 °F", "corrected by RO", "read off the oven")
        .contains("within its limit");
    taken("/day/readings", plus(wrong, "note", "never read", "void", "yes"));
    assertThat(visit.open("/day").text()).contains("10:15: void", "was 73 °F", "never read");
  }

  private static String[] plus(String[] fields, String... more) {
    return Stream.concat(Arrays.stream(fields), Arrays.stream(more)).toArray(String[]::new);
  }

  /** One round is read once, whatever is read again at once: common practice, no source. */
  @Test
  void the_day_lists_every_reading_and_one_soon_after_another_is_the_same_round() {
    read("Walk-in", "41");
    served.at("2026-03-03T17:29:00Z");
    read("Walk-in", "40");
    assertThat(visit.open("/day").text())
        .contains("read 1 of 2 times", "less than 15 min apart count as one")
        .contains("10:15: 41 °F", "10:29: 40 °F");
    served.at("2026-03-03T17:30:00Z");
    read("Walk-in", "39");
    assertThat(visit.open("/day").text()).contains("read 2 of 2 times");
  }

  @Test
  void there_is_room_to_sign_for_a_lot_only_until_somebody_took_it_over() {
    assertThat(visit.open("/day").text().split("Taken over by:", -1)).hasSize(3);
    taken("/day/handovers", "lots", "S-1", "by", "RO");
    assertThat(visit.open("/day").text().split("Taken over by:", -1)).hasSize(2);
  }

  @Test
  void the_page_speaks_spanish() {
    read("Walk-in", "46");
    assertThat(served.get("/day", "Accept-Language", "es").text())
        .contains("fuera de su límite", "Cerrar el día", "trata de calidad, no de seguridad");
  }

  @ParameterizedTest
  @ValueSource(strings = {"/day/readings", "/day/handovers", "/day/signatures"})
  void a_form_without_its_token_is_refused(String address) {
    Map<String, String> forged =
        Map.of("lots", "S-1", "by", "X", "word", "closed", "place", "Walk-in", "entry", "reading");
    assertThat(visit.submit(address, forged).status()).isEqualTo(403);
    assertThat(day().at("/signatures")).isEmpty();
    assertThat(day().at("/handovers")).isEmpty();
  }

  /** Common practice, no source: what was saved is said where it was saved, and nothing moves. */
  @Test
  void what_is_saved_is_said_there_and_no_row_moves() {
    String before = visit.open("/day").text();
    assertThat(before.indexOf("value=\"Chest\"")).isBetween(0, before.indexOf("value=\"Walk-in\""));
    assertThat(before).doesNotContain("Saved.");
    Reply saved =
        visit.submit(
            "/day/readings",
            "entry",
            "reading",
            "place",
            "Chest",
            "temperature",
            "-2",
            "scale",
            "F");
    assertThat(Visit.target(saved)).startsWith("/day?saved=Chest#at-");
    String after = visit.open(Visit.target(saved).replaceFirst("#.*", "")).text();
    assertThat(after.indexOf("value=\"Chest\"")).isBetween(0, after.indexOf("value=\"Walk-in\""));
    String place = Visit.target(saved).replaceFirst(".*#", "id=\"");
    assertThat(after).containsSubsequence(place, "Saved.", "Walk-in").containsOnlyOnce("Saved.");
    assertThat(visit.open("/day?saved=Nowhere").text()).doesNotContain("Saved.");
  }

  /** Common practice, no source: a sign over places that nobody read is asked about once. */
  @Test
  void a_sign_with_places_unread_is_asked_about_once() {
    visit.open("/day");
    Reply asked = visit.submit("/day/signatures", "word", "closed", "by", "MK");
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text()).contains("Sign anyway?", "name=\"sure\"", "value=\"MK\"");
    assertThat(day().at("/signatures")).isEmpty();
    taken("/day/signatures", "word", "closed", "by", "MK", "sure", "unread:2026-03-03:2");
    assertThat(day().at("/signatures")).hasSize(1);
  }

  @Test
  void a_sign_with_all_places_read_is_taken_at_once() {
    visit.open("/day");
    read("Walk-in", "38");
    read("Chest", "-2");
    served.at("2026-03-03T23:30:00Z");
    read("Walk-in", "38");
    // Of soup that is not shown to have cooled whoever signs is asked.
    discard("S-1");
    discard("S-2");
    taken("/day/signatures", "word", "closed", "by", "MK");
  }

  private void discard(String lot) {
    String row = "{'entry':'discarded','when':'2026-03-03T16:00:00-07:00'}";
    assertThat(served.post("/api/v1/lots/" + lot + "/entries", row).status()).isEqualTo(201);
  }

  /**
   * CSS Color Adjustment Module Level 1: on paper a browser may leave backgrounds out, so letters
   * in the color of paper would be lost.
   */
  @Test
  void what_is_beyond_its_limit_is_black_on_paper() {
    String page = visit.open("/day").text();
    String style = page.replaceAll("(?s).*rel=\"stylesheet\" href=\"([^\"]+)\".*", "$1");
    assertThat(visit.open(style).text())
        .contains("@media print{.mark.out{background:none;color:#000;border-color:#000}}");
  }

  /**
   * FDA Food Code 2022 3-501.16(A)(2): 41 °F. That a place reads well again says nothing of what
   * was done: our own, as the record has it.
   */
  @Test
  void a_place_that_was_beyond_its_limit_stays_owed_until_something_is_logged() {
    read("Walk-in", "44");
    read("Walk-in", "41");
    read("Chest", "-2");
    assertThat(visit.open("/day").text()).contains("What was done about it");
    assertThat(visit.open("/record").text()).contains("Walk-in");
    Reply asked = visit.submit("/day/signatures", "word", "closed", "by", "MK");
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text()).contains("Beyond their limit with nothing logged as done: Walk-in");
    served.at("2026-03-03T17:20:00Z");
    taken("/day/readings", "entry", "action", "place", "Walk-in", "note", "door was open");
    assertThat(visit.open("/day").text()).doesNotContain("What was done about it");
    assertThat(visit.open("/record").text()).contains("door was open");
    Reply again = visit.submit("/day/signatures", "word", "closed", "by", "MK");
    assertThat(again.text()).doesNotContain("with nothing logged as done");
  }

  /** FDA Food Code 2022 3-501.14(A): 70 °F within two hours, so that the soup is out. */
  @Test
  void who_signs_is_told_what_is_out() {
    served.at("2026-03-03T21:00:00Z");
    for (String at :
        new String[] {
          "10:30:00-07:00','temperature':'130F'", "13:30:00-07:00','temperature':'99F'"
        }) {
      String read = "{'entry':'cooling','when':'2026-03-03T" + at + "}";
      assertThat(served.post("/api/v1/lots/S-1/entries", read).status()).isEqualTo(201);
    }
    Reply asked = visit.submit("/day/signatures", "word", "closed", "by", "MK");
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text()).contains("Out of compliance and still on hand: Barley soup (S-1)");
    String[] signs = {"word", "closed", "by", "MK", "sure", Visit.ticks(asked)};
    assertThat(visit.submit("/day/signatures", signs).status()).isEqualTo(303);
  }

  /** The same limit, which nobody can show to have been met: nobody read the soup in between. */
  @Test
  void who_signs_is_told_what_is_owed_since_it_is_not_shown() {
    served.at("2026-03-03T21:00:00Z");
    String row = "{'entry':'cooked','when':'2026-03-03T09:00:00-07:00','temperature':'180F'}";
    String lot = "{'lot':'S-9','food':'Bean soup','category':'soup_or_stew'}";
    assertThat(served.post("/api/v1/lots", lot).status()).isEqualTo(201);
    assertThat(served.post("/api/v1/lots/S-9/entries", row).status()).isEqualTo(201);
    Reply asked = visit.submit("/day/signatures", "word", "closed", "by", "MK");
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text())
        .contains("so treated as missed, and still on hand: ", "Bean soup (S-9)");
    String[] signs = {"word", "closed", "by", "MK", "sure", Visit.ticks(asked)};
    assertThat(visit.submit("/day/signatures", signs).status()).isEqualTo(303);
  }

  /** That a place is empty or switched off is said once a day; common practice, no source. */
  @Test
  void a_place_that_is_not_in_use_is_not_missing_and_says_so() throws IOException {
    read("Walk-in", "38");
    String unread = "Places still to be read: ";
    assertThat(visit.open("/day").text()).contains(unread + "2", "Save: nobody reads it today");
    String[] idle = {"entry", "action", "how", "not-in-use", "place", "Chest", "note", "empty"};
    taken("/day/readings", idle);
    assertThat(visit.open("/day").text())
        .contains(unread + "1")
        .containsSubsequence("Chest", "not in use today", "Not in use today, 10:15", "empty");
    byte[] record = served.get("/record.pdf").response().body();
    try (PDDocument paper = Loader.loadPDF(record)) {
      assertThat(new PDFTextStripper().getText(paper)).contains("not in use today, empty");
    }
    // The next day it is to be read again, and so it is once somebody reads it.
    served.at("2026-03-04T17:15:00Z");
    assertThat(visit.open("/day").text())
        .contains(unread + "2")
        .doesNotContain("Not in use today, ");
  }

  @Test
  void that_it_is_not_in_use_is_nothing_done_about_a_warm_reading() {
    read("Walk-in", "46");
    served.at("2026-03-03T17:20:00Z");
    taken("/day/readings", "entry", "action", "how", "not-in-use", "place", "Walk-in", "by", "RO");
    Reply asked = visit.submit("/day/signatures", "word", "closed", "by", "MK");
    assertThat(asked.text()).contains("Beyond their limit with nothing logged as done: Walk-in");
  }
}
