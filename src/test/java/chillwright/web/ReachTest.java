package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What labels lead to, and who may read the calendar of deadlines. */
class ReachTest {
  private static final Pattern FEED = Pattern.compile("/deadlines\\.ics\\?[A-Za-z0-9=&;_-]+");

  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void open() {
    served = Served.in(folder, Server.Options.local());
    served.cookSoup("S-1");
    visit = new Visit(served);
    visit.open("/kitchen");
  }

  @AfterEach
  void close() {
    served.close();
  }

  @Test
  void labels_of_a_loopback_name_are_warned_of_until_an_address_is_given() {
    assertThat(visit.open("/lots/S-1").text()).contains("would lead a phone to itself");
    assertThat(visit.open("/kitchen").text()).contains("Only this computer knows that name");
    Reply saved = visit.submit("/kitchen/address", "address", "HTTP://Kitchen-PC:8080/");
    assertThat(Visit.target(saved)).isEqualTo("/kitchen#reach");
    assertThat(visit.open("/kitchen").text())
        .contains("http://kitchen-pc:8080")
        .doesNotContain("Only this computer knows that name");
    assertThat(visit.open("/lots/S-1").text()).doesNotContain("would lead a phone to itself");
    assertThat(served.get("/api/v1/kitchen").json().at("/address").asText())
        .isEqualTo("http://kitchen-pc:8080");
    assertThat(served.get("/deadlines.ics").text().replace("\r\n ", ""))
        .contains("URL:http://kitchen-pc:8080/lots/S-1");
    visit.submit("/kitchen/address", "address", "");
    assertThat(served.get("/api/v1/kitchen").json().at("/address").isNull()).isTrue();
  }

  /** RFC 6761 6.3 and RFC 1122 3.2.1.3 for names of the machine itself; RFC 3986 for the rest. */
  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "http://localhost:8080, loopback",
    "http://127.0.0.1:8080, loopback",
    "http://127.9.9.9, loopback",
    "http://pc.localhost, loopback",
    "http://[::1]:8080, loopback",
    "http://0.0.0.0:8080, loopback",
    "kitchen-pc, bad-address",
    "kitchen-pc:8080, bad-address",
    "ftp://kitchen-pc, bad-address",
    "http://kitchen-pc/lots, bad-address",
    "http://kitchen-pc?x=1, bad-address",
    "http://kitchen-pc#x, bad-address",
    "http://me@kitchen-pc, bad-address",
    "http://kitchen-pc:70000, bad-address",
    "http://kitchen pc, bad-address",
    "javascript:alert(1), bad-address"
  })
  void an_address_that_a_phone_cannot_open_is_refused(String address, String code) {
    Reply refused =
        served.send(
            served
                .request("/api/v1/kitchen/address", "Content-Type", "application/json")
                .PUT(BodyPublishers.ofString("{\"address\":\"" + address + "\"}")));
    assertThat(refused.problem(422).at("/problems/0/code").asText()).isEqualTo(code);
    assertThat(visit.submit("/kitchen/address", "address", address).status()).isEqualTo(422);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"http://192.0.2.7:8080", "https://cold.example", "http://[2001:db8::7]:8080"})
  void numbers_and_names_of_a_network_are_taken(String address) {
    assertThat(visit.submit("/kitchen/address", "address", address).status()).isEqualTo(303);
    assertThat(visit.open("/kitchen").text()).contains(address);
  }

  @Test
  void without_an_access_key_the_calendar_is_a_plain_link() {
    assertThat(visit.open("/").text()).contains("href=\"/deadlines.ics?language=en\"");
    assertThat(visit.open("/kitchen").text())
        .contains("href=\"/deadlines.ics?language=en\"")
        .doesNotContain("/kitchen/calendar\"");
    assertThat(served.get("/deadlines.ics?language=es").text()).contains("BEGIN:VCALENDAR");
  }

  @Test
  void with_an_access_key_the_calendar_has_a_key_of_its_own(@TempDir Path other) {
    Server.Options guarded = new Server.Options("127.0.0.1", 0, List.of(), true);
    try (Served closed = Served.in(other, guarded)) {
      String access = closed.kitchen().accessKeys().makeFirst().orElseThrow();
      Visit manager = new Visit(closed);
      manager.open("/enter");
      manager.submit("/enter", "key", access);
      assertThat(manager.open("/").text()).contains("href=\"/kitchen#calendar\"");
      manager.open("/kitchen");
      String feed = feed(manager.submit("/kitchen/calendar"));
      assertThat(manager.open("/kitchen").text()).doesNotContain(feed);

      assertThat(closed.get(feed).text()).startsWith("BEGIN:VCALENDAR");
      assertThat(closed.get("/deadlines.ics").status()).isEqualTo(303);
      assertThat(closed.get("/deadlines.ics?key=x").status()).isEqualTo(303);
      assertThat(closed.get("/deadlines.ics?key=" + access).status()).isEqualTo(303);
      String key = feed.replaceFirst(".*key=", "");
      PageSecurityTest.plan(closed);
      String tasks = "/plans/" + PageSecurityTest.PLAN + "/tasks.ics";
      assertThat(closed.get(tasks + "?key=" + key).text()).startsWith("BEGIN:VCALENDAR");
      assertThat(closed.get(tasks).status()).isEqualTo(303);
      assertThat(closed.get("/plans/" + PageSecurityTest.PLAN + "?key=" + key).status())
          .isEqualTo(303);
      assertThat(closed.get("/lots?key=" + key).status()).isEqualTo(303);
      assertThat(closed.get("/api/v1/lots", "Authorization", "Bearer " + key).status())
          .isEqualTo(401);

      String second = feed(manager.submit("/kitchen/calendar"));
      assertThat(closed.get(feed).status()).isEqualTo(303);
      assertThat(closed.get(second).status()).isEqualTo(200);
      manager.submit("/kitchen/calendar/end");
      assertThat(closed.get(second).status()).isEqualTo(303);
    }
  }

  private static String feed(Reply page) {
    Matcher found = FEED.matcher(page.text());
    assertThat(found.find()).as(page.text()).isTrue();
    return found.group().replace("&amp;", "&");
  }
}
