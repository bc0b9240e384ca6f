package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is on hand: what to use first, and what was read where it stood. */
class OnHandTest {
  @TempDir private Path folder;
  private Served served;

  @BeforeEach
  void open() {
    served = Served.in(folder);
  }

  @AfterEach
  void close() {
    served.close();
  }

  private void log(String lot, String category, String... entries) {
    served.post(
        "/api/v1/lots",
        "{'lot':'%s','food':'Food of %s','category':'%s'}".formatted(lot, lot, category));
    for (String entry : entries) {
      Reply reply = served.post("/api/v1/lots/" + lot + "/entries", "{" + entry + "}");
      assertThat(reply.status()).as(reply.text()).isEqualTo(201);
    }
  }

  private static String at(String when, String rest) {
    return "'when':'%s-07:00',%s".formatted(when, rest);
  }

  /** FoodSafety.gov chart: soup is at its best 2 months; 12VAC5-421-830: 7 days, day 1 included. */
  private void stock() {
    log(
        "F-LATE",
        "soup_or_stew",
        at("2026-02-20T09:00", "'entry':'prepared','temperature':'39F'"),
        at("2026-02-20T10:00", "'entry':'frozen','how':'hard','place':'Freezer'"));
    log(
        "F-SOON",
        "soup_or_stew",
        at("2026-01-10T09:00", "'entry':'prepared','temperature':'39F'"),
        at("2026-01-10T10:00", "'entry':'frozen','how':'hard','place':'Freezer'"));
    log(
        "C-1",
        "soup_or_stew",
        at("2026-03-02T09:00", "'entry':'prepared','temperature':'39F'"),
        at("2026-03-02T09:10", "'entry':'chilled','temperature':'39F','place':'Walk-in'"));
    log("N-1", "cheesecake");
  }

  private List<String> codes(String query) {
    Reply reply = served.get("/api/v1/lots" + query);
    assertThat(reply.status()).as(reply.text()).isEqualTo(200);
    return reply.json().at("/items").findValuesAsText("lot");
  }

  @Test
  void lots_on_hand_come_in_the_order_asked_for() {
    stock();
    assertThat(codes("?sort=use-first")).containsExactly("C-1", "F-SOON", "F-LATE", "N-1");
    assertThat(codes("?sort=oldest")).containsExactly("F-SOON", "F-LATE", "C-1");
    assertThat(codes("?phase=frozen&sort=use-first")).containsExactly("F-SOON", "F-LATE");
    assertThat(codes("?bestQualityBefore=2026-03-11")).containsExactly("F-SOON");
    assertThat(codes("?bestQualityBefore=2026-03-10")).isEmpty();
    // F-SOON is at its best until 10 March, C-1 keeps until 8 March, F-LATE until 20 April.
    assertThat(codes("?goodOn=2026-03-08")).containsExactly("C-1", "F-SOON", "F-LATE");
    assertThat(codes("?goodOn=2026-03-10")).containsExactly("F-SOON", "F-LATE");
    assertThat(codes("?goodOn=2026-03-11&limit=1")).containsExactly("F-LATE");
    JsonNode first = served.get("/api/v1/lots?sort=use-first&limit=2").json();
    assertThat(codes("?sort=use-first&limit=2&cursor=" + first.at("/next").asText()))
        .containsExactly("F-LATE", "N-1");
    assertThat(served.get("/api/v1/lots?sort=newest").code()).isEqualTo("unknown-order");
  }

  /** A frozen lot has two answers and no one date to use it by. */
  @Test
  void the_page_tells_what_to_use_first() {
    stock();
    String onHand = served.get("/on-hand").text();
    assertThat(onHand).containsSubsequence("C-1", "Sun 8 Mar", "F-SOON", "F-LATE", "N-1");
    assertThat(onHand)
        .contains("frozen, Freezer", "best quality by Tue 10 Mar", "Once thawed: use within 6 days")
        .doesNotContainIgnoringCase("use by");
  }

