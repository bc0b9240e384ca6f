package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/**
 * A phone that loses the kitchen's computer, over plain HTTP on a name of the kitchen's network.
 */
class OfflineIT extends PhoneStories {
  private Server again;

  @AfterEach
  void stopAgain() {
    if (again != null) {
      again.stop();
      again = null;
    }
  }

  private void loseTheLine() {
    served().server().stop();
  }

  private void lineIsBack() {
    again = Server.start(served().kitchen(), Browser.options(port()));
  }

  private JsonNode entries() {
    return served().get("/api/v1/lots/S-1/entries").json().at("/items");
  }

  @Test
  void the_name_gives_what_plain_http_gives_and_no_more() {
    open("/");
    assertThat(phone().script("return window.isSecureContext")).isEqualTo(false);
    assertThat(phone().script("return 'serviceWorker' in navigator")).isEqualTo(false);
    assertThat(phone().script("return 'randomUUID' in crypto")).isEqualTo(false);
  }

  @Test
  void a_reading_taken_without_the_line_waits_and_is_sent_once_with_its_time() {
    served().cookSoup("S-1");
    open("/");
    loseTheLine();
    phone().type("input[name=temperature]", "150");
    phone().tapText("Save");
    phone().waitFor("Waiting to be sent: 1");
    assertThat(phone().text()).contains("Kept on this phone", "is lost");
    assertThat(phone().touches()).isLessThanOrEqualTo(3);
    Instant taken = served().now();

    served().at("2026-03-03T17:35:00Z");
    lineIsBack();
    phone().waitFor("Sent: S-1 150");
    assertThat(phone().text()).doesNotContain("Waiting to be sent", "is lost");
    open("/");
    assertThat(entries().findValuesAsText("temperature")).containsExactly("180 °F", "150 °F");
    Instant when = OffsetDateTime.parse(entries().at("/1/when").asText()).toInstant();
    assertThat(Duration.between(taken, when)).isBetween(Duration.ZERO, Duration.ofMinutes(2));
    assertThat(phone().script("return localStorage.getItem('chillwright-outbox')")).isEqualTo("[]");
  }

  @Test
  void what_waits_outlives_the_page_and_several_wait_in_order() {
    served().cookSoup("S-1");
    open("/");
    loseTheLine();
    for (String figure : new String[] {"150", "145", "140"}) {
      phone().type("input[name=temperature]", figure);
      phone().tapText("Save");
      phone().waitFor("Kept on this phone");
    }
    phone().waitFor("Waiting to be sent: 3");
    phone().openAddress("about:blank");
    lineIsBack();
    open("/lots/S-1");
    phone().waitFor("Sent: S-1 140");
    assertThat(entries().findValuesAsText("temperature"))
        .containsExactly("180 °F", "150 °F", "145 °F", "140 °F");
  }

  /** The line goes dead after the reading was stored, before the phone heard of it. */
  @Test
  void what_was_stored_unheard_is_not_stored_again() {
    served().cookSoup("S-1");
    open("/");
    phone()
        .script(
            """
            const real = window.fetch;
            window.fetch = async (...asked) => {
              await real(...asked);
              throw new TypeError('dead');
            };
            """);
    phone().type("input[name=temperature]", "150");
    phone().tapText("Save");
    phone().waitFor("Waiting to be sent: 1");
    assertThat(entries()).hasSize(2);
    phone().reload();
    phone().waitFor("Sent: S-1 150");
    assertThat(entries()).hasSize(2);
  }

  @Test
  void two_quick_touches_are_one_reading() {
    served().cookSoup("S-1");
    open("/");
    phone().type("input[name=temperature]", "150");
    phone()
        .script(
            "const b = document.querySelector('.quick button'); b.click(); b.click(); b.click()");
    phone().waitFor("Saved: reading, 150 °F");
    assertThat(entries()).hasSize(2);
  }

