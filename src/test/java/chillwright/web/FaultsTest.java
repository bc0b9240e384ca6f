package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
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

  private static JsonNode problem(Reply reply, int status) {
    assertThat(reply.status()).as(reply.text()).isEqualTo(status);
    assertThat(reply.header("Content-Type")).startsWith("application/problem+json");
    JsonNode problem = reply.json();
    assertThat(problem.at("/status").asInt()).isEqualTo(status);
    assertThat(problem.at("/title").asText()).isNotEmpty();
    assertThat(problem.at("/detail").asText()).isNotEmpty();
    assertThat(problem.at("/problems")).isNotEmpty();
    return problem;
  }

  /** The same of an answer read off the wire. */
  private static JsonNode problem(String raw, int status) {
    assertThat(raw).startsWith("HTTP/1.1 " + status + " ").contains("application/problem+json");
    assertThat(raw).doesNotContain("Exception", "at org.", "Jetty", "jetty");
    JsonNode problem = Served.json(raw.substring(raw.indexOf("\r\n\r\n")).strip().replace("'", ""));
    assertThat(problem.at("/status").asInt()).isEqualTo(status);
    assertThat(problem.at("/problems")).isNotEmpty();
    return problem;
  }

  @Test
  void every_fault_of_an_entry_is_told_at_once() {
    JsonNode problem =
        problem(
            served.post(
                "/api/v1/lots/S-1/entries",
                "{'when':'noon','entry':'cooled','temperature':41,'colour':'red','portions':true}"),
            422);
    assertThat(problem.at("/problems").findValuesAsText("code"))
        .contains("bad-time", "unknown-entry", "no-scale", "unknown-field", "wrong-type");
    assertThat(problem.at("/problems").findValuesAsText("pointer"))
        .contains("/when", "/entry", "/temperature", "/colour", "/portions");
  }

  @Test
  void faults_in_a_list_are_named_by_their_place_in_it() {
    JsonNode problem =
        problem(
            served.post(
                "/api/v1/lots/S-1/entries",
                "{'entries':[{'when':'2026-03-03T17:10:00Z','entry':'reading','temperature':'4100F'},7,"
                    + "{'entry':'reading','lot':'S-2','when':'2026-03-03T17:10:00Z'}],'more':1}"),
            422);
    assertThat(problem.at("/problems").findValuesAsText("pointer"))
        .contains("/more", "/entries/0/temperature", "/entries/1", "/entries/2/lot");
  }

  @Test
  void nothing_of_a_request_with_a_fault_is_written() {
    int before = served.get("/api/v1/lots/S-1/entries").json().at("/items").size();
    problem(
        served.post(
            "/api/v1/lots/S-1/entries",
            "{'entries':[{'when':'2026-03-03T17:10:00Z','entry':'cooling'},{'entry':'reading'}]}"),
        422);
    assertThat(served.get("/api/v1/lots/S-1/entries").json().at("/items")).hasSize(before);
  }

  @ParameterizedTest(name = "{1}: {0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          {}                                                   | missing          | /food
          {'food':'x'}                                         | missing          | /category
          {'food':'x','category':'stone'}                      | unknown-category | /category
          {'food':'x','category':'soup_or_stew','portions':0}  | bad-portions     | /portions
          {'food':'x','category':'soup_or_stew','portions':1.5}| bad-portions     | /portions
          {'food':'x','category':'soup_or_stew','lot':'a b'}   | bad-code         | /lot
          {'food':'x','category':'soup_or_stew','lot':7}       | wrong-type       | /lot
          {'food':'x','category':'soup_or_stew','from':['no']} | unknown-source   | /from/0
          {'food':'x','category':'soup_or_stew','from':[1]}    | wrong-type       | /from
          {'food':'x','category':'soup_or_stew','Lot':'A'}     | unknown-field    | /Lot
          {'food':'x\\u0000','category':'soup_or_stew'}        | control-character| /food
          {'food':'x\\ud800','category':'soup_or_stew'}        | not-utf-8        | /food
          []                                                   | wrong-type       |
          """)
  void a_lot_with_a_fault_is_refused(String body, String code, String pointer) {
    JsonNode problem = problem(served.post("/api/v1/lots", body.replace("\\\\", "\\")), 422);
    assertThat(problem.at("/problems/0/code").asText()).isEqualTo(code);
    assertThat(problem.at("/problems/0/where/pointer").asText())
        .isEqualTo(pointer == null ? "" : pointer);
  }

  @Test
  void a_lot_that_exists_is_a_conflict() {
    JsonNode problem =
        problem(
            served.post("/api/v1/lots", "{'lot':'S-1','food':'Soup','category':'soup_or_stew'}"),
            409);
    assertThat(problem.at("/problems/0/where/pointer").asText()).isEqualTo("/lot");
  }

  @ParameterizedTest(name = "{1}: {0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          {'when':'2026-03-03T17:10:00Z','place':'Walk-in'}                                         | missing
          {'when':'2026-03-03T17:10:00Z','temperature':'39F'}                                       | missing
          {'when':'2026-03-03T17:10:00Z','place':'Walk-in','temperature':'39F','lot':'S-1'}         | lot-not-here
          {'when':'2026-03-03T17:10:00Z','place':'Walk-in','temperature':'39F','entry':'chilled'}   | entry-not-here
          {'when':'2026-03-03T17:30:00Z','place':'Walk-in','temperature':'39F'}                     | in-the-future
          {'entries':[]}                                                                            | wrong-type
          {'entries':{}}                                                                            | wrong-type
          """)
  void a_reading_of_a_place_with_a_fault_is_refused(String body, String code) {
    JsonNode problem = problem(served.post("/api/v1/readings", body), 422);
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
          /?x=1                                         | unknown-parameter | x
          """)
  void a_query_with_a_fault_is_refused(String address, String code, String parameter) {
    JsonNode problem = problem(served.get(address), 422);
    assertThat(problem.at("/problems/0/code").asText()).isEqualTo(code);
    assertThat(problem.at("/problems/0/where/parameter").asText()).isEqualTo(parameter);
  }

  @Test
  void every_fault_of_a_query_is_told_at_once() {
    JsonNode problem = problem(served.get("/api/v1/lots?limit=x&verdict=y&z=1&place="), 422);
    assertThat(problem.at("/problems")).hasSize(4);
  }

  @Test
  void a_cursor_of_another_list_is_refused() {
    served.cookSoup("S-9");
    String cursor = served.get("/api/v1/lots?limit=1").json().at("/next").asText();
    problem(served.get("/api/v1/lots?phase=cooked&cursor=" + cursor), 422);
    problem(served.get("/api/v1/due?cursor=" + cursor), 422);
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
    problem(served.get(address), 404);
  }

  @Test
  void entries_of_an_unknown_lot_are_not_found() {
    Reply reply =
        served.post(
            "/api/v1/lots/no-such/entries", "{'when':'2026-03-03T17:10:00Z','entry':'cooked'}");
    assertThat(problem(reply, 404).at("/problems/0/code").asText()).isEqualTo("unknown-lot");
  }

  @ParameterizedTest(name = "{0} {1}")
  @CsvSource({
    "DELETE, /api/v1/lots, 'GET, POST, HEAD'",
    "PUT, /api/v1/lots/S-1, 'GET, HEAD'",
    "PATCH, /api/v1/lots/S-1/entries, 'GET, POST, HEAD'",
    "OPTIONS, /api/v1/due, 'GET, HEAD'",
    "POST, /api/v1/due, 'GET, HEAD'",
    "GET, /api/v1/checks, POST",
    "TRACE, /api/v1/kitchen, 'GET, HEAD'",
  })
  void a_wrong_method_names_the_right_ones(String method, String address, String allowed)
      throws IOException {
    String answer =
        served.raw(
            "%s %s HTTP/1.1\r\nHost: localhost:%d\r\nConnection: close\r\n\r\n"
                .formatted(method, address, served.server().port()));
    problem(answer, 405);
    assertThat(answer).contains("\r\nAllow: " + allowed + "\r\n");
  }

  @Test
  void a_method_nobody_knows_is_not_run() throws IOException {
    for (String method : new String[] {"FOO", "BEFORE", "AFTER", "get"}) {
      String answer =
          served.raw(
              "%s /api/v1/lots HTTP/1.1\r\nHost: localhost:%d\r\nConnection: close\r\n\r\n"
                  .formatted(method, served.server().port()));
      problem(answer, 501);
    }
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "/api/v1/lots, text/html",
    "/api/v1/lots, application/json;q=0",
    "/api/v1/reports/out-of-compliance, application/pdf",
    "/api/v1/openapi.json, text/*",
    "/, application/json"
  })
  void a_form_that_is_not_offered_is_not_acceptable(String address, String accept) {
    problem(served.get(address, "Accept", accept), 406);
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(
      strings = {
        "*/*",
        "application/*",
        "application/json",
        "text/html, application/json;q=0.5",
        "text/csv;q=0.1, */*",
        "application/json; charset=utf-8"
      })
  void json_is_given_where_it_will_do(String accept) {
    Reply reply = served.get("/api/v1/reports/out-of-compliance", "Accept", accept);
    assertThat(reply.header("Content-Type")).isEqualTo("application/json");
  }

  @Test
  void a_table_is_given_where_it_is_wanted_more() {
    Reply reply =
        served.get(
            "/api/v1/reports/out-of-compliance", "Accept", "application/json;q=0.8, text/csv");
    assertThat(reply.header("Content-Type")).startsWith("text/csv");
  }

  @ParameterizedTest(name = "type {0}.")
  @ValueSource(
      strings = {
        "text/plain",
        "application/x-www-form-urlencoded",
        "multipart/form-data; boundary=x",
        "application/json; charset=iso-8859-1",
        "application/jsonp",
        ""
      })
  void a_body_that_is_not_sent_as_json_is_refused(String type) {
    var request =
        served
            .request("/api/v1/lots")
            .POST(BodyPublishers.ofString("{\"food\":\"x\",\"category\":\"soup_or_stew\"}"));
    Reply reply = served.send(type.isEmpty() ? request : request.header("Content-Type", type));
    assertThat(problem(reply, 415).at("/problems/0/where/header").asText())
        .isEqualTo("Content-Type");
    assertThat(reply.header("Accept-Post")).isEqualTo("application/json");
  }

  @Test
  void a_packed_body_is_refused() {
    problem(served.post("/api/v1/lots", "{}", "Content-Encoding", "gzip"), 415);
  }

  @ParameterizedTest(name = "{1} at {2}: {0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          {'food':'x',,}                     | not-json   | 1
          {'food':                           | not-json   | 1
          {'food':'x'} trailing              | not-json   | 1
          {food:1}                           | not-json   | 1
          {'portions':01}                    | not-json   | 1
          {'portions':NaN}                   | not-json   | 1
          {'food':'x','food':'y'}            | doubled-key| 1
          """)
  void a_body_that_is_not_json_is_not_readable(String body, String code, int line) {
    JsonNode problem = problem(served.post("/api/v1/lots", body), 400);
    assertThat(problem.at("/problems/0/code").asText()).isEqualTo(code);
    assertThat(problem.at("/problems/0/where/line").asInt()).isEqualTo(line);
    assertThat(problem.at("/problems/0/where/column").asInt()).isPositive();
  }

  @Test
  void the_line_of_a_fault_is_told() {
    JsonNode problem = problem(served.post("/api/v1/lots", "{\n'food':'x',\n  oops\n}"), 400);
    assertThat(problem.at("/problems/0/where/line").asInt()).isEqualTo(3);
  }

  @Test
  void an_empty_body_and_broken_bytes_are_not_readable() {
    assertThat(problem(served.post("/api/v1/lots", ""), 400).at("/problems/0/code").asText())
        .isEqualTo("empty-body");
    byte[] latin = "{\"food\":\"Käse\"}".getBytes(StandardCharsets.ISO_8859_1);
    Reply reply = served.postBytes("/api/v1/lots", latin);
    assertThat(problem(reply, 400).at("/problems/0/code").asText()).isEqualTo("not-utf-8");
  }

  @Test
  void deep_nesting_is_not_read() {
    Reply reply =
        served.post("/api/v1/lots", "{'food':" + "[".repeat(50_000) + "]".repeat(50_000) + "}");
    assertThat(problem(reply, 400).at("/problems/0/code").asText()).isEqualTo("too-deep");
    problem(served.post("/api/v1/lots", "{'portions':" + "9".repeat(5000) + "}"), 400);
  }

  @Test
  void a_number_too_large_to_write_out_is_refused_in_short() {
    JsonNode problem =
        problem(
            served.post(
                "/api/v1/lots",
                "{'food':'x','category':'soup_or_stew','portions':1e999999999,'note':1e-999999999}"),
            422);
    assertThat(problem.toString()).hasSizeLessThan(3000);
  }

  @Test
  void a_body_over_a_megabyte_is_too_large() {
    byte[] justFits = body(1_000_000);
    assertThat(served.postBytes("/api/v1/lots", justFits).status()).isEqualTo(422);
    problem(served.postBytes("/api/v1/lots", body(1_000_001)), 413);
    problem(served.postBytes("/api/v1/lots", body(8_000_000)), 413);
  }

  @Test
  void a_body_over_a_megabyte_is_too_large_in_chunks_also() {
    byte[] body = body(1_000_001);
    Reply reply =
        served.send(
            served
                .request("/api/v1/lots", "Content-Type", "application/json")
                .POST(BodyPublishers.ofInputStream(() -> new ByteArrayInputStream(body))));
    problem(reply, 413);
  }

  private static byte[] body(int size) {
    String start = "{\"food\":\"";
    return (start + "x".repeat(size - start.length() - 2) + "\"}").getBytes(StandardCharsets.UTF_8);
  }

  @Test
  void a_body_cut_short_is_told() throws IOException {
    String answer =
        served.raw(
            "POST /api/v1/lots HTTP/1.1\r\nHost: localhost:%d\r\nContent-Type: application/json\r\nTransfer-Encoding: chunked\r\nConnection: close\r\n\r\nzz\r\n{}"
                .formatted(served.server().port()));
    problem(answer, 400);
  }

  /** RFC 3986 section 2.1: a percent sign and two hexadecimal digits. */
  @ParameterizedTest(name = "{0}")
  @ValueSource(
      strings = {
        "/api/v1/lots/%zz",
        "/api/v1/lots/%",
        "/api/v1/lots/%f",
        "/api/v1/lots/%ff",
        "/api/v1/lots/%00",
        "/api/v1/lots/a%2Fb",
        "/api/v1/lots/..%2f..%2fetc",
        "/api/v1/lots/%2e%2e/x",
        "/api/v1//lots",
        "/api/v1/lots?place=%zz",
        "/api/v1/lots?place=%e4",
        "/api/v1/lots?place=%",
        "/api/v1/lots?place=\u00e4",
        "/\u00e4",
        "/api/v1/lots#x",
        "http://elsewhere.example/api/v1/lots"
      })
  void an_address_that_cannot_be_read_is_told_as_every_fault_is(String address) throws IOException {
    problem(served.rawGet(address), 400);
  }

  @Test
  void dots_lead_nowhere() throws IOException {
    problem(served.rawGet("/api/v1/lots/../../../etc/passwd"), 404);
  }

  @Test
  void what_is_too_large_before_the_body_is_told_as_every_fault_is() throws IOException {
    problem(served.rawGet("/" + "a".repeat(20_000)), 414);
    problem(
        served.raw(
            "GET /api/v1/health HTTP/1.1\r\nHost: localhost:%d\r\nX-Long: %s\r\nConnection: close\r\n\r\n"
                .formatted(served.server().port(), "a".repeat(20_000))),
        431);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "NOT HTTP AT ALL\r\n\r\n",
        "GET /api/v1/health HTTP/1.1\r\n\r\n",
        "GET /api/v1/health HTTP/1.1\r\nHost: localhost\r\nHost: localhost\r\n\r\n",
        "POST /api/v1/lots HTTP/1.1\r\nHost: localhost\r\nContent-Length: x\r\n\r\n",
        "POST /api/v1/lots HTTP/1.1\r\nHost: localhost\r\nContent-Length: 2\r\nContent-Length: 3\r\n\r\n{}",
        "POST /api/v1/lots HTTP/1.1\r\nHost: localhost\r\nContent-Length: 2\r\nTransfer-Encoding: chunked\r\n\r\n{}"
      })
  void what_is_no_http_is_told_as_every_fault_is(String request) throws IOException {
    problem(served.raw(request), 400);
  }

  @Test
  void a_wish_for_a_websocket_is_not_granted() throws IOException {
    String answer =
        served.raw(
            "GET /api/v1/health HTTP/1.1\r\nHost: localhost:%d\r\nConnection: Upgrade, close\r\nUpgrade: websocket\r\nSec-WebSocket-Version: 13\r\nSec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==\r\n\r\n"
                .formatted(served.server().port()));
    assertThat(answer).startsWith("HTTP/1.1 200 ").doesNotContain("Set-Cookie");
  }

  @ParameterizedTest(name = "{1}: {0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          {}                                                      | missing          | /rows
          {'rows':{}}                                             | wrong-type       | /rows
          {'rows':[1]}                                            | wrong-type       | /rows/0
          {'rows':[{}],'zone':'Mars/Olympus'}                     | bad-zone         | /zone
          {'rows':[{}],'ruleSet':'none'}                          | unknown-rule-set | /ruleSet
          {'rows':[{}],'at':'noon'}                               | bad-time         | /at
          {'rows':[{}],'at':5}                                    | wrong-type       | /at
          {'rows':[{}],'extra':5}                                 | unknown-field    | /extra
          """)
  void a_check_that_cannot_be_made_is_refused(String body, String code, String pointer) {
    JsonNode problem = problem(served.post("/api/v1/checks", body), 422);
    assertThat(problem.at("/problems/0/code").asText()).isEqualTo(code);
    assertThat(problem.at("/problems/0/where/pointer").asText()).isEqualTo(pointer);
  }

  @ParameterizedTest(name = "{1}: {0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          {}                                                                           | missing          | /category
          {'category':'stone'}                                                         | unknown-category | /category
          {'category':'soup_or_stew','made':'2026-3-3'}                                | bad-date         | /made
          {'category':'soup_or_stew','made':'2026-03-03','frozen':'2026-03-02'}        | impossible-date  | /frozen
          {'category':'soup_or_stew','thawed':'2026-03-02'}                            | impossible-date  | /thawed
          {'category':'soup_or_stew','ruleSet':'none'}                                 | unknown-rule-set | /ruleSet
          {'category':['soup_or_stew']}                                                | wrong-type       | /category
          """)
  void a_question_that_cannot_be_answered_is_refused(String body, String code, String pointer) {
    JsonNode problem = problem(served.post("/api/v1/keeping", body), 422);
    assertThat(problem.at("/problems/0/code").asText()).isEqualTo(code);
    assertThat(problem.at("/problems/0/where/pointer").asText()).isEqualTo(pointer);
  }

  @Test
  void a_fault_of_the_service_is_told_by_its_number_alone(@TempDir Path folder) {
    Served broken = Served.in(folder);
    broken.kitchen().close();
    JsonNode problem = problem(broken.get("/api/v1/lots"), 500);
    assertThat(problem.at("/number").asText()).matches("[0-9a-f]{8}");
    assertThat(problem.at("/detail").asText()).contains(problem.at("/number").asText());
    assertThat(problem.toString()).doesNotContain("Exception", "java", "database");
    assertThat(broken.get("/api/v1/health").status()).isEqualTo(500);
    broken.server().stop();
  }
}
