package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A kitchen that asks for its access key, opened with a browser. */
class EnterTest {
  @TempDir private Path folder;
  private Served served;
  private String key;
  private Visit visit;

  @BeforeEach
  void open() {
    served = Served.in(folder, new Server.Options("127.0.0.1", 0, List.of(), true));
    key = served.kitchen().accessKeys().makeFirst().orElseThrow();
    visit = new Visit(served);
  }

  @AfterEach
  void close() {
    served.close();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"/", "/lots", "/lots/S-1", "/on-hand", "/keeps", "/record", "/kitchen", "/x"})
  void a_page_without_the_key_leads_to_where_it_is_given(String address) {
    Reply page = visit.open(address);
    assertThat(page.status()).isEqualTo(303);
    assertThat(Visit.target(page)).isEqualTo("/enter");
    assertThat(page.text()).isEmpty();
    Reply head = served.send(served.request(address).method("HEAD", BodyPublishers.noBody()));
    assertThat(head.status()).isEqualTo(303);
    assertThat(Visit.target(head)).isEqualTo("/enter");
  }

  @Test
  void the_page_that_asks_for_the_key_is_open_with_its_style_and_script() {
    Reply page = visit.open("/enter");
    assertThat(page.status()).isEqualTo(200);
    assertThat(page.text()).contains("type=\"password\"");
    for (String file : PageText.files(page.text())) {
      assertThat(visit.open(file).status()).as(file).isEqualTo(200);
    }
    Reply head = served.send(served.request("/enter").method("HEAD", BodyPublishers.noBody()));
    assertThat(head.status()).isEqualTo(200);
    assertThat(head.text()).isEmpty();
  }

  @Test
  void the_key_opens_pages_and_the_api() {
    visit.open("/enter");
    Reply entered = visit.submit("/enter", "key", key);
    assertThat(entered.status()).isEqualTo(303);
    assertThat(Visit.target(entered)).isEqualTo("/");
    assertThat(entered.text()).doesNotContain(key);
    assertThat(Visit.setCookies(entered))
        .filteredOn(cookie -> cookie.startsWith("access="))
        .singleElement()
        .asString()
        .contains("HttpOnly", "SameSite=Strict", "Path=/")
        .doesNotContain("Secure");
    Reply page = visit.open("/");
    assertThat(page.status()).isEqualTo(200);
    assertThat(page.text()).doesNotContain(key);
    assertThat(visit.open("/api/v1/lots").status()).isEqualTo(200);
    Reply made =
        visit.submit(
            "/new-batch",
            "food",
            "Barley soup",
            "category",
            "soup_or_stew",
            "entry",
            "cooked",
            "lot",
            "S-1");
    assertThat(made.status()).as(made.text()).isEqualTo(303);
    assertThat(visit.open("/api/v1/lots/S-1").status()).isEqualTo(200);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "wrong", "<script>alert(1)</script>", "wrong key; path=/"})
  void a_wrong_key_is_refused_and_not_repeated(String wrong) {
    visit.open("/enter");
    Reply refused = visit.submit("/enter", "key", wrong);
    assertThat(refused.status()).isEqualTo(403);
    assertThat(refused.text()).contains("role=\"alert\"").doesNotContain("<script>");
    if (!wrong.isEmpty()) {
      assertThat(refused.text()).doesNotContain("value=\"" + wrong, ">" + wrong);
      assertThat(refused.header("Set-Cookie")).doesNotContain(wrong);
    }
    assertThat(visit.cookie("access")).isEmpty();
    assertThat(visit.open("/").status()).isEqualTo(303);
  }

  @Test
  void a_key_with_a_slip_in_it_is_not_repeated_either() {
    visit.open("/enter");
    String slip = key + "x";
    Reply refused = visit.submit("/enter", "key", slip);
    assertThat(refused.status()).isEqualTo(403);
    assertThat(refused.text()).doesNotContain(key);
    assertThat(Visit.setCookies(refused)).noneMatch(cookie -> cookie.contains(key));
  }

  @Test
  void a_form_without_the_key_is_refused_and_nothing_is_stored() {
    visit.open("/enter");
    Map<String, String> batch =
        Map.of("food", "Soup", "category", "soup_or_stew", "entry", "cooked", "lot", "S-1");
    assertThat(visit.submit("/new-batch", batch).status()).isEqualTo(401);
    assertThat(visit.submit("/lots/S-1/entries", Map.of("entry", "reading")).status())
        .isEqualTo(401);
    assertThat(visit.submit("/ways", Map.of("language", "es")).status()).isEqualTo(401);
    Reply lots = visit.open("/api/v1/lots", "Authorization", "Bearer " + key);
    assertThat(lots.json().at("/items")).isEmpty();
  }

  @Test
  void the_api_without_the_key_is_told_so_and_not_led_elsewhere() {
    Reply lots = visit.open("/api/v1/lots");
    assertThat(lots.status()).isEqualTo(401);
    assertThat(lots.header("WWW-Authenticate")).startsWith("Bearer");
    Reply forged = visit.open("/api/v1/lots", "Cookie", "access=" + key + "x");
    assertThat(forged.status()).isEqualTo(401);
    assertThat(forged.text()).doesNotContain(key);
    assertThat(visit.open("/", "Cookie", "access=" + key + "x").status()).isEqualTo(303);
  }

  @Test
  void a_script_may_open_a_page_with_the_key_in_a_header() {
    assertThat(visit.open("/", "Authorization", "Bearer " + key).status()).isEqualTo(200);
    assertThat(visit.open("/", "Authorization", "Bearer " + key + "x").status()).isEqualTo(401);
  }
}
