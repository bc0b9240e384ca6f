package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A dish that is several lots: a second pot is made where the first is too little. Portions are
 * plain arithmetic; limits and days are FDA Food Code 2022 3-501.14(A) and 3-501.17(A), (B); which
 * lot the steps go by is our own design, no source.
 *
 * <p>The supper is at 18:00 on Tuesday the 10th, thawed from 17:00 on the 9th.
 */
class PlanSeveralLotsTest {
  private static final String SUPPER =
      """
      {"serving": "2026-03-10T18:00:00Z", "zone": "UTC", "from": "2026-03-01T08:00:00Z",
       "guests": 60, "dishes": [{"dish": "Leek soup", "category": "soup_or_stew",
         "route": "frozen", "portionMillilitres": 250, "thawHours": 24,
         "make": [{"step": "simmer", "minutes": 60}],
         "finish": [{"step": "reheat", "minutes": 60}]}]}
      """;

  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void serve() {
    served = Served.in(folder);
    served.at("2026-03-01T08:00:00Z");
    visit = new Visit(served);
    assertThat(put(SUPPER).at("/verdict").asText()).isEqualTo("plan");
    served.at("2026-03-06T20:00:00Z");
    pot("SO-1", 40, "2026-03-04");
  }

  @AfterEach
  void close() {
    served.close();
  }

  private JsonNode put(String body) {
    return served
        .send(
            served
                .request("/api/v1/plans/supper-12", "Content-Type", "application/json")
                .PUT(BodyPublishers.ofString(body)))
        .json();
  }

  private JsonNode plan() {
    return served.get("/api/v1/plans/supper-12").json();
  }

  private JsonNode dish() {
    return plan().at("/dishes/0");
  }

  private String page() {
    return visit.open("/plans/supper-12").text();
  }

  /** Cooled within the limits; of a food whose name is not that of the dish. */
  private void pot(String lot, int portions, String day) {
    pot(lot, "Pond soup", portions, day);
  }

  private void pot(String lot, String food, int portions, String day) {
    String rows =
        """
        lot,food,category,when,entry,temperature,portions
        %1$s,%4$s,soup_or_stew,%3$sT08:00:00Z,cooked,180F,%2$d
        %1$s,,,%3$sT08:10:00Z,cooling,135F,
        %1$s,,,%3$sT09:30:00Z,reading,68F,
        %1$s,,,%3$sT12:00:00Z,chilled,40F,
        """
            .formatted(lot, portions, day, food);
    assertThat(served.postCsv("/api/v1/imports", rows).status()).isLessThan(300);
  }

  private void log(String lot, String entry, String temperature, String when) {
    Reply logged =
        served.post(
            "/api/v1/lots/" + lot + "/entries",
            "{'entry':'%s','temperature':'%s','when':'%s'}".formatted(entry, temperature, when));
    assertThat(logged.status()).as(logged.text()).isLessThan(300);
  }

  private Reply enter(String codes) {
    page();
    return visit.submit("/plans/supper-12/batches", "dish", "Leek soup", "lot", codes);
  }

  private Reply remove(String lot) {
    page();
    return visit.submit("/plans/supper-12/batches", "dish", "Leek soup", "remove", lot);
  }

  private static String start(JsonNode plan, String kind) {
    for (JsonNode task : plan.at("/tasks")) {
      if (task.path("kind").asText().equals(kind)) {
        return task.at("/start").asText();
      }
    }
    throw new AssertionError("no " + kind + " in " + plan);
  }

