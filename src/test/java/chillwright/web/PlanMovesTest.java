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
 * What moves a plan, and the reason it gives. Two plus four hours of cooling are FDA Food Code 2022
 * 3-501.14(A); a day to freeze through is common practice, no source; thawing hours are the cook's.
 *
 * <p>The supper is at 18:00 on the 10th: reheated from 17:00, taken out 24 hours before, so at
 * 17:00 on the 9th, in the freezer a day before that, made by 11:00 on the 8th, begun at 10:00.
 */
class PlanMovesTest {
  private static final String SUPPER =
      """
      {"serving": "2026-03-10T18:00:00Z", "zone": "UTC", "from": "2026-03-03T08:00:00Z",
       "guests": 40, "kitchen": {"has": {"hob": 1, "refrigerator": 60}},
       "dishes": [{"dish": "Leek soup", "category": "soup_or_stew", "route": "frozen",
         "portionMillilitres": 250, "thawHours": 24,
         "make": [{"step": "simmer", "minutes": 60, "uses": {"hob": 1}}],
         "finish": [{"step": "reheat", "minutes": 60, "uses": {"hob": 1}}]}]}
      """;

  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void serve() {
    served = Served.in(folder);
    served.at("2026-03-03T08:00:00Z");
    visit = new Visit(served);
    assertThat(put(SUPPER).at("/verdict").asText()).isEqualTo("plan");
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

  private static JsonNode of(JsonNode plan, String list, String key, String is) {
    for (JsonNode one : plan.at(list)) {
      if (one.path(key).asText().equals(is)) {
        return one;
      }
    }
    throw new AssertionError("no " + is + " in " + plan);
  }

  private static String start(JsonNode plan, String kind) {
    return of(plan, "/tasks", "kind", kind).at("/start").asText();
  }

  private String begin(String dish) {
    visit.open("/plans/supper-12");
    Reply begun = visit.submit("/plans/supper-12/batches", "dish", dish);
    assertThat(begun.status()).as(begun.text()).isEqualTo(303);
    return Visit.target(begun).replace("/lots/", "");
  }

  private void log(String lot, String entry, String temperature, String when) {
    Reply logged =
        served.post(
            "/api/v1/lots/" + lot + "/entries",
            "{'entry':'%s','temperature':'%s','when':'%s'}".formatted(entry, temperature, when));
    assertThat(logged.status()).as(logged.text()).isLessThan(300);
  }

  /** At 135 °F at noon, and still 80 °F after two hours: over 70 °F, so out; thrown away. */
  private void cookAndMissTheLimit(String lot, String day) {
    log(lot, "cooked", "180F", day + "T11:50:00Z");
    log(lot, "cooling", "135F", day + "T12:00:00Z");
    log(lot, "reading", "80F", day + "T14:00:00Z");
  }

  /** FDA Food Code 2022 3-501.14(A)(1) was missed, so 3-701.11 has it discarded, not served. */
  @Test
  void a_lot_out_of_compliance_serves_no_dish_and_is_named() {
    served.post("/api/v1/lots", "{'lot':'LS-1','food':'Leek soup','category':'soup_or_stew'}");
    served.at("2026-03-07T12:05:00Z");
    log("LS-1", "cooked", "180F", "2026-03-07T11:50:00Z");
    log("LS-1", "cooling", "135F", "2026-03-07T12:00:00Z");
    assertThat(plan().at("/tasks").findValuesAsText("kind")).doesNotContain("make");
    served.at("2026-03-07T14:02:00Z");
    assertThat(start(plan(), "make")).isEqualTo("2026-03-08T10:00:00Z");
    assertThat(visit.open("/plans/supper-12").text())
        .contains("it is not shown that it was cooled");
    log("LS-1", "reading", "80F", "2026-03-07T14:00:00Z");
    assertThat(start(plan(), "make")).isEqualTo("2026-03-08T10:00:00Z");
    assertThat(visit.open("/plans/supper-12").text())
        .contains("href=\"/lots/LS-1\"", "out of compliance, so the plan does not count on it");
  }

  @Test
  void a_batch_that_missed_its_limit_and_is_discarded_is_made_again() {
    String lot = begin("Leek soup");
    served.at("2026-03-07T14:02:00Z");
    cookAndMissTheLimit(lot, "2026-03-07");
    JsonNode begun = plan();
    assertThat(begun.at("/verdict").asText()).as(begun.toString()).isEqualTo("plan");
    assertThat(start(begun, "make")).isEqualTo("2026-03-08T10:00:00Z");
    assertThat(begun.at("/dishes/0/missing").asInt()).isEqualTo(40);
    assertThat(begun.at("/leftOut/0/lot").asText()).isEqualTo(lot);
    assertThat(begun.at("/leftOut/0/verdict").asText()).isEqualTo("out");
    String why = "out of compliance, so the plan does not count on it";
    assertThat(visit.open("/plans/supper-12").text()).contains("href=\"/lots/" + lot, why);
    // RFC 5545 3.1 folds long lines, 3.3.11 escapes commas.
    String feed = visit.open("/plans/supper-12/tasks.ics").text().replaceAll("\\r?\\n ", "");
    assertThat(feed).contains(lot + ": ", why.replace(",", "\\,"));
    assertThat(served.get("/api/v1/lots/" + lot).json().toString()).contains("\"out\"");
    log(lot, "discarded", "80F", "2026-03-07T14:02:00Z");
    JsonNode again = plan();
    assertThat(start(again, "make")).isEqualTo("2026-03-08T10:00:00Z");
    assertThat(again.at("/moved")).isEmpty();
    assertThat(again.at("/dishes/0/missing").asInt()).isZero();
    assertThat(again.at("/leftOut")).isEmpty();
  }

  /** FDA Food Code 2022 3-501.14(A)(1) missed, as above: such a lot does not become a dish. */
  @Test
  void a_lot_out_of_compliance_is_refused_to_a_dish_with_why_and_where_it_is() {
    served.post("/api/v1/lots", "{'lot':'PO-1','food':'Pond soup','category':'soup_or_stew'}");
    served.at("2026-03-07T14:02:00Z");
    cookAndMissTheLimit("PO-1", "2026-03-07");
    visit.open("/plans/supper-12");
    Reply refused = visit.submit("/plans/supper-12/batches", "dish", "Leek soup", "lot", "PO-1");
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.text())
        .contains("href=\"/lots/PO-1\"", "out of compliance, so the plan does not count on it")
        .contains("This lot of Pond soup is out");
    assertThat(plan().at("/leftOut")).isEmpty();
    assertThat(start(plan(), "make")).isEqualTo("2026-03-08T10:00:00Z");
  }

