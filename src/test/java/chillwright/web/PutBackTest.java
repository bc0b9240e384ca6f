package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A lot that was divided by mistake. That the portions of a lot and of its parts add up is a rule
 * of this project, no source.
 */
class PutBackTest {
  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void open() {
    served = Served.in(folder);
    served.at("2026-03-06T20:00:00Z");
    visit = new Visit(served);
    visit.open("/");
    String begun = "/lots/BARS";
    visit.submit(
        "/new-batch",
        "lot",
        "BARS",
        "entry",
        "cooked",
        "food",
        "Oat bars",
        "category",
        "bar_cookies_cut_and_wrapped",
        "portions",
        "96");
    visit.open(begun);
    Reply divided = visit.submit(begun + "/parts", "parts", "2", "portions", "24");
    assertThat(divided.status()).as(divided.text()).isEqualTo(303);
    served.at("2026-03-06T21:00:00Z");
  }

  @AfterEach
  void close() {
    served.close();
  }

  private int left(String lot) {
    return served.get("/api/v1/lots/" + lot).json().at("/portions/left").asInt();
  }

  private JsonNode entries(String lot) {
    return served.get("/api/v1/lots/" + lot + "/entries").json().at("/items");
  }

  private String rowFor(String part) {
    for (JsonNode entry : entries("BARS")) {
      if (entry.at("/to").asText().equals(part)) {
        return entry.at("/id").asText();
      }
    }
    throw new AssertionError("no row for " + part + ": " + entries("BARS"));
  }

  @Test
  void the_row_of_a_part_is_not_voided_while_the_part_has_the_portions() {
    String row = rowFor("BARS-1");
    visit.open("/lots/BARS/correct?entry=" + row);
    Reply page = visit.submit("/lots/BARS/correct", "corrects", row, "void", "yes", "reason", "x");
    assertThat(page.status()).isEqualTo(422);
    assertThat(page.text()).contains("Lot BARS-1 has 24 portions of lot BARS", "put it back first");
    Reply api =
        served.post(
            "/api/v1/lots/BARS/entries",
            ("{'when':'2026-03-06T20:30:00Z','entry':'correction','corrects':'%s','portions':2,"
                    + "'note':'slip'}")
                .formatted(row));
    assertThat(api.status()).isEqualTo(422);
    assertThat(api.text()).contains("parts-do-not-add-up");
    assertThat(left("BARS")).isEqualTo(48);
  }

  @Test
  void a_part_is_put_back_with_one_form_from_its_page_or_that_of_the_whole() {
    assertThat(visit.open("/lots/BARS").text())
        .contains("action=\"/lots/BARS-1/put-back\"", "action=\"/lots/BARS-2/put-back\"");
    assertThat(visit.open("/lots/BARS-1").text()).contains("Put BARS-1 back into BARS");
    Reply back = visit.submit("/lots/BARS-1/put-back", "by", "RO");
    assertThat(back.status()).as(back.text()).isEqualTo(303);
    assertThat(Visit.target(back)).isEqualTo("/lots/BARS?back=BARS-1");
    assertThat(visit.open("/lots/BARS?back=BARS-1").text())
        .contains("Put back into this lot:")
        .containsPattern("Went into: *<a class=\"code\" href=\"/lots/BARS-2\">BARS-2</a> *</p>");
    assertThat(left("BARS")).isEqualTo(72);
    assertThat(served.get("/api/v1/lots/BARS-1").json().at("/onHand").asBoolean()).isFalse();
    assertThat(entries("BARS-1").findValuesAsText("entry")).containsExactly("cooling", "portions");
    assertThat(visit.open("/lots/BARS").text()).doesNotContain("/lots/BARS-1/put-back");
    assertThat(visit.open("/lots/BARS-1").text())
        .contains("put back into BARS, none left", "It is in BARS again")
        .doesNotContain("It left the kitchen");
    assertThat(visit.submit("/lots/BARS-1/put-back").status()).isEqualTo(422);
  }

