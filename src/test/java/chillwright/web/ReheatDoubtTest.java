package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * FDA Food Code 2022 3-403.11(A), (D): food reheated for hot holding reaches 165 °F within two
 * hours; (C): food for immediate service may be served at any temperature. 3-501.16(A)(1): held at
 * 135 °F or above. The questions are our own.
 */
class ReheatDoubtTest {
  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void open() {
    served = Served.in(folder);
    served.at("2026-03-06T19:45:00Z");
    served.post(
        "/api/v1/lots", "{'lot':'SOUP','food':'Soup','category':'soup_or_stew','portions':9}");
    log("2026-03-06T08:00", "'entry':'prepared','temperature':'40F'");
    log("2026-03-06T08:10", "'entry':'chilled','temperature':'40F'");
    visit = new Visit(served);
    visit.open("/lots/SOUP");
  }

  @AfterEach
  void close() {
    served.close();
  }

  private void log(String clock, String entry) {
    String when = "'when':'" + clock + ":00-07:00',";
    Reply logged = served.post("/api/v1/lots/SOUP/entries", "{" + when + entry + "}");
    assertThat(logged.status()).as(logged.text()).isEqualTo(201);
  }

  private Reply enter(String... fields) {
    return visit.submit("/lots/SOUP/entries", fields);
  }

  @ParameterizedTest
  @CsvSource({
    "140, F, 422",
    "164, F, 422",
    "165, F, 303",
    "'', F, 422",
    "73, C, 422",
    "74, C, 303",
  })
  void holding_food_hot_is_asked_about_until_its_reheat_is_shown(
      String figure, String scale, int status) {
    log("2026-03-06T12:00", "'entry':'reheating','temperature':'40F'");
    log("2026-03-06T12:30", "'entry':'reading','temperature':'140F'");
    Reply reply = enter("entry", "hot-holding", "temperature", figure, "scale", scale);
    assertThat(reply.status()).as(reply.text()).isEqualTo(status);
    if (status == 422) {
      assertThat(reply.text()).contains("SOUP: nothing shows 165 °F yet", "14:00");
    }
  }

  /** More than 60 °F in a minute is asked about, but of a microwave: common practice, no source. */
  @ParameterizedTest
  @CsvSource({"12:44, '', 422", "12:45, '', 422", "12:41, '', 303", "12:44, microwave, 303"})
  void a_reheat_faster_than_any_stove_is_asked_about(String begun, String how, int status) {
    String said = how.isEmpty() ? "" : ",'how':'" + how + "'";
    log("2026-03-06T" + begun, "'entry':'reheating'" + said + ",'temperature':'35F'");
    Reply reply = enter("entry", "reading", "temperature", "170", "scale", "F");
    assertThat(reply.status()).as(reply.text()).isEqualTo(status);
    if (status == 422) {
      assertThat(reply.text()).contains("35 °F was read at " + begun, "no stove heats food so");
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"portions", "served", "time-control"})
  void so_is_handing_it_on(String word) {
    log("2026-03-06T12:00", "'entry':'reheating','temperature':'40F'");
    log("2026-03-06T12:30", "'entry':'reading','temperature':'140F'");
    log("2026-03-06T12:31", "'entry':'hot-holding','temperature':'140F'");
    String[] fields = {"entry", word, "portions", word.equals("portions") ? "2" : ""};
    Reply asked = enter(fields);
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text()).contains("SOUP: nothing shows 165 °F yet");
    String[] sure = Visit.with(fields, "sure", Visit.ticks(asked));
    assertThat(enter(sure).status()).isEqualTo(303);
  }

  @Test
  void food_reheated_for_one_order_at_once_is_not() {
    log("2026-03-06T12:00", "'entry':'reheating','how':'serve-now','temperature':'40F'");
    log("2026-03-06T12:10", "'entry':'reading','temperature':'140F'");
    assertThat(enter("entry", "portions", "portions", "1").status()).isEqualTo(303);
    assertThat(enter("entry", "served").status()).isEqualTo(303);
  }

  @Test
  void after_the_reheat_the_page_says_to_hold_it_hot_or_cool_it() {
    log("2026-03-06T12:00", "'entry':'reheating','temperature':'40F'");
    log("2026-03-06T12:40", "'entry':'reading','temperature':'168F'");
    assertThat(visit.open("/lots/SOUP").text())
        .contains("Hold it at 135 °F or above, or cool it: 70 °F by ")
        .doesNotContain("When it will be cold enough");
  }

  /** By 14:40 nothing had shown 70 °F; that it was held hot from 12:42 on answers that. */
  @Test
  void an_entry_that_answers_the_question_is_not_asked_it() {
    log("2026-03-06T12:00", "'entry':'reheating','temperature':'40F'");
    log("2026-03-06T12:40", "'entry':'reading','temperature':'168F'");
    served.at("2026-03-06T21:50:00Z");
    assertThat(enter("entry", "served").status()).isEqualTo(422);
    String[] held = {"entry", "hot-holding", "temperature", "160", "scale", "F"};
    String[] then = Visit.with(held, "when", "2026-03-06T12:42");
    assertThat(enter(then).status()).isEqualTo(303);
  }

  /** Common practice, no source: a lot that is only begun is cooked next, not read. */
  @Test
  void a_lot_that_only_began_is_offered_cooked_first() {
    served.post("/api/v1/lots", "{'lot':'NEW','food':'Soup','category':'soup_or_stew'}");
    String page = visit.open("/lots/NEW").text();
    String form = page.substring(page.indexOf("id=\"log\""));
    assertThat(form).containsSubsequence("value=\"cooked\" checked", "value=\"reading\"");
  }
}
