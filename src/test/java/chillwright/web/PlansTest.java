package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Plans over the API of a real server; the two hours of reheating are FDA Food Code 3-403.11(D).
 */
class PlansTest {
  private static final ExecutorService CROWD = Executors.newFixedThreadPool(24);

  private static final String SUPPER =
      """
      {"serving": "2026-03-20T18:00:00Z", "zone": "UTC", "from": "2026-03-02T08:00:00Z",
       "kitchen": {"has": {"hob": 1}},
       "dishes": [{"dish": "Leek soup", "category": "soup_or_stew", "route": "chilled",
         "make": [{"step": "simmer", "minutes": 60, "uses": {"hob": 1}}],
         "finish": [{"step": "reheat", "minutes": 120, "uses": {"hob": 1}}]}]}
      """;

  @TempDir private Path folder;
  private Served served;

  @BeforeEach
  void serve() {
    served = Served.in(folder);
  }

  @AfterEach
  void close() {
    served.close();
  }

  @AfterAll
  static void end() {
    CROWD.shutdownNow();
  }

  private Reply put(String code, String body) {
    return served.send(
        served
            .request("/api/v1/plans/" + code, "Content-Type", "application/json")
            .PUT(BodyPublishers.ofString(body)));
  }

  private Reply drop(String code) {
    return served.send(served.request("/api/v1/plans/" + code).DELETE());
  }

  /** Forty dishes with little room take seconds each; RFC 9110, 15.6.4: when to ask again. */
  @Test
  void a_crowd_of_plans_is_turned_away_and_the_pages_stay() throws Exception {
    StringBuilder dishes = new StringBuilder();
    for (int i = 0; i < 40; i++) {
      dishes
          .append(i == 0 ? "" : ",")
          .append("{'dish':'d%d','category':'soup_or_stew','route':'frozen',".formatted(i))
          .append("'keeps':{'freezing':4,'refrigerator':4},'thawHours':%d,".formatted(12 + i % 9))
          .append("'make':[{'step':'s','minutes':%d,'uses':{'hob':1}}],".formatted(60 + i))
          .append("'finish':[{'step':'r','minutes':%d,'uses':{'hob':1}}]}".formatted(30 + i));
    }
    String body =
        ("{'serving':'2026-03-20T18:00:00Z','zone':'UTC','from':'2026-03-0%dT08:00:00Z',"
                + "'kitchen':{'has':{'hob':9,'freezing':8,'refrigerator':60}},'dishes':["
                + dishes
                + "]}")
            .replace('\'', '"');
    List<Reply> replies =
        IntStream.range(0, 24)
            .mapToObj(i -> body.formatted(1 + i % 8).replace("d0", "dish" + i))
            .map(one -> CompletableFuture.supplyAsync(() -> put("p" + one.hashCode(), one), CROWD))
            .toList()
            .stream()
            .map(CompletableFuture::join)
            .toList();
    assertThat(served.get("/").status()).isEqualTo(200);
    List<Reply> away = replies.stream().filter(reply -> reply.status() == 503).toList();
    assertThat(away).isNotEmpty().hasSizeLessThan(24);
    assertThat(away.get(0).header("Retry-After")).matches("[1-9]\\d*");
    assertThat(away.get(0).problem(503).at("/problems/0/code").asText()).isEqualTo("plans-busy");
  }

  @Test
  void names_that_are_too_long_are_told() {
    String longest = "x".repeat(200);
    assertThat(put("a", SUPPER.replace("Leek soup", longest)).status()).isEqualTo(200);
    Reply refused =
        put("a", SUPPER.replace("Leek soup", longest + "x").replace("simmer", longest + "y"));
    assertThat(refused.problem(422).at("/problems").findValuesAsText("allowed"))
        .hasSize(2)
        .allMatch(allowed -> allowed.contains("200 characters"));
  }

  @Test
  void a_plan_is_kept_and_made_afresh() {
    JsonNode plan = put("supper-12", SUPPER).json();
    assertThat(plan.at("/verdict").asText()).isEqualTo("plan");
    assertThat(plan.at("/tasks/0/start").asText()).isEqualTo("2026-03-19T17:00:00Z");
    served.close();
    served = Served.in(folder);
    assertThat(served.get("/api/v1/plans/supper-12").json()).isEqualTo(plan);
    assertThat(served.get("/api/v1/plans").json().at("/items/0/plan").asText())
        .isEqualTo("supper-12");
  }

