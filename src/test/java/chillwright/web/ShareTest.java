package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lots that are moved, divided and put together from their pages, without any script. */
class ShareTest {
  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void open() {
    served = Served.in(folder);
    served.at("2026-03-06T20:00:00Z");
    visit = new Visit(served);
  }

  @AfterEach
  void close() {
    served.close();
  }

  private void log(String lot, String entry) {
    Reply logged = served.post("/api/v1/lots/" + lot + "/entries", entry.replace("@", "2026-03-0"));
    assertThat(logged.status()).as(logged.text()).isEqualTo(201);
  }

  /** Prepared cold on that day of March, and put into the walk-in. */
  private void chilled(String lot, String food, int day, int portions) {
    Reply made =
        served.post(
            "/api/v1/lots",
            "{'lot':'%s','food':'%s','category':'soup_or_stew','portions':%d}"
                .formatted(lot, food, portions));
    assertThat(made.status()).as(made.text()).isEqualTo(201);
    log(lot, "{'when':'@%dT09:00:00-07:00','entry':'prepared','temperature':'39F'}".formatted(day));
    log(
        lot,
        ("{'when':'@%dT09:10:00-07:00','entry':'chilled','temperature':'39F',"
                + "'place':'Walk-in'}")
            .formatted(day));
  }

  private JsonNode lot(String code) {
    return served.get("/api/v1/lots/" + code).json();
  }

  private Reply submit(String lot, String form, String... fields) {
    visit.open("/lots/" + lot);
    return visit.submit("/lots/" + lot + "/" + form, fields);
  }

  private String entry(String lot, int number) {
    JsonNode all = served.get("/api/v1/lots/" + lot + "/entries").json().at("/items");
    return all.get(number).at("/id").asText();
  }

  private String taken(Reply reply) {
    assertThat(reply.status()).as(reply.text()).isEqualTo(303);
    return Visit.target(reply).replaceFirst("/lots/([^?]+).*", "$1");
  }

  /**
   * FDA Food Code 2022 3-501.17(D): combined food is marked with the date of the earliest. Read in
   * the text that Minnesota adopted, Minn. R. 4626.0400 C.
   */
  @Test
  void a_pot_that_is_topped_up_keeps_the_earliest_date() {
    chilled("OLD", "Soup", 2, 8);
    chilled("NEW", "Soup", 5, 6);
    chilled("OTHER", "Rice", 5, 6);
    assertThat(visit.open("/lots/NEW").text())
        .containsSubsequence("name=\"from\" value=\"OLD\"", "name=\"from\" value=\"OTHER\"");
    String pot =
        taken(
            submit(
                "NEW",
                "combined",
                "from",
                "OLD",
                "taken-OLD",
                "3",
                "entry",
                "prepared",
                "food",
                "Soup",
                "category",
                "soup_or_stew",
                "temperature",
                "39",
                "scale",
                "F",
                "place",
                "Walk-in"));
    assertThat(lot(pot).at("/from").toString()).isEqualTo("[\"NEW\",\"OLD\"]");
    assertThat(lot(pot).at("/portions/made").asInt()).isEqualTo(9);
    assertThat(lot("OLD").at("/portions/left").asInt()).isEqualTo(5);
    assertThat(lot("NEW").at("/onHand").asBoolean()).isFalse();
    assertThat(lot(pot).at("/keeping/dateMarkLastDay").asText())
        .isEqualTo(lot("OLD").at("/keeping/dateMarkLastDay").asText())
        .isEqualTo("2026-03-08");
  }

