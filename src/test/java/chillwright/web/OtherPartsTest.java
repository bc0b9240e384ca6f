package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * An entry made for several parts of a batch at once. Our own design, no source, but for what a
 * reading proves: FDA Food Code 2022 3-501.14 and 4-302.12 ask for the temperature of the food.
 */
class OtherPartsTest {
  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  /** Twelve portions in three containers, ten minutes old. */
  @BeforeEach
  void open() {
    served = Served.in(folder);
    served.kitchen().setUp().place(Map.of("name", "Chest", "kind", "freezer"));
    served.kitchen().setUp().place(Map.of("name", "Walk-in", "kind", "refrigerator"));
    visit = new Visit(served);
    visit.open("/new-batch");
    String[] batch = {
      "lot",
      "BS",
      "entry",
      "cooked",
      "temperature",
      "180",
      "scale",
      "F",
      "food",
      "Bean stew",
      "category",
      "soup_or_stew",
      "containers",
      "3",
      "portions",
      "12",
      "place",
      "Walk-in"
    };
    assertThat(visit.submit("/new-batch", batch).status()).isEqualTo(303);
    served.at("2026-03-03T17:25:00Z");
  }

  @AfterEach
  void close() {
    served.close();
  }

  /** A pan that is gone has no parts of its own: our own design, no source. */
  @Test
  void a_part_that_was_discarded_does_not_speak_for_the_others() {
    assertThat(visit.open("/lots/BS-1").text()).contains("BS-2", "name=\"also\"");
    assertThat(confirmed("BS-1", "entry", "discarded", "by", "RO").status()).isEqualTo(303);
    assertThat(visit.open("/lots/BS-1").text())
        .doesNotContain("Its parts, and what to do", "name=\"also\"");
    assertThat(visit.open("/lots/BS").text()).contains("Its parts, and what to do");
    served.at("2026-03-03T17:35:00Z");
    Reply late = log("BS-1", "entry", "reading", "temperature", "170", "scale", "F");
    assertThat(late.status()).isEqualTo(422);
    assertThat(late.text()).contains("on Tue 3 Mar 10:").doesNotContain("on 2026-03-03");
  }

  private JsonNode entries(String lot) {
    return served.get("/api/v1/lots/" + lot + "/entries").json().at("/items");
  }

  private Reply log(String lot, String... fields) {
    visit.open("/lots/" + lot);
    return visit.submit("/lots/" + lot + "/entries", fields);
  }

  /** With a tick where it is asked whether food that was just cooked goes in. */
  private Reply confirmed(String lot, String... fields) {
    Reply reply = log(lot, fields);
    return reply.status() == 303 ? reply : visit.confirm("/lots/" + lot + "/entries", fields);
  }

  /** What the field for the place of that word holds when the page of the lot is opened. */
  private String filledIn(String lot, String word) {
    Matcher field =
        Pattern.compile("name=\"place-" + word + "\"[^>]* value=\"([^\"]*)\"")
            .matcher(visit.open("/lots/" + lot).text());
    assertThat(field.find()).as(word).isTrue();
    return field.group(1);
  }

  private String place(String lot) {
    return served.get("/api/v1/lots/" + lot).json().at("/place").asText();
  }

  /** Our own design, no source: a box in no place is missed when that freezer warms. */
  @Test
  void the_place_where_that_food_is_kept_is_filled_in_for_all_to_see() {
    served.kitchen().setUp().place(Map.of("name", "Upright", "kind", "freezer"));
    served
        .kitchen()
        .setUp()
        .food(Map.of("name", "Bean stew", "category", "soup_or_stew", "place", "Chest"));
    assertThat(filledIn("BS-1", "frozen")).isEqualTo("Chest");
    assertThat(filledIn("BS-1", "chilled")).isEqualTo("Walk-in");
    confirmed(
        "BS-1",
        "entry",
        "frozen",
        "place-frozen",
        "Chest",
        "place-chilled",
        "Walk-in",
        "also",
        "BS-2");
    assertThat(place("BS-1")).isEqualTo("Chest");
    assertThat(place("BS-2")).isEqualTo("Chest");
    confirmed("BS-3", "entry", "frozen", "place-frozen", "Chest", "place", "Upright");
    assertThat(place("BS-3")).isEqualTo("Upright");
  }

  /** Two freezers, and nothing said of the food: nobody can tell which. */
  @Test
  void the_only_freezer_is_filled_in_and_of_two_none() {
    assertThat(filledIn("BS-1", "frozen")).isEqualTo("Chest");
    served.kitchen().setUp().place(Map.of("name", "Upright", "kind", "freezer"));
    assertThat(filledIn("BS-1", "frozen")).isEmpty();
  }