  @Test
  void the_last_word_stands_and_a_dropped_plan_is_gone() {
    put("supper-12", SUPPER);
    JsonNode later = put("supper-12", SUPPER.replace("20T18", "21T18")).json();
    assertThat(later.at("/serving").asText()).isEqualTo("2026-03-21T18:00:00Z");
    assertThat(drop("supper-12").status()).isEqualTo(204);
    served.get("/api/v1/plans/supper-12").problem(404);
    drop("supper-12").problem(404);
  }

  /** Begun at 11:00 instead of 09:00: cold by 17:00, so reheating begins an hour later. */
  @Test
  void the_plan_moves_with_the_log_and_says_why() {
    served.at("2026-03-20T08:00:00Z");
    String supper = SUPPER.replace("120", "60").replace("2026-03-02T08", "2026-03-20T08");
    JsonNode first = put("supper-12", supper).json();
    assertThat(first.at("/moved")).isEmpty();
    assertThat(first.at("/tasks/0/start").asText()).isEqualTo("2026-03-20T10:00:00Z");
    served.at("2026-03-20T12:00:00Z");
    JsonNode idle = served.get("/api/v1/plans/supper-12").json();
    assertThat(idle.at("/verdict").asText()).isEqualTo("no-plan");
    assertThat(idle.at("/conflicts/0/why").asText()).isEqualTo("too-late-to-make");
    served.post("/api/v1/lots", "{'lot':'LS-1','food':'Leek soup','category':'soup_or_stew'}");
    served.post(
        "/api/v1/lots/LS-1/entries",
        "{'entry':'cooked','temperature':'180F','when':'2026-03-20T10:30:00Z'}");
    JsonNode begun = served.get("/api/v1/plans/supper-12").json();
    assertThat(begun.at("/verdict").asText()).isEqualTo("plan");
    assertThat(begun.at("/tasks").findValuesAsText("kind")).doesNotContain("make");
    served.at("2026-03-20T12:05:00Z");
    JsonNode later = put("supper-12", supper.replace("T18:00", "T19:30")).json();
    assertThat(later.at("/moved/0/why").asText()).isEqualTo("hour");
    assertThat(later.at("/moved").findValuesAsText("start")).contains("2026-03-20T18:30:00Z");
  }

  @Test
  void no_plan_is_an_answer_that_says_why() {
    JsonNode none = put("supper-12", SUPPER.replace("120", "121")).json();
    assertThat(none.at("/verdict").asText()).isEqualTo("no-plan");
    assertThat(none.at("/conflicts/0/why").asText()).isEqualTo("reheat-too-long");
    assertThat(none.at("/conflicts/0/dish").asText()).isEqualTo("Leek soup");
    assertThat(none.at("/tasks")).isEmpty();
  }

  @Test
  void every_fault_is_told_and_nothing_is_kept() {
    String broken =
        SUPPER.replace("soup_or_stew", "soop").replace("\"hob\": 1}}]", "\"hop\": 1}}]");
    JsonNode problems = put("supper-12", broken).problem(422).at("/problems");
    assertThat(problems.findValuesAsText("code")).contains("unknown-category", "unknown-thing");
    assertThat(served.get("/api/v1/plans").json().at("/items")).isEmpty();
    put("a%20b", SUPPER).problem(422);
  }

  /**
   * Reheated within two hours (3-403.11(D)) that end as the order is handed over, and made ahead.
   */
  @Test
  void an_order_may_be_due_before_the_others() {
    String order = "\"due\": \"%s\", \"make\"";
    String early = SUPPER.replace("\"make\"", order.formatted("2026-03-19T12:00:00Z"));
    JsonNode plan = put("orders", early).json();
    assertThat(plan.at("/tasks/0/start").asText()).isEqualTo("2026-03-18T11:00:00Z");
    assertThat(plan.at("/tasks/2/end").asText()).isEqualTo("2026-03-19T12:00:00Z");
    assertThat(plan.at("/bounds/0/from").asText()).isEqualTo("2026-03-13T00:00:00Z");
    assertThat(plan.at("/dishes/0/due").asText()).isEqualTo("2026-03-19T12:00:00Z");
    Reply late = put("b", SUPPER.replace("\"make\"", order.formatted("2026-03-21T12:00:00Z")));
    assertThat(late.problem(422).at("/problems/0/allowed").asText()).contains("not after serving");
    served.at("2026-03-19T13:00:00Z");
    JsonNode over = served.get("/api/v1/plans/orders").json();
    assertThat(over.at("/tasks")).isEmpty();
  }
}
