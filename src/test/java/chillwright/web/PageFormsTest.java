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
import org.junit.jupiter.params.provider.ValueSource;

/** Forms as a browser without any script sends them. */
class PageFormsTest {
  private static final String ENTRIES = "/lots/S-1/entries";
  private static final String CODE = "[A-Za-z0-9._-]+";

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

  private JsonNode entries() {
    return served.get("/api/v1" + ENTRIES).json().at("/items");
  }

  @Test
  void a_form_sent_twice_counts_once() {
    Reply page = visit.open("/lots/S-1");
    String[] reading = {
      "once", Visit.once(page), "entry", "reading", "temperature", "150", "scale", "F"
    };
    Reply first = visit.submit(ENTRIES, reading);
    assertThat(first.status()).as(first.text()).isEqualTo(303);
    served.at("2026-03-03T17:20:00Z");
    Reply second = visit.submit(ENTRIES, reading);
    assertThat(second.status()).isEqualTo(303);
    assertThat(Visit.target(second)).isEqualTo(Visit.target(first));
    assertThat(entries()).hasSize(2);
    assertThat(visit.open(Visit.target(first)).text()).contains("Saved: reading, 150 °F");
  }

  /** Our own design, no source: what a pan holds is told of the pan, not of the pot before it. */
  @Test
  void container_and_depth_go_to_the_containers_a_batch_is_split_into() {
    Reply page = visit.open("/new-batch");
    String[] batch = {
      "once", Visit.once(page), "lot", "BS-9", "entry", "cooked", "temperature", "180",
      "scale", "F", "food", "Bean stew", "category", "soup_or_stew", "containers", "2",
      "portions", "10", "container", "full pan", "depth", "2"
    };
    Reply sent = visit.submit("/new-batch", batch);
    assertThat(sent.status()).as(sent.text()).isEqualTo(303);
    JsonNode first = served.get("/api/v1/lots/BS-9-1/entries").json().at("/items/0");
    assertThat(first.at("/container").asText()).isEqualTo("full pan");
    assertThat(first.at("/depth").asText()).isEqualTo("2 in");
    JsonNode pot = served.get("/api/v1/lots/BS-9/entries").json().at("/items/0");
    assertThat(pot.at("/container").isNull()).isTrue();
    assertThat(visit.open("/lots/BS-9-1").text()).contains("full pan", "2 in deep");
    assertThat(visit.open(Visit.target(sent)).text())
        .containsSubsequence("Divided:", "href=\"/lots/BS-9-1\"", "href=\"/lots/BS-9-2\"")
        .containsPattern("value=\"parts\" selected>[^<]*2");
  }

  @Test
  void a_batch_sent_twice_is_begun_once() {
    Reply page = visit.open("/new-batch");
    String[] batch = {
      "once",
      Visit.once(page),
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
      "10"
    };
    Reply first = visit.submit("/new-batch", batch);
    assertThat(first.status()).as(first.text()).isEqualTo(303);
    Reply second = visit.submit("/new-batch", batch);
    assertThat(Visit.target(second)).isEqualTo(Visit.target(first));
    List<String> foods = served.get("/api/v1/lots").json().at("/items").findValuesAsText("food");
    assertThat(foods).filteredOn("Bean stew"::equals).hasSize(4);
  }

  private static String[] batch(String once, String lot) {
    return new String[] {
      "once",
      once,
      "lot",
      lot,
      "entry",
      "cooked",
      "scale",
      "F",
      "food",
      "Bean stew",
      "category",
      "soup_or_stew"
    };
  }

  @Test
  void a_described_food_is_known_by_its_name_in_any_letters() {
    served.kitchen().setUp().food(Map.of("name", "Bean Stéw", "category", "soup_or_stew"));
    String once = Visit.once(visit.open("/new-batch"));
    Reply begun =
        visit.submit(
            "/new-batch", "once", once, "lot", "BS-7", "entry", "cooked", "food", "bean stew");
    assertThat(begun.status()).as(begun.text()).isEqualTo(303);
    assertThat(served.get("/api/v1/lots/BS-7").json().at("/food").asText()).isEqualTo("Bean Stéw");
  }

  /** The longest code is 64 characters, as the API says; no room is needed for parts of none. */
  @Test
  void a_chosen_code_is_that_of_a_new_lot_and_may_be_as_long_as_any() {
    String longest = "a".repeat(64);
    String once = Visit.once(visit.open("/new-batch"));
    Reply begun = visit.submit("/new-batch", batch(once, longest));
    assertThat(begun.status()).as(begun.text()).isEqualTo(303);
    assertThat(Visit.target(begun)).isEqualTo("/lots/" + longest);
    assertThat(visit.submit("/new-batch", batch(once, longest)).status()).isEqualTo(303);
    Reply other = visit.submit("/new-batch", batch(Visit.once(visit.open("/new-batch")), longest));
    assertThat(other.status()).isEqualTo(422);
    assertThat(other.text()).contains("There is a lot " + longest + " already");
    assertThat(served.get("/api/v1/lots/" + longest + "/entries").json().at("/items")).hasSize(1);
  }

