package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Path;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A lot that two dishes would count, of one plan or of two; by definition, no source. */
class PlanSharedLotsTest {
  private static final String PLAN =
      """
      {"name": "%s", "serving": "%s", "zone": "UTC", "from": "2026-03-01T08:00:00Z",
       "guests": 20, "dishes": [%s]}
      """;

  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void serve() {
    served = Served.in(folder);
    served.at("2026-03-06T20:00:00Z");
    visit = new Visit(served);
    put("first", "Lamp <supper>", "2026-03-10T18:00:00Z", dish("Leek soup"), dish("Dal"));
    put("second", "Choir", "2026-03-09T18:00:00Z", dish("Broth"));
    String rows =
        """
        lot,food,category,when,entry,temperature,portions
        L1,Pond soup,soup_or_stew,2026-03-05T08:00:00Z,cooked,180F,40
        L1,,,2026-03-05T08:10:00Z,cooling,135F,
        L1,,,2026-03-05T09:30:00Z,reading,68F,
        L1,,,2026-03-05T12:00:00Z,chilled,40F,
        """;
    assertThat(served.postCsv("/api/v1/imports", rows).status()).isLessThan(300);
    String out = "{'entry':'portions','portions':10,'when':'2026-03-05T14:00:00Z'}";
    assertThat(served.post("/api/v1/lots/L1/entries", out).status()).isLessThan(300);
    served.post("/api/v1/lots", "{'lot':'L1-1','from':['L1'],'portions':10}");
    String cold = "{'entry':'chilled','temperature':'40F','when':'2026-03-05T14:00:00Z'}";
    assertThat(served.post("/api/v1/lots/L1-1/entries", cold).status()).isLessThan(300);
  }

  @AfterEach
  void close() {
    served.close();
  }

  private static String dish(String name) {
    return "{\"dish\": \""
        + name
        + "\", \"category\": \"soup_or_stew\", \"route\": \"chilled\", \"make\":"
        + " [{\"step\": \"simmer\", \"minutes\": 60}]}";
  }

  private void put(String code, String name, String serving, String... dishes) {
    String body = PLAN.formatted(name, serving, String.join(",", dishes));
    JsonNode plan =
        served
            .send(
                served
                    .request("/api/v1/plans/" + code, "Content-Type", "application/json")
                    .PUT(BodyPublishers.ofString(body)))
            .json();
    assertThat(plan.at("/verdict").asText()).as(plan.toString()).isEqualTo("plan");
  }

  private JsonNode plan(String code) {
    return served.get("/api/v1/plans/" + code).json();
  }

  private Reply give(String plan, String dish, String lots) {
    visit.open("/plans/" + plan);
    return visit.submit("/plans/" + plan + "/batches", "dish", dish, "lot", lots);
  }

  @Test
  void a_lot_serves_one_dish_of_a_plan_and_the_field_names_it() {
    assertThat(give("first", "Leek soup", "L1").status()).isEqualTo(303);
    Reply again = give("first", "Dal", "L1");
    assertThat(again.status()).isEqualTo(422);
    assertThat(again.text())
        .contains("href=\"#batches-lot\"", "id=\"batches-lot-fault\"", "value=\"L1\"")
        .contains("<option value=\"Dal\" selected>")
        .contains("L1 serves Leek soup of this plan already.");
    assertThat(plan("first").at("/dishes/1/lots")).isEmpty();
    visit.open("/plans/first");
    visit.submit("/plans/first/batches", "dish", "Leek soup", "remove", "L1");
    assertThat(give("first", "Dal", "L1").status()).isEqualTo(303);
    assertThat(plan("first").at("/dishes/1/missing").asInt()).isZero();
  }

  @Test
  void so_do_its_parts_and_its_whole() {
    give("first", "Leek soup", "L1");
    assertThat(give("first", "Dal", "L1-1").text())
        .contains("L1-1 and L1, which serves Leek soup of this plan already, share portions.");
    visit.open("/plans/first");
    visit.submit("/plans/first/batches", "dish", "Leek soup", "remove", "L1");
    give("first", "Leek soup", "L1-1");
    Reply whole = give("first", "Dal", "L1");
    assertThat(whole.status()).isEqualTo(422);
    assertThat(whole.text())
        .contains("L1 and L1-1, which serves Leek soup of this plan already, share portions.");
  }

  @Test
  void two_plans_to_come_may_share_it_and_each_says_so() throws IOException {
    give("first", "Leek soup", "L1");
    assertThat(plan("first").at("/shared")).isEmpty();
    assertThat(give("second", "Broth", "L1-1").status()).isEqualTo(303);
    assertThat(plan("first").at("/shared").toString())
        .isEqualTo(
            "[{\"lot\":\"L1\",\"dish\":\"Leek soup\",\"plan\":\"second\",\"says\":"
                + "\"L1 also serves the plan Choir: its portions count for both.\"}]");
    assertThat(visit.open("/plans/first").text())
        .contains("L1 also serves the plan Choir: its portions count for both.");
    assertThat(visit.open("/plans/second").text())
        .contains("L1-1 also serves the plan Lamp &lt;supper&gt;: its portions count for both.");
    try (PDDocument sheet =
        Loader.loadPDF(served.get("/plans/first/sheet.pdf").response().body())) {
      assertThat(new PDFTextStripper().getText(sheet).replaceAll("\\s+", " "))
          .contains("L1 also serves the plan Choir: its portions count for both.");
    }
    served.at("2026-03-09T19:00:00Z");
    assertThat(plan("first").at("/shared")).isEmpty();
  }
}