  /** Portions that a part holds beyond those found are no answer to the count. */
  @Test
  void a_part_is_offered_to_be_put_back_only_where_its_portions_make_up_what_was_found() {
    String asks = "Was a part divided off by mistake?";
    assertThat(visit.open("/lots/BARS?more=23").text()).doesNotContain(asks);
    assertThat(visit.open("/lots/BARS?more=24").text()).contains(asks);
    assertThat(visit.open("/lots/BARS?more=48").text()).contains(asks);
  }

  /** Parts of a part are gone once they are back, so nothing of it is elsewhere. */
  @Test
  void a_part_that_was_divided_goes_back_once_its_own_parts_are() {
    visit.open("/lots/BARS-1");
    assertThat(visit.submit("/lots/BARS-1/parts", "parts", "2", "portions", "6").status())
        .isEqualTo(303);
    visit.open("/lots/BARS-1-1");
    assertThat(visit.submit("/lots/BARS-1-1/put-back").status()).isEqualTo(303);
    Reply early = visit.submit("/lots/BARS-1/put-back");
    assertThat(early.status()).isEqualTo(422);
    assertThat(early.text()).contains("Not put back: another lot was");
    assertThat(visit.submit("/lots/BARS-1-2/put-back").status()).isEqualTo(303);
    assertThat(visit.open("/lots/BARS-1").text()).contains("Put BARS-1 back into BARS");
    Reply back = visit.submit("/lots/BARS-1/put-back");
    assertThat(back.status()).as(back.text()).isEqualTo(303);
    assertThat(left("BARS")).isEqualTo(72);
    assertThat(left("BARS-1")).isZero();
  }

  private Reply backFrom(String rows) {
    Reply stored = served.postCsv("/api/v1/imports", rows);
    assertThat(stored.status()).as(stored.text()).isLessThan(300);
    visit.open("/lots/POT-1");
    return visit.submit("/lots/POT-1/put-back");
  }

  /** FDA Food Code 2022, 3-501.14(A)(1): 70 °F within two hours; nothing shows it of the part. */
  @ParameterizedTest
  @CsvSource({
    "chilled, 40F, cooling, , OTHER",
    "chilled, 40F, set-out, , OTHER",
    "frozen, , thawing, , OTHER",
    "frozen, , frozen, 60F, TOLD",
    "chilled, 40F, chilled, 55F, TOLD",
    "chilled, 40F, hot-holding, , OTHER"
  })
  void a_part_that_stands_otherwise_does_not_go_back(
      String whole, String read, String part, String readOfPart, String why) {
    String first = part.equals("cooling") ? "09:30" : "14:00";
    String rows =
        """
        lot,food,category,when,entry,portions,temperature,from,to
        POT,Leek soup,soup_or_stew,2026-03-06T09:00:00Z,cooked,20,180F,,
        POT,,,2026-03-06T10:30:00Z,reading,,68F,,
        POT,,,2026-03-06T13:00:00Z,%s,,%s,,
        POT,,,2026-03-06T%s:00Z,portions,5,,,POT-1
        POT-1,Leek soup,,2026-03-06T%s:00Z,%s,5,%s,POT,
        """
            .formatted(
                whole,
                read == null ? "" : read,
                first,
                first,
                part,
                readOfPart == null ? "" : readOfPart);
    Reply refused = backFrom(rows);
    assertThat(refused.status()).as(refused.text()).isEqualTo(422);
    assertThat(refused.text())
        .contains(
            why.equals("TOLD") ? "Not put back: something happened" : "stands otherwise than this");
    assertThat(left("POT")).isEqualTo(15);
  }

  /** FDA Food Code 2022, 3-501.14(A)(1): a part still at 90 °F after two hours is out. */
  @Test
  void a_part_that_is_out_does_not_go_back_into_a_lot_that_is_not() {
    Reply refused =
        backFrom(
            """
            lot,food,category,when,entry,portions,temperature,from,to
            POT,Leek soup,soup_or_stew,2026-03-06T09:00:00Z,cooked,20,180F,,
            POT,,,2026-03-06T09:10:00Z,portions,5,,,POT-1
            POT-1,Leek soup,,2026-03-06T09:10:00Z,cooling,5,,POT,
            POT,,,2026-03-06T10:30:00Z,reading,,68F,,
            POT,,,2026-03-06T13:00:00Z,reading,,40F,,
            """);
    assertThat(refused.status()).as(refused.text()).isEqualTo(422);
    assertThat(refused.text()).contains("Not put back: it is out, or something is owed to it");
    assertThat(left("POT")).isEqualTo(15);
  }

