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

/**
 * Readings of the round that can hardly be. Where food in a refrigerator freezes, below 28 °F (-2
 * °C), is common practice, no source; water freezes at 32 °F (0 °C). The other scale is by
 * conversion, kept hot by FDA Food Code 2022 3-501.16(A)(1), 135 °F (57 °C): 14 °C is 14 * 9 / 5 +
 * 32 = 57.2 °F.
 */
class RoundDoubtsTest {
  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void open() {
    served = Served.in(folder);
    for (String[] place :
        new String[][] {
          {"Walk-in", "refrigerator"},
          {"Chest", "freezer"},
          {"Bench", "counter"},
          {"Steam table", "hot-holding"}
        }) {
      served.kitchen().setUp().place(Map.of("name", place[0], "kind", place[1]));
    }
    visit = new Visit(served);
    visit.open("/day");
  }

  @AfterEach
  void close() {
    served.close();
  }

  private Reply read(String place, String figure, String scale, String... sure) {
    String last = String.join(" ", sure);
    return visit.submit(
        "/day/readings",
        "entry",
        "reading",
        "place",
        place,
        "temperature",
        figure,
        "scale",
        scale,
        "sure",
        last);
  }

  @ParameterizedTest
  @CsvSource({
    "Walk-in, 14, F, 14 °C (57.2 °F)",
    "Walk-in, 4, F, 4 °C (39.2 °F)",
    "Walk-in, 38, C, 38 °F",
    "Chest, 5, C, 5 °F",
    "Chest, 18, C, -18 °C",
    "Steam table, 66, F, 66 °C",
    "Steam table, 57, F, 57 °C",
    "Steam table, 150, C, 150 °F",
  })
  void a_figure_that_fits_otherwise_is_asked_about(
      String place, String figure, String scale, String meant) {
    Reply asked = read(place, figure, scale);
    assertThat(asked.status()).as(asked.text()).isEqualTo(422);
    assertThat(asked.text())
        .containsSubsequence("value=\"" + place + "\"", "Did you mean", meant, "name=\"sure\"")
        .containsOnlyOnce("name=\"sure\"")
        .contains("value=\"" + figure + "\"")
        .doesNotContain("Sign anyway");
    assertThat(read(place, figure, scale, Visit.ticks(asked)).status()).isEqualTo(303);
  }

  @ParameterizedTest
  @CsvSource({"27.9, F", "-2.1, C", "-9, C"})
  void a_refrigerator_in_which_food_would_freeze_is_asked_about(String figure, String scale) {
    Reply asked = read("Walk-in", figure, scale);
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text()).contains("the food would freeze").doesNotContain("Did you mean");
  }

  @ParameterizedTest
  @CsvSource({
    "Walk-in, 28, F",
    "Walk-in, -2, C",
    "Walk-in, 46, F",
    "Walk-in, 21, C",
    "Chest, 0, C",
    "Chest, 32, F",
    "Chest, 45, F",
    "Bench, 14, F",
    "Steam table, 56, F",
    "Steam table, 101, F",
    "Steam table, 134, F",
    "Steam table, 66, C",
    "Steam table, 134, C",
  })
  void what_a_place_may_read_is_saved_at_once(String place, String figure, String scale) {
    Reply saved = read(place, figure, scale);
    assertThat(saved.status()).as(saved.text()).isEqualTo(303);
  }

  /** What such a place reads when it fails is common practice, no source; so is what was meant. */
  @ParameterizedTest
  @CsvSource({
    "Walk-in, 83, F, Did you mean 38 °F?",
    "Walk-in, 380, F, Did you mean 38 °F?",
    "Walk-in, 78, F, a refrigerator",
    "Chest, 120, F, hardly any such place",
    "Chest, -40, C, hardly any such place",
    "Bench, 500, F, hardly any such place",
    "Steam table, 380, F, hardly any such place",
  })
  void a_figure_that_no_such_place_reads_is_asked_about(
      String place, String figure, String scale, String says) {
    Reply asked = read(place, figure, scale);
    assertThat(asked.status()).as(asked.text()).isEqualTo(422);
    assertThat(asked.text()).contains(says).containsOnlyOnce("name=\"sure\"");
    assertThat(read(place, figure, scale, Visit.ticks(asked)).status()).isEqualTo(303);
  }

  /** The scale that is typed goes before that of the page, and the page says so. */
  @Test
  void a_scale_may_be_typed_behind_the_figure() {
    assertThat(visit.open("/day").text()).contains("type C after it");
    assertThat(read("Walk-in", "14C", "F").status()).isEqualTo(303);
    assertThat(visit.open("/day").text()).contains("14 °C (57.2 °F)");
  }

  @Test
  void a_program_is_never_asked_and_a_correction_is() {
    String api =
        "{'entry':'reading','place':'Walk-in','when':'2026-03-03T10:10:00-07:00',"
            + "'temperature':'14F'}";
    assertThat(served.post("/api/v1/readings", api).status()).isEqualTo(201);
    String page = visit.open("/day").text();
    String id = page.replaceAll("(?s).*name=\"corrects\" value=\"([^\"]+)\".*", "$1");
    String[] fields = {
      "entry", "correction", "corrects", id, "temperature", "13", "note", "misread", "scale", "F"
    };
    Reply asked = visit.submit("/day/readings", fields);
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text()).containsSubsequence("value=\"" + id + "\"", "Did you mean 13 °C");
  }
}
