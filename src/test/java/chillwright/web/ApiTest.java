package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every address, asked as it should be, over a real server on a real database. */
class ApiTest {
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

  @Test
  void the_kitchen_says_by_what_it_is_judged_and_who_decides() {
    JsonNode kitchen = served.get("/api/v1/kitchen").json();
    assertThat(kitchen.at("/zone").asText()).isEqualTo("America/Denver");
    assertThat(kitchen.at("/ruleSet/id").asText()).isEqualTo("us-food-code-2022");
    assertThat(kitchen.at("/ruleSet/defers").asText()).contains("your local health authority");
    assertThat(kitchen.at("/time").asText()).isEqualTo("2026-03-03T10:15:00-07:00");
  }

  @Test
  void health_is_ok() {
    assertThat(served.get("/api/v1/health").json()).isEqualTo(Served.json("{'status':'ok'}"));
  }

  @Test
  void a_lot_is_made_known_and_found_again() {
    Reply made =
        served.post(
            "/api/v1/lots",
            """
            {'lot':'S-1','food':'Barley soup','category':'soup_or_stew',
             'portions':24,'note':'big pot'}
            """);
    assertThat(made.status()).isEqualTo(201);
    assertThat(made.header("Location")).isEqualTo("/api/v1/lots/S-1");
    JsonNode lot = served.get(made.header("Location")).json();
    assertThat(lot).isEqualTo(made.json());
    assertThat(lot.at("/portions/made").asInt()).isEqualTo(24);
    assertThat(lot.at("/note").asText()).isEqualTo("big pot");
    assertThat(lot.at("/verdict").isNull()).isTrue();
  }

  @Test
  void a_lot_without_a_code_gets_one() {
    Reply made = served.post("/api/v1/lots", "{'food':'Barley soup','category':'soup_or_stew'}");
    String code = made.json().at("/lot").asText();
    assertThat(made.header("Location")).isEqualTo("/api/v1/lots/" + code);
    assertThat(served.get("/api/v1/lots/" + code).status()).isEqualTo(200);
  }

  /** FDA Food Code 2022 3-501.14(A)(1): 57 °C (135 °F) to 21 °C (70 °F) within 2 hours. */
  @Test
  void a_write_answers_with_what_it_did_and_what_is_due() {
    served.cookSoup("S-1");
    served.at("2026-03-03T18:45:00Z");
    Reply reply =
        served.post(
            "/api/v1/lots/S-1/entries",
            "{'when':'2026-03-03T11:40:00-07:00','entry':'reading','temperature':'86F','by':'RM'}");
    assertThat(reply.status()).isEqualTo(201);
    JsonNode did = reply.json();
    assertThat(did.at("/entries/0/id").asText()).isNotEmpty();
    assertThat(did.at("/due/says").asText()).startsWith("70 °F by 12:00");
    assertThat(did.at("/due/deadline").asText()).isEqualTo("2026-03-03T12:00:00-07:00");
    assertThat(did.at("/keeping/dateMarkLastDay").asText()).isEqualTo("2026-03-09");
    assertThat(did.at("/defers").asText()).contains("local health authority");
    assertThat(changed(did))
        .contains("cooling.cooked.first-stage")
        .doesNotContain("date-mark.last-day");
  }

  private static List<String> changed(JsonNode written) {
    return StreamSupport.stream(written.at("/findings").spliterator(), false)
        .filter(finding -> finding.at("/changed").asBoolean())
        .map(finding -> finding.at("/rule").asText())
        .toList();
  }

  @Test
  void several_entries_are_written_together() {
    served.post("/api/v1/lots", "{'lot':'S-1','food':'Barley soup','category':'soup_or_stew'}");
    Reply reply =
        served.post(
            "/api/v1/lots/S-1/entries",
            """
            {'entries':[
              {'when':'2026-03-03T10:00:00-07:00','entry':'cooked','temperature':'180F'},
              {'lot':'S-1','when':'2026-03-03T10:10:00-07:00','entry':'cooling',
               'place':'Ice bath','to':null}]}
            """);
    assertThat(reply.status()).isEqualTo(201);
    assertThat(reply.json().at("/entries")).hasSize(2);
    assertThat(reply.json().at("/entries/1/place").asText()).isEqualTo("Ice bath");
  }

