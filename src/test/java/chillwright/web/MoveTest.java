package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A lot that is moved is somewhere else, and nothing more: a log is judged by what the food was
 * shown to do (FDA Food Code 2022 3-501.14 and 3-501.16 name no place). What a kind of place makes
 * of food is common practice, no source.
 */
class MoveTest {
  private static final String DAY = "2026-03-06T";

  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void open() {
    served = Served.in(folder);
    served.at("2026-03-06T20:00:00Z");
    visit = new Visit(served);
    for (String place :
        List.of(
            "Walk-in/refrigerator",
            "Reach-in/refrigerator",
            "Chest/freezer",
            "Upright/freezer",
            "Warmer/hot-holding",
            "Second warmer/hot-holding",
            "Table/counter",
            "Window/counter")) {
      String[] named = place.split("/", -1);
      served.kitchen().setUp().place(Map.of("name", named[0], "kind", named[1]));
    }
  }

  @AfterEach
  void close() {
    served.close();
  }

  private void log(String lot, int row, String time, String entry) {
    String body = "{'id':'%s-%d','when':'%s%s:00-07:00',%s}".formatted(lot, row, DAY, time, entry);
    Reply logged = served.post("/api/v1/lots/" + lot + "/entries", body);
    assertThat(logged.status()).as(logged.text()).isEqualTo(201);
  }

  /** Begun at nine, put into its phase and its place at half past twelve. */
  private void lot(String lot, String begun, String phase, String place) {
    served.post(
        "/api/v1/lots", "{'lot':'%s','food':'Soup','category':'soup_or_stew'}".formatted(lot));
    String[] first = begun.split(" ", -1);
    log(lot, 1, "12:20", "'entry':'%s','temperature':'%s'".formatted(first[0], first[1]));
    String[] next = phase.split(" ", -1);
    String more = next.length > 1 ? ",'%s':'%s'".formatted(next[1], next[2]) : "";
    log(lot, 2, "12:30", "'entry':'%s','place':'%s'%s".formatted(next[0], place, more));
  }

  private JsonNode lot(String code) {
    return served.get("/api/v1/lots/" + code).json();
  }

  private void sameAs(String stayed) {
    for (String part : List.of("/findings", "/keeping", "/phase", "/verdict")) {
      assertThat(lot("MOVED").at(part).toString())
          .as(part)
          .isEqualTo(lot(stayed).at(part).toString().replace(stayed, "MOVED"));
    }
  }

  private Reply move(String move, String... more) {
    visit.open("/lots/MOVED");
    return visit.submit("/lots/MOVED/entries", Visit.with(more, "move", move));
  }

  @ParameterizedTest
  @CsvSource({
    "cooked 180F, cooked temperature 178F, Table, Window, 120F",
    "cooked 180F, cooling, Table, Window, 120F",
    "cooked 180F, cooling, Walk-in, Reach-in, 65F",
    "cooked 180F, chilled, Walk-in, Reach-in, 65F",
    "prepared 39F, chilled, Walk-in, Reach-in, 40F",
    "prepared 39F, chilled, Walk-in, Reach-in, 48F",
    "received 39F, received, Table, Window, 39F",
    "opened 39F, opened, Walk-in, Reach-in, 40F",
    "prepared 39F, frozen how hard, Chest, Upright, 10F",
    "prepared 39F, thawing how refrigerator, Walk-in, Reach-in, 36F",
    "prepared 39F, reheating, Table, Window, 170F",
    "cooked 180F, hot-holding temperature 150F, Warmer, Second warmer, 140F",
    "cooked 180F, hot-holding temperature 150F, Warmer, Second warmer, 120F",
    "prepared 39F, time-control how 4h, Table, Walk-in, 60F",
    "cooked 180F, set-out, Table, Window, 100F",
  })
  void a_moved_lot_differs_from_one_that_stayed_by_its_place_alone(
      String begun, String phase, String here, String there, String read) {
    lot("MOVED", begun, phase, here);
    lot("STAYED", begun, phase, here);
    Reply moved = move("moved " + there);
    assertThat(moved.status()).as(moved.text()).isEqualTo(303);
    assertThat(lot("MOVED").at("/place").asText()).isEqualTo(there);
    sameAs("STAYED");
    served.at("2026-03-06T21:00:00Z");
    log("MOVED", 3, "14:00", "'entry':'reading','temperature':'" + read + "'");
    log("STAYED", 3, "14:00", "'entry':'reading','temperature':'" + read + "'");
    sameAs("STAYED");
    served.at("2026-03-20T21:00:00Z");
    sameAs("STAYED");
    assertThat(lot("MOVED").at("/place").asText()).isEqualTo(there);
  }

