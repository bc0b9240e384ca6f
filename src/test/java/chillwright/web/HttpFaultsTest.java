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
 * Requests that are faulty as HTTP, in their form, size, encoding or method, as seen from outside:
 * the answers are problem documents too. The statuses are those of RFC 9110.
 */
class HttpFaultsTest {
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

  @ParameterizedTest(name = "{0} {1}")
  @CsvSource({
    "DELETE, /api/v1/lots, 'GET, POST, HEAD'",
    "PUT, /api/v1/lots/S-1, 'GET, HEAD'",
    "PATCH, /api/v1/lots/S-1/entries, 'GET, POST, HEAD'",
    "OPTIONS, /api/v1/due, 'GET, HEAD'",
    "POST, /api/v1/due, 'GET, HEAD'",
    "GET, /api/v1/checks, POST",
    "TRACE, /api/v1/kitchen, 'GET, PUT, HEAD'",
  })
  void a_wrong_method_names_the_right_ones(String method, String address, String allowed)
      throws IOException {
    String answer = served.rawRequest(method, address);
    Served.problem(answer, 405);
    assertThat(answer).contains("\r\nAllow: " + allowed + "\r\n");
  }

  @Test
  void a_method_nobody_knows_is_not_run() throws IOException {
    for (String method : new String[] {"FOO", "BEFORE", "AFTER", "get"}) {
      String answer = served.rawRequest(method, "/api/v1/lots");
      Served.problem(answer, 501);
    }
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "/api/v1/lots, text/html",
    "/api/v1/lots, application/json;q=0",
    "/api/v1/reports/out-of-compliance, application/pdf",
    "/api/v1/openapi.json, text/*"
  })
  void a_form_that_is_not_offered_is_not_acceptable(String address, String accept) {
    served.get(address, "Accept", accept).problem(406);
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
    assertThat(reply.problem(415).at("/problems/0/where/header").asText())
        .isEqualTo("Content-Type");
    assertThat(reply.header("Accept-Post")).isEqualTo("application/json");
  }

  @Test
  void a_packed_body_is_refused() {
    served.post("/api/v1/lots", "{}", "Content-Encoding", "gzip").problem(415);
  }

  @ParameterizedTest(name = "{1} at {2}: {0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          {'food':'x',,} | not-json | 1
          {'food': | not-json | 1
          {'food':'x'} trailing | not-json | 1
          {food:1} | not-json | 1
          {'portions':01} | not-json | 1
          {'portions':NaN} | not-json | 1
          {'food':'x','food':'y'} | doubled-key| 1
          """)
  void a_body_that_is_not_json_is_not_readable(String body, String code, int line) {
    JsonNode problem = served.post("/api/v1/lots", body).problem(400);
    assertThat(problem.at("/problems/0/code").asText()).isEqualTo(code);
    assertThat(problem.at("/problems/0/where/line").asInt()).isEqualTo(line);
    assertThat(problem.at("/problems/0/where/column").asInt()).isPositive();
  }

  @Test
  void the_line_of_a_fault_is_told() {
    JsonNode problem = served.post("/api/v1/lots", "{\n'food':'x',\n  oops\n}").problem(400);
    assertThat(problem.at("/problems/0/where/line").asInt()).isEqualTo(3);
  }

  @Test
  void an_empty_body_and_broken_bytes_are_not_readable() {
    assertThat(served.post("/api/v1/lots", "").problem(400).at("/problems/0/code").asText())
        .isEqualTo("empty-body");
    byte[] latin = "{\"food\":\"Käse\"}".getBytes(StandardCharsets.ISO_8859_1);
    Reply reply = served.postBytes("/api/v1/lots", latin);
    assertThat(reply.problem(400).at("/problems/0/code").asText()).isEqualTo("not-utf-8");
  }

  @Test
  void deep_nesting_is_not_read() {
    Reply reply =
        served.post("/api/v1/lots", "{'food':" + "[".repeat(50_000) + "]".repeat(50_000) + "}");
    assertThat(reply.problem(400).at("/problems/0/code").asText()).isEqualTo("too-deep");
    served.post("/api/v1/lots", "{'portions':" + "9".repeat(5000) + "}").problem(400);
  }

  @Test
  void a_number_too_large_to_write_out_is_refused_in_short() {
    JsonNode problem =
        served
            .post("/api/v1/lots", "{'food':'x','portions':1e999999999,'note':1e-999999999}")
            .problem(422);
    assertThat(problem.toString()).hasSizeLessThan(3000);
  }

  @Test
  void a_body_over_a_megabyte_is_too_large() {
    byte[] justFits = body(1_000_000);
    assertThat(served.postBytes("/api/v1/lots", justFits).status()).isEqualTo(422);
    served.postBytes("/api/v1/lots", body(1_000_001)).problem(413);
    served.postBytes("/api/v1/lots", body(8_000_000)).problem(413);
  }

  @Test
  void a_body_over_a_megabyte_is_too_large_in_chunks_also() {
    byte[] body = body(1_000_001);
    Reply reply =
        served.send(
            served
                .request("/api/v1/lots", "Content-Type", "application/json")
                .POST(BodyPublishers.ofInputStream(() -> new ByteArrayInputStream(body))));
    reply.problem(413);
  }

  private static byte[] body(int size) {
    String start = "{\"food\":\"";
    return (start + "x".repeat(size - start.length() - 2) + "\"}").getBytes(StandardCharsets.UTF_8);
  }

  @Test
  void a_body_cut_short_is_told() throws IOException {
    String answer =
        served.raw(
            served.head(
                    "POST",
                    "/api/v1/lots",
                    "Content-Type: application/json",
                    "Transfer-Encoding: chunked")
                + "\r\nzz\r\n{}");
    Served.problem(answer, 400);
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
    Served.problem(served.rawRequest("GET", address), 400);
  }

  @Test
  void dots_lead_nowhere() throws IOException {
    Served.problem(served.rawRequest("GET", "/api/v1/lots/../../../etc/passwd"), 404);
  }

  @Test
  void what_is_too_large_before_the_body_is_told_as_every_fault_is() throws IOException {
    Served.problem(served.rawRequest("GET", "/" + "a".repeat(20_000)), 414);
    Served.problem(
        served.rawRequest("GET", "/api/v1/health", "X-Long: " + "a".repeat(20_000)), 431);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "NOT HTTP AT ALL\r\n\r\n",
        "GET /api/v1/health HTTP/1.1\r\n\r\n",
        "GET /api/v1/health HTTP/1.1\r\nHost: localhost\r\nHost: localhost\r\n\r\n",
        "POST /api/v1/lots HTTP/1.1\r\nHost: localhost\r\nContent-Length: x\r\n\r\n",
        "POST / HTTP/1.1\r\nHost: localhost\r\nContent-Length: 2\r\nContent-Length: 3\r\n\r\n{}",
        "POST / HTTP/1.1\r\nHost: x\r\nContent-Length: 2\r\nTransfer-Encoding: chunked\r\n\r\n{}"
      })
  void what_is_no_http_is_told_as_every_fault_is(String request) throws IOException {
    Served.problem(served.raw(request), 400);
  }

  @Test
  void a_wish_for_a_websocket_is_not_granted() throws IOException {
    String answer =
        served.rawRequest(
            "GET",
            "/api/v1/health",
            "Connection: Upgrade",
            "Upgrade: websocket",
            "Sec-WebSocket-Version: 13",
            "Sec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==");
    assertThat(answer).startsWith("HTTP/1.1 200 ").doesNotContain("Set-Cookie");
  }
}