  /**
   * FDA Food Code 2022 1-201.10: food that needs no time and temperature control for safety has no
   * limit to cool to, and none to be held hot by.
   */
  @Test
  void parts_of_food_that_needs_no_cold_are_neither_cooling_nor_held_hot() {
    served.kitchen().setUp().place(Map.of("name", "Steam table", "kind", "hot-holding"));
    served.kitchen().setUp().place(Map.of("name", "Chest", "kind", "freezer"));
    served.post(
        "/api/v1/lots",
        "{'lot':'BAR','food':'Seed bars','category':'bar_cookies_cut_and_wrapped','portions':48}");
    log("BAR", "{'when':'@6T09:00:00-07:00','entry':'cooked'}");
    taken(submit("BAR", "parts", "parts", "4", "portions", "12", "food", "Seed bars"));
    assertThat(lot("BAR-1").at("/phase").asText()).isEqualTo("cooked");
    assertThat(visit.open("/lots/BAR").text())
        .contains("<b>divided</b> <bdi>into BAR-1 \u2026 BAR-4, portions in each: 12</bdi>")
        .contains("/lots/BAR/correct?entry=BAR.5\"><bdi>into BAR-4, Portions 12</bdi>")
        .doesNotContain("To whom BAR", "<b>portions taken</b>");
    assertThat(visit.open("/lots/BAR/correct").text()).contains("into BAR-2, Portions 12");
    for (String code : List.of("BAR", "BAR-1")) {
      assertThat(visit.open("/lots/" + code).text())
          .doesNotContain("cooling,", "value=\"hot-holding");
    }
    assertThat(visit.open("/lots/BAR-1").text())
        .contains("<option value=\"frozen Chest\"")
        .containsSubsequence("name=\"entry\" value=\"frozen\"", "value=\"portions\"");
    String cooling = "<b>cooling</b>";
    visit.open("/new-batch");
    String[] batch = {
      "lot",
      "OAT",
      "entry",
      "cooked",
      "scale",
      "F",
      "food",
      "Oat bars",
      "category",
      "bar_cookies_cut_and_wrapped",
      "containers",
      "2",
      "portions",
      "24"
    };
    assertThat(visit.submit("/new-batch", batch).status()).isEqualTo(303);
    assertThat(lot("OAT-2").at("/phase").asText()).isEqualTo("cooked");
    assertThat(visit.open("/lots/OAT-2").text()).contains("<b>cooked</b>").doesNotContain(cooling);
    assertThat(visit.open("/lots/BAR-1").text())
        .contains("<b>divided off</b>")
        .doesNotContain(cooling);
    // Soup cools on, and is offered its steam table.
    served.post(
        "/api/v1/lots", "{'lot':'POT','food':'Soup','category':'soup_or_stew','portions':8}");
    log("POT", "{'when':'@6T12:50:00-07:00','entry':'cooked','temperature':'180F'}");
    assertThat(visit.open("/lots/POT").text()).contains("hot-holding Steam table");
    taken(submit("POT", "parts", "parts", "2", "portions", "4", "food", "Soup"));
    assertThat(lot("POT-1").at("/phase").asText()).isEqualTo("cooling");
    assertThat(visit.open("/lots/POT-1").text()).contains(cooling);
  }

  @Test
  void what_cannot_be_put_together_is_told_and_nothing_is_stored() {
    chilled("A", "Soup", 5, 4);
    chilled("B", "Soup", 5, 4);
    Reply alone = submit("A", "combined", "food", "Soup", "category", "soup_or_stew");
    assertThat(alone.status()).isEqualTo(422);
    assertThat(alone.text()).contains("at least one other lot", "was cooked or prepared");
    Reply many =
        submit(
            "A",
            "combined",
            Map.of(
                "more",
                "B",
                "taken-B",
                "5",
                "entry",
                "prepared",
                "food",
                "Soup",
                "category",
                "soup_or_stew"));
    assertThat(many.status()).isEqualTo(422);
    assertThat(many.text()).contains("had 4 portions left", "value=\"B\"");
    assertThat(served.get("/api/v1/lots").json().at("/items")).hasSize(2);
    assertThat(lot("A").at("/portions/left").asInt()).isEqualTo(4);
  }

  /** What was thrown away is nowhere, though a part of it had gone into its own box before. */
  @Test
  void a_whole_that_was_thrown_away_goes_into_no_other_pot() {
    chilled("A", "Soup", 5, 9);
    chilled("B", "Soup", 5, 4);
    taken(submit("A", "parts", "portions", "3"));
    served.at("2026-03-06T20:30:00Z");
    log("A", "{'when':'@6T13:20:00-07:00','entry':'discarded'}");
    Map<String, String> pot =
        Map.of("more", "A", "entry", "prepared", "food", "Soup", "category", "soup_or_stew");
    Reply refused = submit("B", "combined", pot);
    assertThat(refused.status()).as(refused.text()).isEqualTo(422);
    assertThat(refused.text()).contains("all of its source A was discarded");
    assertThat(lot("B").at("/portions/left").asInt()).isEqualTo(4);
  }

  private Reply submit(String lot, String form, Map<String, String> fields) {
    List<String> all = new ArrayList<>();
    fields.forEach((name, value) -> all.addAll(List.of(name, value)));
    return submit(lot, form, all.toArray(String[]::new));
  }

