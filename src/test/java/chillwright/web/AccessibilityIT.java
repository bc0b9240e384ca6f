package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Every page on a screen of 360 points: for those who hear it, those who see little, and long
 * names.
 */
class AccessibilityIT {
  private static Served served;
  private static Browser phone;

  @BeforeAll
  static void open(@TempDir Path folder) {
    phone = Browser.start();
    served = Served.in(folder, Browser.options(0));
    PageSecurityTest.plan(served);
    served.cookSoup("OUT-1");
    served.cookSoup("UNSEEN-1");
    batch("FROZEN-1", "Bean stew", "frozen", "Freezer");
    batch("LONG-1", "x".repeat(500), "chilled", "y".repeat(200));
    served.at("2026-03-03T19:10:00Z");
    log(
        "OUT-1",
        "{'when':'2026-03-03T12:05:00-07:00','entry':'reading','temperature':'95F','by':'RO'}");
    log(
        "OUT-1",
        "{'when':'2026-03-03T12:08:00-07:00','entry':'action','note':'discarded','by':'RO'}");
    batch("RUNS-1", "Barley soup", "cooked", "Range");
    batch("RUNS-2", "x".repeat(500), "cooked", "Range");
    String slip =
        log(
            "RUNS-1",
            "{'when':'2026-03-03T12:12:00-07:00','entry':'reading','temperature':'150F'}");
    log(
        "RUNS-1",
        "{'when':'2026-03-03T12:13:00-07:00','entry':'correction','corrects':'%s',".formatted(slip)
            + "'temperature':'145F','note':'slip'}");
  }

  @AfterAll
  static void close() {
    if (phone != null) {
      phone.close();
    }
    if (served != null) {
      served.close();
    }
  }

  @AfterEach
  void asBefore() {
    phone.forget();
    phone.prefer("light");
    phone.asPhone();
  }

  private static void batch(String lot, String food, String word, String place) {
    ObjectNode made = JsonNodeFactory.instance.objectNode();
    made.put("lot", lot).put("food", food).put("category", "soup_or_stew");
    assertThat(
            served
                .postBytes("/api/v1/lots", made.toString().getBytes(StandardCharsets.UTF_8))
                .status())
        .isEqualTo(201);
    String figure = word.equals("cooked") ? "180F" : "10F";
    log(
        lot,
        "{'when':'%s','entry':'%s','temperature':'%s','place':'%s','portions':4}"
            .formatted(served.now(), word, figure, place));
  }

  private static String log(String lot, String entry) {
    Served.Reply reply = served.post("/api/v1/lots/" + lot + "/entries", entry);
    assertThat(reply.status()).as(reply.text()).isEqualTo(201);
    return reply.json().at("/entries/0/id").asText();
  }

  /** Every page that a browser can open, a lot of each kind, and the faults. */
  static List<String> pages() {
    List<String> all = new ArrayList<>();
    PageSecurityTest.pages(served).stream()
        .filter(page -> page.matches("/[a-z-]*"))
        .forEach(all::add);
    all.addAll(
        List.of(
            "/lots/OUT-1",
            "/lots/UNSEEN-1",
            "/lots/FROZEN-1",
            "/lots/LONG-1",
            "/lots/RUNS-1",
            "/lots/NO-SUCH",
            "/nothing",
            "/plans/supper-12",
            "/ahead?question=thawing&weight=12lb&cooking=4h&serve-in=9h",
            "/ways/cooling",
            "/keeps?category=soup_or_stew&made=2026-03-01",
            "/keeps?category=soup_or_stew&made=never&hours=3"));
    return all;
  }

  private static void open(String address) {
    phone.open(served.server().port(), address);
  }

  private static List<String> faults() {
    // What is folded away is there for some, too.
    phone.script("for (const each of document.querySelectorAll('details')) each.open = true");
    return phone.faults();
  }

  @ParameterizedTest
  @ValueSource(strings = {"light", "dark"})
  void no_page_breaks_a_rule(String scheme) {
    phone.prefer(scheme);
    for (String address : pages()) {
      open(address);
      assertThat(faults()).as(scheme + " " + address).isEmpty();
    }
  }