  @Test
  void a_second_pot_adds_to_the_first_and_can_be_taken_away_again() {
    assertThat(Visit.target(enter("SO-1"))).isEqualTo("/plans/supper-12");
    assertThat(dish().at("/missing").asInt()).isEqualTo(20);
    assertThat(dish().at("/lots").toString()).isEqualTo("[\"SO-1\"]");
    pot("SO-2", 30, "2026-03-05");
    enter("SO-2");
    assertThat(dish().at("/missing").asInt()).isZero();
    assertThat(dish().at("/lots").toString()).isEqualTo("[\"SO-1\",\"SO-2\"]");
    assertThat(page()).contains("href=\"/lots/SO-1\"", "href=\"/lots/SO-2\"");
    assertThat(page()).doesNotContain("portions missing");
    assertThat(remove("SO-2").status()).isEqualTo(303);
    assertThat(dish().at("/missing").asInt()).isEqualTo(20);
    assertThat(page())
        .contains("name=\"remove\" value=\"SO-1\"", "name=\"lot\" value=\"SO-2\"")
        .doesNotContain("name=\"remove\" value=\"SO-2\"");
  }

  /** A pot begun for no plan and called as the dish is: 60 guests less 40 portions are 20. */
  @Test
  void a_pot_that_serves_for_its_name_counts_and_another_is_begun_beside_it() {
    pot("LS-1", "Leek soup", 40, "2026-03-05");
    assertThat(page())
        .contains("name=\"remove\" value=\"LS-1\"", "Begin another batch, portions: 20");
    visit.submit("/plans/supper-12/batches", "dish", "Leek soup", "known", "LS-1");
    assertThat(dish().at("/lots")).hasSize(2);
    assertThat(dish().at("/lots").toString()).contains("LS-1");
  }

  @Test
  void a_pot_that_serves_for_its_name_is_taken_away() {
    pot("LS-1", "Leek soup", 40, "2026-03-05");
    assertThat(dish().at("/missing").asInt()).isEqualTo(20);
    remove("LS-1");
    assertThat(page()).doesNotContain("LS-1", "begun already");
  }

  @Test
  void two_codes_at_once_are_both_followed_and_one_that_is_unknown_leaves_all() {
    pot("SO-2", 12, "2026-03-05");
    for (String codes : new String[] {"SO-1, SO-9", "SO-1; not a code!"}) {
      Reply unknown = enter(codes);
      assertThat(unknown.status()).isEqualTo(422);
      assertThat(unknown.text()).contains("none of these was taken", "value=\"" + codes + "\"");
      assertThat(dish().at("/lots")).isEmpty();
    }
    enter("SO-1, SO-2");
    assertThat(dish().at("/lots").toString()).isEqualTo("[\"SO-1\",\"SO-2\"]");
    assertThat(dish().at("/missing").asInt()).isEqualTo(8);
    enter("SO-1 SO-2");
    assertThat(dish().at("/missing").asInt()).isEqualTo(8);
  }

  /** FDA Food Code 2022 3-501.16(A)(2): 41 °F or less; the second pot stood at 60 °F. */
  @Test
  void only_fit_lots_count_and_the_unfit_is_named() {
    pot("SO-2", 30, "2026-03-05");
    enter("SO-1 SO-2");
    log("SO-2", "reading", "60F", "2026-03-06T19:00:00Z");
    JsonNode plan = plan();
    assertThat(plan.at("/leftOut").findValuesAsText("lot")).containsExactly("SO-2");
    assertThat(plan.at("/dishes/0/missing").asInt()).isEqualTo(20);
    assertThat(plan.at("/tasks").findValuesAsText("kind")).doesNotContain("make");
  }

  /** A part is portions of its whole: entered beside it, it counts once. */
  @Test
  void a_part_entered_beside_its_whole_counts_once() {
    served.post(
        "/api/v1/lots/SO-1/entries",
        "{'entry':'portions','portions':10,'when':'2026-03-05T14:00:00Z'}");
    served.post("/api/v1/lots", "{'lot':'SO-1-1','from':['SO-1'],'portions':10}");
    log("SO-1-1", "chilled", "40F", "2026-03-05T14:00:00Z");
    enter("SO-1 SO-1-1");
    assertThat(dish().at("/missing").asInt()).isEqualTo(20);
  }