  /** FDA Food Code 2022 3-501.16(A)(2): 41 °F or less; the part stood at 60 °F. */
  @Test
  void a_part_that_is_out_counts_as_missing_and_the_rest_of_its_lot_is_followed() {
    String lot = begin("Leek soup");
    served.at("2026-03-06T16:00:00Z");
    log(lot, "cooked", "180F", "2026-03-06T08:00:00Z");
    log(lot, "cooling", "135F", "2026-03-06T08:10:00Z");
    log(lot, "reading", "68F", "2026-03-06T09:50:00Z");
    log(lot, "chilled", "40F", "2026-03-06T13:00:00Z");
    served.post(
        "/api/v1/lots/" + lot + "/entries",
        "{'entry':'portions','portions':10,'when':'2026-03-06T14:00:00Z'}");
    served.post("/api/v1/lots", "{'lot':'PART','from':['" + lot + "'],'portions':10}");
    log("PART", "chilled", "40F", "2026-03-06T14:00:00Z");
    assertThat(plan().at("/dishes/0/missing").asInt()).isZero();
    assertThat(plan().at("/leftOut")).isEmpty();
    log("PART", "reading", "60F", "2026-03-06T15:50:00Z");
    JsonNode rest = plan();
    assertThat(rest.at("/leftOut").findValuesAsText("lot")).containsExactly("PART");
    assertThat(rest.at("/dishes/0/missing").asInt()).isEqualTo(10);
    assertThat(rest.at("/tasks").findValuesAsText("kind")).doesNotContain("make");
  }

