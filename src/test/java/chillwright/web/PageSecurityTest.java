package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What pages and their forms let nobody do. */
class PageSecurityTest {
  static final String PLAN = "supper-12";

  private static Served served;
  private Visit visit;

  @BeforeAll
  static void open(@TempDir Path folder) {
    served = Served.in(folder);
    served.cookSoup("S-1");
    plan(served);
  }

  @AfterAll
  static void close() {
    served.close();
  }

  @BeforeEach
  void visit() {
    visit = new Visit(served);
    visit.open("/");
  }

  /** Every address that a browser can open, those with a lot in them for a lot that is there. */
  static List<String> pages() {
    return pages(served).stream().map(page -> page.replace("{lot}", "S-1")).toList();
  }

  /** The addresses of pages of a service that need nothing filled in but a lot. */
  static List<String> pages(Served served) {
    return served.server().routes().stream()
        .filter(route -> route.startsWith("GET /") && !route.startsWith("GET /api/"))
        .map(route -> route.substring("GET ".length()))
        .map(route -> route.replace("{plan}", PLAN))
        .map(route -> route.equals("/trace.csv") ? route + "?food=Soup" : route)
        .toList();
  }

  /** Keeps a plan, for the pages of plans. */
  static void plan(Served served) {
    String input =
        "{'serving':'2026-03-20T18:00:00Z','dishes':[{'dish':'Soup','category':'soup_or_stew',"
            + "'route':'chilled','make':[{'step':'simmer','minutes':60}]}]}";
    served.kitchen().plans().save(PLAN, input.replace('\'', '"'));
  }

  private long entries() {
    return served.get("/api/v1/lots/S-1/entries").json().at("/items").size();
  }

  @Test
  void the_pages_are_found() {
    assertThat(pages()).contains("/", "/lots", "/lots/S-1", "/on-hand", "/keeps", "/new-batch");
  }

  @ParameterizedTest
  @MethodSource("pages")
  void a_page_lets_in_nothing_from_elsewhere(String address) {
    Reply page = visit.open(address);
    assertThat(page.status()).isEqualTo(200);
    String policy = page.header("Content-Security-Policy");
    assertThat(policy)
        .contains("default-src 'none'", "frame-ancestors 'none'")
        .doesNotContain("unsafe", "http", "*", "data:", "blob:");
    assertThat(page.header("X-Content-Type-Options")).isEqualTo("nosniff");
    assertThat(page.header("X-Frame-Options")).isEqualTo("DENY");
    assertThat(page.header("Referrer-Policy")).isEqualTo("same-origin");
    if (page.header("Content-Type").startsWith("text/html")) {
      assertThat(policy).contains("form-action 'self'", "base-uri 'none'");
      assertThat(page.header("Cache-Control")).isEqualTo("no-store");
      assertThat(PageText.inline(page.text())).isEmpty();
      assertThat(page.text()).doesNotContain("javascript:");
      assertThat(PageText.files(page.text()))
          .isNotEmpty()
          .allMatch(file -> file.matches("/[^/].*"));
      assertThat(page.text()).startsWith("<!doctype html>").contains("<meta charset=\"utf-8\">");
    }
  }

  @Test
  void a_test_of_what_is_written_into_a_page_finds_it() {
    for (String bad :
        List.of("<script>x</script>", "<p style=\"x\">", "<a onclick=\"x\">", "<style>")) {
      assertThat(PageText.inline(bad)).as(bad).isNotEmpty();
    }
    String good =
        "<script src=\"/kitchen.js\" defer></script><i title=\"' onclick='x\">' onclick='</i>";
    assertThat(PageText.inline(good)).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("pages")
  void a_page_can_be_asked_about(String address) {
    Reply head = served.send(served.request(address).method("HEAD", BodyPublishers.noBody()));
    assertThat(head.status()).isEqualTo(200);
    assertThat(head.text()).isEmpty();
  }

  @Test
  void cookies_are_for_this_service_alone() {
    Reply page = served.get("/");
    assertThat(Visit.setCookies(page))
        .isNotEmpty()
        .allMatch(cookie -> cookie.contains("HttpOnly") && cookie.contains("SameSite=Strict"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"/lots/S-1/entries", "/new-batch", "/ways"})
  void a_form_without_its_token_is_refused_and_nothing_is_stored(String address) {
    long before = entries();
    for (String token : List.of("", "x", "a".repeat(43), "<script>")) {
      Reply refused =
          visit.submit(
              address,
              Map.of(
                  "token",
                  token,
                  "entry",
                  "reading",
                  "temperature",
                  "150",
                  "scale",
                  "F",
                  "food",
                  "Forged",
                  "category",
                  "soup_or_stew",
                  "language",
                  "es"));
      assertThat(refused.status()).as(token).isEqualTo(403);
      assertThat(refused.header("Content-Type")).startsWith("text/html");
      assertThat(refused.text()).contains("Nothing was stored").doesNotContain("<script>");
    }
    assertThat(visit.submit(address, Map.of("entry", "reading")).status()).isEqualTo(403);
    assertThat(entries()).isEqualTo(before);
    assertThat(served.get("/api/v1/lots").json().at("/items").findValuesAsText("food"))
        .doesNotContain("Forged");
    assertThat(visit.cookie("language")).isEmpty();
  }

  @Test
  void the_token_of_another_visit_is_refused() {
    Visit other = new Visit(served);
    other.open("/");
    visit.forget("visit");
    Reply refused = visit.submit("/lots/S-1/entries", "entry", "reading", "temperature", "150F");
    assertThat(refused.status()).isEqualTo(403);
  }

  @Test
  void a_form_sent_from_a_page_elsewhere_is_refused() {
    Reply refused =
        served.send(
            served
                .request(
                    "/lots/S-1/entries",
                    "Origin",
                    "http://elsewhere.example",
                    "Content-Type",
                    "application/x-www-form-urlencoded")
                .POST(BodyPublishers.ofString("entry=reading")));
    assertThat(refused.status()).isEqualTo(403);
  }

  @ParameterizedTest
  @ValueSource(strings = {"/lots/NO-SUCH", "/lots/%3Cscript%3E", "/lots/%E2%80%AEx"})
  void an_unknown_lot_has_a_page_that_says_so(String address) {
    Reply page = visit.open(address);
    assertThat(page.status()).isEqualTo(404);
    assertThat(page.header("Content-Type")).startsWith("text/html");
    assertThat(page.text()).contains("There is no lot", "href=\"/\"").doesNotContain("<script>");
    assertThat(visit.submit(address + "/entries", "entry", "reading").status()).isEqualTo(404);
  }

  /** From a form field an address elsewhere leads nowhere but to the first page. */
  @ParameterizedTest
  @ValueSource(
      strings = {"//elsewhere.example", "https://elsewhere.example/", "/\\elsewhere.example", ""})
  void a_form_leads_nowhere_else(String back) {
    Reply reply = visit.submit("/ways", "language", "es", "back", back);
    assertThat(reply.status()).isEqualTo(303);
    assertThat(Visit.target(reply)).isEqualTo("/");
    assertThat(reply.header("Location")).doesNotContain("elsewhere");
  }
}