  @Test
  void entries_are_listed_with_their_corrections_and_late_ones_are_marked() {
    served.cookSoup("S-1");
    served.at("2026-03-03T18:45:00Z");
    String id =
        served
            .post(
                "/api/v1/lots/S-1/entries",
                "{'when':'2026-03-03T11:20:00-07:00','entry':'reading','temperature':'86F'}")
            .json()
            .at("/entries/0/id")
            .asText();
    correct(id, "'temperature':'68F','note':'86 was a slip'");
    JsonNode entries = served.get("/api/v1/lots/S-1/entries").json().at("/items");
    assertThat(entries).hasSize(3);
    assertThat(entries.at("/0/late").asBoolean()).isFalse();
    JsonNode reading = entries.at("/1");
    assertThat(reading.at("/late").asBoolean()).isTrue();
    assertThat(reading.at("/temperature").asText()).isEqualTo("86 °F");
    assertThat(reading.at("/state").asText()).isEqualTo("corrected");
    assertThat(reading.at("/corrected/temperature").asText()).isEqualTo("68 °F");
    assertThat(reading.at("/correctedBy/0")).isEqualTo(entries.at("/2/id"));
    assertThat(entries.at("/2/note").asText()).isEqualTo("86 was a slip");
    correct(id, "'note':'another pot'");
    assertThat(served.get("/api/v1/lots/S-1/entries").json().at("/items/1/state").asText())
        .isEqualTo("voided");
  }

  private void correct(String id, String cells) {
    Reply reply =
        served.post(
            "/api/v1/lots/S-1/entries",
            "{'when':'2026-03-03T11:30:00-07:00','entry':'correction','corrects':'%s',%s}"
                .formatted(id, cells));
    assertThat(reply.status()).as(reply.text()).isEqualTo(201);
  }

  @Test
  void entries_come_in_parts() {
    served.cookSoup("S-1");
    served.post(
        "/api/v1/lots/S-1/entries", "{'when':'2026-03-03T10:10:00-07:00','entry':'cooling'}");
    JsonNode first = served.get("/api/v1/lots/S-1/entries?limit=1").json();
    JsonNode second =
        served.get("/api/v1/lots/S-1/entries?limit=1&cursor=" + first.at("/next").asText()).json();
    assertThat(first.at("/items/0/entry").asText()).isEqualTo("cooked");
    assertThat(second.at("/items/0/entry").asText()).isEqualTo("cooling");
    assertThat(second.at("/next").isNull()).isTrue();
  }

  @Test
  void lots_are_listed_by_phase_place_verdict_and_last_day() {
    served.cookSoup("S-1");
    served.cookSoup("S-2");
    served.post(
        "/api/v1/lots/S-2/entries",
        "{'when':'2026-03-03T10:10:00-07:00','entry':'cooling','place':'Blast chiller'}");
    assertThat(codes("?phase=cooling")).containsExactly("S-2");
    assertThat(codes("?place=Blast+chiller")).containsExactly("S-2");
    assertThat(codes("?place=Blast%20chiller&phase=cooked")).isEmpty();
    assertThat(codes("?verdict=pending")).containsExactlyInAnyOrder("S-1", "S-2");
    assertThat(codes("?verdict=out")).isEmpty();
    assertThat(codes("?lastDayBefore=2026-03-10")).hasSize(2);
    assertThat(codes("?lastDayBefore=2026-03-09")).isEmpty();
    JsonNode first = served.get("/api/v1/lots?limit=1").json();
    assertThat(codes("?limit=1&cursor=" + first.at("/next").asText())).containsExactly("S-1");
  }

  private List<String> codes(String query) {
    Reply reply = served.get("/api/v1/lots" + query);
    assertThat(reply.status()).as(reply.text()).isEqualTo(200);
    return reply.json().at("/items").findValuesAsText("lot");
  }

  @Test
  void a_lot_names_those_it_came_from_and_those_made_of_it() {
    served.cookSoup("S-1");
    served.post("/api/v1/lots", "{'lot':'S-1a','from':['S-1'],'portions':4}");
    Reply written =
        served.post(
            "/api/v1/lots/S-1a/entries",
            "{'when':'2026-03-03T10:10:00-07:00','entry':'hot-holding','temperature':'150F'}");
    assertThat(written.status()).as(written.text()).isEqualTo(201);
    assertThat(served.get("/api/v1/lots/S-1a").json().at("/from/0").asText()).isEqualTo("S-1");
    assertThat(served.get("/api/v1/lots/S-1").json().at("/madeInto/0").asText()).isEqualTo("S-1a");
  }