  @Test
  void what_was_refused_after_waiting_is_said_and_can_be_put_away() {
    served().cookSoup("S-1");
    open("/");
    loseTheLine();
    phone().type("input[name=temperature]", "15O");
    phone().tapText("Save");
    phone().waitFor("Waiting to be sent: 1");
    lineIsBack();
    phone().waitFor("This was not taken");
    assertThat(phone().text()).contains("S-1 15O °F", "After the number goes F or C");
    phone().tapText("Forget it");
    assertThat(phone().text()).doesNotContain("This was not taken");
    assertThat(entries()).hasSize(1);
  }

  /** The soup read 180 °F a quarter of an hour before, so 100 °F is asked about. */
  @Test
  void what_is_asked_about_later_shows_why_and_only_has_to_be_confirmed() {
    served().cookSoup("S-1");
    open("/");
    loseTheLine();
    phone().type("input[name=temperature]", "100");
    phone().tapText("Save");
    phone().waitFor("Waiting to be sent: 1");
    Instant taken = served().now();
    served().at("2026-03-03T17:55:00Z");
    lineIsBack();
    phone().waitFor("This was not taken");
    assertThat(phone().find("#line").getText()).contains("S-1 100 °F", "Barley", "180 °F");
    assertThat(entries()).hasSize(1);

    phone().tapText("Look at it and save it");
    phone().waitForAddress("/lots/S-1?");
    assertThat(phone().find("#temperature").getDomProperty("value")).isEqualTo("100");
    phone().tap("input[name=sure]");
    phone().tap("#entry button.main");
    phone().waitFor("Saved: reading, 100 °F");
    assertThat(entries().findValuesAsText("temperature")).containsExactly("180 °F", "100 °F");
    Instant when = OffsetDateTime.parse(entries().at("/1/when").asText()).toInstant();
    assertThat(Duration.between(when, taken).abs()).isLessThan(Duration.ofMinutes(2));
    assertThat(phone().text()).doesNotContain("This was not taken");
  }

  @Test
  void a_reading_of_the_round_waits_too() {
    served().kitchen().setUp().place(Map.of("name", "Walk-in", "kind", "refrigerator"));
    open("/day");
    loseTheLine();
    phone().type("input[name=temperature]", "39");
    phone().tapText("Save");
    phone().waitFor("Waiting to be sent: 1");
    Instant taken = served().now();

    served().at("2026-03-03T17:35:00Z");
    lineIsBack();
    phone().waitFor("Sent: Walk-in 39");
    JsonNode readings = served().get("/api/v1/readings").json().at("/items");
    assertThat(readings.findValuesAsText("temperature")).containsExactly("39 °F");
    Instant when = OffsetDateTime.parse(readings.at("/0/when").asText()).toInstant();
    assertThat(Duration.between(taken, when)).isBetween(Duration.ZERO, Duration.ofMinutes(2));
  }

  @Test
  void a_reading_of_the_round_that_was_refused_leads_back_to_the_day() {
    served().kitchen().setUp().place(Map.of("name", "Walk-in", "kind", "refrigerator"));
    open("/day");
    loseTheLine();
    phone().type("input[name=temperature]", "3O");
    phone().tapText("Save");
    phone().waitFor("Waiting to be sent: 1");
    lineIsBack();
    phone().waitFor("This was not taken");
    assertThat(phone().text()).contains("Walk-in 3O °F");
    phone().tapText("Look at it and save it");
    phone().waitForAddress("/day?");
    assertThat(phone().find("input[name=temperature]").getDomProperty("value")).isEqualTo("3O");
    assertThat(phone().find("input[name=when]").getDomProperty("value")).startsWith("2026-03-03T");
    phone().find("input[name=temperature]").clear();
    phone().type("input[name=temperature]", "30");
    phone().tapText("Save");
    phone().waitFor("30 °F");
    assertThat(phone().script("return localStorage.getItem('chillwright-outbox')")).isEqualTo("[]");
  }

  @Test
  void a_phone_whose_clock_is_wrong_counts_by_the_kitchens() {
    served().cookSoup("S-1");
    open("/");
    phone().waitFor("1 h 4");
  }
}