  @Test
  void the_whole_tells_that_it_was_divided_and_what_its_parts_gave_out() {
    visit.open("/lots/BARS");
    Reply rest = visit.submit("/lots/BARS/parts", "parts", "2", "portions", "24");
    String page = visit.open(Visit.target(rest)).text();
    assertThat(page)
        .containsSubsequence("Divided:", "href=\"/lots/BARS-3\"", "href=\"/lots/BARS-4\"")
        .contains("divided, none left", "href=\"/trace?lot=BARS\"")
        .doesNotContain("served, 0 portions left");
    visit.submit("/lots/BARS-2/entries", "entry", "portions", "portions", "3", "to", "Fair");
    assertThat(visit.open("/lots/BARS").text())
        .containsSubsequence("Given out:", "Fair, portions: 3 (of part BARS-2)")
        .doesNotContain("BARS-2, portions: 24");
  }

  /** Our own design, no source: nobody got what was missing when somebody counted. */
  @Test
  void a_count_is_told_as_one_and_not_as_a_sale() {
    visit.open("/lots/BARS-1");
    assertThat(visit.submit("/lots/BARS-1/counts", "found", "0").status()).isEqualTo(303);
    assertThat(visit.open("/lots/BARS-1").text())
        .contains("<b>counted</b>", "counted, none left")
        .doesNotContain("<b>portions taken</b>");
    assertThat(entries("BARS-1").findValuesAsText("how")).contains("counted");
    assertThat(served.get("/api/v1/trace?lot=BARS-1").json().at("/lots/0/handOuts/0/kind").asText())
        .isEqualTo("counted");
  }

  /**
   * FDA Food Code 2022 3-501.18(A)(1): the days count "except time that the product is frozen", so
   * a part that was frozen on a later day than its whole has used more of them. That nothing read
   * of a part may get lost is our own.
   */
  @ParameterizedTest
  @CsvSource({
    "entry, frozen, how, hard, 0, 303",
    "entry, frozen, how, '', 0, 303",
    "entry, frozen, how, crystals, 0, 422",
    "entry, frozen, temperature, 0F, 0, 422",
    "entry, chilled, how, '', 0, 422",
    "entry, frozen, how, hard, 1, 422",
  })
  void a_part_that_was_frozen_as_its_whole_was_is_put_back(
      String entry, String word, String name, String value, int daysLater, int status) {
    frozen("BARS", "2026-03-06T13:50:00-07:00", "'how':'hard'");
    served.at("2026-03-07T23:00:00Z");
    String when = daysLater == 0 ? "2026-03-06T13:55:00-07:00" : "2026-03-07T13:55:00-07:00";
    String cell = value.isEmpty() ? "'note':'x'" : "'" + name + "':'" + value + "'";
    log("BARS-1", "'" + entry + "':'" + word + "','when':'" + when + "'," + cell);
    visit.open("/lots/BARS-1");
    Reply back = visit.submit("/lots/BARS-1/put-back");
    assertThat(back.status()).as(back.text()).isEqualTo(status);
    assertThat(left("BARS")).isEqualTo(status == 303 ? 72 : 48);
    if (status == 422) {
      String why = daysLater == 0 ? "that the other lot does not tell" : "on a later day than";
      assertThat(back.text()).contains(why);
    }
  }

