package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What the report shows of a lot that was out: the evidence, what of it was corrected, and what was
 * done. The limit is that of FDA Food Code 2022 3-501.14(A)(1): 57 °C (135 °F) to 21 °C (70 °F)
 * within 2 hours.
 */
class ReportTest {
  private static final String REPORT = "/api/v1/reports/out-of-compliance";
  private static final String ENTRIES = "/api/v1/lots/S-1/entries";

  @TempDir private Path folder;
  private Served served;

  /** Read as 60 °F after two hours, which was a slip: it was 90 °F. */
  @BeforeEach
  void a_reading_is_corrected() {
    served = Served.in(folder);
    served.cookSoup("S-1");
    served.at("2026-03-03T19:30:00Z");
    write("reading", "10:10", "'temperature':'130F','by':'RM'");
    write("reading", "12:15", "'temperature':'60F','id':'r2','by':'RM','probe':'P2'");
    write(
        "correction",
        "12:20",
        "'temperature':'90F','id':'c1','corrects':'r2','by':'MB','note':'another pot'");
  }

  @AfterEach
  void close() {
    served.close();
  }

  private JsonNode write(String word, String time, String cells) {
    Reply reply =
        served.post(
            ENTRIES,
            "{'entry':'%s','when':'2026-03-03T%s:00-07:00',%s}".formatted(word, time, cells));
    assertThat(reply.status()).as(reply.text()).isEqualTo(201);
    return reply.json();
  }

  private static JsonNode ofFirstStage(JsonNode list) {
    return StreamSupport.stream(list.spliterator(), false)
        .filter(item -> item.at("/rule").asText().equals("cooling.cooked.first-stage"))
        .findFirst()
        .orElseThrow();
  }

  private JsonNode trouble() {
    return ofFirstStage(served.get(REPORT).json().at("/items"));
  }

