package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Requests with faults, as seen from outside: each answer is a problem document (RFC 9457) that
 * lists every fault, also where the server answers before our code is asked. 400 is not readable,
 * 422 readable but wrong; the other statuses are those of RFC 9110.
 */
class FaultsTest {
  private static Served served;

  @BeforeAll
  static void open(@TempDir Path folder) {
    served = Served.in(folder);
    served.cookSoup("S-1");
  }

  @AfterAll
  static void close() {
    served.close();
  }

  @Test
  void every_fault_of_an_entry_is_told_at_once() {
    JsonNode problem =
        served
            .post(
                "/api/v1/lots/S-1/entries",
                "{'when':'noon','entry':'cooled','temperature':41,'colour':'red','portions':true}")
            .problem(422);
    assertThat(problem.at("/problems").findValuesAsText("code"))
        .contains("bad-time", "unknown-entry", "no-scale", "unknown-field", "wrong-type");
    assertThat(problem.at("/problems").findValuesAsText("pointer"))
        .contains("/when", "/entry", "/temperature", "/colour", "/portions");
  }

  @Test
  void faults_in_a_list_are_named_by_their_place_in_it() {
    JsonNode problem =
        served
            .post(
                "/api/v1/lots/S-1/entries",
                """
                {'entries':[
                  {'when':'2026-03-03T17:10:00Z','entry':'reading','temperature':'4100F'},
                  7,
                  {'entry':'reading','lot':'S-2','when':'2026-03-03T17:10:00Z'}],
                 'more':1}
                """)
            .problem(422);
    assertThat(problem.at("/problems").findValuesAsText("pointer"))
        .contains("/more", "/entries/0/temperature", "/entries/1", "/entries/2/lot");
  }

  @Test
  void more_faults_than_anyone_mends_are_counted() {
    StringBuilder body = new StringBuilder("{'when':'2026-03-03T17:10:00Z','entry':'cooling'");
    for (int i = 0; i < 1500; i++) {
      body.append(",'x").append(i).append("':1");
    }
    JsonNode problem =
        served.post("/api/v1/lots/S-1/entries", body.append('}').toString()).problem(422);
    assertThat(problem.at("/problems")).hasSize(1001);
    assertThat(problem.at("/problems/1000/code").asText()).isEqualTo("more-faults");
    assertThat(problem.at("/problems/1000/given").asText()).isEqualTo("500");
  }

  @Test
  void nothing_of_a_request_with_a_fault_is_written() {
    int before = served.get("/api/v1/lots/S-1/entries").json().at("/items").size();
    served
        .post(
            "/api/v1/lots/S-1/entries",
            "{'entries':[{'when':'2026-03-03T17:10:00Z','entry':'cooling'},{'entry':'reading'}]}")
        .problem(422);
    assertThat(served.get("/api/v1/lots/S-1/entries").json().at("/items")).hasSize(before);
  }

