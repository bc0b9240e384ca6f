package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a page asks about the place that an entry of a lot names, or leaves out. */
class PlaceDoubtsTest {
  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void open() {
    served = Served.in(folder);
    served.cookSoup("S-1");
    place("Pass", "counter");
    place("Walk-in", "refrigerator");
    place("Chest", "freezer");
    visit = new Visit(served);
    visit.open("/lots/S-1");
  }

  @AfterEach
  void close() {
    served.close();
  }

  private void place(String name, String kind) {
    served.kitchen().setUp().place(Map.of("name", name, "kind", kind));
  }

  private void frozenIn(String place) {
    Reply logged =
        served.post(
            "/api/v1/lots/S-1/entries",
            "{'entry':'frozen','when':'2026-03-03T10:12:00-07:00','how':'hard','place':'"
                + place
                + "'}");
    assertThat(logged.status()).as(logged.text()).isEqualTo(201);
    served.at("2026-03-03T18:00:00Z");
  }

  /**
   * FDA Food Code 2022 3-501.13: a refrigerator at 41 °F or less, running water at 70 °F or below,
   * as part of cooking, or a microwave oven and then cooked at once; a counter is none of them.
   */
  @ParameterizedTest
  @CsvSource({
    "Pass, '', 422",
    "pass, '', 422",
    "Kitchen counter, '', 422",
    "Steel bench, '', 422",
    "Encimera, '', 422",
    "Pass, running-water, 303",
    "Pass, while-cooking, 303",
    "Walk-in, '', 303",
    "Counter fridge, '', 303",
  })
  void thawing_on_a_counter_is_asked_about(String place, String how, int status) {
    frozenIn("Chest");
    String[] fields = {"entry", "thawing", "place", place, "how", how};
    Reply reply = visit.submit("/lots/S-1/entries", fields);
    assertThat(reply.status()).as(reply.text()).isEqualTo(status);
    if (status == 422) {
      assertThat(reply.text()).contains("41 °F", "70 °F", "name=\"sure\"", place);
      String[] sure = Visit.with(fields, "sure", Visit.ticks(reply));
      assertThat(visit.submit("/lots/S-1/entries", sure).status()).isEqualTo(303);
    }
  }

  /** Where it stands counts as well; a program is never asked. */
  @Test
  void thawing_where_a_counter_is_where_it_stands_is_asked_about_on_a_page_only() {
    frozenIn("Pass");
    assertThat(visit.submit("/lots/S-1/entries", "entry", "thawing").status()).isEqualTo(422);
    String api = "{'entry':'thawing','when':'2026-03-03T10:50:00-07:00'}";
    assertThat(served.post("/api/v1/lots/S-1/entries", api).status()).isEqualTo(201);
  }

  /** The same section begins "TCS food shall be thawed": it asks nothing of food that is none. */
  @Test
  void food_that_needs_no_cold_thaws_on_a_counter_unasked() {
    String bars = "{'lot':'B-1','food':'Oat bars','category':'bar_cookies_cut_and_wrapped'}";
    assertThat(served.post("/api/v1/lots", bars).status()).isEqualTo(201);
    for (String entry :
        new String[] {"09:00:00-07:00','entry':'cooked", "10:12:00-07:00','entry':'frozen"}) {
      String row = "{'when':'2026-03-03T" + entry + "'}";
      assertThat(served.post("/api/v1/lots/B-1/entries", row).status()).isEqualTo(201);
    }
    served.at("2026-03-03T18:00:00Z");
    visit.open("/lots/B-1");
    Reply reply = visit.submit("/lots/B-1/entries", "entry", "thawing", "place", "Pass");
    assertThat(reply.status()).as(reply.text()).isEqualTo(303);
  }

  /** Our own: a freezer is where food stays frozen, Food Code 3-501.11. */
  @ParameterizedTest
  @CsvSource({"Walk-in, 422", "Pass, 422", "Chest, 303", "Annex, 303"})
  void frozen_without_a_place_is_asked_about_where_nothing_freezes(String here, int status) {
    String stands = "{'entry':'cooling','when':'2026-03-03T10:11:00-07:00','place':'" + here + "'}";
    assertThat(served.post("/api/v1/lots/S-1/entries", stands).status()).isEqualTo(201);
    served.at("2026-03-03T17:30:00Z");
    Reply reply = visit.submit("/lots/S-1/entries", "entry", "frozen", "how", "hard");
    assertThat(reply.status()).as(reply.text()).isEqualTo(status);
    if (status == 422) {
      assertThat(reply.text())
          .contains("Where is it?", here)
          .containsPattern("<details open>.*More");
      String[] there = {"entry", "frozen", "how", "hard", "place", "Chest"};
      assertThat(visit.submit("/lots/S-1/entries", there).status()).isEqualTo(303);
    }
  }
}
