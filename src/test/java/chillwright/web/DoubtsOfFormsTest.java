package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What forms ask about before they are saved, and what phones need to fill them in. */
class DoubtsOfFormsTest {
  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void open() {
    served = Served.in(folder);
    served.cookSoup("S-1");
    visit = new Visit(served);
    visit.open("/");
  }

  @AfterEach
  void close() {
    served.close();
  }

  private Reply begin(String word, String figure, String scale, String category, String... more) {
    String[] fields = {
      "entry",
      word,
      "food",
      "Bean stew",
      "category",
      category,
      "temperature",
      figure,
      "scale",
      scale,
      more.length > 0 ? more[0] : "note",
      more.length > 0 ? more[1] : ""
    };
    return visit.submit("/new-batch", fields);
  }

  /**
   * FDA Food Code 2022 3-501.16(A)(1): hot food is held at 57 °C (135 °F) or above. Dry bars need
   * no temperature: 1-201.10, TCS food.
   */
  @ParameterizedTest
  @CsvSource({
    "cooked, 134.9, F, soup_or_stew, 422",
    "cooked, 135, F, soup_or_stew, 303",
    "cooked, 56.9, C, soup_or_stew, 422",
    "cooked, 57, C, soup_or_stew, 303",
    "prepared, 60, F, soup_or_stew, 303",
    "cooked, 100, F, bar_cookies_cut_and_wrapped, 303",
    "cooked, 411, F, soup_or_stew, 422",
  })
  void a_batch_said_to_be_cooked_that_is_not_hot_is_asked_about(
      String word, String figure, String scale, String category, int status) {
    Reply asked = begin(word, figure, scale, category);
    assertThat(asked.status()).as(asked.text()).isEqualTo(status);
    if (status == 422) {
      assertThat(asked.text()).contains("name=\"sure\"", figure + " °" + scale);
      assertThat(begin(word, figure, scale, category, "sure", Visit.ticks(asked)).status())
          .isEqualTo(303);
    }
  }

  /** Our own: what was done is the record of an act; without words there is none. */
  @Test
  void an_act_without_words_is_refused_on_a_page_and_taken_from_a_program() {
    Reply mute = visit.submit("/lots/S-1/entries", "entry", "action", "note", " ");
    assertThat(mute.status()).isEqualTo(422);
    assertThat(mute.text())
        .containsSubsequence("Write in the note", "id=\"note\"", "id=\"temperature\"", "More: how")
        .doesNotContain("<details open><summary>More")
        .containsOnlyOnce("id=\"note\"");
    Reply told = visit.submit("/lots/S-1/entries", "entry", "action", "note", "iced");
    assertThat(told.status()).isEqualTo(303);
    String api = "{'entry':'action','when':'2026-03-03T10:10:00-07:00'}";
    assertThat(served.post("/api/v1/lots/S-1/entries", api).status()).isEqualTo(201);
  }

  /** Our own: the one field that an act needs is not folded away; of others the note is. */
  @Test
  void the_note_of_an_act_stands_first() {
    assertThat(visit.open("/lots/S-1?entry=action").text())
        .containsSubsequence("value=\"action\" checked", "id=\"note\"", "id=\"temperature\"")
        .containsOnlyOnce("id=\"note\"");
    assertThat(visit.open("/lots/S-1").text())
        .containsSubsequence("id=\"temperature\"", "More: how", "id=\"note\"")
        .containsOnlyOnce("id=\"note\"");
  }

  /** What was wrong is in sight: the fold that holds a wrong count of containers is open. */
  @Test
  void a_fold_with_a_wrong_field_is_open() {
    String[] fields = {"entry", "cooked", "food", "Soup", "category", "soup_or_stew"};
    String[] wrong = Arrays.copyOf(fields, fields.length + 2);
    wrong[fields.length] = "containers";
    wrong[fields.length + 1] = "many";
    Reply refused = visit.submit("/new-batch", wrong);
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.text()).containsPattern("(?s)<details open>.*value=\"many\"");
    assertThat(visit.open("/new-batch").text()).doesNotContain("<details open>");
  }

  /** Common practice, no source: a point that was left out. */
  @ParameterizedTest
  @CsvSource({"1100, 110 °F", "1650, 165 °F", "411, 41.1 °F"})
  void a_figure_without_its_point_is_asked_about(String typed, String meant) {
    Reply asked =
        visit.submit("/lots/S-1/entries", "entry", "reading", "temperature", typed, "scale", "F");
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text()).contains("Did you mean " + meant);
  }

  /** A keypad of digits has no minus on some phones; freezers read 0 °F and below. */
  @Test
  void what_is_frozen_can_be_given_a_minus_on_a_phone() {
    assertThat(visit.open("/lots/S-1").text()).contains("name=\"temperature\" inputmode=\"decimal");
    served.post(
        "/api/v1/lots/S-1/entries",
        "{'entry':'frozen','when':'2026-03-03T10:12:00-07:00','place':'Chest'}");
    assertThat(visit.open("/lots/S-1").text()).contains("name=\"temperature\" inputmode=\"text");
    served.kitchen().setUp().place(Map.of("name", "Chest", "kind", "freezer"));
    served.kitchen().setUp().place(Map.of("name", "Box", "kind", "refrigerator"));
    assertThat(visit.open("/day").text())
        .containsPattern("(?s)Chest.*?name=\"temperature\" inputmode=\"text")
        .containsPattern("(?s)name=\"temperature\" inputmode=\"decimal");
  }

  /** HTML Living Standard, autofocus: the page opens at that element, without any script. */
  @Test
  void the_first_fault_is_in_sight_when_a_page_comes_back() {
    Reply refused =
        visit.submit("/lots/S-1/entries", "entry", "reading", "temperature", "warm", "air", "x");
    assertThat(refused.text())
        .containsOnlyOnce("autofocus")
        .contains("role=\"alert\" tabindex=\"-1\" autofocus");
    assertThat(visit.submit("/new-batch", "entry", "cooked").text())
        .containsOnlyOnce("tabindex=\"-1\" autofocus");
    assertThat(visit.submit("/lots/S-1/parts", "parts", "none").text())
        .containsOnlyOnce("tabindex=\"-1\" autofocus");
  }
}