  /** Plain arithmetic: 60 of a quarter litre less 40 that are made are 20, 5 litres of 15. */
  @Test
  void pans_and_what_is_to_be_bought_go_by_what_is_still_to_be_made() {
    String leeks = "\"ingredients\": [{\"name\": \"leeks\", \"amount\": 6, \"unit\": \"kg\"}]";
    put(SUPPER.replace("\"thawHours\": 24", leeks + ", \"thawHours\": 24"));
    assertThat(plan().at("/pans/0/litres").asDouble()).isEqualTo(15);
    enter("SO-1");
    JsonNode some = plan();
    assertThat(some.at("/pans/0/portions").asInt()).isEqualTo(20);
    assertThat(some.at("/pans/0/litres").asDouble()).isEqualTo(5);
    assertThat(some.at("/shopping/0/items/0/amount").asDouble()).isEqualTo(2);
    assertThat(page())
        .contains("Leek soup: portions 60, of which are still to be made: 20.")
        .contains("20 portions are 5.3 quarts")
        .doesNotContain("60 portions are");
    pot("SO-2", 20, "2026-03-05");
    enter("SO-2");
    JsonNode all = plan();
    assertThat(all.at("/pans")).isEmpty();
    assertThat(all.at("/shopping")).isEmpty();
    assertThat(page())
        .contains("Leek soup: portions 60, made already.")
        .doesNotContain("portions are");
    // Fewer guests than it was made for: nothing is to be made or bought.
    put(SUPPER.replace("60", "30"));
    assertThat(plan().at("/pans")).isEmpty();
    assertThat(page()).contains("Leek soup: portions 30, made already.");
  }

  @Test
  void a_dish_with_portions_of_its_own_stays_when_guests_change_and_the_page_says_so() {
    String own = "has its own number of portions, so another number of guests";
    assertThat(page()).doesNotContain(own);
    put(SUPPER.replace("\"thawHours\"", "\"portions\": 25, \"thawHours\""));
    visit.open("/plans/supper-12");
    visit.submit(
        "/plans/supper-12/event", "serving", "2026-03-10T18:00", "guests", "80", "name", "Supper");
    assertThat(dish().at("/portions").asInt()).isEqualTo(25);
    assertThat(page()).contains("Guests: 80.", "Leek soup " + own);
  }

  /** Our own design, no source: what is only to be made is nothing to take, and no meal. */
  @Test
  void a_lot_begun_for_a_plan_leads_back_and_is_on_hand_only_once_something_is_logged() {
    put(SUPPER.replace("\"guests\"", "\"name\": \"Lamp <supper>\", \"guests\""));
    String before = served.get("/on-hand").text();
    assertThat(before).contains("Portions left: 40;", "action=\"/lots/SO-1/");
    page();
    String lot = Visit.target(visit.submit("/plans/supper-12/batches", "dish", "Leek soup"));
    assertThat(served.get(lot).text())
        .contains("<a href=\"/plans/supper-12\"><bdi>Lamp &lt;supper&gt;</bdi></a>");
    assertThat(served.get("/lots/SO-1").text()).doesNotContain("/plans/supper-12");
    assertThat(served.get("/on-hand").text())
        .contains("Portions left: 40;", "nothing logged yet, to be made, portions: 60")
        .doesNotContain("action=\"" + lot + "/", "60 portions left");
    log(lot.replace("/lots/", ""), "cooked", "180F", "2026-03-06T19:30:00Z");
    assertThat(served.get("/on-hand").text())
        .contains("Portions left: 100;", "action=\"" + lot + "/");
  }

