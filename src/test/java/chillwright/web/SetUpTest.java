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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the kitchen says of itself, told and asked over HTTP. */
class SetUpTest {
  @TempDir private Path folder;
  private Served served;

  @BeforeEach
  void open() {
    served = Served.in(folder);
  }

  @AfterEach
  void close() {
    served.close();
  }

  private Reply put(String path, String json) {
    return served.send(
        served
            .request("/api/v1" + path, "Content-Type", "application/json")
            .PUT(BodyPublishers.ofString(json.replace('\'', '"'))));
  }

  private JsonNode items(String path) {
    return served.get("/api/v1" + path).json().at("/items");
  }

  @Test
  void a_food_is_said_as_a_whole_and_the_last_word_stands() {
    put(
        "/foods/Barley%20soup",
        """
        {'category':'soup_or_stew','portions':24,'container':'2-inch pan','place':'Walk-in',
         'reheating':'to 165 °F','allergens':['wheat','milk'],'ingredients':'barley, milk'}
        """);
    JsonNode food = items("/foods").get(0);
    assertThat(food.at("/name").asText()).isEqualTo("Barley soup");
    assertThat(food.at("/portions").asInt()).isEqualTo(24);
    assertThat(food.at("/allergens").toString()).isEqualTo("[\"milk\",\"wheat\"]");
    assertThat(put("/foods/Barley%20soup", "{'category':'soup_or_stew'}").status()).isEqualTo(200);
    assertThat(items("/foods")).hasSize(1);
    assertThat(items("/foods").get(0).at("/portions").isNull()).isTrue();
    assertThat(items("/foods").get(0).at("/allergens")).isEmpty();
  }

  @Test
  void every_fault_of_a_food_is_told_at_once_and_nothing_is_stored() {
    Reply reply =
        put(
            "/foods/Soup",
            "{'category':'soop','portions':0,'allergens':['milk','nuts'],'place':'a\\nb'}");
    assertThat(reply.problem(422).at("/problems").findValuesAsText("code"))
        .containsExactlyInAnyOrder(
            "unknown-category", "bad-number", "unknown-allergens", "control-character");
    assertThat(items("/foods")).isEmpty();
    assertThat(put("/foods/Soup", "{'categorie':'x','portions':'many'}").problem(422).toString())
        .contains("unknown-field", "wrong-type");
    assertThat(put("/foods/Soup", "{}").code()).isEqualTo("missing");
  }

  /** FDA Food Code 2022 1-201.10: food that needs no cold for safety may stand; soup may not. */
  @Test
  void only_food_that_needs_no_cold_has_days_at_room_temperature() {
    String days = "{'category':'%s','roomDays':5}";
    assertThat(put("/foods/Bars", days.formatted("bar_cookies_brownies")).json().at("/roomDays"))
        .hasToString("5");
    assertThat(put("/foods/Soup", days.formatted("soup_or_stew")).code()).isEqualTo("needs-cold");
    assertThat(items("/foods").findValuesAsText("name")).containsExactly("Bars");
    assertThat(put("/foods/Bars", "{'category':'bar_cookies_brownies','roomDays':0}").code())
        .isEqualTo("bad-number");
    assertThat(served.get("/kitchen?food=Bars").text())
        .contains("days at room temperature: 5", "name=\"roomDays\"", "size=\"4\"");
  }

  /** The limit of cold holding is 41 °F, that of hot holding 135 °F: FDA Food Code 3-501.16(A). */
  @ParameterizedTest
  @CsvSource({
    "refrigerator, 38F, 200, ''",
    "refrigerator, 41F, 200, ''",
    "refrigerator, 42F, 422, laxer-than-rules",
    "refrigerator, 38, 422, no-scale",
    "hot-holding, 140F, 200, ''",
    "hot-holding, 134F, 422, laxer-than-rules",
    "freezer, 5F, 200, ''",
    "freezer, 0C, 200, ''",
    "freezer, 33F, 422, above-freezing",
    "counter, 60F, 422, no-limit-here",
    "fridge, 38F, 422, unknown-kind",
  })
  void a_place_may_only_be_stricter_than_the_rules(
      String kind, String own, int status, String code) {
    Reply reply = put("/places/Unit", "{'kind':'%s','ownLimit':'%s'}".formatted(kind, own));
    assertThat(reply.status()).as(reply.text()).isEqualTo(status);
    if (status == 422) {
      assertThat(reply.code()).isEqualTo(code);
      assertThat(items("/places")).isEmpty();
    } else {
      assertThat(reply.json().at("/limit/source").asText()).isEqualTo("house");
    }
  }

  @Test
  void a_place_without_a_figure_is_held_to_the_rule_set() {
    JsonNode limit = put("/places/Reach-in", "{'kind':'refrigerator'}").json();
    assertThat(limit.at("/limit/figure").asText()).isEqualTo("41 °F (5 °C)");
    assertThat(limit.at("/limit/citation").asText()).isEqualTo("3-501.16(A)(2)");
    assertThat(limit.at("/rounds").asInt()).isEqualTo(2);
    JsonNode freezer = put("/places/Chest", "{'kind':'freezer','rounds':1}").json();
    assertThat(freezer.at("/limit/source").asText()).isEqualTo("quality");
    JsonNode counter = put("/places/Pass", "{'kind':'counter'}").json();
    assertThat(counter.at("/limit").isNull()).isTrue();
    assertThat(counter.at("/rounds").asInt()).isZero();
  }

  @Test
  void people_and_the_name_of_the_kitchen_stay() {
    assertThat(put("/people/RO", "{'name':'Rosa O.'}").status()).isEqualTo(200);
    assertThat(put("/people/" + "x".repeat(21), "{}").code()).isEqualTo("too-long");
    assertThat(items("/people").findValuesAsText("name")).containsExactly("Rosa O.");
    assertThat(put("/kitchen", "{'name':'North kitchen'}").json().at("/name").asText())
        .isEqualTo("North kitchen");
    served.close();
    served = Served.in(folder);
    assertThat(served.get("/api/v1/kitchen").json().at("/name").asText())
        .isEqualTo("North kitchen");
    assertThat(put("/kitchen", "{'name':null}").json().at("/name").isNull()).isTrue();
  }
}