  @Test
  void a_place_that_was_emptied_stays_empty() {
    served
        .kitchen()
        .setUp()
        .food(Map.of("name", "Bean stew", "category", "soup_or_stew", "place", "Chest"));
    confirmed("BS-1", "entry", "frozen", "place-frozen", "", "place-chilled", "Walk-in");
    assertThat(entries("BS-1").at("/1/entry").asText()).isEqualTo("frozen");
    assertThat(entries("BS-1").at("/1/place").isNull()).isTrue();
    String unread =
        log("BS-2", "entry", "frozen", "place-frozen", "", "temperature", "mild").text();
    assertThat(unread)
        .contains("name=\"place-frozen\" autocomplete=\"off\" list=\"places\" value=\"\"");
  }

  @Test
  void what_is_saved_for_one_part_is_saved_for_those_ticked_and_no_reading_with_it() {
    assertThat(visit.open("/lots/BS-1").text())
        .contains("name=\"also\" value=\"BS-2\">", "name=\"also\" value=\"BS-3\">")
        .doesNotContain("name=\"also\" value=\"BS-1\"", "name=\"also\" value=\"BS\"");
    String[] frozen = {
      "entry",
      "frozen",
      "place",
      "Chest",
      "temperature",
      "150",
      "scale",
      "F",
      "by",
      "RO",
      "air",
      "0F",
      "probe",
      "P-1",
      "also",
      "BS-2"
    };
    Reply saved = log("BS-1", frozen);
    assertThat(saved.status()).as(saved.text()).isEqualTo(303);
    assertThat(visit.open(Visit.target(saved)).text())
        .contains("Saved: frozen, 150 °F", "Saved for:", "href=\"/lots/BS-2\"");
    assertThat(entries("BS-1").at("/1/temperature").asText()).isEqualTo("150 °F");
    JsonNode other = entries("BS-2").at("/1");
    assertThat(other.at("/entry").asText()).isEqualTo("frozen");
    assertThat(other.at("/place").asText()).isEqualTo("Chest");
    assertThat(other.at("/by").asText()).isEqualTo("RO");
    for (String none : new String[] {"/temperature", "/air", "/probe"}) {
      assertThat(other.at(none).isNull()).as(none).isTrue();
    }
    assertThat(other.at("/when")).isEqualTo(entries("BS-1").at("/1/when"));
    assertThat(entries("BS-3")).hasSize(1);
  }

  /**
   * FDA Food Code 2022 3-501.14(A): 70 °F within two hours, so at 19:30 nobody has shown it. The
   * whole has nothing left that could be in, or kept until a day.
   */
  @Test
  void the_page_of_a_batch_tells_how_its_parts_stand_and_nothing_of_the_whole() {
    served.at("2026-03-03T23:59:00Z");
    String page = visit.open("/lots/BS").text();
    assertThat(page)
        .containsSubsequence(
            "Its parts, and what to do",
            "card not-shown",
            "href=\"/lots/BS-1\"",
            "href=\"/lots/BS-2\"",
            "class=\"where\"")
        .contains("Nothing of the whole is left")
        .doesNotContain("Use or discard by");
    assertThat(page.substring(page.indexOf("class=\"where\""), page.indexOf("id=\"entry\"")))
        .doesNotContain("mark in");
    assertThat(visit.open("/lots/BS-1").text()).doesNotContain("Its parts, and what to do");
  }