  /** Discarded on the 8th at 15:00: what is made then is cold at 22:00, five hours too late. */
  @Test
  void a_batch_that_is_discarded_too_late_leaves_no_time_to_make_it_again() {
    String lot = begin("Leek soup");
    served.at("2026-03-08T15:00:00Z");
    cookAndMissTheLimit(lot, "2026-03-08");
    log(lot, "discarded", "80F", "2026-03-08T15:00:00Z");
    JsonNode none = plan();
    assertThat(none.at("/verdict").asText()).isEqualTo("no-plan");
    assertThat(none.at("/conflicts/0/why").asText()).isEqualTo("too-late-to-make");
    JsonNode window = of(none, "/bounds", "bound", "make");
    assertThat(window.at("/from").asText()).isGreaterThan(window.at("/to").asText());
    assertThat(window.at("/says").asText())
        .contains("too late to make it: by Sun 8 Mar")
        .doesNotContain("between");
    JsonNode later = put(SUPPER.replace("10T18:00", "11T18:00"));
    assertThat(of(later, "/moved", "step", "simmer").at("/why").asText()).isEqualTo("hour");
    assertThat(start(later, "make")).isEqualTo("2026-03-09T10:00:00Z");
  }

  /** Cooked at 12:30 on the 7th: cold by 18:30, and in the freezer from then on. */
  @Test
  void food_that_is_made_earlier_is_frozen_earlier_and_the_reason_is_when_it_was_made() {
    String lot = begin("Leek soup");
    served.at("2026-03-07T14:02:00Z");
    log(lot, "cooked", "180F", "2026-03-07T12:30:00Z");
    JsonNode frozen = of(plan(), "/moved", "why", "begun");
    assertThat(frozen.at("/was").asText()).isEqualTo("2026-03-08T11:00:00Z");
    assertThat(frozen.at("/says").asText()).contains("It was made at Sat 7 Mar 12:30.");
    // The slots of the plan are five minutes long.
    assertThat(start(plan(), "freeze")).isBetween("2026-03-07T18:30:00Z", "2026-03-07T18:35:00Z");
  }

  /** Made at 15:00 on the 8th it is cold at 21:00: four hours later than it had to be frozen. */
  @Test
  void food_that_is_made_too_late_to_be_frozen_says_so_and_what_to_do() {
    String lot = begin("Leek soup");
    served.at("2026-03-08T15:10:00Z");
    log(lot, "cooked", "180F", "2026-03-08T15:00:00Z");
    JsonNode late = plan();
    assertThat(late.at("/verdict").asText()).isEqualTo("no-plan");
    assertThat(late.at("/conflicts/0/why").asText()).isEqualTo("too-late-to-freeze");
    assertThat(late.at("/conflicts/0/says").asText())
        .contains("in the freezer by Sun 8 Mar 17:00", "Do not freeze it");
    JsonNode chilled = put(SUPPER.replace("frozen", "chilled"));
    assertThat(chilled.at("/verdict").asText()).as(chilled.toString()).isEqualTo("plan");
  }

  private String frozen() {
    String lot = begin("Leek soup");
    served.at("2026-03-06T16:00:00Z");
    log(lot, "cooked", "180F", "2026-03-06T08:00:00Z");
    log(lot, "cooling", "135F", "2026-03-06T08:10:00Z");
    log(lot, "reading", "68F", "2026-03-06T09:50:00Z");
    log(lot, "reading", "40F", "2026-03-06T13:00:00Z");
    log(lot, "frozen", "39F", "2026-03-06T14:00:00Z");
    return lot;
  }