  @Test
  void readings_of_places_are_logged_corrected_and_listed() {
    Reply written =
        served.post(
            "/api/v1/readings",
            """
            {'entries':[
              {'when':'2026-03-03T08:00:00-07:00','place':'Walk-in','temperature':'39.5F'},
              {'when':'2026-03-03T09:00:00-07:00','entry':'reading','place':'Freezer',
               'temperature':'-2F'}]}
            """);
    assertThat(written.status()).as(written.text()).isEqualTo(201);
    String id = written.json().at("/entries/0/id").asText();
    Reply corrected =
        served.post(
            "/api/v1/readings",
            """
            {'when':'2026-03-03T09:05:00-07:00','entry':'correction','corrects':'%s',
             'temperature':'35.9F','note':'misread'}
            """
                .formatted(id));
    assertThat(corrected.status()).as(corrected.text()).isEqualTo(201);
    JsonNode readings = served.get("/api/v1/readings?place=Walk-in").json().at("/items");
    assertThat(readings).hasSize(1);
    assertThat(readings.at("/0/temperature").asText()).isEqualTo("39.5 °F");
    assertThat(readings.at("/0/corrected/temperature").asText()).isEqualTo("35.9 °F");
    assertThat(
            served
                .get("/api/v1/readings?from=2026-03-03T08:30:00-07:00&to=2026-03-03T16:00:00Z")
                .json()
                .at("/items")
                .findValuesAsText("place"))
        .containsExactly("Freezer");
  }

  @Test
  void an_offset_sent_without_escaping_its_plus_is_understood() {
    assertThat(served.get("/api/v1/readings?from=2026-03-03T08:30:00+02:00").status())
        .isEqualTo(200);
  }

  @Test
  void what_falls_due_next_is_listed_the_most_urgent_first() {
    served.cookSoup("S-1");
    served.post("/api/v1/lots", "{'lot':'S-2','food':'Lentil soup','category':'soup_or_stew'}");
    served.post(
        "/api/v1/lots/S-2/entries",
        "{'when':'2026-03-03T09:30:00-07:00','entry':'cooked','temperature':'180F'}");
    JsonNode due = served.get("/api/v1/due").json();
    assertThat(due.at("/items").findValuesAsText("lot")).containsExactly("S-2", "S-1");
    assertThat(due.at("/items/0/deadline").asText()).isEqualTo("2026-03-03T11:30:00-07:00");
    assertThat(due.at("/items/0/citation").asText()).isEqualTo("3-501.14(A)(1)");
    JsonNode second =
        served.get("/api/v1/due?limit=1&cursor=" + next("/api/v1/due?limit=1")).json();
    assertThat(second.at("/items/0/lot").asText()).isEqualTo("S-1");
  }

  private String next(String address) {
    return served.get(address).json().at("/next").asText();
  }

  @Test
  void the_report_has_what_was_out_and_what_was_not_read_in_time() {
    twoTroubles();
    JsonNode report = served.get("/api/v1/reports/out-of-compliance").json();
    assertThat(report.at("/items").findValuesAsText("verdict")).contains("out", "not-shown");
    JsonNode out = troubleThatIsOut(report);
    assertThat(out.at("/lot").asText()).isEqualTo("S-1");
    assertThat(out.at("/rule").asText()).isEqualTo("cooling.cooked.first-stage");
    assertThat(out.at("/citation").asText()).isEqualTo("3-501.14(A)(1)");
    assertThat(out.at("/owed").asBoolean()).isTrue();
    assertThat(out.at("/offered").toString()).contains("165 °F");
    assertThat(out.at("/evidence").findValuesAsText("temperature")).contains("90 °F");
    assertThat(report.at("/ruleSet/id").asText()).isEqualTo("us-food-code-2022");
    assertThat(report.at("/defers").asText()).contains("local health authority");
  }

  @Test
  void what_was_done_about_it_stands_beside_it() {
    twoTroubles();
    served.post(
        "/api/v1/lots/S-1/entries",
        "{'when':'2026-03-03T12:20:00-07:00','entry':'discarded','note':'90 at two hours'}");
    JsonNode out = troubleThatIsOut(served.get("/api/v1/reports/out-of-compliance").json());
    assertThat(out.at("/taken/0/note").asText()).isEqualTo("90 at two hours");
    assertThat(out.at("/owed").asBoolean()).isFalse();
    assertThat(out.at("/onHand").asBoolean()).isFalse();
  }