  /** FDA Food Code 2022 3-501.19(B): gone within 4 hours of leaving temperature control. */
  @Test
  void food_under_time_control_shows_its_hour_and_no_later_day() {
    log(
        "T-1",
        "soup_or_stew",
        at("2026-03-03T08:00", "'entry':'prepared','temperature':'39F'"),
        at("2026-03-03T09:00", "'entry':'time-control','temperature':'40F'"));
    assertThat(served.get("/on-hand").text())
        .contains("Serve or discard by 13:00")
        .doesNotContain("Use or discard by the end");
  }

  /** Job 50: how many meals there are to be eaten up, here and by a day. */
  @Test
  void the_page_counts_what_is_left() {
    stock();
    served.post(
        "/api/v1/lots", "{'lot':'P-1','food':'Pie','category':'soup_or_stew','portions':9}");
    // Nothing of it is made yet.
    assertThat(served.get("/on-hand").text())
        .contains("Lots: 5. Portions left: 0; lots whose portions are not counted: 4.");
    served.post(
        "/api/v1/lots/P-1/entries",
        "{" + at("2026-03-02T08:00", "'entry':'prepared','temperature':'39F'") + "}");
    assertThat(served.get("/on-hand").text())
        .contains("Lots: 5. Portions left: 9; lots whose portions are not counted: 4.");
    assertThat(served.get("/on-hand?place=Freezer").text()).contains("Lots: 2. Portions left: 0;");
    assertThat(served.get("/lots").text()).doesNotContain("Portions left:");
  }

  /** Job 32: which lot is still good when it arrives, the oldest first. */
  @Test
  void the_page_is_narrowed_to_what_is_good_on_a_day() {
    stock();
    String day = served.get("/on-hand?good-on=2026-03-10").text();
    assertThat(day).containsSubsequence("F-SOON", "F-LATE").contains("value=\"2026-03-10\"");
    assertThat(day).doesNotContain("/lots/C-1\"", "/lots/N-1\"");
    assertThat(served.get("/on-hand?place=Freezer&good-on=2026-03-11").text())
        .contains("F-LATE")
        .doesNotContain("/lots/F-SOON\"");
    String csv = served.get("/on-hand.csv?good-on=2026-03-11").text();
    assertThat(csv).contains("F-LATE").doesNotContain("F-SOON", "C-1");
    Reply wrong = served.get("/on-hand?good-on=soon");
    assertThat(wrong.status()).isEqualTo(400);
    assertThat(wrong.text()).contains("good on: “soon”");
  }

  private void bars(String lot, String food, String... more) {
    String made = "{'lot':'%s','food':'%s','category':'bar_cookies_cut_and_wrapped'}";
    served.post("/api/v1/lots", made.formatted(lot, food));
    List<String> entries = new ArrayList<>();
    entries.add(at("2026-03-01T09:00", "'entry':'cooked'"));
    entries.add(at("2026-03-01T11:00", "'entry':'frozen','how':'hard','place':'Freezer'"));
    entries.addAll(List.of(more));
    for (String entry : entries) {
      Reply reply = served.post("/api/v1/lots/" + lot + "/entries", "{" + entry + "}");
      assertThat(reply.status()).as(reply.text()).isEqualTo(201);
    }
  }

  private void stated(String food, int roomDays) {
    served
        .kitchen()
        .setUp()
        .food(
            Map.of(
                "name",
                food,
                "category",
                "bar_cookies_cut_and_wrapped",
                "roomDays",
                Integer.toString(roomDays)));
  }

  private List<String> listed(String page, boolean isGood) {
    String part = isGood ? "class=\"h3\"><a href=\"/lots/" : "<li><a href=\"/lots/";
    return Pattern.compile(Pattern.quote(part) + "([A-Z0-9-]+)")
        .matcher(served.get(page).text())
        .results()
        .map(found -> found.group(1))
        .toList();
  }