  @ParameterizedTest(name = "{1}: {0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          {} | missing | /food
          {'food':'x'} | missing | /category
          {'food':'x','category':'stone'} | unknown-category | /category
          {'food':'x','category':'soup_or_stew','portions':0} | bad-portions | /portions
          {'food':'x','category':'soup_or_stew','portions':1.5}| bad-portions | /portions
          {'food':'x','category':'soup_or_stew','lot':'a b'} | bad-code | /lot
          {'food':'x','category':'soup_or_stew','lot':7} | wrong-type | /lot
          {'food':'x','category':'soup_or_stew','from':['no']} | unknown-source | /from/0
          {'food':'x','category':'soup_or_stew','from':[1]} | wrong-type | /from
          {'food':'x','category':'soup_or_stew','Lot':'A'} | unknown-field | /Lot
          {'food':'x\\u0000','category':'soup_or_stew'} | control-character| /food
          {'food':'x\\ud800','category':'soup_or_stew'} | not-utf-8 | /food
          []                                                   | wrong-type       |
          """)
  void a_lot_with_a_fault_is_refused(String body, String code, String pointer) {
    JsonNode problem = served.post("/api/v1/lots", body.replace("\\\\", "\\")).problem(422);
    assertThat(problem.at("/problems/0/code").asText()).isEqualTo(code);
    assertThat(problem.at("/problems/0/where/pointer").asText())
        .isEqualTo(pointer == null ? "" : pointer);
  }

  @Test
  void a_lot_that_exists_is_a_conflict() {
    JsonNode problem =
        served
            .post("/api/v1/lots", "{'lot':'S-1','food':'Soup','category':'soup_or_stew'}")
            .problem(409);
    assertThat(problem.at("/problems/0/where/pointer").asText()).isEqualTo("/lot");
  }

  @ParameterizedTest(name = "{1}: {0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          {'when':'2026-03-03T17:10:00Z','place':'Walk-in'} | missing
          {'when':'2026-03-03T17:10:00Z','temperature':'39F'} | missing
          {'when':'2026-03-03T17:10:00Z','place':'W','temperature':'39F','lot':'S-1'} | lot-not-here
          {'when':'2026-03-03T17:10Z','place':'W','entry':'chilled'} | entry-not-here
          {'when':'2026-03-03T17:10:00Z','place':'W','entry':'action'} | missing
          {'when':'2026-03-03T17:30:00Z','place':'Walk-in','temperature':'39F'} | in-the-future
          {'entries':[]} | wrong-type
          {'entries':{}} | wrong-type
          """)
  void a_reading_of_a_place_with_a_fault_is_refused(String body, String code) {
    JsonNode problem = served.post("/api/v1/readings", body).problem(422);
    assertThat(problem.at("/problems/0/code").asText()).isEqualTo(code);
  }