  @Test
  void the_report_is_bounded_by_the_moment_it_went_out_and_comes_in_parts() {
    twoTroubles();
    String report = "/api/v1/reports/out-of-compliance";
    int all = served.get(report).json().at("/items").size();
    assertThat(served.get(report + "?to=2026-03-03T12:00:00-07:00").json().at("/items")).isEmpty();
    assertThat(served.get(report + "?from=2026-03-03T12:00:00-07:00").json().at("/items"))
        .hasSize(all);
    JsonNode first = served.get(report + "?limit=1").json();
    assertThat(
            served
                .get(report + "?limit=1&cursor=" + first.at("/next").asText())
                .json()
                .at("/items"))
        .hasSize(1)
        .isNotEqualTo(first.at("/items"));
  }

  @Test
  void the_report_is_a_table_too() {
    twoTroubles();
    Reply csv = served.get("/api/v1/reports/out-of-compliance", "Accept", "text/csv");
    assertThat(csv.header("Content-Type")).startsWith("text/csv");
    List<String> lines = csv.text().lines().toList();
    assertThat(lines.get(0)).startsWith("out_since,lot,food,");
    assertThat(lines)
        .hasSize(1 + served.get("/api/v1/reports/out-of-compliance").json().at("/items").size());
    assertThat(csv.text()).contains("us-food-code-2022", "local health authority decides");
  }

  private static JsonNode troubleThatIsOut(JsonNode report) {
    return StreamSupport.stream(report.at("/items").spliterator(), false)
        .filter(item -> item.at("/verdict").asText().equals("out"))
        .findFirst()
        .orElseThrow();
  }

  /** One lot still at 90 °F when two hours are over, and one that nobody read again. */
  private void twoTroubles() {
    served.cookSoup("S-1");
    served.cookSoup("S-2");
    served.at("2026-03-03T19:30:00Z");
    served.post(
        "/api/v1/lots/S-1/entries",
        "{'entries':[{'when':'2026-03-03T10:10:00-07:00','entry':'reading','temperature':'130F'},"
            + "{'when':'2026-03-03T12:15:00-07:00','entry':'reading','temperature':'90F'}]}");
  }

  /** FDA Food Code 2022 3-501.14(A): 135 °F to 70 °F in 2 hours, to 41 °F in 6 hours in all. */
  @Test
  void a_check_stores_nothing_and_answers_as_the_command_does() {
    Reply reply =
        served.post(
            "/api/v1/checks",
            """
            {'at':'2026-03-02T22:00:00Z','zone':'America/Chicago','ruleSet':'us-food-code-2022',
             'rows':[
             {'lot':'A','food':'Barley soup','category':'soup_or_stew',
              'when':'2026-03-02T10:00:00Z','entry':'cooked','temperature':'135F'},
             {'lot':'A','when':'2026-03-02T12:00:00Z','entry':'reading','temperature':'70F'},
             {'lot':'A','when':'2026-03-02T16:00:00Z','entry':'reading','temperature':'41F'}]}
            """);
    assertThat(reply.status()).as(reply.text()).isEqualTo(200);
    JsonNode check = reply.json();
    assertThat(check.at("/checkedAt").asText()).isEqualTo("2026-03-02T16:00:00-06:00");
    assertThat(check.at("/lots/0/lot").asText()).isEqualTo("A");
    assertThat(check.at("/problems")).isEmpty();
    for (JsonNode finding : check.at("/lots/0/findings")) {
      if (finding.at("/rule").asText().startsWith("cooling.")) {
        assertThat(finding.at("/verdict").asText()).as(finding.toString()).isEqualTo("in");
      }
    }
    assertThat(served.get("/api/v1/lots").json().at("/items")).isEmpty();
  }

  @Test
  void faults_of_checked_rows_are_part_of_the_answer() {
    JsonNode check =
        served
            .post(
                "/api/v1/checks",
                """
                {'rows':[
                 {'lot':'A','food':'Barley soup','category':'soup_or_stew',
                  'when':'2026-03-02T10:00:00Z','entry':'cooked'},
                 {'lot':'B','when':'yesterday','entry':'reading','temperature':'70'}]}
                """)
            .json();
    assertThat(check.at("/lots").findValuesAsText("food")).containsExactly("Barley soup");
    assertThat(check.at("/problems").findValuesAsText("pointer"))
        .contains("/rows/1/when", "/rows/1/temperature");
  }