  /** FDA Food Code 2022 3-501.14(A): its six hours run on, whatever it is put into. */
  @Test
  void what_is_still_cooling_does_not_get_a_new_clock_in_another_pot() {
    served.cookSoup("HOT");
    chilled("COLD", "Leek soup", 5, 4);
    String[] fields = {
      "from",
      "COLD",
      "entry",
      "prepared",
      "food",
      "Soup",
      "category",
      "soup_or_stew",
      "temperature",
      "60",
      "scale",
      "F"
    };
    Reply refused = submit("HOT", "combined", fields);
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.text()).contains("HOT is still cooling");
    fields[3] = "cooked";
    fields[9] = "";
    assertThat(submit("HOT", "combined", fields).status()).isEqualTo(422);
    fields[9] = "180";
    // Nobody read it in its two hours.
    Reply asked = submit("HOT", "combined", fields);
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text()).contains("HOT is not for use as the record stands");
    List<String> sure = new ArrayList<>(List.of(fields));
    sure.addAll(List.of("sure", Visit.ticks(asked)));
    assertThat(submit("HOT", "combined", sure.toArray(String[]::new)).status()).isEqualTo(303);
  }

  /** Nine by the log and seven in the freezer: the difference is a fact of the log. */
  @Test
  void a_count_that_differs_is_logged_with_its_difference() {
    chilled("A", "Soup", 5, 9);
    assertThat(submit("A", "counts", "found", "7", "by", "RO").status()).isEqualTo(303);
    assertThat(lot("A").at("/portions/left").asInt()).isEqualTo(7);
    assertThat(visit.open("/lots/A").text()).contains("counted 7, the log said 9");
    Reply more = submit("A", "counts", "found", "8");
    assertThat(more.status()).isEqualTo(303);
    assertThat(lot("A").at("/portions/left").asInt()).isEqualTo(7);
    assertThat(visit.open("/lots/A").text())
        .contains("counted 8, the log said 7")
        .doesNotContain("adds no portions");
    assertThat(visit.open(Visit.target(more)).text())
        .contains("A count adds no portions: by the log 7 are left")
        .containsSubsequence(
            "Were more made", "prepared, 39 °F, Portions 9", "correct?entry=" + entry("A", 0))
        .containsSubsequence("Were these not taken", "correct?entry=" + entry("A", 2));
    visit.open("/lots/A");
    String[] slip = {"corrects", entry("A", 2), "void", "yes", "reason", "there after all"};
    assertThat(visit.submit("/lots/A/correct", slip).status()).isEqualTo(303);
    assertThat(lot("A").at("/portions/left").asInt()).isEqualTo(9);
    assertThat(submit("A", "counts", "found", "9").status()).isEqualTo(303);
    assertThat(submit("A", "counts", "found", "some").status()).isEqualTo(422);
  }

  /** Our own: a part and its whole name each other, since neither count is mended alone. */
  @Test
  void more_than_the_log_says_of_a_part_leads_to_the_lot_it_came_from() {
    chilled("A", "Soup", 5, 9);
    String part = taken(submit("A", "parts", "portions", "3"));
    Reply more = submit(part, "counts", "found", "4");
    assertThat(visit.open(Visit.target(more)).text())
        .containsSubsequence("It is a part: what it began with left another lot", "/lots/A\"")
        .contains("Correct what each began with: A: 10, " + part + ": 4")
        .contains("Correct what the part began with: " + part + ": 4");
    Reply whole = submit("A", "counts", "found", "7");
    assertThat(visit.open(Visit.target(whole)).text())
        .contains("Were more made")
        .doesNotContain("Were these not taken");
  }

  /** Our own: what more was made, or divided off, is corrected in all counts at once. */
  @ParameterizedTest
  @CsvSource({"made, 1, 6, 4", "divided, 1, 5, 4", "divided, 7, 6, 3", "made, 0, 6, 3"})
  void more_found_in_a_part_corrects_the_counts_of_both_lots(
      String way, String more, int left, int ofPart) {
    chilled("A", "Soup", 5, 9);
    String part = taken(submit("A", "parts", "portions", "3"));
    Reply mended = submit(part, "counted-more", "more", more, "way", way);
    boolean isMended = ofPart == 4;
    assertThat(mended.status()).as(mended.text()).isEqualTo(isMended ? 303 : 422);
    assertThat(lot("A").at("/portions/left").asInt()).isEqualTo(left);
    assertThat(lot(part).at("/portions/left").asInt()).isEqualTo(ofPart);
    if (isMended) {
      assertThat(visit.open(Visit.target(mended)).text())
          .contains("The counts are corrected: by the log 4 are left", "counted more than was");
    }
  }

  /** The same through a part of a part. */
  @Test
  void more_found_in_a_part_of_a_part_corrects_every_lot_it_came_through() {
    chilled("A", "Soup", 5, 9);
    String part = taken(submit("A", "parts", "portions", "6"));
    String within = taken(submit(part, "parts", "portions", "2"));
    assertThat(submit(within, "counted-more", "more", "3", "way", "made").status()).isEqualTo(303);
    assertThat(lot("A").at("/portions/made").asInt()).isEqualTo(12);
    assertThat(lot("A").at("/portions/left").asInt()).isEqualTo(3);
    assertThat(lot(part).at("/portions/left").asInt()).isEqualTo(4);
    assertThat(lot(within).at("/portions/left").asInt()).isEqualTo(5);
  }

  /** Common practice, no source: a slip in the time; a part has no past of its own. */
  @Test
  void what_happened_before_a_part_was_one_is_asked_about() {
    chilled("A", "Soup", 5, 9);
    String part = taken(submit("A", "parts", "portions", "3"));
    String[] before = {"entry", "reading", "temperature", "38F", "when", "2026-03-03T09:00"};
    Reply asked = visit.submit("/lots/" + part + "/entries", before);
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text()).contains("what happened before that belongs to A");
  }

  @Test
  void a_form_sent_twice_counts_once() {
    chilled("A", "Soup", 5, 9);
    String[] fields = {"once", "k-1", "parts", "2", "portions", "3", "food", "Soup"};
    assertThat(taken(submit("A", "parts", fields))).as("lists both").isEqualTo("A");
    assertThat(taken(submit("A", "parts", fields))).isEqualTo("A");
    assertThat(lot("A").at("/portions/left").asInt()).isEqualTo(3);
    assertThat(lot("A").at("/madeInto")).hasSize(2);
    assertThat(taken(submit("A", "parts", "portions", "3", "food", "Soup for two")))
        .isEqualTo("A-3");
    assertThat(lot("A-3").at("/food").asText()).isEqualTo("Soup for two");
    assertThat(lot("A").at("/onHand").asBoolean()).isFalse();
  }

  /**
   * FDA Food Code 2022 3-501.17: dividing food changes neither its day 1 nor its last day. Nothing
   * is out or unclear of the part that was not so of the whole.
   */
  @ParameterizedTest
  @CsvSource({
    "'', prepared 39F",
    "opened, opened 39F",
    "cooked, cooked 180F",
    "cooling, cooked 180F",
    "chilled, prepared 39F",
    "frozen, prepared 39F",
    "hot-holding, cooked 180F",
  })
  void a_part_keeps_the_dates_and_the_verdict_of_the_whole(String word, String begun) {
    served.post("/api/v1/lots", "{'lot':'A','food':'Soup','category':'soup_or_stew','portions':9}");
    String[] first = begun.split(" ", -1);
    log(
        "A",
        "{'when':'@6T12:30:00-07:00','entry':'%s','temperature':'%s'}"
            .formatted(first[0], first[1]));
    if (!word.isEmpty() && !word.equals(first[0])) {
      String temperature = word.equals("hot-holding") ? ",'temperature':'150F'" : "";
      log("A", "{'when':'@6T12:40:00-07:00','entry':'%s'%s}".formatted(word, temperature));
    }
    String part = taken(submit("A", "parts", "portions", "3"));
    assertThat(lot(part).at("/keeping")).isEqualTo(lot("A").at("/keeping"));
    assertThat(lot(part).at("/verdict")).isEqualTo(lot("A").at("/verdict"));
    assertThat(lot(part).at("/findings").findValuesAsText("verdict"))
        .isEqualTo(lot("A").at("/findings").findValuesAsText("verdict"));
  }

  /** Our own design, no source: a depth without a unit is in that of the scale. */
  @Test
  void parts_are_told_what_they_stand_in_and_how_deep() {
    served.cookSoup("POT");
    served.at("2026-03-03T17:20:00Z");
    String[] fields = {
      "parts", "2", "portions", "3", "container", "half pan", "depth", "2", "scale", "F"
    };
    taken(submit("POT", "parts", fields));
    JsonNode row = served.get("/api/v1/lots/POT-1/entries").json().at("/items/0");
    assertThat(row.at("/container").asText()).isEqualTo("half pan");
    assertThat(row.at("/depth").asText()).isEqualTo("2 in");
    fields[9] = "C";
    Reply deep = submit("POT", "parts", fields);
    assertThat(deep.status()).as(deep.text()).isEqualTo(303);
    assertThat(served.get("/api/v1/lots/POT-3/entries").json().at("/items/0/depth").asText())
        .isEqualTo("2 cm");
    fields[7] = "deep";
    Reply wrong = submit("POT", "parts", fields);
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.text()).contains("value=\"half pan\"", "value=\"deep\"");
  }

  @Test
  void a_lot_that_cannot_be_divided_now_offers_no_form_and_takes_none() {
    served.post("/api/v1/lots", "{'lot':'A','food':'Soup','category':'soup_or_stew'}");
    log("A", "{'when':'@6T12:30:00-07:00','entry':'received','temperature':'39F'}");
    assertThat(visit.open("/lots/A").text()).doesNotContain("action=\"/lots/A/parts\"");
    assertThat(submit("A", "parts", "portions", "0").text())
        .contains("cannot be divided as it stands", "how many portions");
    assertThat(visit.submit("/lots/NOBODY/parts", "portions", "1").status()).isEqualTo(404);
    assertThat(visit.submit("/lots/A/combined", Map.of("from", "B")).status()).isEqualTo(403);
  }
}