  /** Food Code 3-501.13(B) lets it thaw in running water, (C) as part of cooking. */
  @Test
  void a_thaw_that_was_not_started_says_by_when_and_what_the_rules_allow_instead() {
    frozen();
    assertThat(start(plan(), "take-out")).isEqualTo("2026-03-09T17:00:00Z");
    served.at("2026-03-09T20:03:00Z");
    JsonNode late = plan();
    JsonNode conflict = late.at("/conflicts/0");
    assertThat(late.at("/verdict").asText()).isEqualTo("no-plan");
    assertThat(conflict.at("/why").asText()).isEqualTo("too-late-to-thaw");
    assertThat(conflict.at("/says").asText())
        .contains("was not started by Mon 9 Mar 17:00", "3-501.13(B)(3)", "3-501.13(B)(1)")
        .contains("3-501.13(C)", "make it fresh");
    JsonNode faster = put(SUPPER.replace("\"thawHours\": 24", "\"thawHours\": 3"));
    assertThat(faster.at("/verdict").asText()).as(faster.toString()).isEqualTo("plan");
    assertThat(start(faster, "take-out")).isEqualTo("2026-03-10T14:00:00Z");
    assertThat(of(faster, "/moved", "why", "asked").at("/was").asText()).isNotEmpty();
  }

  /** It thaws 24 hours from when it came out: not before 20:00 on the 10th. */
  @Test
  void a_thaw_that_was_started_late_says_so_too() {
    String lot = frozen();
    served.at("2026-03-09T20:03:00Z");
    log(lot, "thawing", "20F", "2026-03-09T20:00:00Z");
    JsonNode late = plan();
    assertThat(late.at("/conflicts/0/why").asText()).isEqualTo("too-late-to-thaw");
    JsonNode later = put(SUPPER.replace("10T18:00", "10T22:00"));
    assertThat(later.at("/verdict").asText()).as(later.toString()).isEqualTo("plan");
    assertThat(of(later, "/moved", "step", "reheat").at("/why").asText()).isEqualTo("hour");
  }

  /** Pans for 40 take up less than the 60 litres of refrigerator there are, for 400 far more. */
  @Test
  void more_guests_than_the_kitchen_holds_end_the_plan_and_say_what_is_short() {
    JsonNode more = put(SUPPER.replace("40", "400"));
    assertThat(more.at("/verdict").asText()).isEqualTo("no-plan");
    assertThat(more.at("/conflicts/0/resource").asText()).isEqualTo("refrigerator");
    assertThat(more.at("/conflicts/0/dish").asText()).isEqualTo("Leek soup");
  }

  /** Forty portions of a quarter litre are 10 kg, sixty are 15: with the squares more than 16. */
  @Test
  void more_guests_move_what_no_longer_freezes_at_once_and_say_so() {
    String squares =
        """
        , {"dish": "Oat squares", "category": "bar_cookies_cut_and_wrapped", "route": "frozen",
           "thawHours": 24, "keeps": {"freezing": 4}, "make": [{"step": "bake", "minutes": 60}]}]}
        """;
    String two =
        SUPPER
            .strip()
            .replaceAll("]}$", squares)
            .replace("\"refrigerator\": 60", "\"freezing\": 16");
    put(two);
    JsonNode more = put(two.replace("40", "60"));
    assertThat(more.at("/verdict").asText()).as(more.toString()).isEqualTo("plan");
    assertThat(more.at("/moved").findValuesAsText("why")).isNotEmpty().containsOnly("portions");
    assertThat(more.at("/moved/0/says").asText()).contains("There are more or fewer portions.");
  }