  /** FDA Food Code 2022 3-501.14(A): 41 °F within six hours; from 19:30 that is at 01:30. */
  @Test
  void a_limit_of_a_late_pot_that_falls_in_closed_hours_is_said() {
    String open =
        "\"kitchen\": {\"open\": [{\"days\": [\"mon\", \"tue\", \"wed\", \"thu\", \"fri\"],"
            + " \"from\": \"08:00\", \"to\": \"%s\"}]}, \"guests\"";
    served.post("/api/v1/lots", "{'lot':'LATE','food':'Pond soup','category':'soup_or_stew'}");
    log("LATE", "cooked", "180F", "2026-03-06T19:20:00Z");
    log("LATE", "cooling", "135F", "2026-03-06T19:30:00Z");
    put(SUPPER.replace("\"guests\"", open.formatted("22:00")));
    enter("LATE");
    String says = "Leek soup cools: the kitchen is closed at ";
    assertThat(page()).contains(says + "Sat 7 Mar 01:30").doesNotContain(says + "Fri 6 Mar 21:30");
    put(SUPPER.replace("\"guests\"", open.formatted("21:00")));
    assertThat(page()).contains(says + "Fri 6 Mar 21:30", says + "Sat 7 Mar 01:30");
    served.at("2026-03-06T21:00:00Z");
    log("LATE", "reading", "68F", "2026-03-06T20:40:00Z");
    log("LATE", "chilled", "40F", "2026-03-06T20:55:00Z");
    assertThat(page()).doesNotContain(says);
  }

  /**
   * Made on the 4th its days end on the 10th; the plan has it frozen before, and thawed from the
   * 9th at 17:00. Where the plan no longer can, its own last day is told again.
   */
  @Test
  void the_pull_list_tells_the_thaw_of_what_the_plan_has_frozen_and_not_its_last_day() {
    pot("SO-2", 5, "2026-03-03");
    String last = "\"why\":\"last-day\"";
    assertThat(served.get("/api/v1/pull?days=7").text()).contains(last);
    enter("SO-1 SO-2");
    JsonNode pull = served.get("/api/v1/pull?days=7").json();
    assertThat(pull.at("/pulls").findValuesAsText("why")).containsOnly("plan");
    assertThat(pull.at("/pulls").findValuesAsText("lot")).containsExactlyInAnyOrder("SO-1", "SO-2");
    assertThat(pull.at("/pulls/0/at").asText()).isEqualTo("2026-03-09T11:00:00-06:00");
    assertThat(pull.at("/pulls/0/says").asText()).contains("once it is frozen");
    assertThat(pull.at("/missing/0/portions").asInt()).isEqualTo(15);
    served.at("2026-03-09T12:00:00Z");
    assertThat(plan().at("/verdict").asText()).isEqualTo("no-plan");
    assertThat(served.get("/api/v1/pull?days=3").json().at("/pulls").findValuesAsText("why"))
        .containsOnly("last-day");
  }

  /** FDA Food Code 2022 3-501.16(A)(2) as above; a lot of the same food takes the place of it. */
  @Test
  void where_a_lot_becomes_unfit_another_fit_one_of_its_food_is_offered() {
    enter("SO-1");
    put(SUPPER.replace("60", "40"));
    pot("SO-5", 50, "2026-03-05");
    pot("BAD", 50, "2026-03-05");
    pot("OLD", 50, "2026-03-01");
    served.post("/api/v1/lots", "{'lot':'BARE','food':'Pond soup','category':'soup_or_stew'}");
    log("BAD", "reading", "60F", "2026-03-06T19:00:00Z");
    assertThat(page()).doesNotContain("name=\"lot\" value=");
    log("SO-1", "reading", "60F", "2026-03-06T19:00:00Z");
    assertThat(page())
        .contains("name=\"lot\" value=\"SO-5\"", "chilled, 50 portions left")
        .doesNotContain("value=\"BAD\"", "value=\"OLD\"", "value=\"BARE\"");
    // Nothing is followed before somebody says so.
    assertThat(dish().at("/lots").toString()).isEqualTo("[\"SO-1\"]");
    assertThat(dish().at("/missing").asInt()).isEqualTo(40);
    enter("SO-5");
    assertThat(dish().at("/missing").asInt()).isZero();
    assertThat(page()).doesNotContain("name=\"lot\" value=");
  }

