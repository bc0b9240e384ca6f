package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.Test;

/** What people come for, each story told on a phone from its first page to its end. */
class StoriesIT extends PhoneStories {
  private static final String LOT_FIELD = "#entry input[name=temperature]";

  private JsonNode entries(String lot) {
    return served().get("/api/v1/lots/" + lot + "/entries").json().at("/items");
  }

  private String verdict(String lot, String rule) {
    for (JsonNode finding : served().get("/api/v1/lots/" + lot).json().at("/findings")) {
      if (finding.at("/rule").asText().equals(rule)) {
        return finding.at("/verdict").asText();
      }
    }
    return "no finding";
  }

  /** FDA Food Code 2022 3-501.14(A): 135 to 70 °F within 2 hours, to 41 °F within 6 in all. */
  @Test
  void a_cooling_is_logged_from_cooked_to_frozen() {
    open("/");
    phone().tapText("Start a new batch");
    phone().type("#food", "Barley soup");
    phone().choose("#category", "soup_or_stew");
    phone().type("#temperature", "180");
    phone().type("#portions", "12");
    phone().tapText("Start the batch");
    phone().waitFor("70 °F by 12:15");
    String lot = phone().address().replaceAll(".*/lots/([^?#]+).*", "$1");

    served().at("2026-03-03T18:45:00Z");
    open("/");
    assertThat(phone().text()).contains("Falls due next", "12:15", "Barley soup", " min left");
    phone().type("input[name=temperature]", "68");
    phone().tapText("Save");
    phone().waitFor("Saved: reading, 68 °F");
    assertThat(phone().touches()).isLessThanOrEqualTo(3);
    assertThat(phone().text()).contains("41 °F by 16:15");

    served().at("2026-03-03T21:00:00Z");
    open("/lots/" + lot);
    phone().tapText("chilled");
    phone().type(LOT_FIELD, "40");
    phone().tap("#entry button.main");
    phone().waitFor("Saved: chilled, 40 °F");

    served().at("2026-03-04T17:00:00Z");
    open("/lots/" + lot);
    phone().tapText("frozen");
    phone().type(LOT_FIELD, "0");
    phone().tapText("More: how, place, container, when, note");
    phone().choose("#how", "hard");
    phone().type("#place", "Freezer");
    phone().tap("#entry button.main");
    phone().waitFor("Saved: frozen, 0 °F");
    assertThat(phone().text())
        .contains("best quality by")
        .doesNotContainIgnoringCase("use by")
        .contains("12 portions left");
    assertThat(entries(lot).findValuesAsText("entry"))
        .containsExactly("cooked", "reading", "chilled", "frozen");
    assertThat(verdict(lot, "cooling.cooked.first-stage")).isEqualTo("in");
    assertThat(verdict(lot, "cooling.cooked.total")).isEqualTo("in");
  }

  /** 3-501.14(A)(1): 70 °F was not reached two hours after 135 °F. */
  @Test
  void a_limit_is_missed_and_acted_on() {
    served().cookSoup("S-1");
    served().at("2026-03-03T19:10:00Z");
    open("/");
    phone().waitFor("Needs a hand now");
    assertThat(phone().text()).contains("Not shown", "Barley soup", "S-1", "3-501.14(A)(1)");
    phone().tapText("Log what was done");
    phone().waitFor("Log an entry");
    assertThat(phone().find("#entry input[name=entry]:checked").getDomProperty("value"))
        .isEqualTo("action");
    // Its words are asked for, so their field is unfolded.
    phone().type("#note", "reheated to 165 °F, then into the ice bath");
    phone().type("#by", "RO");
    phone().tap("#entry button.main");
    phone().waitFor("Saved: action taken");
    // What is not shown counts as missed, and words alone mend nothing.
    open("/");
    assertThat(phone().text()).contains("Not shown", "S-1");
    open("/lots/S-1?entry=discarded");
    phone().waitFor("Log an entry");
    phone().tap("#entry button.main");
    phone().waitFor("Saved: discarded");
    open("/");
    phone().waitFor("no action is owed");
    open("/record");
    assertThat(phone().text()).contains("Not shown", "reheated to 165 °F, then into the ice bath");
  }

  @Test
  void a_limit_missed_by_a_reading_keeps_its_verdict_and_shows_what_was_done() {
    served().cookSoup("S-1");
    served().at("2026-03-03T19:10:00Z");
    served()
        .post(
            "/api/v1/lots/S-1/entries",
            "{'when':'2026-03-03T10:05:00-07:00','entry':'reading','temperature':'134F'}");
    open("/lots/S-1");
    phone().tapText("reading");
    phone().type(LOT_FIELD, "95");
    phone().tap("#entry button.main");
    phone().waitFor("Saved: reading, 95 °F");
    assertThat(phone().text()).contains("Out");
    phone().tapText("action taken");
    phone().tapText("More: how, place, container, when, note");
    phone().type("#note", "discarded the pot");
    phone().tap("#entry button.main");
    phone().waitFor("Saved: action taken");
    open("/");
    assertThat(phone().text()).contains("Out", "S-1", "discarded the pot");
  }