  @Test
  void a_refused_form_breaks_no_rule() {
    open("/lots/RUNS-1");
    phone.type("#temperature", "warm");
    phone.tap("#entry button.main");
    phone.waitFor("warm");
    assertThat(phone.all("[role=alert]")).isNotEmpty();
    assertThat(faults()).isEmpty();
    assertThat(phone.tooWide()).isLessThanOrEqualTo(0);
  }

  /** The rules find what is wrong, or a page without a fault would prove nothing. */
  @Test
  void a_bad_page_is_faulted() {
    String bad =
        "<!doctype html><html><head><title></title></head><body style='color:#aaa;background:#fff'>"
            + "<p>pale</p><img src='x.png'><input><a href='/'></a>"
            + "<button style='width:9px;height:9px;padding:0'></button></body></html>";
    phone.openAddress(
        "data:text/html," + URLEncoder.encode(bad, StandardCharsets.UTF_8).replace("+", "%20"));
    assertThat(phone.faults())
        .extracting(fault -> fault.replaceFirst(":.*", "").strip())
        .contains(
            "color-contrast", "document-title", "html-has-lang", "image-alt", "label", "link-name");
  }

  @ParameterizedTest
  @CsvSource({"en", "es"})
  void no_page_is_wider_than_the_screen(String language) {
    open("/");
    phone.tap(".ways button[value=" + language + "]");
    phone.waitForAddress("/");
    for (String address : pages()) {
      open(address);
      phone.script("for (const each of document.querySelectorAll('details')) each.open = true");
      assertThat(phone.find("html").getDomAttribute("lang")).isEqualTo(language);
      assertThat(phone.tooWide()).as(address).isLessThanOrEqualTo(0);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"light", "dark"})
  void a_tablet_on_the_wall_shows_every_page_whole(String scheme) {
    phone.asTablet();
    phone.prefer(scheme);
    for (String address : pages()) {
      open(address);
      assertThat(phone.tooWide()).as(address).isLessThanOrEqualTo(0);
      assertThat(phone.find("header nav ul").getSize().height).as("one row").isLessThan(60);
    }
    open("/");
    assertThat(faults()).isEmpty();
  }

  @Test
  void on_paper_there_is_no_navigation_and_no_form() {
    for (String address : pages()) {
      open(address);
      phone.asPaper();
      assertThat(phone.find("h1").isDisplayed()).as(address).isTrue();
      assertThat(phone.all("nav, form, .skip")).as(address).noneMatch(one -> one.isDisplayed());
      assertThat(phone.tooWide()).as(address).isLessThanOrEqualTo(0);
    }
  }

  /** What has been drawn stays (W3C Layout Instability API): nothing jumps under a finger. */
  @Test
  void nothing_jumps_while_a_page_is_loaded() {
    for (String address : List.of("/", "/lots/RUNS-1", "/on-hand", "/day", "/keeps")) {
      open(address);
      Object moved =
          phone.script(
              """
              return new Promise(done => {
                let sum = 0;
                new PerformanceObserver(list => {
                  for (const each of list.getEntries()) sum += each.value;
                }).observe({type: 'layout-shift', buffered: true});
                setTimeout(() => done(sum === 0 ? 'nothing' : String(sum)), 400);
              });
              """);
      assertThat(moved).as(address).isEqualTo("nothing");
    }
  }

  /** WCAG 2.2, 2.5.8 asks for 24 points; fingers in wet gloves get 44 where a hand is needed. */
  @Test
  void what_is_touched_most_is_large() {
    for (String address : List.of("/", "/lots/RUNS-1", "/on-hand", "/new-batch")) {
      open(address);
      assertThat(
              phone.all("button, select, input:not([type=hidden], [type=radio], [type=checkbox])"))
          .filteredOn(one -> one.isDisplayed())
          .allMatch(one -> one.getSize().height >= 44);
    }
  }
}