  /**
   * 12VAC5-421-830: 7 days, the making and the thawing day included; frozen on day 1 soup has 6, so
   * thawed on 5 March it is good to 10 March, five days after, and not six. Bars have the days that
   * their kitchen states (common practice, no source), whatever their six months in the freezer.
   */
  @Test
  void what_is_posted_is_asked_for_its_days_out_of_the_freezer() {
    stock();
    bars("B-4", "Bars4");
    bars("B-6", "Bars6");
    bars("B-NONE", "Bars0");
    bars("B-THAWED", "Bars6", at("2026-03-03T07:00", "'entry':'thawing','how':'refrigerator'"));
    stated("Bars4", 4);
    stated("Bars6", 6);
    String five = "/on-hand?good-on=2026-03-05&days=5";
    assertThat(listed(five, true)).containsExactly("F-SOON", "F-LATE", "B-6");
    assertThat(listed(five, false))
        .containsExactlyInAnyOrder("C-1", "B-4", "B-NONE", "B-THAWED", "N-1");
    String six = "/on-hand?good-on=2026-03-05&days=6";
    assertThat(listed(six, true)).containsExactly("B-6");
    assertThat(listed("/on-hand?good-on=2026-03-05&days=4", true))
        .containsExactlyInAnyOrder("B-THAWED", "F-SOON", "F-LATE", "B-4", "B-6");
    String text = served.get(five).text();
    assertThat(text)
        .contains("Good until Tue 10 Mar, out of the freezer", "Left out, and why (5)")
        .contains("its last day is Sun 8 Mar", "at room temperature at its best until Mon 9 Mar")
        .doesNotContain("its last day is Mon 9 Mar")
        .contains("as this kitchen states: 4", "has not stated its days at room temperature")
        .contains("Once thawed: use within 6 days", "as this kitchen states: 6 (quality only)")
        .doesNotContain("Frozen: best quality by")
        .contains("nothing logged yet", "name=\"days\"", "value=\"5\"");
    assertThat(served.get(six).text()).contains("once thawed, the thawing day included: 6");
    assertThat(served.get("/on-hand.csv?good-on=2026-03-05&days=5").text())
        .contains("B-6")
        .doesNotContain("B-4", "C-1", "B-NONE");
    assertThat(served.get("/on-hand?good-on=2026-03-05").text())
        .contains("holds only while it stays in the freezer");
    assertThat(served.get("/on-hand?good-on=2026-03-05&days=many").status()).isEqualTo(400);
  }

  /** Our own reading, no source: a freezer stops days of quality and gives none back. */
  @Test
  void days_on_the_counter_before_the_freezer_are_used() {
    String bars = "bar_cookies_cut_and_wrapped";
    log(
        "OLD",
        bars,
        at("2026-02-25T07:00", "'entry':'cooked'"),
        at("2026-02-28T07:00", "'entry':'frozen','how':'hard'"));
    log(
        "AGAIN",
        bars,
        at("2026-02-25T07:00", "'entry':'cooked'"),
        at("2026-02-25T08:00", "'entry':'frozen','how':'hard'"),
        at("2026-02-26T08:00", "'entry':'thawing','how':'refrigerator'"),
        at("2026-02-28T08:00", "'entry':'frozen','how':'hard'"));
    log(
        "SOFT",
        bars,
        at("2026-02-25T07:00", "'entry':'cooked'"),
        at("2026-02-25T08:00", "'entry':'frozen','how':'hard'"),
        at("2026-03-02T08:00", "'entry':'reading','how':'soft'"));
    JsonNode lots = served.get("/api/v1/lots").json().at("/items");
    lots.findValuesAsText("food").stream().distinct().forEach(food -> stated(food, 6));
    String address = "/on-hand?good-on=2026-03-05&days=";
    assertThat(listed(address + 3, true)).containsExactlyInAnyOrder("SOFT", "OLD", "AGAIN");
    assertThat(served.get(address + 4).text()).contains("at its best until Sun 8 Mar");
    assertThat(listed(address + 4, true)).containsExactly("AGAIN");
    assertThat(served.get("/lots/SOFT").text())
        .contains("at its best until Sun 8 Mar")
        .doesNotContain("Frozen: best quality by");
    assertThat(listed(address + 5, true)).isEmpty();
  }

