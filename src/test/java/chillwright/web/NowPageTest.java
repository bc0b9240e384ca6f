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
import org.junit.jupiter.params.provider.ValueSource;

/** Readings logged from the first page, without any script. */
class NowPageTest {
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

  private Reply log(String... fields) {
    return visit.submit("/lots/S-1/entries", fields);
  }

  private Reply confirmed(String... fields) {
    return visit.confirm("/lots/S-1/entries", fields);
  }

  private void read(String figure) {
    Reply taken = confirmed("entry", "reading", "temperature", figure, "scale", "F");
    assertThat(taken.status()).as(taken.text()).isEqualTo(303);
  }

  @Test
  void initials_are_offered_again_on_the_phone_they_were_written_on() {
    assertThat(visit.open("/").text()).contains("name=\"by\"").doesNotContain("value=\"RÖ &amp;");
    log("entry", "reading", "temperature", "170", "scale", "F", "by", "RÖ & co");
    assertThat(visit.open("/").text()).contains("value=\"RÖ &amp; co\"");
    assertThat(visit.open("/lots/S-1").text()).contains("value=\"RÖ &amp; co\"", ", RÖ &amp; co");
    Visit another = new Visit(served);
    assertThat(another.open("/").text()).doesNotContain("RÖ &amp; co");
  }

  /** A browser sends back what it was given; another may send anything. */
  @ParameterizedTest
  @ValueSource(strings = {"a\r\nb", "a\u0000b", "\u202eab", "abcdefghijklmnopqrstu"})
  void initials_that_cannot_be_seen_are_not_kept(String by) {
    log("entry", "reading", "temperature", "170", "scale", "F", "by", by);
    assertThat(visit.open("/").text()).contains("placeholder=\"Initials\" value=\"\"");
  }

  @Test
  void what_was_saved_has_its_correction_beside_it() {
    String after = Visit.target(log("entry", "reading", "temperature", "170", "scale", "F"));
    String id = after.replaceFirst(".*done=", "");
    assertThat(visit.open(after).text())
        .containsSubsequence(
            "Saved: reading, 170 °F", "href=\"/lots/S-1/correct?entry=" + id + "\"", "<section");
  }