  /** The same: a whole that is not frozen goes on using its days. */
  @Test
  void a_frozen_part_is_not_put_back_into_what_is_not_frozen() {
    frozen("BARS-1", "2026-03-06T13:55:00-07:00", "'how':'hard'");
    visit.open("/lots/BARS-1");
    assertThat(visit.submit("/lots/BARS-1/put-back").status()).isEqualTo(422);
    frozen("BARS", "2026-03-06T13:50:00-07:00", "'how':'hard'");
    log("BARS", "'entry':'thawing','when':'2026-03-06T13:58:00-07:00','how':'refrigerator'");
    assertThat(visit.submit("/lots/BARS-1/put-back").status()).isEqualTo(422);
    assertThat(left("BARS")).isEqualTo(48);
  }

  /**
   * The same: with nothing left the whole could not be frozen with its parts, and its days are then
   * those of the part, {@code chest freezer} and all.
   */
  @Test
  void a_whole_of_which_nothing_is_left_takes_the_freezing_over() {
    visit.open("/lots/BARS");
    visit.submit("/lots/BARS/parts", "parts", "2", "portions", "24");
    served.at("2026-03-06T22:00:00Z");
    for (String part : List.of("BARS-1", "BARS-2", "BARS-3")) {
      frozen(part, "2026-03-06T14:59:00-07:00", "'how':'hard','place':'chest freezer'");
    }
    served.at("2026-03-08T21:00:00Z");
    frozen("BARS-4", "2026-03-07T13:59:00-07:00", "'how':'hard'");
    String keeps = served.get("/api/v1/lots/BARS-1").json().at("/keeping").toString();
    assertThat(visit.open("/lots/BARS").text())
        .contains("/lots/BARS-1/put-back", "/lots/BARS-4/put-back");
    for (String part : List.of("BARS-1", "BARS-2")) {
      visit.open("/lots/" + part);
      Reply back = visit.submit("/lots/" + part + "/put-back");
      assertThat(back.status()).as(back.text()).isEqualTo(303);
    }
    JsonNode whole = served.get("/api/v1/lots/BARS").json();
    assertThat(left("BARS")).isEqualTo(48);
    assertThat(whole.at("/phase").asText()).isEqualTo("frozen");
    assertThat(whole.at("/place").asText()).isEqualTo("chest freezer");
    assertThat(whole.at("/keeping").toString()).isEqualTo(keeps);
    assertThat(entries("BARS").findValuesAsText("entry")).containsOnlyOnce("frozen");
    assertThat(visit.open("/lots/BARS-4").text())
        .doesNotContain("put-back")
        .contains("Not put back: it was frozen on a later day");
    assertThat(served.get("/api/v1/lots/BARS-3").json().at("/keeping").toString()).isEqualTo(keeps);
  }

  /** The same: a part divided off later begins with what its whole tells until then. */
  @Test
  void a_whole_that_tells_of_later_takes_no_freezing_over() {
    frozen("BARS-1", "2026-03-06T13:50:00-07:00", "'how':'hard'");
    visit.open("/lots/BARS");
    visit.submit("/lots/BARS/parts", "parts", "2", "portions", "24");
    visit.open("/lots/BARS-1");
    Reply refused = visit.submit("/lots/BARS-1/put-back");
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.text()).contains("Not put back: something was logged of the lot it came");
  }

  private void frozen(String lot, String when, String how) {
    log(lot, "'entry':'frozen','when':'" + when + "'," + how);
  }

  private void log(String lot, String entry) {
    Reply logged = served.post("/api/v1/lots/" + lot + "/entries", "{" + entry + "}");
    assertThat(logged.status()).as(logged.text()).isEqualTo(201);
  }

  @Test
  void a_part_to_which_something_happened_is_not_put_back() {
    visit.open("/lots/BARS-2");
    visit.submit("/lots/BARS-2/entries", "entry", "portions", "portions", "3", "to", "Fair");
    assertThat(visit.open("/lots/BARS-2").text()).doesNotContain("put-back");
    Reply refused = visit.submit("/lots/BARS-2/put-back");
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.text()).contains("something happened to it since that the other lot");
    assertThat(left("BARS")).isEqualTo(48);
    assertThat(visit.submit("/lots/BARS/put-back").status()).as("no part").isEqualTo(422);
  }
}