  /** A person who reads in Celsius types a figure of the kitchen's Fahrenheit probe. */
  @Test
  void a_slip_is_asked_about_and_one_that_was_made_is_corrected() {
    served().cookSoup("S-1");
    open("/");
    phone().tapText("°C");
    phone().waitFor("°C");
    phone().type("input[name=temperature]", "150");
    phone().tapText("Save");
    phone().waitFor("Was it 150 °F?");
    assertThat(entries("S-1")).hasSize(1);
    assertThat(phone().find(LOT_FIELD).getDomProperty("value")).isEqualTo("150");
    phone().choose("#entry select[name=scale]", "F");
    phone().tap("#entry button.main");
    phone().waitFor("Saved: reading, 150 °F");

    phone().tapText("Correct this");
    phone().waitFor("so that the entry reads as it should");
    phone().find("#temperature").clear();
    phone().type("#temperature", "105");
    phone().type("#reason", "read 105, typed 150");
    phone().type("#by", "RO");
    phone().tapText("Save the correction");
    phone().waitFor("corrected by RO");
    assertThat(phone().text()).contains("105 °F", "was 150 °F", "read 105, typed 150");
    assertThat(entries("S-1")).hasSize(3);
  }

  @Test
  void what_to_use_is_found_and_portions_are_taken() {
    batch("F-1", "Bean stew", "frozen", "0F", "Freezer", 10);
    batch("C-1", "Barley soup", "chilled", "38F", "Walk-in", 6);
    open("/");
    phone().tapText("On hand");
    phone().waitFor("What must go first stands first");
    assertThat(phone().text()).containsSubsequence("Barley soup", "Bean stew");
    phone().tapText("Freezer");
    phone().waitForAddress("place=Freezer");
    assertThat(phone().all(".card")).hasSize(1);
    phone().tap(".card button");
    phone().waitFor("9 portions left");
    assertThat(entries("F-1").findValuesAsText("entry")).containsExactly("frozen", "portions");
  }

  private void batch(String lot, String food, String word, String figure, String place, int count) {
    served()
        .post(
            "/api/v1/lots",
            "{'lot':'%s','food':'%s','category':'soup_or_stew'}".formatted(lot, food));
    Served.Reply made =
        served()
            .post(
                "/api/v1/lots/" + lot + "/entries",
                "{'when':'2026-03-03T10:10:00-07:00','entry':'%s','temperature':'%s',"
                        .formatted(word, figure)
                    + "'place':'%s','portions':%d}".formatted(place, count));
    assertThat(made.status()).as(made.text()).isEqualTo(201);
  }

  @Test
  void a_reading_is_logged_in_spanish() {
    served().cookSoup("S-1");
    open("/");
    phone().tapText("Español");
    phone().waitFor("Lo próximo que vence");
    assertThat(phone().find("html").getDomAttribute("lang")).isEqualTo("es");
    phone().type("input[name=temperature]", "150");
    phone().tapText("Guardar");
    phone().waitFor("Guardado: lectura, 150 °F");
    assertThat(phone().tooWide()).isLessThanOrEqualTo(0);
    open("/keeps");
    phone().choose("#category", "soup_or_stew");
    phone().script("document.getElementById('made').value = '2026-03-02'");
    phone().tap("form.entry button.main");
    phone().waitForAddress("category=soup_or_stew");
    // FoodSafety.gov, Cold Food Storage Chart: soup 3 to 4 days; no kitchen is set up here.
    assertThat(phone().text()).contains("vie 6 mar");
  }

  @Test
  void a_page_brings_itself_up_to_date_but_not_under_someones_hands() {
    served().cookSoup("S-1");
    open("/");
    phone().type("input[name=temperature]", "1");
    served().post("/api/v1/lots", "{'lot':'S-2','food':'Bean stew','category':'soup_or_stew'}");
    served()
        .post(
            "/api/v1/lots/S-2/entries",
            "{'when':'2026-03-03T10:10:00-07:00','entry':'cooked','temperature':'170F'}");
    phone().script("document.dispatchEvent(new Event('visibilitychange'))");
    phone().script("document.activeElement.blur()");
    phone().script("document.dispatchEvent(new Event('visibilitychange'))");
    assertThat(phone().find("input[name=temperature]").getDomProperty("value")).isEqualTo("1");
    assertThat(phone().text()).doesNotContain("Bean stew");
    phone().script("document.querySelector('input[name=temperature]').value = ''");
    phone().script("document.dispatchEvent(new Event('visibilitychange'))");
    phone().waitFor("Bean stew");
  }
}