  /** Our own design: the next pan is read without a way back. */
  @Test
  void a_reading_of_this_page_comes_back_to_it_with_its_correction() {
    assertThat(visit.open("/").text()).contains("name=\"back\" value=\"/\"");
    String[] reading = {"entry", "reading", "temperature", "170", "scale", "F", "back", "/"};
    String after = Visit.target(log(reading));
    assertThat(after).startsWith("/?");
    String id = after.replaceFirst(".*done=", "");
    assertThat(visit.open(after).text())
        .containsSubsequence(
            "Saved: reading, 170 °F", "href=\"/lots/S-1/correct?entry=" + id + "\"", "<section")
        .contains("name=\"temperature\"");
    assertThat(visit.open("/?lot=S-1&done=none").text()).doesNotContain("Saved:");
    reading[3] = "300";
    Reply asked = log(reading);
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text()).contains("name=\"back\" value=\"/\"");
  }

  /** Common practice, no source: what is made of water and little else freezes near 0 °C. */
  @ParameterizedTest
  @CsvSource({"F,27,303", "F,26,422", "F,11,422", "C,-2.9,303", "C,-3.1,422"})
  void food_that_is_not_frozen_is_asked_about_when_it_reads_like_it(
      String scale, String figure, int status) {
    served.post("/api/v1/lots", "{'lot':'C-1','food':'Soup','category':'soup_or_stew'}");
    served.post(
        "/api/v1/lots/C-1/entries",
        "{'when':'2026-03-03T10:00:00-07:00','entry':'cooked','temperature':'80C'}");
    served.at("2026-03-03T23:30:00Z");
    Reply answer =
        visit.submit(
            "/lots/" + (scale.equals("C") ? "C-1" : "S-1") + "/entries",
            "entry",
            "reading",
            "temperature",
            figure,
            "scale",
            scale);
    assertThat(answer.status()).isEqualTo(status);
    if (status == 422) {
      assertThat(answer.text()).contains("name=\"sure\"", "no freezing is logged");
    }
  }

  @Test
  void food_in_a_freezer_is_not_asked_about() {
    read("40");
    assertThat(log("entry", "frozen", "temperature", "20", "scale", "F").status()).isEqualTo(303);
    served.at("2026-03-04T17:00:00Z");
    assertThat(log("entry", "reading", "temperature", "-1", "scale", "F").status()).isEqualTo(303);
  }

  /** FDA Food Code 2022 3-501.14(A): 70 °F within two hours, 41 °F within six. */
  @Test
  void a_lot_stands_on_the_page_once_with_all_that_is_to_be_done() {
    served.at("2026-03-03T19:30:00Z");
    String page = visit.open("/").text();
    assertThat(page)
        .containsSubsequence(
            "Needs a hand now", "70 °F", "41 °F by 16:00", "id=\"t-S-1\"", "Falls due next")
        .containsOnlyOnce("id=\"t-S-1\"");
  }

  /** 32 °C is 89.6 °F, exact by definition; that probes show both scales is common practice. */
  @ParameterizedTest
  @CsvSource({
    "170,32,F,19:38,Was it 32 °C?",
    "170,40,F,19:38,Was it 40 °C?",
    "170,90,C,19:38,Was it 90 °F?",
    "170,42,F,19:38,''",
    "69,40,F,19:38,''",
    "170,40,F,23:30,''",
    "170,70,C,19:38,''",
    "170,251,F,19:38,hotter than food gets",
    "170,400,F,19:38,hotter than food gets"
  })
  void a_figure_that_fits_better_in_the_other_scale_is_asked_about(
      String before, String figure, String scale, String at, String asks) {
    confirmed("entry", "reading", "temperature", before, "scale", "F");
    served.at("2026-03-03T" + at + ":00Z");
    Reply answer = log("entry", "reading", "temperature", figure, "scale", scale);
    assertThat(answer.status()).isEqualTo(asks.isEmpty() ? 303 : 422);
    assertThat(answer.text()).contains(asks);
  }

  /** 70 °F is printed as 21 °C: FDA Food Code 2022 3-501.14(A)(1). 85 °F is 29.4 °C. */
  @Test
  void who_reads_celsius_is_told_all_in_celsius() {
    visit.submit("/ways", "scale", "C", "back", "/");
    served.at("2026-03-03T18:00:00Z");
    read("85");
    assertThat(visit.open("/").text()).contains("21 °C by ").doesNotContain("70 °F");
    assertThat(visit.open("/lots/S-1").text()).contains("85 °F (29.4 °C)", "21 °C by ");
  }

  /** Water freezes at 32 °F (0 °C): what is in a freezer that reads more may be thawing. */
  @Test
  void a_freezer_that_died_calls_until_somebody_did_something() {
    served.kitchen().setUp().place(Map.of("name", "Chest", "kind", "freezer"));
    log("entry", "frozen", "place", "Chest", "portions", "4");
    visit.submit(
        "/day/readings", "entry", "reading", "place", "Chest", "temperature", "52", "scale", "F");
    assertThat(visit.open("/").text())
        .containsSubsequence("Needs a hand now", "above freezing", "Chest", "52 °F", "Falls due");
    assertThat(visit.open("/on-hand").text()).contains("Chest read 52 °F");
    served.at("2026-03-03T17:30:00Z");
    visit.submit(
        "/day/readings", "entry", "action", "place", "Chest", "note", "moved to the other one");
    assertThat(visit.open("/").text()).doesNotContain("above freezing");
    served.at("2026-03-04T18:00:00Z");
    assertThat(visit.open("/").text()).as("a day later").doesNotContain("above freezing");
    visit.submit(
        "/day/readings", "entry", "reading", "place", "Chest", "temperature", "51", "scale", "F");
    assertThat(visit.open("/").text()).as("again").containsSubsequence("above freezing", "51 °F");
  }

  /** FDA Food Code 2022 3-403.11(D): within two hours from cold to 165 °F. */
  @Test
  void a_reheat_first_logged_warm_is_asked_when_it_began() {
    confirmed("entry", "chilled", "temperature", "40", "scale", "F");
    served.at("2026-03-04T17:00:00Z");
    String[] warm = {"entry", "reheating", "temperature", "150", "scale", "F"};
    assertThat(log(warm).text()).contains("Log first when heating began");
    log("entry", "reheating");
    served.at("2026-03-04T17:30:00Z");
    assertThat(log(warm).status()).isEqualTo(303);
    served.at("2026-03-04T18:00:00Z");
    log("entry", "reheating", "temperature", "167", "scale", "F");
    assertThat(visit.open("/lots/S-1").text()).contains("165 °F reached in 1 h at most");
  }
}
