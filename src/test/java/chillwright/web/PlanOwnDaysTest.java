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
 * A dish that became a lot is planned by the days that its lot has, which are those of FDA Food
 * Code 2022 3-501.17(A) and (B): seven with the day it is made, those in the freezer left out.
 */
class PlanOwnDaysTest {
  private static final String DINNER =
      """
      {"serving": "2026-12-06T18:30:00Z", "zone": "UTC", "from": "2026-11-26T15:00:00Z",
       "dishes": [{"dish": "Leek soup", "category": "soup_or_stew", "route": "frozen",
         "portions": 20, "thawHours": 24,
         "make": [{"step": "simmer", "minutes": 60}],
         "finish": [{"step": "reheat", "minutes": 30}]}]}
      """;

  @TempDir private Path folder;
  private Served served;
  private String lot;

  @BeforeEach
  void serve() {
    served = Served.in(folder);
    served.at("2026-11-26T15:00:00Z");
    assertThat(put(DINNER).at("/verdict").asText()).isEqualTo("plan");
    Visit visit = new Visit(served);
    visit.open("/plans/dinner-6");
    Reply begun = visit.submit("/plans/dinner-6/batches", "dish", "Leek soup");
    lot = Visit.target(begun).replace("/lots/", "");
  }

  @AfterEach
  void close() {
    served.close();
  }

  private JsonNode put(String body) {
    return served
        .send(
            served
                .request("/api/v1/plans/dinner-6", "Content-Type", "application/json")
                .PUT(BodyPublishers.ofString(body)))
        .json();
  }

  private JsonNode plan() {
    return served.get("/api/v1/plans/dinner-6").json();
  }

  private void log(String entry, String temperature, String when) {
    Reply logged =
        served.post(
            "/api/v1/lots/" + lot + "/entries",
            "{'entry':'%s','temperature':'%s','when':'%s'}".formatted(entry, temperature, when));
    assertThat(logged.status()).as(logged.text()).isLessThan(300);
  }

  private void cooked(String day) {
    log("cooked", "180F", day + "T08:00:00Z");
    log("cooling", "135F", day + "T08:10:00Z");
    log("reading", "68F", day + "T09:50:00Z");
    log("reading", "40F", day + "T13:00:00Z");
  }

  private static String start(JsonNode plan, String kind) {
    for (JsonNode task : plan.at("/tasks")) {
      if (task.path("kind").asText().equals(kind)) {
        return task.at("/start").asText();
      }
    }
    throw new AssertionError("no " + kind + " in " + plan);
  }

  private static String says(JsonNode plan, String bound) {
    for (JsonNode one : plan.at("/bounds")) {
      if (one.path("bound").asText().equals(bound)) {
        return one.at("/says").asText();
      }
    }
    throw new AssertionError("no " + bound + " in " + plan);
  }

  /** Made on Saturday the 21st: 6 days used by Thursday the 26th, and 1 left once it thaws. */
  @Test
  void a_lot_frozen_late_does_not_keep_through_a_night_of_thawing() {
    cooked("2026-11-21");
    log("frozen", "39F", "2026-11-26T14:00:00Z");
    JsonNode none = plan();
    assertThat(none.at("/verdict").asText()).as(none.toString()).isEqualTo("no-plan");
    assertThat(none.at("/conflicts/0/why").asText()).isEqualTo("lot-keeps-too-short");
    assertThat(none.at("/conflicts/0/says").asText())
        .contains("Sat 5 Dec", "3-501.13(B)(1)", "3-501.13(C)", "make it fresh");
    JsonNode faster = put(DINNER.replace("\"thawHours\": 24", "\"thawHours\": 3"));
    assertThat(faster.at("/verdict").asText()).as(faster.toString()).isEqualTo("plan");
    assertThat(start(faster, "take-out")).isEqualTo("2026-12-06T15:00:00Z");
  }

  /** Frozen a day before, it has 2 days left: it may thaw from the 5th on, not from the 4th. */
  @Test
  void a_lot_frozen_a_day_earlier_keeps_through_the_night_and_no_longer() {
    cooked("2026-11-21");
    log("frozen", "39F", "2026-11-25T14:00:00Z");
    JsonNode plan = plan();
    assertThat(plan.at("/verdict").asText()).as(plan.toString()).isEqualTo("plan");
    assertThat(start(plan, "take-out")).isEqualTo("2026-12-05T18:00:00Z");
    assertThat(says(plan, "take-out")).contains("between Sat 5 Dec 00:00 and Sat 5 Dec 18:00");
    assertThat(plan.at("/bounds").findValuesAsText("bound")).doesNotContain("freeze-by");
  }

  /**
   * Made on the 26th, it may stay until Wednesday the 2nd; thawing from the 5th it needs two of its
   * seven days, so that five may be used: it is in the freezer by the end of the 30th, of which a
   * plan's last moment is 23:55. Whoever waits so long takes nothing out on the day before.
   */
  @Test
  void a_lot_in_the_refrigerator_is_frozen_while_it_has_days_for_thawing() {
    cooked("2026-11-26");
    JsonNode plan = plan();
    assertThat(plan.at("/verdict").asText()).as(plan.toString()).isEqualTo("plan");
    assertThat(says(plan, "freeze-by")).contains("and Mon 30 Nov 23:55");
    assertThat(says(plan, "take-out")).contains("between Sat 5 Dec 00:00 and Sat 5 Dec ");
    served.at("2026-11-30T15:00:00Z");
    assertThat(start(plan(), "freeze")).isEqualTo("2026-11-30T15:00:00Z");
    served.at("2026-12-01T15:00:00Z");
    JsonNode late = plan();
    assertThat(late.at("/conflicts/0/why").asText())
        .as(late.toString())
        .isEqualTo("lot-keeps-too-short");
  }

  /** Soup is at its best 2 to 3 months frozen, the Cold Food Storage Chart of FoodSafety.gov. */
  @Test
  void a_lot_past_its_best_is_told_as_quality() {
    cooked("2026-09-01");
    log("frozen", "39F", "2026-09-02T14:00:00Z");
    JsonNode none = plan();
    assertThat(none.at("/verdict").asText()).as(none.toString()).isEqualTo("no-plan");
    assertThat(none.at("/conflicts/0/why").asText()).isEqualTo("lot-past-best");
    assertThat(none.at("/conflicts/0/says").asText()).contains("best until Mon 2 Nov", "quality");
  }

  /** Seven days from the 28th reach the 4th: neither chilled nor thawed is it served on the 6th. */
  @Test
  void a_lot_kept_cold_or_thawed_follows_its_last_day() {
    served.at("2026-11-28T15:00:00Z");
    cooked("2026-11-28");
    JsonNode chilled = put(DINNER.replace("\"frozen\"", "\"chilled\""));
    assertThat(chilled.at("/conflicts/0/why").asText()).isEqualTo("lot-keeps-too-short");
    assertThat(chilled.at("/conflicts/0/says").asText()).contains("Fri 4 Dec");
    put(DINNER);
    log("frozen", "39F", "2026-11-28T14:00:00Z");
    served.at("2026-11-30T15:00:00Z");
    log("thawing", "30F", "2026-11-30T14:00:00Z");
    JsonNode thawed = plan();
    assertThat(thawed.at("/conflicts/0/why").asText()).isEqualTo("lot-keeps-too-short");
    assertThat(thawed.at("/conflicts/0/says").asText()).contains("Sat 5 Dec");
  }
}
