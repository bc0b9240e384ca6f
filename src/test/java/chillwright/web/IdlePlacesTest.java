package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where food stands, and places that nobody reads: common practice, no source. */
class IdlePlacesTest {
  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void open() {
    served = Served.in(folder);
    served.cookSoup("S-1");
    served.at("2026-03-03T17:15:00Z");
    served.kitchen().setUp().place(Map.of("name", "Walk-in", "kind", "refrigerator"));
    served.kitchen().setUp().place(Map.of("name", "Chest", "kind", "freezer"));
    visit = new Visit(served);
    visit.open("/day");
  }

  @AfterEach
  void close() {
    served.close();
  }

  private void log(String lot, String entry) {
    Reply logged = served.post("/api/v1/lots/" + lot + "/entries", "{" + entry + "}");
    assertThat(logged.status()).as(logged.text()).isEqualTo(201);
  }

  private JsonNode day() {
    return served.get("/api/v1/days/2026-03-03").json();
  }

  private String placeOf(String lot) {
    return served.get("/api/v1/lots/" + lot).json().at("/place").asText("");
  }

  @Test
  void a_place_with_food_in_it_is_asked_about_before_it_is_not_in_use() {
    log("S-1", "'when':'2026-03-03T10:14:00-07:00','entry':'frozen','place':'Chest'");
    String[] idle = {
      "entry", "action", "how", "not-in-use", "place", "Chest", "note", "defrosting"
    };
    Reply asked = visit.submit("/day/readings", idle);
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text())
        .contains("S-1)", "value=\"defrosting\"")
        .containsOnlyOnce("name=\"sure\"")
        .containsPattern("(?s)<details open>\\s*<summary>not in use today.*name=\"sure\"");
    String[] sure = Visit.with(idle, "sure", Visit.ticks(asked));
    assertThat(visit.submit("/day/readings", sure).status()).isEqualTo(303);
    assertThat(visit.open("/day").text()).contains("Inside now, read them:");
    assertThat(day().at("/places/0/lotsInside/0").asText()).isEqualTo("S-1");
    assertThat(served.get("/day.csv").text()).contains("not-in-use: defrosting");
    assertThat(served.get("/record/readings.csv").text()).contains("not-in-use", "defrosting");
    idle[5] = "Walk-in";
    assertThat(visit.submit("/day/readings", idle).status()).isEqualTo(303);
  }

  @Test
  void a_place_that_food_comes_into_is_in_use_again_and_read() {
    String[] idle = {"entry", "action", "how", "not-in-use", "place", "Chest", "note", "empty"};
    assertThat(visit.submit("/day/readings", idle).status()).isEqualTo(303);
    assertThat(visit.open("/day").text()).contains("Places still to be read: 1");
    served.at("2026-03-03T17:20:00Z");
    log("S-1", "'when':'2026-03-03T10:19:00-07:00','entry':'frozen','place':'Chest'");
    assertThat(visit.open("/day").text())
        .contains("Places still to be read: 2", "Not in use today, 10:15: empty")
        .doesNotContain("<span class=\"mark none\">not in use today");
    assertThat(day().at("/places/0/due").asBoolean()).isTrue();
  }

  @Test
  void a_place_wrongly_said_to_be_not_in_use_is_corrected_there() {
    String[] idle = {"entry", "action", "how", "not-in-use", "place", "Chest", "note", "empty"};
    assertThat(visit.submit("/day/readings", idle).status()).isEqualTo(303);
    String page = visit.open("/day").text();
    String id = page.replaceAll("(?s).*name=\"corrects\" value=\"([^\"]+)\".*", "$1");
    Reply undone =
        visit.submit(
            "/day/readings",
            "entry",
            "correction",
            "corrects",
            id,
            "void",
            "yes",
            "note",
            "wrong one",
            "by",
            "RO");
    assertThat(undone.status()).as(undone.text()).isEqualTo(303);
    assertThat(undone.header("Location")).contains("saved=Chest");
    assertThat(visit.open("/day").text())
        .contains("Places still to be read: 2", "<s><bdi>Not in use today, 10:15: empty");
  }

  @Test
  void what_is_not_in_use_is_a_place_and_is_not_read() {
    String row = "{'entry':'action','how':'not-in-use','when':'2026-03-03T10:14:00-07:00'%s}";
    Reply ofLot = served.post("/api/v1/lots/S-1/entries", row.formatted(""));
    assertThat(ofLot.status()).isEqualTo(422);
    assertThat(ofLot.text()).contains("how-of-place", "is said of a place");
    String read = row.formatted(",'place':'Chest','temperature':'45F'");
    Reply ofRead = served.post("/api/v1/readings", read);
    assertThat(ofRead.status()).isEqualTo(422);
    assertThat(ofRead.text()).contains("read-not-in-use");
    Reply taken = served.post("/api/v1/readings", row.formatted(",'place':'Chest'"));
    assertThat(taken.status()).as(taken.text()).isEqualTo(201);
  }

  /** A refrigerator and hot holding are kept at a temperature, a stove is not. */
  @ParameterizedTest
  @CsvSource({"cooling, Range, false", "chilled, Bar fridge, true", "hot-holding, Well, true"})
  void a_stove_that_nobody_named_is_no_place_to_read(String word, String place, boolean isRead) {
    String read = word.equals("hot-holding") ? "150F" : "40F";
    log(
        "S-1",
        "'when':'2026-03-03T10:14:00-07:00','entry':'%s','place':'%s','temperature':'%s'"
            .formatted(word, place, read));
    assertThat(day().at("/places").findValuesAsText("name").contains(place)).isEqualTo(isRead);
    String unread = "Places still to be read: " + (isRead ? 3 : 2);
    assertThat(visit.open("/day").text()).contains(unread);
  }

  /** FDA Food Code 2022 3-501.13(A), (B): in a refrigerator, or in running water. */
  @ParameterizedTest
  @CsvSource({"refrigerator, Walk-in", "'', Walk-in", "running-water, ''"})
  void what_thaws_in_the_refrigerator_stands_there(String how, String place) {
    log("S-1", "'when':'2026-03-03T10:14:00-07:00','entry':'frozen','place':'Chest'");
    String page = visit.open("/lots/S-1").text();
    assertThat(page)
        .containsPattern("Thawing in</label><input id=\"place-thawing\"[^>]*value=\"Walk-in\"");
    String[] thaws = {"entry", "thawing", "how", how, "place-thawing", "Walk-in"};
    Reply taken = visit.submit("/lots/S-1/entries", thaws);
    assertThat(taken.status()).as(taken.text()).isEqualTo(303);
    assertThat(placeOf("S-1")).isEqualTo(place);
  }

  @Test
  void what_thaws_in_a_refrigerator_that_nobody_names_is_in_the_freezer_no_more() {
    log("S-1", "'when':'2026-03-03T10:14:00-07:00','entry':'frozen','place':'Chest'");
    log("S-1", "'when':'2026-03-03T10:15:00-07:00','entry':'thawing','how':'refrigerator'");
    assertThat(placeOf("S-1")).isEmpty();
  }

  /** The usual place is where the food is kept cold, and a pot on the stove is not there. */
  @ParameterizedTest
  @CsvSource({
    "cooked, 180, ''",
    "cooked, '', ''",
    "prepared, 180, ''",
    "prepared, 60, Walk-in",
    "prepared, '', Walk-in",
    "chilled, 39, Walk-in",
  })
  void a_hot_batch_is_not_where_it_is_kept_cold(String word, String read, String place) {
    served
        .kitchen()
        .setUp()
        .food(Map.of("name", "Chowder", "category", "soup_or_stew", "place", "Walk-in"));
    visit.open("/new-batch");
    String[] fields = {
      "entry", word, "food", "Chowder", "lot", "C-1", "temperature", read, "scale", "F"
    };
    Reply begun = visit.submit("/new-batch", fields);
    assertThat(begun.status()).as(begun.text()).isEqualTo(303);
    assertThat(placeOf("C-1")).isEqualTo(place);
  }
}
