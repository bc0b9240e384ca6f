package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Faults as a person sees them who opened an address in a browser. The statuses are those of RFC
 * 9110; which form of an answer is wanted is told by its section 12.5.1.
 */
class FaultPagesTest {
  /** What browsers send when somebody opens an address. */
  private static final String BROWSER = "text/html,application/xhtml+xml,*/*;q=0.8";

  private static Served served;

  @BeforeAll
  static void open(@TempDir Path folder) {
    served = Served.in(folder);
    served.cookSoup("S-1");
    served.kitchen().setUp().name(Map.of("name", "Larch Street"));
  }

  @AfterAll
  static void close() {
    served.close();
  }

  private static Reply page(Reply reply, int status) {
    assertThat(reply.status()).as(reply.text()).isEqualTo(status);
    assertThat(reply.header("Content-Type")).startsWith("text/html");
    assertThat(reply.header("Content-Security-Policy")).contains("default-src 'none'");
    assertThat(reply.header("Cache-Control")).isEqualTo("no-store");
    assertThat(PageText.inline(reply.text())).isEmpty();
    assertThat(reply.text()).contains("<h1>").doesNotContain("Exception", "problems");
    return reply;
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({"/nothing", "/lot/S-1", "/lots/S-1/x", "/ON-HAND", "/api"})
  void an_unknown_address_has_a_page(String address) {
    Reply reply = page(served.get(address, "Accept", BROWSER), 404);
    assertThat(reply.text()).contains("no page at this address", "href=\"/\"", "Larch Street");
  }

  @Test
  void it_is_told_in_the_language_of_the_visitor() {
    Reply reply = served.get("/nothing", "Accept", BROWSER, "Accept-Language", "es-MX,es;q=0.9");
    assertThat(page(reply, 404).text()).contains("lang=\"es\"", "No hay ninguna página");
  }

  @Test
  void a_program_gets_a_problem_document_as_ever() {
    served.get("/nothing").problem(404);
    served.get("/nothing", "Accept", "application/json").problem(404);
    served.get("/nothing", "Accept", "*/*").problem(404);
    served.get("/api/v1/nothing", "Accept", BROWSER).problem(404);
  }

  @Test
  void an_address_that_only_takes_forms_says_so() {
    Reply reply = page(served.get("/kitchen/name", "Accept", BROWSER), 405);
    assertThat(reply.text()).contains("only takes a form");
    assertThat(reply.header("Allow")).isEqualTo("POST");
  }

  /** A page elsewhere that has its own name lead here must not learn whose kitchen it is. */
  @Test
  void who_calls_it_by_another_name_learns_what_to_do_and_nothing_else() throws IOException {
    String answer =
        served.raw(
            "GET / HTTP/1.1\r\nHost: elsewhere.example\r\nConnection: close\r\nAccept: "
                + BROWSER
                + "\r\n\r\n");
    assertThat(answer)
        .startsWith("HTTP/1.1 403 ")
        .contains("text/html", "--name")
        .doesNotContain("Larch Street", "elsewhere.example", "Food Code");
  }

  @Test
  void a_form_without_the_key_is_sent_to_where_the_key_is_given(@TempDir Path other) {
    Server.Options guarded = new Server.Options("127.0.0.1", 0, List.of(), true);
    try (Served closed = Served.in(other, guarded)) {
      closed.kitchen().accessKeys().makeFirst();
      Reply reply =
          closed.send(
              closed
                  .request("/lots/S-1/entries", "Accept", BROWSER)
                  .header("Content-Type", "application/x-www-form-urlencoded")
                  .POST(BodyPublishers.ofString("entry=reading")));
      assertThat(page(reply, 401).text()).contains("href=\"/enter\"", "Nothing was stored");
    }
  }

  /** The file under a kitchen was closed: a number is told, and no word of the cause. */
  @Test
  void a_broken_service_tells_a_number(@TempDir Path other) {
    try (Served broken = Served.in(other)) {
      broken.kitchen().close();
      Reply reply = page(broken.get("/", "Accept", BROWSER), 500);
      assertThat(reply.text()).containsPattern("number [0-9a-f]{8}");
    }
  }
}