  /** One hob: of two soups reheated for an hour each, one has to be reheated before the other. */
  @Test
  void another_dish_that_is_added_moves_by_what_is_asked_and_not_by_portions() {
    String two =
        SUPPER
            .strip()
            .replaceAll(
                "]}$",
                """
                , {"dish": "Bean soup", "category": "soup_or_stew", "route": "chilled",
                   "portions": 5,
                   "make": [{"step": "boil", "minutes": 60, "uses": {"hob": 1}}],
                   "finish": [{"step": "warm", "minutes": 60, "uses": {"hob": 1}}]}]}
                """)
            .replace("\"thawHours\": 24", "\"thawHours\": 24, \"holdMinutes\": 90");
    put(two.replace("\"hob\": 1,", "\"hob\": 2,").replace("Bean", "Lentil"));
    JsonNode more = put(two);
    assertThat(more.at("/verdict").asText()).as(more.toString()).isEqualTo("plan");
    assertThat(more.at("/moved").findValuesAsText("why")).isNotEmpty().containsOnly("asked");
  }

  @Test
  void another_hour_moves_all_and_says_so() {
    JsonNode later = put(SUPPER.replace("T18:00", "T19:00"));
    assertThat(later.at("/moved").findValuesAsText("why")).isNotEmpty().containsOnly("hour");
    assertThat(start(later, "take-out")).isEqualTo("2026-03-09T18:00:00Z");
    assertThat(later.at("/moved/0/says").asText()).contains("It is served at another hour.");
    // Whoever opens it within a day reads it too; later it is as if it had been asked so at first.
    assertThat(plan().at("/moved")).isEqualTo(later.at("/moved"));
    served.at("2026-03-04T08:00:00Z");
    assertThat(plan().at("/moved")).isEmpty();
  }

  /** Plain arithmetic: 8 kg for 40 portions are 3 kg for the 15 that nobody made. */
  @Test
  void what_missing_portions_take_is_bought_in_the_week_of_today() {
    String lot = begin("Leek soup");
    served.at("2026-03-07T14:02:00Z");
    log(lot, "cooked", "180F", "2026-03-07T12:30:00Z");
    String leeks = "\"ingredients\": [{\"name\": \"leeks\", \"amount\": 8, \"unit\": \"kg\"}]";
    put(SUPPER.replace("\"thawHours\": 24", leeks + ", \"thawHours\": 24"));
    assertThat(plan().at("/shopping")).isEmpty();
    served.post(
        "/api/v1/lots/" + lot + "/entries",
        "{'entry':'portions','portions':15,'when':'2026-03-07T13:00:00Z'}");
    JsonNode week = plan().at("/shopping/0");
    assertThat(week.at("/from").asText()).isEqualTo("2026-03-02");
    assertThat(week.at("/items/0/amount").asDouble()).isEqualTo(3);
    assertThat(visit.open("/plans/supper-12").text()).contains("3 kg leeks (Leek soup)");
  }

  /** Our own design, no source: 40 were made, 15 eaten since, and 50 guests come. */
  @Test
  void a_lot_with_too_few_portions_left_is_named_first() {
    String lot = begin("Leek soup");
    served.at("2026-03-07T14:02:00Z");
    log(lot, "cooked", "180F", "2026-03-07T12:30:00Z");
    assertThat(plan().at("/dishes/0/missing").asInt()).isZero();
    served.post(
        "/api/v1/lots/" + lot + "/entries",
        "{'entry':'portions','portions':15,'when':'2026-03-07T13:00:00Z'}");
    assertThat(plan().at("/dishes/0/missing").asInt()).isEqualTo(15);
    assertThat(visit.open("/plans/supper-12").text())
        .contains("Leek soup: portions missing, since its lots hold fewer than are wanted: 15.");
  }

  @Test
  void guests_and_portions_stand_in_the_answer_and_on_the_page() {
    assertThat(plan().at("/guests").asInt()).isEqualTo(40);
    assertThat(plan().at("/dishes/0/portions").asInt()).isEqualTo(40);
    String page = visit.open("/plans/supper-12").text();
    assertThat(page).contains("Guests: 40.", "40 portions are 10.6 quarts");
  }
}