  /** Both in the freezer: the one that went in last has a day to freeze through, then thaws. */
  @Test
  void the_steps_follow_the_lot_that_is_least_far_along() {
    log("SO-1", "frozen", "39F", "2026-03-05T09:00:00Z");
    enter("SO-1");
    assertThat(start(plan(), "take-out")).isEqualTo("2026-03-09T17:00:00Z");
    assertThat(plan().at("/bounds").findValuesAsText("bound")).doesNotContain("freeze");
    served.at("2026-03-09T20:00:00Z");
    log("SO-1", "thawing", "20F", "2026-03-09T17:00:00Z");
    assertThat(plan().at("/verdict").asText()).isEqualTo("plan");
    pot("SO-2", 20, "2026-03-04");
    log("SO-2", "frozen", "39F", "2026-03-05T09:00:00Z");
    enter("SO-2");
    assertThat(plan().at("/conflicts/0/why").asText()).isEqualTo("too-late-to-thaw");
  }

  private static String freezing(String kilograms) {
    return SUPPER.replace(
        "\"guests\"", "\"kitchen\": {\"has\": {\"freezing\": " + kilograms + "}}, \"guests\"");
  }

  /** 60 portions of 250 mL weigh 15 kg, 20 of them 5 kg, at 1 kg a litre: by definition. */
  @Test
  void what_is_frozen_already_takes_no_more_of_what_a_freezer_can_freeze() {
    log("SO-1", "frozen", "39F", "2026-03-05T09:00:00Z");
    pot("SO-2", 20, "2026-03-06");
    assertThat(put(freezing("4.9")).at("/conflicts/0/why").asText()).isEqualTo("step-needs-more");
    enter("SO-1 SO-2");
    served.at("2026-03-06T21:00:00Z");
    assertThat(plan().at("/conflicts/0/why").asText()).isEqualTo("step-needs-more");
    assertThat(plan().at("/conflicts/0/enough").asDouble()).isEqualTo(5.0);
    assertThat(page()).contains("5 kg", "two dishes that are frozen on two days");
    put(freezing("5.1"));
    assertThat(plan().at("/conflicts").toString()).doesNotContain("step-needs-more");
  }

  /**
   * Made on the 6th it keeps to the 12th; it could no longer be frozen for a day and thaw by then.
   * Made on the 3rd it keeps to the 9th, a day too short.
   */
  @Test
  void a_pot_that_keeps_cold_until_it_is_served_is_not_frozen_beside_one_that_was() {
    log("SO-1", "frozen", "39F", "2026-03-05T09:00:00Z");
    pot("SO-2", 20, "2026-03-06");
    served.at("2026-03-08T20:00:00Z");
    enter("SO-1 SO-2");
    JsonNode plan = plan();
    assertThat(plan.at("/verdict").asText()).as(plan.toString()).isEqualTo("plan");
    assertThat(plan.at("/tasks").findValuesAsText("kind")).doesNotContain("make");
    assertThat(plan.at("/bounds").findValuesAsText("bound")).doesNotContain("freeze");
    assertThat(start(plan, "take-out")).isEqualTo("2026-03-09T17:00:00Z");
    assertThat(page()).contains("SO-2 keeps in the refrigerator until");
    pot("SO-3", 5, "2026-03-03");
    enter("SO-3");
    assertThat(plan().at("/conflicts/0/why").asText()).isEqualTo("lot-keeps-too-short");
  }

  /** 40 wait in the freezer, 20 in the refrigerator: 40 are to come out. */
  @Test
  void the_pull_list_has_what_waits_in_the_freezer_of_all_lots() {
    log("SO-1", "frozen", "39F", "2026-03-05T09:00:00Z");
    pot("SO-2", 20, "2026-03-06");
    pot("OTHER", 20, "2026-03-02");
    log("OTHER", "frozen", "39F", "2026-03-05T09:00:00Z");
    enter("SO-1 SO-2");
    served.at("2026-03-08T20:00:00Z");
    JsonNode pull = served.get("/api/v1/pull?days=3").json();
    assertThat(pull.at("/pulls/0/lot").asText()).isEqualTo("SO-1");
    assertThat(pull.at("/pulls/0/portions").asInt()).isEqualTo(40);
    assertThat(pull.at("/pulls").findValuesAsText("lot")).doesNotContain("OTHER");
    assertThat(pull.at("/missing")).isEmpty();
  }