  @ParameterizedTest(name = "{1} {2}: {0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          /api/v1/lots?limit=0                          | bad-limit         | limit
          /api/v1/lots?limit=201                        | bad-limit         | limit
          /api/v1/lots?limit=ten                        | bad-limit         | limit
          /api/v1/lots?limit=-1                         | bad-limit         | limit
          /api/v1/lots?cursor=abc                       | unknown-cursor    | cursor
          /api/v1/lots?cursor=%20%25                    | unknown-cursor    | cursor
          /api/v1/lots?phase=boiling                    | unknown-phase     | phase
          /api/v1/lots?verdict=OUT                      | unknown-verdict   | verdict
          /api/v1/lots?lastDayBefore=3.3.2026           | bad-date          | lastDayBefore
          /api/v1/lots?lastDayBefore=2026-02-30         | bad-date          | lastDayBefore
          /api/v1/lots?place=                           | bad-text          | place
          /api/v1/lots?phase=cooked&phase=cooled        | twice             | phase
          /api/v1/lots?colour=red                       | unknown-parameter | colour
          /api/v1/lots/S-1?colour=red                   | unknown-parameter | colour
          /api/v1/lots/S-1/entries?cursor=sets-1        | unknown-cursor    | cursor
          /api/v1/readings?from=yesterday               | bad-time          | from
          /api/v1/readings?from=2026-03-03T10:00:00     | bad-time          | from
          /api/v1/due?limit=1e2                         | bad-limit         | limit
          /api/v1/reports/out-of-compliance?to=12:00    | bad-time          | to
          /api/v1/kitchen?x                             | unknown-parameter | x
          """)
  void a_query_with_a_fault_is_refused(String address, String code, String parameter) {
    JsonNode problem = served.get(address).problem(422);
    assertThat(problem.at("/problems/0/code").asText()).isEqualTo(code);
    assertThat(problem.at("/problems/0/where/parameter").asText()).isEqualTo(parameter);
  }

  @Test
  void every_fault_of_a_query_is_told_at_once() {
    JsonNode problem = served.get("/api/v1/lots?limit=x&verdict=y&z=1&place=").problem(422);
    assertThat(problem.at("/problems")).hasSize(4);
  }

  @Test
  void a_cursor_of_another_list_is_refused() {
    served.cookSoup("S-9");
    String cursor = served.get("/api/v1/lots?limit=1").json().at("/next").asText();
    served.get("/api/v1/lots?phase=cooked&cursor=" + cursor).problem(422);
    served.get("/api/v1/due?cursor=" + cursor).problem(422);
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(
      strings = {
        "/api/v1/lots/no-such",
        "/api/v1/lots/no-such/entries",
        "/api/v1/lots/%C3%A4",
        "/api/v1/lots/a%20b",
        "/api/v1/rule-sets/no-such",
        "/api/v1/nothing",
        "/api/v1/lots/",
        "/api/v1",
        "/API/V1/lots",
        "/WEB-INF/web.xml"
      })
  void what_is_not_there_is_not_found(String address) {
    served.get(address).problem(404);
  }

  @Test
  void entries_of_an_unknown_lot_are_not_found() {
    Reply reply =
        served.post(
            "/api/v1/lots/no-such/entries", "{'when':'2026-03-03T17:10:00Z','entry':'cooked'}");
    assertThat(reply.problem(404).at("/problems/0/code").asText()).isEqualTo("unknown-lot");
  }

  @ParameterizedTest(name = "{1}: {0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          {} | missing | /rows
          {'rows':{}} | wrong-type | /rows
          {'rows':[1]} | wrong-type | /rows/0
          {'rows':[{}],'zone':'Mars/Olympus'} | bad-zone | /zone
          {'rows':[{}],'ruleSet':'none'} | unknown-rule-set | /ruleSet
          {'rows':[{}],'at':'noon'} | bad-time | /at
          {'rows':[{}],'at':5} | wrong-type | /at
          {'rows':[{}],'extra':5} | unknown-field | /extra
          """)
  void a_check_that_cannot_be_made_is_refused(String body, String code, String pointer) {
    JsonNode problem = served.post("/api/v1/checks", body).problem(422);
    assertThat(problem.at("/problems/0/code").asText()).isEqualTo(code);
    assertThat(problem.at("/problems/0/where/pointer").asText()).isEqualTo(pointer);
  }

  @ParameterizedTest(name = "{1}: {0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          {} | missing | /category
          {'category':'stone'} | unknown-category | /category
          {'category':'soup_or_stew','made':'2026-3-3'} | bad-date | /made
          {'category':'pizza','made':'2026-03-03','frozen':'2026-03-02'} | impossible-date | /frozen
          {'category':'soup_or_stew','thawed':'2026-03-02'} | impossible-date | /thawed
          {'category':'soup_or_stew','ruleSet':'none'} | unknown-rule-set | /ruleSet
          {'category':['soup_or_stew']} | wrong-type | /category
          """)
  void a_question_that_cannot_be_answered_is_refused(String body, String code, String pointer) {
    JsonNode problem = served.post("/api/v1/keeping", body).problem(422);
    assertThat(problem.at("/problems/0/code").asText()).isEqualTo(code);
    assertThat(problem.at("/problems/0/where/pointer").asText()).isEqualTo(pointer);
  }

  @Test
  void a_fault_of_the_service_is_told_by_its_number_alone(@TempDir Path folder) {
    Served broken = Served.in(folder);
    broken.kitchen().close();
    JsonNode problem = broken.get("/api/v1/lots").problem(500);
    assertThat(problem.at("/number").asText()).matches("[0-9a-f]{8}");
    assertThat(problem.at("/detail").asText()).contains(problem.at("/number").asText());
    assertThat(problem.toString()).doesNotContain("Exception", "java", "database");
    assertThat(broken.get("/api/v1/health").status()).isEqualTo(500);
    broken.server().stop();
  }
}