  /** Food in a refrigerator thaws; what cools is not frozen, whatever it was put into. */
  @ParameterizedTest
  @CsvSource({
    "prepared 39F, frozen, Chest, Walk-in, thawing",
    "cooked 180F, frozen, Chest, Walk-in, chilled",
    "cooked 180F, cooling, Table, Walk-in, chilled",
    "cooked 180F, hot-holding temperature 150F, Warmer, Walk-in, chilled",
    "prepared 39F, chilled, Walk-in, Chest, frozen",
    "prepared 39F, reheating, Table, Warmer, hot-holding",
  })
  void a_move_that_changes_the_food_is_logged_as_what_it_is(
      String begun, String phase, String here, String there, String word) {
    lot("MOVED", begun, phase, here);
    assertThat(visit.open("/lots/MOVED").text())
        .contains("value=\"" + word + " " + there + "\"")
        .doesNotContain("value=\"moved " + there + "\"");
    Reply refused = move("moved " + there);
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.text()).contains("Log \"" + word + "\" with this place");
    assertThat(lot("MOVED").at("/place").asText()).isEqualTo(here);
    Reply sent = move(word + " " + there);
    if (word.equals("hot-holding")) {
      // FDA Food Code 2022 3-403.11(A): nothing showed 165 °F, so that is asked about first.
      assertThat(sent.text()).contains("MOVED: nothing shows 165 °F yet");
      sent = move(word + " " + there, "sure", Visit.ticks(sent));
    }
    assertThat(sent.status()).isEqualTo(303);
    assertThat(lot("MOVED").at("/phase").asText()).isEqualTo(word);
    assertThat(lot("MOVED").at("/place").asText()).isEqualTo(there);
  }

  /** The clock of FDA Food Code 2022 3-501.14(A) runs on, from the last proof of being hot. */
  @Test
  void putting_a_cooling_pot_into_the_walk_in_leaves_its_clock_alone() {
    lot("MOVED", "cooked 180F", "cooling", "Table");
    String before = lot("MOVED").at("/findings").toString();
    assertThat(move("chilled Walk-in").status()).isEqualTo(303);
    assertThat(lot("MOVED").at("/findings").toString()).isEqualTo(before);
  }

  @ParameterizedTest
  @CsvSource({
    "prepared 39F, chilled, Walk-in, Warmer",
    "prepared 39F, frozen, Chest, Warmer",
    "prepared 39F, thawing, Walk-in, Chest",
    "prepared 39F, chilled, Walk-in, Table",
  })
  void a_place_that_asks_for_more_than_a_move_is_not_offered(
      String begun, String phase, String here, String there) {
    lot("MOVED", begun, phase, here);
    assertThat(visit.open("/lots/MOVED").text())
        .doesNotContain(" " + there + "\">" + there + "</option>");
    assertThat(move("moved " + there).status()).isEqualTo(422);
  }

  @Test
  void a_lot_called_frozen_in_a_refrigerator_is_asked_about() {
    lot("MOVED", "prepared 39F", "frozen", "Walk-in");
    assertThat(visit.open("/lots/MOVED").text()).contains("Walk-in is no freezer");
    assertThat(move("thawing Reach-in").status()).isEqualTo(303);
    assertThat(visit.open("/lots/MOVED").text()).doesNotContain("is no freezer");
  }

  @Test
  void a_list_moves_a_lot_and_leads_back_to_the_list() {
    lot("MOVED", "prepared 39F", "chilled", "Walk-in");
    assertThat(visit.open("/on-hand").text())
        .contains("<option>Reach-in</option>")
        .doesNotContain("<option>Chest</option>", "<option>Walk-in</option>");
    Reply moved =
        visit.submit(
            "/lots/MOVED/entries", "entry", "moved", "place", "Reach-in", "back", "/on-hand");
    assertThat(Visit.target(moved)).isEqualTo("/on-hand");
    assertThat(lot("MOVED").at("/place").asText()).isEqualTo("Reach-in");
    assertThat(visit.open("/on-hand", "Accept-Language", "es").text()).contains("Llevar a otro");
  }

  @Test
  void a_move_needs_a_place_and_begins_no_lot() {
    lot("MOVED", "prepared 39F", "chilled", "Walk-in");
    Reply nowhere =
        served.post(
            "/api/v1/lots/MOVED/entries", "{'when':'2026-03-06T12:40:00-07:00','entry':'moved'}");
    assertThat(nowhere.status()).isEqualTo(422);
    assertThat(nowhere.text()).contains("Name the new place.");
    served.post("/api/v1/lots", "{'lot':'NEW','food':'Soup','category':'soup_or_stew'}");
    Reply begun =
        served.post(
            "/api/v1/lots/NEW/entries",
            "{'when':'2026-03-06T12:40:00-07:00','entry':'moved','place':'Walk-in'}");
    assertThat(begun.status()).isEqualTo(422);
    assertThat(begun.text()).contains("not-a-first-row");
  }
}