  @ParameterizedTest
  @ValueSource(strings = {"warm", "15O", "1e3", "99999", "-", "'><script>alert(1)</script>"})
  void a_refused_reading_shows_what_was_typed_and_stores_nothing(String typed) {
    Reply refused =
        visit.submit(
            ENTRIES,
            "entry",
            "reading",
            "temperature",
            typed,
            "scale",
            "C",
            "note",
            "<i>stirred</i> \"twice\"",
            "by",
            "RO");
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.text())
        .contains("role=\"alert\"", "value=\"RO\"", "&lt;i&gt;stirred&lt;/i&gt;")
        .containsPattern("<option value=\"C\" selected|<option selected value=\"C\"")
        .doesNotContain("<script>", "<i>");
    if (typed.matches("[\\w-]+")) {
      assertThat(refused.text()).contains("name=\"temperature\"", "value=\"" + typed + "\"");
    }
    assertThat(entries()).hasSize(1);
  }

  /** Common practice, no source: a figure that can hardly be is asked about. */
  @ParameterizedTest
  @CsvSource({"C,150", "F,18"})
  void a_doubtful_reading_is_asked_about_and_taken_when_confirmed(String scale, String figure) {
    String[] reading = {"entry", "reading", "temperature", figure, "scale", scale};
    Reply asked = visit.submit(ENTRIES, reading);
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text()).contains("name=\"sure\"", "180 °F", figure + " °" + scale);
    assertThat(entries()).hasSize(1);
    Reply sure = visit.submit(ENTRIES, Visit.with(reading, "sure", Visit.ticks(asked)));
    assertThat(sure.status()).isEqualTo(303);
    assertThat(entries()).hasSize(2);
  }

  @Test
  void a_decimal_comma_is_taken_and_a_figure_may_bring_its_scale() {
    assertThat(
            visit
                .submit(ENTRIES, "entry", "reading", "temperature", "150,5", "scale", "F")
                .status())
        .isEqualTo(303);
    served.at("2026-03-03T17:20:00Z");
    assertThat(visit.submit(ENTRIES, "entry", "reading", "temperature", "149F").status())
        .isEqualTo(303);
    assertThat(entries().findValuesAsText("temperature")).contains("150.5 °F", "149 °F");
  }

  private Reply correct(int entry, String... changes) {
    String id = entries().get(entry).at("/id").asText();
    String page = visit.open("/lots/S-1/correct?entry=" + id).text();
    assertThat(page).containsSubsequence("name=\"place\"", "<details");
    Map<String, String> fields = PageText.fields(page, "correct");
    fields.putAll(Map.of("token", visit.token(), "reason", "read wrong", "by", "RO"));
    for (int i = 0; i < changes.length; i += 2) {
      fields.put(changes[i], changes[i + 1]);
    }
    return visit.submit("/lots/S-1/correct", fields);
  }

  private void readWrongly() {
    visit.confirm(
        ENTRIES,
        "entry",
        "reading",
        "temperature",
        "105",
        "scale",
        "F",
        "place",
        "Counter",
        "by",
        "AL");
  }

  /** The record shows both, and the reason: FDA Food Code 2022 names no form; our own rule. */
  @Test
  void a_correction_with_its_reason_is_shown_beside_what_it_corrects() {
    readWrongly();
    Reply corrected = correct(1, "temperature", "150", "air", "38", "portions", "");
    assertThat(corrected.status()).as(corrected.text()).isEqualTo(303);
    String page = visit.open("/lots/S-1").text();
    assertThat(page).contains("150 °F", "was 105 °F", "read wrong", "corrected by RO", "38 °F");
    assertThat(entries()).hasSize(3);
    assertThat(entries().get(2).at("/place").asText("")).as("only what differs").isEmpty();
  }

  @Test
  void a_wrong_time_a_wrong_word_and_a_wrong_note_are_void_and_written_again() {
    readWrongly();
    Reply corrected = correct(1, "when", "2026-03-03T10:13", "entry", "cooling", "note", "tub 2");
    assertThat(corrected.status()).as(corrected.text()).isEqualTo(303);
    JsonNode all = entries();
    assertThat(all.findValuesAsText("entry"))
        .containsExactly("cooked", "reading", "correction", "cooling");
    assertThat(all.get(3).at("/when").asText()).startsWith("2026-03-03T10:13");
    assertThat(all.get(3).at("/by").asText()).isEqualTo("AL");
    String page = visit.open("/lots/S-1").text();
    assertThat(page).contains("void", "was 105 °F", "read wrong", "tub 2");
  }

  @Test
  void a_cell_that_should_be_blank_is_made_blank_and_an_entry_void() {
    readWrongly();
    assertThat(correct(1, "place", "").status()).isEqualTo(303);
    assertThat(visit.open("/lots/S-1").text()).contains("was 105 °F, Counter");
    assertThat(entries()).hasSize(4);
    assertThat(correct(3, "void", "yes").status()).isEqualTo(303);
    assertThat(entries()).hasSize(5);
  }

  @Test
  void a_correction_that_changes_nothing_or_the_beginning_of_a_lot_is_refused() {
    readWrongly();
    Reply same = correct(1);
    assertThat(same.status()).isEqualTo(422);
    assertThat(same.text()).contains("Nothing was changed", "value=\"105\"");
    assertThat(correct(0, "temperature", "").text()).contains("not made blank");
    assertThat(correct(0, "void", "yes").text()).contains("would void the first row");
    assertThat(correct(0, "food", "Pea soup").status()).isEqualTo(303);
    assertThat(visit.open("/lots/S-1").text()).contains("Pea soup");
  }

  /** Common practice, no source: what is asked for stands first. */
  @Test
  void a_reading_is_chosen_where_one_is_awaited_and_an_action_where_that_is_asked_for() {
    String reading = "value=\"reading\" checked";
    assertThat(visit.open("/lots/S-1").text()).contains(reading);
    served.at("2026-03-03T20:00:00Z");
    assertThat(visit.open("/lots/S-1").text()).contains(reading, "/lots/S-1?entry=action#entry");
    assertThat(visit.open("/lots/S-1?entry=action").text()).contains("value=\"action\" checked");
    assertThat(visit.open("/lots/S-1?entry=nonsense").text()).contains(reading);
  }

  @Test
  void a_language_and_a_scale_stay_chosen() {
    Reply chosen = visit.submit("/ways", "language", "es", "back", "/on-hand");
    assertThat(Visit.target(chosen)).isEqualTo("/on-hand");
    visit.submit("/ways", "scale", "C", "back", "/");
    String page = visit.open("/").text();
    assertThat(page).contains("<html lang=\"es\"", "Lo próximo que vence", "°C");
    assertThat(new Visit(served).open("/", "Accept-Language", "es-MX,es;q=0.9").text())
        .contains("<html lang=\"es\"");
    assertThat(new Visit(served).open("/", "Accept-Language", "de, fr").text())
        .contains("<html lang=\"en\"");
  }

  /** What is owed stays on the first page until an action is logged. */
  @Test
  void what_is_owed_stays_on_the_first_page() {
    served.at("2026-03-03T20:00:00Z");
    String missed = visit.open("/").text();
    assertThat(missed).containsSubsequence("Needs a hand now", "S-1", "Log what was done");
    assertThat(visit.submit(ENTRIES, "entry", "action", "note", "discarded the pot").status())
        .isEqualTo(303);
    assertThat(visit.submit(ENTRIES, "entry", "discarded").status()).isEqualTo(303);
    assertThat(visit.open("/").text()).contains("no action is owed");
  }

  @Test
  void a_portion_is_taken_from_the_list() {
    visit.submit(
        "/new-batch",
        "entry",
        "frozen",
        "temperature",
        "0",
        "scale",
        "F",
        "food",
        "Bean stew",
        "category",
        "soup_or_stew",
        "portions",
        "10",
        "place",
        "Freezer",
        "lot",
        "B-1");
    String page = visit.open("/on-hand").text();
    assertThat(page).contains("10 portions left").doesNotContainIgnoringCase("use by");
    Reply taken =
        visit.submit("/lots/B-1/entries", "entry", "portions", "portions", "2", "back", "/on-hand");
    assertThat(taken.status()).as(taken.text()).isEqualTo(303);
    assertThat(Visit.target(taken)).matches("/on-hand\\?taken=B-1[+]" + CODE);
    assertThat(visit.open("/on-hand?place=Freezer").text())
        .contains("name=\"back\" value=\"/on-hand?place=Freezer\"");
    assertThat(target("/on-hand?place=Walk-in+1%2F2"))
        .matches("/on-hand\\?place=Walk-in[+]1%2F2&taken=B-1[+]" + CODE);
    assertThat(target("/lots")).matches("/lots\\?taken=B-1[+]" + CODE);
    assertThat(target("/on-hand?place=x&y=//elsewhere.example")).startsWith("/lots/B-1?done=");
    assertThat(target("//elsewhere.example/on-hand")).startsWith("/lots/B-1?done=");
    assertThat(visit.open("/on-hand").text()).contains("7 portions left");
    assertThat(target("/on-hand?place=Freezer&good-on=2026-03-05"))
        .matches("/on-hand\\?place=Freezer&good-on=2026-03-05&taken=B-1[+]" + CODE);
    visit.submit(
        "/lots/B-1/entries", "entry", "portions", "portions", "3", "to", "Stall at the harbour");
    assertThat(visit.open("/lots/B-1").text())
        .containsSubsequence("Given out:", "Stall at the harbour, portions: 3");
    assertThat(visit.open("/lots/B-1").text()).doesNotContainIgnoringCase("use by");
  }

  /** Where the form of a portion leads back to. */
  private String target(String back) {
    Reply taken =
        visit.submit("/lots/B-1/entries", "entry", "portions", "portions", "1", "back", back);
    assertThat(taken.status()).as(taken.text()).isEqualTo(303);
    return Visit.target(taken);
  }
}