  /** Of two pans at once one thing is asked for, not two that contradict each other. */
  @Test
  void portions_of_several_parts_are_refused_with_one_reason() {
    Reply refused = log("BS-1", "entry", "portions", "by", "RO", "also", "BS-2");
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.text())
        .contains("tell of each on its own page")
        .doesNotContain("leave both blank", "Give how many portions");
  }

  private static int ticked(String page) {
    return page.split("name=\"also\" value=\"[^\"]*\" checked", -1).length - 1;
  }

  /** Common practice, no source: portions leave one container, a reading is taken of each. */
  @Test
  void from_the_page_of_a_batch_portions_are_taken_from_the_one_part_that_is_ticked() {
    assertThat(ticked(visit.open("/lots/BS?entry=reading").text())).isEqualTo(3);
    assertThat(ticked(visit.open("/lots/BS?entry=portions").text())).isZero();
    String reason = "tick the one they come from, and no other";
    assertThat(log("BS", "entry", "portions", "portions", "2").text()).contains(reason);
    assertThat(log("BS", "entry", "portions", "portions", "2", "also", "BS-1 BS-2").text())
        .contains(reason);
    String[] two = {"entry", "portions", "portions", "2", "to", "ana", "also", "BS-2"};
    Reply saved = confirmed("BS", two);
    assertThat(saved.status()).as(saved.text()).isEqualTo(303);
    JsonNode part = served.get("/api/v1/lots/BS-2").json();
    assertThat(part.at("/portions/left").asInt()).isEqualTo(2);
    assertThat(entries("BS-2").at("/1/to").asText()).isEqualTo("ana");
    assertThat(entries("BS-1")).hasSize(1);
  }

  @Test
  void each_part_takes_the_temperature_that_was_read_in_it() {
    String[] chilled = {
      "entry",
      "chilled",
      "place",
      "Walk-in",
      "temperature",
      "151",
      "scale",
      "F",
      "temperature-BS-2",
      "149",
      "also",
      "BS-3"
    };
    assertThat(log("BS-1", chilled).status()).isEqualTo(303);
    assertThat(entries("BS-1").at("/1/temperature").asText()).isEqualTo("151 °F");
    assertThat(entries("BS-2").at("/1/temperature").asText()).isEqualTo("149 °F");
    assertThat(entries("BS-3").at("/1/temperature").isNull()).isTrue();
  }

  @Test
  void all_or_none_are_stored_and_the_faults_of_each_are_told() {
    String[] wrong = {
      "entry",
      "reading",
      "temperature",
      "150",
      "scale",
      "F",
      "temperature-BS-2",
      "15O",
      "also",
      "BS-3 BS-9"
    };
    Reply refused = log("BS-1", wrong);
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.text())
        .contains("BS-2: ", "BS-3: ", "BS-9 is no part of the same batch", "value=\"15O\"")
        .containsPattern("value=\"BS-3\" checked");
    String closed = "{'entry':'discarded','when':'2026-03-03T10:24:00-07:00'}";
    assertThat(served.post("/api/v1/lots/BS-3/entries", closed).status()).isEqualTo(201);
    Reply late = log("BS-1", "entry", "chilled", "also", "BS-2 BS-3");
    assertThat(late.status()).isEqualTo(422);
    assertThat(late.text()).containsPattern("role=\"alert\"[^>]*><bdi>BS-3: ");
    Reply counted = log("BS-1", "entry", "portions", "portions", "1", "also", "BS-2");
    assertThat(counted.text()).contains("of one lot at a time");
    assertThat(entries("BS-1")).hasSize(1);
    assertThat(entries("BS-2")).hasSize(1);
  }

  /** What is left of the batch itself is nothing, so its page speaks for its parts. */
  @Test
  void from_the_page_of_the_batch_all_parts_are_discarded_once_however_often_it_is_sent() {
    String page = visit.open("/lots/BS").text();
    assertThat(page)
        .contains("Nothing is left in this lot itself", "value=\"BS-1\" checked")
        .doesNotContain("id=\"temperature\"");
    String[] sent = {
      "once", Visit.once(visit.open("/lots/BS")), "entry", "discarded", "also", "BS-1 BS-2 BS-3"
    };
    for (int i = 0; i < 2; i++) {
      Reply saved = visit.submit("/lots/BS/entries", sent);
      assertThat(saved.status()).as(saved.text()).isEqualTo(303);
      assertThat(visit.open(Visit.target(saved)).text()).contains("Saved for:", "/lots/BS-3");
    }
    for (String part : new String[] {"BS-1", "BS-2", "BS-3"}) {
      assertThat(entries(part).findValuesAsText("entry")).containsExactly("cooling", "discarded");
    }
  }

  /** A browser sends each tick as a field of its own; what is asked of several is asked once. */
  @Test
  void a_question_names_the_lots_and_its_tick_answers_for_no_other() {
    visit.open("/lots/BS-1");
    String form = "token=" + visit.token() + "&entry=frozen&also=BS-2";
    Reply asked = visit.submitted("/lots/BS-1/entries", form);
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text()).contains("BS-1, BS-2: It is to be logged as frozen, but it stands in");
    String sure = "&sure=" + Visit.encoded(Visit.ticks(asked));
    Reply more = visit.submitted("/lots/BS-1/entries", form + "&also=BS-3" + sure);
    assertThat(more.status()).as("asked of BS-3 too").isEqualTo(422);
    assertThat(visit.submitted("/lots/BS-1/entries", form + sure).status()).isEqualTo(303);
    assertThat(entries("BS-2")).hasSize(2);
    assertThat(entries("BS-3")).hasSize(1);
  }

  /** 3-501.14(A)(1): 70 °F two hours after 135 °F. Three pans of one pot wait for the same. */
  @Test
  void what_is_the_same_for_all_pans_is_told_once_with_their_codes() {
    String page = visit.open("/lots/BS").text();
    String top = page.substring(page.indexOf("id=\"parts\""), page.indexOf("<p class=\"where\">"));
    assertThat(top)
        .containsOnlyOnce("70 °F by 12:15")
        .containsSubsequence(">BS-1</a>", ">BS-2</a>", ">BS-3</a>", "70 °F by 12:15");
    confirmed("BS-2", "entry", "reading", "temperature", "160", "scale", "F");
    page = visit.open("/lots/BS").text();
    top = page.substring(page.indexOf("id=\"parts\""), page.indexOf("<p class=\"where\">"));
    assertThat(top)
        .containsSubsequence(">BS-1</a>", ">BS-3</a>", "70 °F by 12:15", "BS-2", "70 °F by 12:25");
  }
}