  /**
   * By definition, no source: food that is past its best gets no new days by freezing or thawing.
   * Six months in a freezer by its category: frozen on 5 August it is at its best to 5 February.
   */
  @Test
  void what_is_past_its_best_stays_so_when_it_thaws_or_is_frozen() {
    String bars = "bar_cookies_cut_and_wrapped";
    for (String lot : List.of("THAWED", "UNSTATED")) {
      log(
          lot,
          bars,
          at("2025-08-05T09:00", "'entry':'cooked'"),
          at("2025-08-05T11:00", "'entry':'frozen','how':'hard'"),
          at("2026-03-02T11:00", "'entry':'thawing','how':'refrigerator'"));
    }
    log(
        "LATE",
        bars,
        at("2026-02-05T07:00", "'entry':'cooked'"),
        at("2026-02-20T07:00", "'entry':'frozen','how':'hard'"));
    log(
        "AGAIN",
        bars,
        at("2026-02-05T07:00", "'entry':'cooked'"),
        at("2026-02-20T07:00", "'entry':'frozen','how':'hard'"),
        at("2026-03-02T07:00", "'entry':'thawing','how':'refrigerator'"));
    log(
        "GOOD",
        bars,
        at("2026-02-05T07:00", "'entry':'cooked'"),
        at("2026-02-19T07:00", "'entry':'frozen','how':'hard'"));
    List.of("THAWED", "LATE", "AGAIN", "GOOD").forEach(lot -> stated("Food of " + lot, 14));
    String onHand = served.get("/on-hand").text();
    assertThat(onHand)
        .contains("Past its best since Thu 5 Feb")
        .doesNotContain("At room temperature at its best");
    for (String lot : List.of("THAWED", "UNSTATED")) {
      assertThat(served.get("/lots/" + lot).text())
          .contains("Past its best since Thu 5 Feb: freezing or thawing gives it no new days")
          .doesNotContain("at its best until");
    }
    for (String lot : List.of("LATE", "AGAIN")) {
      assertThat(served.get("/lots/" + lot).text())
          .contains("Past its best since Thu 19 Feb: freezing or thawing gives it no new days")
          .doesNotContain("best quality by", "at its best until");
    }
    assertThat(served.get("/lots/GOOD").text()).contains("Frozen: best quality by");
    assertThat(listed("/on-hand?good-on=2026-03-04", true)).containsExactly("GOOD");
    assertThat(served.get("/on-hand?good-on=2026-03-04").text())
        .contains("past its best since Thu 5 Feb", "past its best since Thu 19 Feb");
    assertThat(served.get("/pulls?days=7").text()).doesNotContain("at its best until Thu 19 Feb");
  }

