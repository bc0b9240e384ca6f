package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the server under us refuses reaches a browser as a page. Statuses: RFC 9110, RFC 6585. */
class ServerFaultPagesTest {
  private static final String BROWSER = "Accept: text/html,application/xhtml+xml,*/*;q=0.8";

  private Served served;

  @BeforeEach
  void open(@TempDir Path folder) {
    served = Served.in(folder);
  }

  @AfterEach
  void close() {
    served.close();
  }

  private static void safe(String answer) {
    assertThat(answer)
        .contains("X-Content-Type-Options: nosniff", "X-Frame-Options: DENY")
        .contains("Cache-Control: no-store", "frame-ancestors 'none'")
        .doesNotContain("Exception", "jetty", "Jetty");
  }

  @ParameterizedTest(name = "{0} {1}")
  @CsvSource({"GET, /lots/a%2Fb, 400", "DELETE, /lots, 405", "FOO, /, 501"})
  void a_browser_gets_a_page_and_a_program_a_problem(String method, String address, int status)
      throws IOException {
    String page = served.rawRequest(method, address, BROWSER, "Accept-Language: es");
    assertThat(page).startsWith("HTTP/1.1 " + status).contains("text/html", "<html lang=\"es\"");
    safe(page);
    String problem = served.rawRequest(method, address, "Accept: application/json");
    Served.problem(problem, status);
    safe(problem);
  }

  @Test
  void what_is_too_long_is_a_page_where_its_headers_were_read() throws IOException {
    String address = served.rawRequest("GET", "/" + "a".repeat(20_000), BROWSER);
    assertThat(address).startsWith("HTTP/1.1 4").doesNotStartWith("HTTP/1.1 404");
    safe(address);
    String header = served.rawRequest("GET", "/", BROWSER, "X-Long: " + "a".repeat(20_000));
    assertThat(header).startsWith("HTTP/1.1 431");
    safe(header);
  }

  /** A request line that cannot be read ends the reading before the headers that ask for a page. */
  @Test
  void a_line_that_cannot_be_read_is_told_as_to_a_program() throws IOException {
    String line = served.raw("nonsense\r\n\r\n");
    Served.problem(line, 400);
    safe(line);
    String encoding = served.rawRequest("GET", "/lots/%zz", BROWSER);
    Served.problem(encoding, 400);
    safe(encoding);
  }

  @Test
  void a_form_that_is_too_large_is_told_on_a_page() throws IOException {
    String body = "note=" + "a".repeat(2_000_000);
    String head =
        served.head(
            "POST",
            "/new-batch",
            BROWSER,
            "Content-Type: application/x-www-form-urlencoded",
            "Content-Length: " + body.length());
    String answer = served.raw(head + "\r\n" + body);
    assertThat(answer).startsWith("HTTP/1.1 4").contains("text/html", "<html");
    safe(answer);
  }
}
