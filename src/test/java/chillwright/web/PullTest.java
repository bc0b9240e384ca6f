package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What comes out of the freezer for plans and by its own days. Seven days with the day of making as
 * day 1, stopped by freezing, are FDA Food Code 2022 3-501.17(A) and (B); two to three months for
 * soup in a freezer are FoodSafety.gov, Cold Food Storage Chart.
 */
class PullTest {
  private static final String SUPPER =
      """
      {"serving": "2026-03-10T18:00:00Z", "zone": "UTC", "from": "2026-03-01T08:00:00Z",
       "name": "Late supper", "guests": 40,
       "dishes": [{"dish": "Leek soup", "category": "soup_or_stew", "route": "frozen",
         "thawHours": 24, "make": [{"step": "simmer", "minutes": 60}],
         "finish": [{"step": "reheat", "minutes": 60}]}]}
      """;

  @TempDir private Path folder;
  private Served served;

  @BeforeEach
  void serve() {
    served = Served.in(folder);
    served.at("2026-03-01T08:00:00Z");
    served.send(
        served
            .request("/api/v1/plans/supper-12", "Content-Type", "application/json")
            .PUT(BodyPublishers.ofString(SUPPER)));
  }

  @AfterEach
  void close() {
    served.close();
  }

  /** Cooled within the limits, frozen on a later day; the days that had passed are used. */
  private void soup(String lot, int portions, String day, String frozen) {
    String rows =
        """
        lot,food,category,when,entry,temperature,how,place,portions
        %1$s,Leek soup,soup_or_stew,%3$sT08:00:00Z,cooked,180F,,,%2$d
        %1$s,,,%3$sT08:10:00Z,cooling,135F,,,
        %1$s,,,%3$sT09:30:00Z,reading,68F,,,
        %1$s,,,%3$sT12:00:00Z,reading,40F,,,
        %1$s,,,%4$sT16:00:00Z,frozen,0F,hard,Chest freezer,
        """
            .formatted(lot, portions, day, frozen);
    assertThat(served.postCsv("/api/v1/imports", rows).status()).isLessThan(300);
  }

  private JsonNode pull(int days) {
    return served.get("/api/v1/pull?days=" + days).json();
  }

  /**
   * Reheated from 17:00 on the 10th, so out at 17:00 on the 9th; six days are left, to the 14th.
   */
  @Test
  void the_oldest_lot_comes_out_first_at_the_hour_of_the_plan() {
    served.at("2026-03-08T20:00:00Z");
    soup("LS-2", 30, "2026-03-03", "2026-03-03");
    soup("LS-1", 24, "2026-03-02", "2026-03-02");
    JsonNode list = pull(3);
    assertThat(list.at("/pulls").findValuesAsText("lot")).containsExactly("LS-1", "LS-2");
    assertThat(list.at("/pulls").findValuesAsText("portions")).containsExactly("24", "16");
    JsonNode first = list.at("/pulls/0");
    assertThat(first.at("/at").asText()).isEqualTo("2026-03-09T11:00:00-06:00");
    assertThat(first.at("/lastDay").asText()).isEqualTo("2026-03-14");
    assertThat(first.at("/place").asText()).isEqualTo("Chest freezer");
    assertThat(first.at("/says").asText()).contains("portions: 24", "Late supper", "Sat 14 Mar");
    assertThat(list.at("/missing")).isEmpty();
    assertThat(pull(1).at("/pulls")).isEmpty();
  }

  /** Six of its seven days were used before it was frozen: it has the day of thawing, the 9th. */
  @Test
  void a_lot_past_its_life_on_the_day_it_is_eaten_stays_and_what_is_missing_is_said() {
    served.at("2026-03-08T20:00:00Z");
    soup("LS-1", 24, "2026-03-01", "2026-03-06");
    soup("LS-2", 30, "2026-03-03", "2026-03-03");
    JsonNode list = pull(3);
    assertThat(list.at("/pulls").findValuesAsText("lot")).containsExactly("LS-2");
    assertThat(list.at("/missing/0/portions").asInt()).isEqualTo(10);
    assertThat(list.at("/missing/0/says").asText()).contains("Leek soup", ": 10.");
  }

  @Test
  void lots_whose_own_days_end_are_listed_by_day_with_why() {
    served.at("2026-03-01T20:00:00Z");
    soup("LS-3", 8, "2026-03-01", "2026-03-01");
    served.post("/api/v1/lots", "{'lot':'CH-1','food':'Chili','category':'soup_or_stew'}");
    served.post(
        "/api/v1/lots/CH-1/entries",
        "{'entry':'opened','temperature':'38F','when':'2026-03-01T07:00:00Z'}");
    served.at("2026-03-06T12:00:00Z");
    assertThat(pull(1).at("/pulls")).isEmpty();
    JsonNode week = pull(3);
    assertThat(week.at("/pulls/0/lot").asText()).as(week.toString()).isEqualTo("CH-1");
    assertThat(week.at("/pulls/0/why").asText()).isEqualTo("last-day");
    assertThat(week.at("/pulls/0/day").asText()).isEqualTo("2026-03-07");
    served.send(served.request("/api/v1/plans/supper-12").DELETE());
    served.at("2026-04-28T12:00:00Z");
    JsonNode spring = pull(7);
    assertThat(spring.at("/pulls").findValuesAsText("lot")).containsExactly("LS-3");
    assertThat(spring.at("/pulls/0/why").asText()).isEqualTo("best-quality");
    assertThat(spring.at("/pulls/0/day").asText()).isEqualTo("2026-05-01");
  }