  /** Nothing on hand was made after today, so no day before it can be one of posting. */
  @Test
  void a_day_that_is_over_and_wrong_days_are_refused_at_their_fields_with_what_was_entered() {
    stock();
    Reply over = served.get("/on-hand?place=Freezer&good-on=2026-03-02&days=5");
    assertThat(over.status()).isEqualTo(400);
    assertThat(over.text())
        .containsSubsequence(
            "role=\"alert\"",
            "<details open",
            "value=\"Freezer\"",
            "value=\"2026-03-02\" required aria-invalid=\"true\"",
            "class=\"wrong\"><bdi>Mon 2 Mar is over. Give today",
            "value=\"5\"")
        .doesNotContain("F-SOON", "on-hand.csv");
    assertThat(served.get("/on-hand?good-on=2026-03-03").status()).isEqualTo(200);
    Reply wrong = served.get("/on-hand?good-on=2026-03-05&days=366");
    assertThat(wrong.status()).isEqualTo(400);
    assertThat(wrong.text())
        .containsSubsequence(
            "value=\"2026-03-05\"", "value=\"366\"", "is no whole number from 1 to 365")
        .doesNotContain("Back to the first page");
    Reply table = served.get("/on-hand.csv?good-on=2026-03-05&days=366");
    assertThat(table.status()).isEqualTo(400);
    assertThat(table.text()).contains("/on-hand?good-on=2026-03-05&amp;days=366");
    assertThat(served.get("/on-hand?good-on=2026-03-02", "Accept-Language", "es").text())
        .contains("ya pasó");
  }

  @Test
  void the_table_of_what_is_good_carries_the_question() {
    stock();
    Reply posted = served.get("/on-hand.csv?good-on=2026-03-05&days=5");
    String[] rows = posted.text().split("\\r?\\n");
    assertThat(cell(rows, "F-SOON", "good_on")).isEqualTo("2026-03-05");
    assertThat(cell(rows, "F-SOON", "good_days_after")).isEqualTo("5");
    assertThat(posted.header("Content-Disposition")).contains("on-hand-2026-03-05-5.csv");
    Reply kept = served.get("/on-hand.csv?good-on=2026-03-05");
    assertThat(cell(kept.text().split("\\r?\\n"), "F-SOON", "good_days_after")).isEmpty();
    assertThat(kept.header("Content-Disposition")).contains("on-hand-2026-03-05.csv");
    assertThat(served.get("/on-hand.csv").text()).doesNotContain("good_on");
  }

  @Test
  void readings_of_a_place_are_shown_with_the_lots_that_were_inside_then() {
    stock();
    for (String when : List.of("2026-03-02T08:00", "2026-03-02T12:00", "2026-03-03T07:00")) {
      Reply reply =
          served.post(
              "/api/v1/readings", "{" + at(when, "'place':'Walk-in','temperature':'44F'") + "}");
      assertThat(reply.status()).as(reply.text()).isEqualTo(201);
    }
    JsonNode lot = served.get("/api/v1/lots/C-1").json();
    assertThat(lot.at("/placeReadings").findValuesAsText("when"))
        .containsExactly("2026-03-03T07:00:00-07:00", "2026-03-02T12:00:00-07:00");
    assertThat(lot.at("/placeReadings/0/temperature").asText()).isEqualTo("44 °F");
    // Warm as the place was, nobody read the food.
    assertThat(lot.at("/verdict").asText()).isEqualTo("pending");
    assertThat(served.get("/api/v1/lots/F-SOON").json().at("/placeReadings")).isEmpty();
  }

  /** Out of the walk-in from 9 o'clock on, what is read there later tells nothing of the lot. */
  @Test
  void readings_of_a_place_end_when_the_lot_leaves_it() {
    log(
        "C-1",
        "soup_or_stew",
        at("2026-03-02T09:00", "'entry':'prepared','temperature':'39F'"),
        at("2026-03-02T09:10", "'entry':'chilled','temperature':'39F','place':'Walk-in'"),
        at("2026-03-03T09:00", "'entry':'reheating'"));
    for (String when : List.of("2026-03-03T08:00", "2026-03-03T09:30")) {
      served.post(
          "/api/v1/readings", "{" + at(when, "'place':'Walk-in','temperature':'38F'") + "}");
    }
    assertThat(served.get("/api/v1/lots/C-1").json().at("/placeReadings").findValuesAsText("when"))
        .containsExactly("2026-03-03T08:00:00-07:00");
  }