  /** The button makes another lot of what is missing; sent twice it makes one. */
  @Test
  void what_is_missing_is_begun_as_another_lot() {
    enter("SO-1");
    assertThat(page()).contains("name=\"known\" value=\"SO-1\"");
    String address = "/plans/supper-12/batches";
    String lot = Visit.target(visit.submit(address, "dish", "Leek soup", "known", "SO-1"));
    assertThat(lot).startsWith("/lots/").isNotEqualTo("/lots/SO-1");
    assertThat(served.get("/api/v1" + lot).json().at("/portions/left").asInt()).isEqualTo(20);
    String again = Visit.target(visit.submit(address, "dish", "Leek soup", "known", "SO-1"));
    assertThat(again).isEqualTo(lot);
    assertThat(dish().at("/lots")).hasSize(2);
    // Nothing of it is made yet.
    assertThat(dish().at("/missing").asInt()).isEqualTo(20);
    log(lot.replace("/lots/", ""), "cooked", "180F", "2026-03-06T19:30:00Z");
    assertThat(dish().at("/missing").asInt()).isZero();
  }

  /** Another food has other allergens and days: by definition, no source. */
  @Test
  void a_lot_of_another_food_is_asked_about_and_none_such_offered() {
    String rows =
        """
        lot,food,category,when,entry,temperature,portions
        LE-1,Leek soup,soup_or_stew,2026-03-04T08:00:00Z,cooked,180F,20
        LE-1,,,2026-03-04T09:30:00Z,chilled,40F,
        BR-1,Corn bread,quick_bread_or_muffin,2026-03-04T08:00:00Z,cooked,,20
        """;
    assertThat(served.postCsv("/api/v1/imports", rows).status()).isLessThan(300);
    Reply asked = enter("LE-1 SO-1");
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text())
        .contains("Of another food than Leek soup: SO-1 (Pond soup)", "name=\"sure\"");
    assertThat(dish().at("/lots")).isEmpty();
    assertThat(enter("LE-1").status()).isEqualTo(303);
    assertThat(page()).doesNotContain("name=\"lot\" value=\"SO-1\"");
    assertThat(enter("BR-1").text()).contains("BR-1 (Corn bread)");
    page();
    String[] both = {"dish", "Leek soup", "lot", "SO-1"};
    assertThat(visit.confirm("/plans/supper-12/batches", both).status()).isEqualTo(303);
    assertThat(dish().at("/lots").toString()).isEqualTo("[\"LE-1\",\"SO-1\"]");
  }

  /** Forty and twenty are sixty: plain arithmetic. */
  @Test
  void a_lot_that_is_known_and_not_made_yet_counts_for_its_portions() {
    enter("SO-1");
    assertThat(page()).contains("Begin another batch, portions: 20");
    String second = Visit.target(begin("SO-1"));
    assertThat(page())
        .contains("known, and still to be made: " + second.replace("/lots/", "") + ", portions 20")
        .doesNotContain("Begin another batch", "portions missing");
    // What is to be bought still is all that is not made.
    assertThat(dish().at("/missing").asInt()).isEqualTo(20);
    assertThat(remove("SO-1").status()).isEqualTo(303);
    assertThat(page()).contains("Begin another batch, portions: 40");
    String[] again = {"dish", "Leek soup", "lot", "SO-1"};
    assertThat(visit.confirm("/plans/supper-12/batches", again).status()).isEqualTo(303);
    put(SUPPER.replace("\"guests\": 60", "\"guests\": 80"));
    assertThat(page()).contains("Begin another batch, portions: 20");
  }

  private Reply begin(String known) {
    page();
    return visit.submit("/plans/supper-12/batches", "dish", "Leek soup", "known", known);
  }
}