  private static JsonNode withId(JsonNode entries, String id) {
    return StreamSupport.stream(entries.spliterator(), false)
        .filter(entry -> entry.at("/id").asText().equals(id))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void evidence_that_was_corrected_shows_both_values_the_reason_who_and_when() {
    JsonNode out = trouble();
    assertThat(out.at("/verdict").asText()).isEqualTo("out");
    assertThat(out.at("/corrected")).isEqualTo(Served.json("['r2']"));
    JsonNode reading = withId(out.at("/evidence"), "r2");
    assertThat(reading.at("/temperature").asText()).isEqualTo("60 °F");
    assertThat(reading.at("/state").asText()).isEqualTo("corrected");
    assertThat(reading.at("/corrected/temperature").asText()).isEqualTo("90 °F");
    JsonNode correction = reading.at("/corrections/0");
    assertThat(correction.at("/reason").asText()).isEqualTo("another pot");
    assertThat(correction.at("/by").asText()).isEqualTo("MB");
    assertThat(correction.at("/when").asText()).isEqualTo("2026-03-03T12:20:00-07:00");
    assertThat(correction.at("/stands").asBoolean()).isTrue();
  }

  @Test
  void a_finding_says_which_of_its_evidence_was_corrected() {
    JsonNode finding = ofFirstStage(served.get("/api/v1/lots/S-1").json().at("/findings"));
    assertThat(finding.at("/corrected")).isEqualTo(Served.json("['r2']"));
    served.cookSoup("S-2");
    JsonNode other = ofFirstStage(served.get("/api/v1/lots/S-2").json().at("/findings"));
    assertThat(other.at("/corrected")).isEmpty();
  }

  @Test
  void a_finding_of_a_lot_divided_off_says_it_too() {
    served.post("/api/v1/lots", "{'lot':'S-1a','from':['S-1']}");
    JsonNode written =
        served
            .post(
                "/api/v1/lots/S-1a/entries",
                "{'entry':'chilled','when':'2026-03-03T12:25:00-07:00'}")
            .json();
    assertThat(ofFirstStage(written.at("/findings")).at("/corrected"))
        .isEqualTo(Served.json("['r2']"));
  }

  @Test
  void a_correction_of_a_correction_is_shown_at_both() {
    write(
        "correction",
        "12:25",
        "'temperature':'95F','id':'c2','corrects':'c1','by':'RM','note':'95, not 90'");
    JsonNode entries = served.get(ENTRIES).json().at("/items");
    assertThat(withId(entries, "c1").at("/correctedBy")).isEqualTo(Served.json("['c2']"));
    JsonNode again =
        write(
            "correction",
            "12:20",
            "'temperature':'90F','id':'c1','corrects':'r2','by':'MB','note':'another pot'");
    assertThat(again.at("/repeats").asInt()).isOne();
    assertThat(again.at("/entries/0/correctedBy")).isEqualTo(Served.json("['c2']"));
    JsonNode reading = withId(trouble().at("/evidence"), "r2");
    assertThat(reading.at("/corrected/temperature").asText()).isEqualTo("95 °F");
    assertThat(reading.at("/corrections").findValuesAsText("id")).containsExactly("c1", "c2");
  }

  @Test
  void the_table_names_evidence_people_probes_corrections_and_actions() {
    write("discarded", "12:30", "'id':'d1','by':'MB','note':'too slow'");
    Reply csv = served.get(REPORT + "?format=csv");
    assertThat(csv.header("Content-Type")).startsWith("text/csv");
    List<String> lines = csv.text().lines().toList();
    assertThat(lines.get(0))
        .contains(",evidence,evidence_ids,by,probe,corrections,corrective_action,");
    String out =
        lines.stream()
            .filter(line -> line.contains("cooling.cooked.first-stage"))
            .findFirst()
            .orElseThrow();
    assertThat(out)
        .contains("; r2,", "RM,", "; P2,", "reading 90 °F")
        .contains(
            "r2: temperature 90 °F, was 60 °F"
                + " (c1 by MB on 2026-03-03T12:20-07:00: another pot)")
        .contains("discarded too slow,d1,MB,");
  }

  /** What was handed on of food that had missed its limit is told: common practice, no source. */
  @Test
  void what_was_handed_on_of_food_that_was_out_is_told_beside_the_finding() {
    write("portions", "12:05", "'id':'p0','portions':2,'to':'table 4'");
    write("portions", "12:25", "'id':'p1','portions':5,'to':'table 5','by':'MB'");
    write("correction", "12:26", "'corrects':'p1','portions':4,'by':'MB','note':'four'");
    write("portions", "12:27", "'id':'p2','portions':1,'how':'counted'");
    served.post("/api/v1/lots", "{'lot':'S-1a','from':['S-1']}");
    write("portions", "12:28", "'id':'p3','portions':3,'to':'S-1a'");
    served.post(
        "/api/v1/lots/S-1a/entries", "{'entry':'chilled','when':'2026-03-03T12:28:00-07:00'}");
    write("discarded", "12:30", "'id':'d1','by':'MB','note':'too slow'");
    assertThat(trouble().at("/handedOn")).hasSize(1);
    assertThat(trouble().at("/handedOn/0/id").asText()).isEqualTo("p1");
    String told = "Handed on after the limit was missed: portions 4, 12:25, to table 5";
    assertThat(served.get("/record").text()).contains("12:30 by MB, too slow. " + told);
    assertThat(served.get("/record").text()).doesNotContain("table 4");
    assertThat(served.get(REPORT + "?format=csv").text())
        .contains(",2026-03-03T12:25-07:00 portions portions 4 to table 5,p1,");
  }

  @Test
  void a_format_in_the_address_goes_before_the_header() {
    assertThat(served.get(REPORT + "?format=json", "Accept", "text/csv").json().at("/items"))
        .isNotEmpty();
    assertThat(served.get(REPORT + "?format=pdf").problem(422).at("/problems/0/code").asText())
        .isEqualTo("unknown-format");
  }

  /** It went out at noon in Denver, at seven in the evening of that day in UTC. */
  @Test
  void plain_dates_are_days_of_the_kitchen_and_the_last_is_included() {
    assertThat(served.get(REPORT + "?from=2026-03-03&to=2026-03-03").json().at("/items"))
        .isNotEmpty();
    assertThat(served.get(REPORT + "?to=2026-03-02").json().at("/items")).isEmpty();
    assertThat(served.get(REPORT + "?from=2026-03-04").json().at("/items")).isEmpty();
    Reply wrong = served.get(REPORT + "?from=2026-02-30");
    assertThat(wrong.problem(422).at("/problems/0/allowed").asText()).contains("or a date");
    assertThat(served.get("/api/v1/readings?from=2026-03-03&to=2026-03-03").status())
        .isEqualTo(200);
  }

  @Test
  void a_correction_without_a_reason_is_refused() {
    Reply reply =
        served.post(
            ENTRIES,
            "{'entry':'correction','when':'2026-03-03T12:25:00-07:00','corrects':'r2',"
                + "'temperature':'91F'}");
    JsonNode problem = reply.problem(422).at("/problems/0");
    assertThat(problem.at("/where/pointer").asText()).isEqualTo("/note");
    assertThat(problem.at("/says").asText()).contains("reason");
  }

  @Test
  void a_lot_cannot_be_made_known_of_one_that_was_discarded() {
    write("discarded", "12:30", "'by':'MB'");
    Reply reply = served.post("/api/v1/lots", "{'lot':'S-9','from':['S-1']}");
    JsonNode problem = reply.problem(422).at("/problems/0");
    assertThat(problem.at("/code").asText()).isEqualTo("source-discarded");
    assertThat(problem.at("/where/pointer").asText()).isEqualTo("/from/0");
    assertThat(problem.at("/says").asText()).contains("2026-03-03 12:30");
  }

  /** A cook divides 24 portions: those that left the pot are those in the tubs. */
  @Test
  void portions_of_a_divided_lot_add_up() {
    served.post(
        "/api/v1/lots", "{'lot':'D','food':'Barley soup','category':'soup_or_stew','portions':24}");
    String cooked = "{'entry':'cooked','when':'2026-03-03T10:00:00-07:00','temperature':'180F'}";
    served.post("/api/v1/lots/D/entries", cooked);
    served.post(
        "/api/v1/lots/D/entries",
        "{'entry':'portions','when':'2026-03-03T11:00:00-07:00','portions':10,'to':'D-1'}");
    served.post("/api/v1/lots", "{'lot':'D-1','from':['D'],'portions':10}");
    String chilled = "{'entry':'chilled','when':'2026-03-03T11:00:00-07:00'}";
    served.post("/api/v1/lots/D-1/entries", chilled);
    assertThat(left("D")).isEqualTo(14);
    assertThat(left("D-1")).isEqualTo(10);
    assertThat(repeats("D", cooked)).isOne();
    assertThat(repeats("D-1", chilled)).isOne();
    assertThat(left("D") + left("D-1")).isEqualTo(24);
  }

  private int repeats(String lot, String entry) {
    return served.post("/api/v1/lots/" + lot + "/entries", entry).json().at("/repeats").asInt();
  }

  private int left(String lot) {
    return served.get("/api/v1/lots/" + lot).json().at("/portions/left").asInt();
  }
}