  @Test
  void an_unknown_category_is_answered_with_those_that_may_be_meant() {
    JsonNode problem =
        served.post("/api/v1/keeping", "{'category':'curry'}").problem(422).at("/problems/0");
    assertThat(problem.at("/code").asText()).isEqualTo("unknown-category");
    assertThat(problem.at("/says").asText()).contains("soup_or_stew or casserole_meat");
    JsonNode row =
        served
            .post("/api/v1/lots", "{'lot':'X','food':'Curry','category':'curry'}")
            .problem(422)
            .at("/problems/0");
    assertThat(row.at("/says").asText()).contains("soup_or_stew or casserole_meat");
  }

  /** 3-501.18(A): the last day is over; the answer says so and does not say "use". */
  @Test
  void how_long_it_keeps_says_what_has_passed() {
    Reply reply = served.post("/api/v1/keeping", "{'category':'soup_or_stew','made':'2026-02-01'}");
    assertThat(reply.json().at("/says/0").asText())
        .isEqualTo("Its last day passed on Sat 7 Feb: discard");
  }

  /** Bars thawed are good for the days their kitchen states (common practice, no source). */
  @Test
  void what_is_out_of_the_freezer_stands_first_by_the_days_of_its_kitchen() {
    stock();
    bars("B-COLD", "Bars6");
    bars("B-LATER", "Bars6", at("2026-03-03T07:00", "'entry':'thawing','how':'refrigerator'"));
    bars("B-FIRST", "Bars4", at("2026-03-02T07:00", "'entry':'thawing','how':'refrigerator'"));
    bars("B-NONE", "Bars0", at("2026-03-02T07:00", "'entry':'thawing','how':'refrigerator'"));
    stated("Bars4", 4);
    stated("Bars6", 6);
    assertThat(listed("/on-hand", true))
        .containsExactly(
            "B-FIRST", "B-LATER", "C-1", "F-SOON", "F-LATE", "B-COLD", "B-NONE", "N-1");
    assertThat(served.get("/on-hand").text())
        .containsSubsequence(
            "Thawed, out of the freezer or past its best, by your own days",
            "B-FIRST",
            "At room temperature at its best until Fri 6 Mar",
            "B-LATER",
            "at its best until Mon 9 Mar",
            "The others")
        .contains("Lots: 8.");
    assertThat(served.get("/on-hand?place=Walk-in").text()).doesNotContain("your own days");
    served.at("2026-03-07T18:00:00Z");
    assertThat(served.get("/on-hand").text()).contains("Past its best since Fri 6 Mar");
    String[] rows = served.get("/on-hand.csv").text().split("\r?\n");
    assertThat(cell(rows, "B-LATER", "best_at_room_until")).isEqualTo("2026-03-09");
    assertThat(cell(rows, "B-LATER", "best_quality_by")).isEmpty();
    assertThat(cell(rows, "B-LATER", "quality_limit")).isEmpty();
    assertThat(cell(rows, "B-LATER", "governs")).isEmpty();
    assertThat(cell(rows, "B-COLD", "best_at_room_until")).isEmpty();
    assertThat(cell(rows, "B-COLD", "best_quality_by")).isEqualTo("2026-09-01");
    assertThat(cell(rows, "B-NONE", "best_at_room_until")).isEmpty();
  }

  /** The same figures; what is past them is named as long as it is there. */
  @Test
  void the_pull_list_names_what_is_out_of_the_freezer_to_be_used() {
    bars("B-LATER", "Bars6", at("2026-03-03T07:00", "'entry':'thawing','how':'refrigerator'"));
    stated("Bars6", 6);
    assertThat(served.get("/api/v1/pull?days=6").json().at("/pulls")).isEmpty();
    JsonNode pulls = served.get("/api/v1/pull?days=7").json().at("/pulls");
    assertThat(pulls.findValuesAsText("why")).containsExactly("best-at-room");
    assertThat(pulls.at("/0/day").asText()).isEqualTo("2026-03-09");
    assertThat(served.get("/pull?days=7").text())
        .contains("At room temperature, at its best until Mon 9 Mar");
    assertThat(served.get("/pull.csv?days=7").text()).contains("2026-03-09,,B-LATER,Bars6");
  }