  /** Two days used of seven: FDA Food Code 2022 3-501.17(A) and (B), both days counted. */
  @Test
  void keeping_is_answered_from_dates_alone() {
    JsonNode keep =
        served
            .post(
                "/api/v1/keeping",
                "{'category':'soup_or_stew','made':'2026-03-03','frozen':'2026-03-04'}")
            .json();
    assertThat(keep.at("/keeping/daysLeftWhenThawed").asInt()).isEqualTo(5);
    assertThat(keep.at("/keeping/dateMarkLastDay").isNull()).isTrue();
    assertThat(keep.at("/ruleSet/id").asText()).isEqualTo("us-food-code-2022");
    assertThat(keep.at("/source").asText()).isNotEmpty();
  }

  @Test
  void the_keeping_list_is_listed() {
    JsonNode list = served.get("/api/v1/keeping?limit=200").json();
    assertThat(list.at("/items").findValuesAsText("category")).contains("soup_or_stew");
    assertThat(served.get("/api/v1/keeping?limit=1").json().at("/next").isNull()).isFalse();
  }

  @Test
  void rule_sets_are_listed_and_shown_with_their_citations() {
    JsonNode list = served.get("/api/v1/rule-sets").json();
    assertThat(list.at("/items").findValuesAsText("id")).contains("us-food-code-2022", "us-home");
    JsonNode set = served.get("/api/v1/rule-sets/us-food-code-2022").json();
    assertThat(set.at("/inUse").asBoolean()).isTrue();
    assertThat(set.at("/settings").findValuesAsText("key")).contains("corrective-reheats");
    JsonNode rule = rule(set, "cooling.cooked.first-stage");
    assertThat(rule.at("/limit").asText()).isEqualTo("70 °F (21 °C) within 2 h");
    assertThat(rule.at("/figures"))
        .isEqualTo(
            Served.json(
                """
                {'from':{'c':57,'f':135,'passes':'at'},'to':{'c':21,'f':70,'passes':'at'},
                 'within':'PT2H'}
                """));
    assertThat(rule.at("/citation/text").asText()).isEqualTo("3-501.14(A)(1)");
  }

  private static JsonNode rule(JsonNode set, String id) {
    return StreamSupport.stream(set.at("/rules").spliterator(), false)
        .filter(rule -> rule.at("/id").asText().equals(id))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void a_local_rule_set_shows_what_it_changes(@TempDir Path other) {
    Path local = Path.of("sample-logs/rules");
    try (Served county =
        Served.in(other, Server.Options.local(), Served.library(Optional.of(local)))) {
      JsonNode set = county.get("/api/v1/rule-sets/example-county").json();
      assertThat(set.at("/extends").asText()).isEqualTo("us-food-code-2022");
      JsonNode rule = rule(set, "cold-holding.ordinary");
      assertThat(rule.at("/changed").asBoolean()).isTrue();
      assertThat(rule.at("/limit").asText()).contains("45 °F");
      assertThat(rule.at("/instead/limit").asText()).contains("41 °F");
      assertThat(rule(set, "hot-holding.ordinary").at("/changed").asBoolean()).isFalse();
    }
  }

  @Test
  void the_page_shows_what_is_out_what_is_due_and_who_decides() {
    twoTroubles();
    served.post("/api/v1/lots", "{'lot':'S-3','food':'Rice','category':'soup_or_stew'}");
    served.post(
        "/api/v1/lots/S-3/entries",
        "{'when':'2026-03-03T12:00:00-07:00','entry':'cooked','temperature':'200F'}");
    Reply page = served.get("/", "Accept", "text/html,*/*;q=0.8");
    assertThat(page.header("Content-Type")).startsWith("text/html");
    assertThat(page.text())
        .containsSubsequence(
            "Out</span>", "Barley soup", "S-1", "Not shown</span>", "Barley soup", "S-2")
        .containsSubsequence("14:00", "Rice", "S-3")
        .contains("FDA Food Code 2022", "local health authority decides")
        .doesNotContain("<script>");
  }

  @Test
  void head_answers_as_get_does_without_the_body() {
    Reply head =
        served.send(served.request("/api/v1/kitchen").method("HEAD", BodyPublishers.noBody()));
    assertThat(head.status()).isEqualTo(200);
    assertThat(head.text()).isEmpty();
  }
}
