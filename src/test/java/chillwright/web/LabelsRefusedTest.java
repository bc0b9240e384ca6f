package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Labels that are refused; our own design, no source. */
class LabelsRefusedTest {
  @TempDir private Path folder;
  private Served served;

  @BeforeEach
  void open() {
    served = Served.in(folder);
    served.at("2026-03-03T20:00:00Z");
    Reply stored =
        served.postCsv(
            "/api/v1/imports",
            """
            lot,food,category,when,entry,portions,from,to
            B,Oat bars,bar_cookies_cut_and_wrapped,2026-03-02T08:00:00Z,cooked,8,,
            B,,,2026-03-02T10:00:00Z,portions,4,,B-1
            B-1,,,2026-03-02T10:00:00Z,chilled,4,B,
            B,,,2026-03-02T10:00:01Z,portions,4,,B-2
            B-2,,,2026-03-02T10:00:01Z,chilled,4,B,
            """);
    assertThat(stored.status()).as(stored.text()).isLessThan(300);
  }

  @AfterEach
  void close() {
    served.close();
  }

  /** Nothing of it would tell a buyer a date; for the kitchen itself a label says just that. */
  @Test
  void a_lot_of_which_nothing_is_logged_gets_no_label_for_buyers() {
    String bars = "{'lot':'NEW','food':'Rye bars','category':'bar_cookies_cut_and_wrapped'}";
    assertThat(served.post("/api/v1/lots", bars).status()).isEqualTo(201);
    served
        .kitchen()
        .setUp()
        .food(
            Map.of(
                "name",
                "Rye bars",
                "category",
                "bar_cookies_cut_and_wrapped",
                "allergens",
                "wheat",
                "ingredients",
                "wheat flour, rye"));
    assertThat(served.get("/lots/NEW/labels.pdf?sheet=a4-8").status()).isEqualTo(200);
    Reply refused = served.get("/lots/NEW/labels.pdf?sheet=a4-8&leaves=yes");
    assertThat(refused.status()).isEqualTo(400);
    assertThat(refused.text()).contains("Nothing is logged of lot NEW");
    String made = "{'when':'2026-03-03T12:00:00-07:00','entry':'cooked'}";
    assertThat(served.post("/api/v1/lots/NEW/entries", made).status()).isEqualTo(201);
    Reply reply = served.get("/lots/NEW/labels.pdf?sheet=a4-8&leaves=yes");
    assertThat(reply.status()).as(reply.text()).isEqualTo(200);
  }

  @Test
  void what_is_not_known_of_several_parts_is_told_once_with_the_way_to_mend_it() {
    Reply refused = served.get("/lots/B/labels.pdf?sheet=a4-8&many=parts&leaves=yes");
    assertThat(refused.status()).isEqualTo(400);
    assertThat(refused.text())
        .contains("Lot B-1, B-2: ", "href=\"/kitchen?food=Oat+bars#food-form\"", "Describe Oat")
        .containsOnlyOnce("Mend that under Kitchen");
  }
}