  /** Nobody read it for hours, so 3-501.14(A) cannot be shown and an action is owed. */
  @Test
  void nobody_is_sent_to_a_lot_to_which_an_action_is_owed() {
    served.post("/api/v1/lots", "{'lot':'CH-2','food':'Chili','category':'soup_or_stew'}");
    served.post(
        "/api/v1/lots/CH-2/entries",
        "{'entry':'cooked','temperature':'180F','when':'2026-03-01T07:00:00Z'}");
    assertThat(pull(30).at("/pulls/0/lot").asText()).isEqualTo("CH-2");
    served.at("2026-03-02T12:00:00Z");
    assertThat(pull(30).at("/pulls")).isEmpty();
  }

  /**
   * What a plan takes out, though nothing of it is logged; the bird thaws a day sooner than it must
   * (common practice, no source).
   */
  @Test
  void what_a_plan_takes_out_is_told_before_anything_of_it_is_logged() {
    String feast =
        """
        {"serving": "2026-03-10T18:00:00Z", "zone": "UTC", "from": "2026-03-01T08:00:00Z",
         "name": "Feast", "guests": 12,
         "dishes": [{"dish": "Bought bird", "category": "raw_poultry_whole", "route": "fresh",
           "make": [{"step": "thaw in the refrigerator", "minutes": 4320},
             {"step": "roast", "minutes": 240}]}]}
        """;
    served.at("2026-03-01T20:00:00Z");
    served.send(
        served
            .request("/api/v1/plans/feast", "Content-Type", "application/json")
            .PUT(BodyPublishers.ofString(feast)));
    JsonNode list = pull(14);
    assertThat(list.at("/pulls")).isEmpty();
    JsonNode told = list.at("/unlogged");
    assertThat(told.findValuesAsText("dish")).containsExactly("Bought bird", "Leek soup");
    assertThat(told.findValuesAsText("why")).containsExactly("plan-thaws", "plan-not-frozen-yet");
    assertThat(told.at("/1/at").asText()).isEqualTo("2026-03-09T11:00:00-06:00");
    assertThat(told.at("/1/says").asText())
        .isEqualTo(
            "By the plan Late supper: Leek soup comes out of the freezer Mon 9 Mar 11:00; nothing"
                + " of it is logged yet.");
    assertThat(told.at("/0/says").asText()).contains("Feast", "leaves the freezer", "to thaw");
    assertThat(served.get("/pull?days=14").text())
        .contains("11:00 Leek soup, portions: 40", "/plans/supper-12", "Bought bird", ": 2.")
        .doesNotContain("Nothing is to come out");
    assertThat(served.get("/pull.csv?days=14").text())
        .contains("11:00-06:00,,Leek soup,,40,plan-not-frozen-yet,,supper-12,Leek soup");
    served.at("2026-03-02T20:00:00Z");
    soup("LS-1", 40, "2026-03-02", "2026-03-02");
    assertThat(pull(14).at("/unlogged").findValuesAsText("dish")).containsExactly("Bought bird");
    assertThat(pull(1).at("/unlogged")).isEmpty();
  }

  @Test
  void the_page_the_table_and_the_calendar_say_the_same() {
    served.at("2026-03-08T20:00:00Z");
    soup("LS-1", 24, "2026-03-02", "2026-03-02");
    assertThat(served.get("/pull").text())
        .contains("Leek soup (LS-1, Chest freezer), portions: 24");
    assertThat(served.get("/pull.csv?days=3").text())
        .contains("2026-03-09,2026-03-09T11:00-06:00,LS-1,Leek soup,Chest freezer,24,plan");
    assertThat(served.get("/deadlines.ics").text())
        .contains("DTSTART:20260309T170000Z", "SUMMARY:Leek soup (LS-1\\, Chest freezer)");
    assertThat(served.get("/").text()).contains("href=\"/pull\"");
    served.get("/api/v1/pull?days=0").problem(422);
    for (String wrong : List.of("0", "-1", "abc", "367", "1.5")) {
      assertThat(served.get("/pull.csv?days=" + wrong, "Accept", "text/html").status())
          .isEqualTo(400);
      assertThat(served.get("/pull?days=" + wrong).text()).contains("366", "role=\"status\"");
    }
  }
}