  /** The same figures: soft in its freezer it is thawed, and the freezer's date is gone. */
  @Test
  void what_was_found_soft_in_its_freezer_stands_with_what_is_out_of_it() {
    bars("B-HARD", "Bars6");
    bars("B-SOFT", "Bars6", at("2026-03-03T07:00", "'entry':'reading','how':'soft'"));
    stated("Bars6", 6);
    assertThat(listed("/on-hand", true)).containsExactly("B-SOFT", "B-HARD");
    assertThat(served.get("/on-hand").text())
        .containsSubsequence("by your own days", "B-SOFT", "until Mon 9 Mar", "The others");
    String[] rows = served.get("/on-hand.csv").text().split("\r?\n");
    assertThat(cell(rows, "B-SOFT", "best_at_room_until")).isEqualTo("2026-03-09");
    assertThat(cell(rows, "B-SOFT", "best_quality_by")).isEmpty();
    JsonNode pulls = served.get("/api/v1/pull?days=7").json().at("/pulls");
    assertThat(pulls.findValuesAsText("why")).containsExactly("best-at-room");
    assertThat(pulls.findValuesAsText("lot")).containsExactly("B-SOFT");
    served.at("2026-08-31T18:00:00Z");
    assertThat(served.get("/api/v1/pull?days=3").json().at("/pulls").findValuesAsText("why"))
        .containsExactly("best-at-room", "best-quality");
  }

  /** FDA Food Code 2022 3-501.17 of days of safety: freezing stops them and gives none back. */
  @Test
  void what_is_made_of_a_frozen_lot_keeps_the_days_that_lot_had_used() {
    bars(
        "B-OLD",
        "Bars6",
        at("2026-03-02T07:00", "'entry':'thawing','how':'refrigerator'"),
        at("2026-03-03T07:00", "'entry':'frozen','how':'hard'"));
    served.at("2026-03-10T18:00:00Z");
    stated("Bars6", 6);
    // Made on the 1st, frozen that day, thawed on the 2nd and frozen on the 3rd: one is gone.
    assertThat(served.get("/lots/B-OLD").text())
        .contains("Days at its best at room temperature, counted from thawing: 5");
    served.post("/api/v1/lots", "{'lot':'TRAY','food':'Bars6','from':['B-OLD']}");
    String tray = "{" + at("2026-03-10T09:00", "'entry':'prepared'") + "}";
    assertThat(served.post("/api/v1/lots/TRAY/entries", tray).status()).isEqualTo(201);
    assertThat(served.get("/lots/TRAY").text()).contains("at its best until Sun 15 Mar");
  }

  private static String cell(String[] rows, String lot, String column) {
    int at = List.of(rows[0].split(",", -1)).indexOf(column);
    return Stream.of(rows)
        .filter(row -> row.startsWith(lot + ","))
        .map(row -> row.split(",", -1)[at])
        .findFirst()
        .orElseThrow();
  }

  /** Our own: who is remembered on the phone is who took the portions. */
  @Test
  void portions_taken_from_the_list_bear_the_initials_remembered_on_the_phone() {
    served.post(
        "/api/v1/lots", "{'lot':'P-9','food':'Soup','category':'soup_or_stew','portions':9}");
    Visit phone = new Visit(served);
    phone.open("/lots/P-9");
    String[] read = {"entry", "prepared", "temperature", "39", "scale", "F", "by", "RO"};
    assertThat(phone.submit("/lots/P-9/entries", read).status()).isEqualTo(303);
    String list = phone.open("/on-hand").text();
    String form = list.substring(list.indexOf("action=\"/lots/P-9/entries\""));
    assertThat(form.substring(0, form.indexOf("</form>"))).contains("name=\"by\" value=\"RO\"");
  }
}
