package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Food whose cooling is not shown "must be treated as missed" on every page. FDA Food Code 2022
 * 3-501.14(A): 135 °F to 70 °F within two hours. 137 °F at 12:00 and 88 °F at 14:45 leave open when
 * the two hours began, while 134 °F at 12:00 proves that they were over. 3-403.11(A), (D): 165 °F
 * within two hours. The questions are our own.
 */
class NotShownTest {
  private static final String NOT_SHOWN = "POT";
  private static final String MISSED = "TWIN";

  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void open() {
    served = Served.in(folder);
    served.at("2026-03-06T22:00:00Z");
    begin(NOT_SHOWN, "137F");
    begin(MISSED, "134F");
    visit = new Visit(served);
    visit.open("/lots/" + NOT_SHOWN);
  }

  @AfterEach
  void close() {
    served.close();
  }

  private void begin(String lot, String atNoon) {
    served.post(
        "/api/v1/lots",
        "{'lot':'" + lot + "','food':'Rice','category':'soup_or_stew','portions':9}");
    log(lot, "11:00", "'entry':'cooked','temperature':'180F'");
    log(lot, "12:00", "'entry':'reading','temperature':'" + atNoon + "'");
    log(lot, "14:45", "'entry':'reading','temperature':'88F'");
  }

  private void log(String lot, String clock, String entry) {
    String when = "'when':'2026-03-06T" + clock + ":00-07:00',";
    Reply logged = served.post("/api/v1/lots/" + lot + "/entries", "{" + when + entry + "}");
    assertThat(logged.status()).as(logged.text()).isEqualTo(201);
  }

  @Test
  void only_the_twin_is_proven_out() {
    assertThat(served.get("/api/v1/lots/" + NOT_SHOWN).text()).contains("\"not-shown\"");
    assertThat(served.get("/api/v1/lots/" + NOT_SHOWN).text()).doesNotContain("\"out\"");
    assertThat(served.get("/api/v1/lots/" + MISSED).text()).contains("\"out\"");
  }

  @ParameterizedTest
  @ValueSource(strings = {NOT_SHOWN, MISSED})
  void words_alone_do_not_make_it_fit_for_use(String lot) {
    log(lot, "14:50", "'entry':'action','note':'stirred it'");
    assertUnfit(lot);
    assertThat(visit.open("/on-hand").text())
        .contains("A limit was missed or is not shown: not for use as its record stands");
  }

  @ParameterizedTest
  @ValueSource(strings = {NOT_SHOWN, MISSED})
  void neither_does_a_reheat_without_leave(String lot) {
    log(lot, "14:50", "'entry':'reheating','temperature':'88F'");
    log(lot, "14:58", "'entry':'reading','temperature':'170F'");
    log(lot, "14:59", "'entry':'action','note':'Reheated it to 170'");
    assertUnfit(lot);
    String says = "Reheated it to 170. Reheated since: 170 °F at 14:58. Use it only if your";
    for (String page : new String[] {"/lots/" + lot, "/on-hand", "/"}) {
      assertThat(visit.open(page).text().replaceAll("<[^>]+>", "")).as(page).contains(says);
    }
  }

  private void assertUnfit(String lot) {
    String page = visit.open("/lots/" + lot).text();
    assertThat(page).contains("No date holds").doesNotContain("Use or discard by");
    assertThat(visit.submit("/lots/" + lot + "/entries", "entry", "served").status())
        .isEqualTo(422);
    String[] taken = {"entry", "portions", "portions", "1", "back", "/on-hand"};
    assertThat(visit.submit("/lots/" + lot + "/entries", taken).status()).isEqualTo(422);
    assertThat(served.get("/lots/" + lot + "/labels.pdf?sheet=a4-8").status()).isEqualTo(422);
    assertThat(visit.open("/on-hand").text()).doesNotContain("action=\"/lots/" + lot + "/entries");
  }

  @ParameterizedTest
  @CsvSource({"how, allowed, 303", "note, the inspector was asked, 422"})
  void a_reheat_by_leave_does(String cell, String says, int status) {
    log(NOT_SHOWN, "14:49", "'entry':'action','" + cell + "':'" + says + "'");
    log(NOT_SHOWN, "14:50", "'entry':'reheating','temperature':'88F'");
    log(NOT_SHOWN, "14:58", "'entry':'reading','temperature':'170F'");
    String[] held = {"entry", "hot-holding"};
    assertThat(visit.submit("/lots/" + NOT_SHOWN + "/entries", held).status()).isEqualTo(status);
  }

  /** What was made of it bears it on. Our own: a note mends no more there than in the pot. */
  @ParameterizedTest
  @ValueSource(strings = {NOT_SHOWN, MISSED})
  void what_is_made_of_it_is_not_for_use_either(String lot) {
    log(lot, "14:50", "'entry':'action','note':'stirred it'");
    String made = "{'lot':'MADE','food':'Soup','category':'soup_or_stew','from':['" + lot + "']}";
    assertThat(served.post("/api/v1/lots", made).status()).isEqualTo(201);
    log("MADE", "14:55", "'entry':'cooked','temperature':'180F'");
    assertThat(visit.open("/lots/MADE").text()).contains("No date holds");
    assertThat(visit.submit("/lots/MADE/entries", "entry", "served").status()).isEqualTo(422);
  }

  /** The leave is accepted before the reheat or after it, and the page says so with an example. */
  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void how_the_leave_is_logged_stands_beside_the_demand(boolean isBefore) {
    String demand = "with “the authority allowed it” under How, before the reheat or after it";
    assertThat(visit.open("/lots/" + MISSED).text()).contains(demand);
    String leave = "'entry':'action','how':'allowed'";
    if (isBefore) {
      log(MISSED, "14:49", leave);
      // What was logged is not asked for again.
      assertThat(visit.open("/lots/" + MISSED).text()).doesNotContain(demand);
    }
    log(MISSED, "14:50", "'entry':'reheating','temperature':'88F'");
    log(MISSED, "14:58", "'entry':'reading','temperature':'170F'");
    if (!isBefore) {
      assertThat(visit.open("/lots/" + MISSED).text())
          .contains("No date holds")
          .doesNotContain("before it is done");
      log(MISSED, "14:59", leave);
    }
    assertThat(visit.open("/lots/" + MISSED).text()).doesNotContain("No date holds");
  }
}
