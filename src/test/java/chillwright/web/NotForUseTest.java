package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import java.io.IOException;
import java.nio.file.Path;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Food that missed a limit is asked about before it is handed on. FDA Food Code 2022 3-501.14(A):
 * 70 °F within two hours; 99 °F five hours after 200 °F missed that. The question is our own.
 */
class NotForUseTest {
  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void open() {
    served = Served.in(folder);
    served.at("2026-03-06T20:00:00Z");
    served.post(
        "/api/v1/lots", "{'lot':'WARM','food':'Rice','category':'soup_or_stew','portions':9}");
    log("'when':'2026-03-06T07:00:00-07:00','entry':'cooked','temperature':'200F'");
    log("'when':'2026-03-06T07:30:00-07:00','entry':'reading','temperature':'130F'");
    log("'when':'2026-03-06T12:00:00-07:00','entry':'cooling','temperature':'99F'");
    visit = new Visit(served);
    visit.open("/lots/WARM");
  }

  @AfterEach
  void close() {
    served.close();
  }

  private void log(String entry) {
    Reply logged = served.post("/api/v1/lots/WARM/entries", "{" + entry + "}");
    assertThat(logged.status()).as(logged.text()).isEqualTo(201);
  }

  private int entries() {
    return served.get("/api/v1/lots/WARM/entries").json().at("/items").size();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "served",
        "hot-holding",
        "frozen",
        "chilled",
        "portions",
        "time-control",
        "set-out"
      })
  void it_is_asked_about_before_it_is_handed_on(String word) {
    int before = entries();
    String[] fields = {"entry", word, "portions", "1", "temperature", "98", "scale", "F"};
    Reply asked = visit.submit("/lots/WARM/entries", fields);
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text())
        .contains("WARM is not for use as the record stands: ", "99 °F", "name=\"sure\"")
        .contains("Save it all the same: it was done, although the food is not for use by its")
        .doesNotContain("Yes, it is right: save it")
        .contains("value=\"" + word + "\"");
    assertThat(entries()).isEqualTo(before);
  }

  @Test
  void who_says_so_saves_it_all_the_same() {
    String[] taken = {"entry", "portions", "portions", "1", "back", "/on-hand"};
    Reply asked = visit.submit("/lots/WARM/entries", taken);
    assertThat(asked.status()).isEqualTo(422);
    String[] sure = {"entry", "portions", "portions", "1", "sure", Visit.ticks(asked)};
    assertThat(visit.submit("/lots/WARM/entries", sure).status()).isEqualTo(303);
    assertThat(served.get("/api/v1/lots/WARM").json().at("/portions/left").asInt()).isEqualTo(8);
  }

  @ParameterizedTest
  @ValueSource(strings = {"action", "discarded", "reading"})
  void what_tells_of_it_or_is_done_about_it_is_never_asked(String word) {
    String[] fields = {"entry", word, "note", "kept apart", "temperature", "98", "scale", "F"};
    assertThat(visit.submit("/lots/WARM/entries", fields).status()).isEqualTo(303);
  }

  /** Our own design, no source: counting is none of the acts of FDA Food Code 2022 3-501.14. */
  @ParameterizedTest
  @ValueSource(strings = {"0", "8", "9", "12"})
  void a_count_neither_closes_it_nor_settles_what_is_owed(String found) {
    Reply counted = visit.submit("/lots/WARM/counts", "found", found);
    assertThat(counted.status()).isEqualTo(422);
    assertThat(counted.text()).contains("log first what was done about it, then count it");
    log("'when':'2026-03-06T12:30:00-07:00','entry':'action','note':'kept apart'");
    assertThat(visit.submit("/lots/WARM/counts", "found", found).status()).isEqualTo(303);
  }

  /**
   * 70 °F was due by 09:00, and the reheat is offered for the four hours that 3-501.14(A)(2) leaves
   * after that: the page that asks for it does not question it.
   */
  @ParameterizedTest
  @CsvSource({"2026-03-06T20:00:00Z, 303", "2026-03-06T20:01:00Z, 422"})
  void the_reheat_that_is_offered_is_not_asked_about(String now, int status) {
    served.at(now);
    String[] fields = {"entry", "reheating", "temperature", "98", "scale", "F"};
    assertThat(visit.submit("/lots/WARM/entries", fields).status()).isEqualTo(status);
  }

  /** What was done about it does not fold away what may have to be done next. */
  @Test
  void what_is_out_keeps_its_choices_after_an_act() {
    log("'when':'2026-03-06T12:30:00-07:00','entry':'action','note':'put aside'");
    String page = visit.open("/lots/WARM").text();
    String first = page.substring(page.indexOf("id=\"log\""), page.indexOf("Something else"));
    assertThat(first).contains("value=\"action\"", "value=\"discarded\"", "value=\"reheating\"");
  }

  @Test
  void a_program_is_never_asked() {
    log("'when':'2026-03-06T12:30:00-07:00','entry':'portions','portions':1");
    log("'when':'2026-03-06T12:40:00-07:00','entry':'served'");
  }

  @Test
  void it_is_asked_about_before_it_is_divided_or_put_into_another_pot() {
    String[] parts = {"parts", "1", "portions", "3", "food", "Rice"};
    Reply asked = visit.submit("/lots/WARM/parts", parts);
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text()).contains("WARM is not for use", "name=\"sure\"");
    String[] sure = Visit.with(parts, "sure", Visit.ticks(asked));
    assertThat(visit.submit("/lots/WARM/parts", sure).status()).isEqualTo(303);
    served.post(
        "/api/v1/lots", "{'lot':'GOOD','food':'Soup','category':'soup_or_stew','portions':4}");
    served.post(
        "/api/v1/lots/GOOD/entries",
        "{'when':'2026-03-06T12:00:00-07:00','entry':'prepared','temperature':'39F'}");
    Reply pot =
        visit.submit(
            "/lots/GOOD/combined",
            "more",
            "WARM",
            "entry",
            "cooked",
            "temperature",
            "180",
            "scale",
            "F",
            "food",
            "Soup",
            "category",
            "soup_or_stew");
    assertThat(pot.status()).isEqualTo(422);
    assertThat(pot.text()).contains("WARM is not for use", "name=\"sure\"");
  }

  /** Why it is out stands first; nothing tells how a limit could still be met that was missed. */
  @Test
  void why_it_is_out_stands_at_the_top_without_hints_that_come_too_late() {
    log("'when':'2026-03-06T12:30:00-07:00','entry':'reading','temperature':'90F','air':'38F'");
    log("'when':'2026-03-06T12:50:00-07:00','entry':'reading','temperature':'82F'");
    String page = visit.open("/lots/WARM").text();
    assertThat(page)
        .containsSubsequence("class=\"where\"", "70 °F", "id=\"log\"", "id=\"dates\"")
        .contains("make labels of it")
        .doesNotContain("To be in time it must", "in time it must read");
    String top = page.substring(page.indexOf("class=\"where\""), page.indexOf("id=\"log\""));
    assertThat(top).contains("99 °F");
  }

  /** Our own: "yes" says of nothing what it answers, and no tick answers what it did not ask. */
  @Test
  void a_tick_answers_only_what_it_asks() {
    String[] hot = {"entry", "served", "temperature", "411", "scale", "F"};
    Reply asked = visit.submit("/lots/WARM/entries", hot);
    String unfit = "unfit:WARM:cooling.cooked.first-stage:WARM";
    String figure = "hot:411%0020°F:WARM";
    assertThat(Visit.ticks(asked)).isEqualTo(unfit + " " + figure);
    String ofOthers = "unfit:COLD hot:411%0020°F:COLD hot:411_°F:WARM hot:411%0020°F";
    for (String one : new String[] {"yes", figure, unfit, ofOthers, "unfit:COLD " + figure}) {
      Reply again = visit.submit("/lots/WARM/entries", Visit.with(hot, "sure", one));
      assertThat(again.status()).as(one).isEqualTo(422);
      assertThat(again.text()).contains("WARM is not for use", "hotter than food gets");
      assertThat(isTicked(again, unfit)).as(one).isEqualTo(one.equals(unfit));
      assertThat(isTicked(again, figure)).as(one).isEqualTo(one.endsWith(figure));
    }
    hot[3] = "412";
    String[] other = Visit.with(hot, "sure", unfit + " " + figure);
    assertThat(visit.submit("/lots/WARM/entries", other).status()).as("not asked").isEqualTo(422);
    hot[3] = "411";
    String[] both = Visit.with(hot, "sure", Visit.ticks(asked));
    assertThat(visit.submit("/lots/WARM/entries", both).status()).isEqualTo(303);
  }

  private static boolean isTicked(Reply page, String name) {
    return page.text().contains("value=\"" + name + "\" checked");
  }

  /** A browser sends each tick as a field of its own. */
  @Test
  void ticks_come_as_fields_of_one_name() {
    String sent =
        "token="
            + visit.token()
            + "&entry=served&temperature=411&scale=F&sure=hot:411%250020%C2%B0F:WARM"
            + "&sure=unfit:WARM:cooling.cooked.first-stage:WARM";
    assertThat(visit.submitted("/lots/WARM/entries", sent).status()).isEqualTo(303);
  }

  /** FDA Food Code 2022 3-501.14(A), as above: labels are asked about like any use. */
  @Test
  void labels_are_made_only_when_their_question_is_answered() {
    String address = "/lots/WARM/labels.pdf?sheet=a4-8&count=2";
    for (String sure : new String[] {"", "&sure=yes", "&sure=unfit:COLD:x"}) {
      Reply asked = served.get(address + sure);
      assertThat(asked.status()).as(sure).isEqualTo(422);
      assertThat(asked.text())
          .contains("WARM is not for use", "name=\"count\" value=\"2\"", "Yes, make labels of it")
          .doesNotContain("value=\"yes\"");
    }
    String ticks = Visit.encoded(Visit.ticks(served.get(address)));
    Reply made = served.get(address + "&sure=" + ticks);
    assertThat(made.header("Content-Type")).startsWith("application/pdf");
    assertThat(visit.open("/lots/WARM").text())
        .contains("value=\"unfit:WARM:cooling.cooked.first-stage\" required");
  }

  /** A batch made of it is asked about as well. */
  @Test
  void it_is_asked_about_before_a_batch_is_made_of_it() {
    Reply asked =
        visit.submit(
            "/new-batch",
            "entry",
            "prepared",
            "food",
            "Rice salad",
            "category",
            "soup_or_stew",
            "from",
            "WARM");
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text()).contains("WARM is not for use", "name=\"sure\"");
  }

  /**
   * FDA Food Code 2022 3-501.14(A): 70 °F within two hours and 41 °F within four more. Cooked at 8
   * h, nobody read it until the reading that is missing is logged with where it was put.
   */
  @ParameterizedTest
  @CsvSource({
    "chilled, 65, 09:50, 303",
    "frozen, 65, 09:50, 303",
    "chilled, 65, 10:30, 303",
    "chilled, '', 09:50, 422",
    "chilled, 71, 10:30, 422",
    "served, 65, 09:50, 422",
  })
  void the_reading_that_was_missing_is_not_asked_about(
      String word, String figure, String clock, int status) {
    served.at("2026-03-06T17:45:00Z");
    served.post("/api/v1/lots", "{'lot':'LATE','food':'Rice','category':'soup_or_stew'}");
    String cooked = "{'entry':'cooked','when':'2026-03-06T08:00:00-07:00','temperature':'150F'}";
    assertThat(served.post("/api/v1/lots/LATE/entries", cooked).status()).isEqualTo(201);
    String began = "{'entry':'cooling','when':'2026-03-06T08:01:00-07:00','temperature':'134F'}";
    assertThat(served.post("/api/v1/lots/LATE/entries", began).status()).isEqualTo(201);
    assertThat(visit.open("/lots/LATE").text()).contains("?entry=action#entry");
    String when = "2026-03-06T" + clock;
    String[] fields = {"entry", word, "temperature", figure, "scale", "F", "when", when};
    Reply reply = visit.submit("/lots/LATE/entries", fields);
    assertThat(reply.status()).as(reply.text()).isEqualTo(status);
    if (status == 422) {
      assertThat(reply.text()).contains("LATE is not for use");
    }
  }

  /** An act settles what is owed; the verdict stays, and with it the question. */
  @Test
  void it_is_asked_about_after_an_act_too() throws IOException {
    log("'when':'2026-03-06T12:30:00-07:00','entry':'action','note':'kept apart'");
    assertThat(visit.submit("/lots/WARM/entries", "entry", "served").status()).isEqualTo(422);
    assertThat(visit.open("/lots/WARM").text())
        .doesNotContain("?entry=action#entry", "Use or discard by")
        .contains("No date holds: a limit was missed");
    assertThat(visit.open("/on-hand").text())
        .contains("A limit was missed or is not shown: not for use as its record stands");
    assertThat(label()).contains("A LIMIT WAS MISSED").doesNotContain("Discard after", "Reheat to");
  }

  private String label() throws IOException {
    Reply reply = Visit.labels(served, "/lots/WARM/labels.pdf?sheet=a4-8");
    byte[] pdf = reply.response().body();
    try (PDDocument label = Loader.loadPDF(pdf)) {
      return new PDFTextStripper().getText(label).replaceAll("\\s+", " ");
    }
  }

  /** FDA Food Code 2022 3-403.11(A), (D): 165 °F within two hours, by leave of the authority. */
  @Test
  void a_full_reheat_by_leave_gives_its_dates_back() throws IOException {
    log("'when':'2026-03-06T12:10:00-07:00','entry':'action','how':'allowed','note':'by phone'");
    log("'when':'2026-03-06T12:15:00-07:00','entry':'reheating','temperature':'99F'");
    log("'when':'2026-03-06T12:40:00-07:00','entry':'reading','temperature':'166F'");
    assertThat(visit.open("/lots/WARM").text()).doesNotContain("No date holds");
    assertThat(visit.submit("/lots/WARM/entries", "entry", "hot-holding").status()).isEqualTo(303);
    assertThat(label()).doesNotContain("A LIMIT WAS MISSED");
  }

  /**
   * FDA Food Code 2022 3-501.14(A) was missed; 3-403.11(A): 165 °F. That reheat is offered "if your
   * authority allows", which "put aside" does not say: every page asks alike. The way is our own.
   */
  @Test
  void a_full_reheat_without_leave_is_told_alike_on_every_page() throws IOException {
    log("'when':'2026-03-06T12:10:00-07:00','entry':'action','note':'put aside'");
    log("'when':'2026-03-06T12:15:00-07:00','entry':'reheating','temperature':'99F'");
    log("'when':'2026-03-06T12:40:00-07:00','entry':'reading','temperature':'166F'");
    log("'when':'2026-03-06T12:45:00-07:00','entry':'hot-holding','temperature':'150F'");
    String says = "put aside. Reheated since: 166 °F at 12:40. Use it only if your authority";
    for (String page : new String[] {"/lots/WARM", "/on-hand", "/", "/record", "/day"}) {
      assertThat(visit.open(page).text().replaceAll("<[^>]+>", "")).as(page).contains(says);
    }
    assertThat(visit.open("/lots/WARM").text()).contains("No date holds");
    assertThat(visit.open("/record").text()).doesNotContain("Discard, or reheat");
    Reply asked = visit.submit("/lots/WARM/entries", "entry", "served");
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text()).contains("Use it only if your authority allows");
    assertThat(label()).contains("A LIMIT WAS MISSED").doesNotContain("Discard after", "Reheat to");
    assertThat(served.get("/api/v1/days/2026-03-06").text()).contains("\"WARM\"");
  }

  /** Words cannot be judged: only what was chosen as leave is leave. */
  @ParameterizedTest
  @CsvSource({
    "allowed, put aside, false",
    "'', the inspector allowed it, true",
    "'', inspector said it cannot be allowed, true",
    "'', 'forbidden by the inspector, the owner allowed it', true",
    "'', 'inspector called, will say tomorrow; owner allowed it', true",
  })
  void no_words_of_a_note_give_leave(String how, String note, boolean isAsked) {
    String leave = how.isEmpty() ? "" : "'how':'" + how + "',";
    log("'when':'2026-03-06T12:10:00-07:00','entry':'action'," + leave + "'note':'" + note + "'");
    log("'when':'2026-03-06T12:15:00-07:00','entry':'reheating','temperature':'99F'");
    log("'when':'2026-03-06T12:40:00-07:00','entry':'reading','temperature':'166F'");
    String page = visit.open("/on-hand").text();
    assertThat(page.contains("Use it only if")).isEqualTo(isAsked);
    int status = visit.submit("/lots/WARM/entries", "entry", "served").status();
    assertThat(status).isEqualTo(isAsked ? 422 : 303);
  }
}
