package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The kitchen's page and what other pages take from it, without any script. */
class SetUpPagesTest {
  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void open() {
    served = Served.in(folder);
    visit = new Visit(served);
    visit.open("/kitchen");
  }

  @AfterEach
  void close() {
    served.close();
  }

  private JsonNode items(String path) {
    return served.get("/api/v1" + path).json().at("/items");
  }

  private Reply taken(String address, String... fields) {
    Reply reply = visit.submit(address, fields);
    assertThat(reply.status()).as(reply.text()).isEqualTo(303);
    return reply;
  }

  private void describeSoup() {
    taken(
        "/kitchen/foods",
        "name",
        "Barley soup",
        "category",
        "soup_or_stew",
        "portions",
        "24",
        "place",
        "Walk-in",
        "otherAllergens",
        "celery",
        "ingredients",
        "water, barley, carrots");
  }

  @Test
  void the_name_of_the_kitchen_stands_on_every_page() {
    assertThat(Visit.target(taken("/kitchen/name", "name", "North kitchen")))
        .isEqualTo("/kitchen#kitchen");
    assertThat(visit.open("/").text()).contains("North kitchen");
  }

  /** Our own: a fault names a field as the page does. */
  @Test
  void what_is_wrong_is_told_of_a_field_by_its_words() {
    String[] bad = {"name", "Oat bars", "category", "bar_cookies_cut_and_wrapped", "roomDays", "x"};
    Reply english = visit.submit("/kitchen/foods", bad);
    assertThat(english.status()).isEqualTo(422);
    assertThat(english.text())
        .contains("Days at its best at room temperature, as this kitchen finds\" must be")
        .doesNotContain("roomDays\" must");
    visit.submit("/ways", "language", "es", "back", "/kitchen");
    assertThat(visit.submit("/kitchen/foods", bad).text())
        .contains("según esta cocina» debe ser un número entero");
  }

  /** Where a food is kept frozen is not where it cools. */
  @Test
  void a_new_batch_does_not_stand_in_the_freezer_before_it_is_frozen() {
    taken("/kitchen/places", "name", "chest freezer", "kind", "freezer", "rounds", "1");
    String kind = "bar_cookies_cut_and_wrapped";
    taken("/kitchen/foods", "name", "Oat bars", "category", kind, "place", "chest freezer");
    for (String entry : List.of("cooked", "frozen")) {
      taken(
          "/new-batch",
          "lot",
          "B-" + entry,
          "entry",
          entry,
          "food",
          "Oat bars",
          "portions",
          "8",
          "containers",
          "2");
      assertThat(served.get("/api/v1/lots/B-" + entry + "-1").json().at("/place").asText(""))
          .isEqualTo(entry.equals("frozen") ? "chest freezer" : "");
    }
  }

  @Test
  void a_food_can_be_changed_from_the_page() {
    describeSoup();
    assertThat(visit.open("/kitchen").text())
        .contains("Barley soup", "portions: 24", "celery", "food=Barley+soup#food-form");
    assertThat(visit.open("/kitchen?food=Barley+soup").text())
        .contains("value=\"Barley soup\"", "value=\"24\"", "water, barley, carrots");
    taken(
        "/kitchen/foods",
        Map.of("name", "Barley soup", "category", "soup_or_stew", "allergens", "milk"));
    assertThat(items("/foods")).hasSize(1);
    assertThat(items("/foods").get(0).at("/allergens").toString()).isEqualTo("[\"milk\"]");
    assertThat(visit.open("/kitchen?food=Barley+soup").text())
        .containsPattern("value=\"milk\" checked|checked value=\"milk\"");
  }

  private void taken(String address, Map<String, String> fields) {
    String[] all =
        fields.entrySet().stream()
            .flatMap(e -> Stream.of(e.getKey(), e.getValue()))
            .toArray(String[]::new);
    taken(address, all);
  }

  @Test
  void a_new_batch_takes_what_its_form_leaves_blank() {
    describeSoup();
    assertThat(visit.open("/new-batch").text()).contains("<option value=\"Barley soup\">");
    taken(
        "/new-batch",
        "food",
        "Barley soup",
        "entry",
        "cooked",
        "temperature",
        "180F",
        "lot",
        "B-1");
    JsonNode lot = served.get("/api/v1/lots/B-1").json();
    assertThat(lot.at("/category").asText()).isEqualTo("soup_or_stew");
    assertThat(lot.at("/portions/made").asInt()).isEqualTo(24);
    assertThat(lot.at("/place").isNull()).as("a hot pot is not where it is kept cold").isTrue();
    served.at("2026-03-03T17:20:00Z");
    taken(
        "/new-batch",
        "food",
        "Barley soup",
        "entry",
        "cooked",
        "temperature",
        "180F",
        "lot",
        "B-2",
        "portions",
        "7");
    assertThat(served.get("/api/v1/lots/B-2").json().at("/portions/made").asInt()).isEqualTo(7);
  }

  /** The limit is FDA Food Code 2022 3-501.16(A)(2): 41 °F. */
  @Test
  void every_fault_of_a_place_is_told_beside_what_was_typed() {
    Reply refused =
        visit.submit(
            "/kitchen/places",
            "name",
            "Reach-in",
            "kind",
            "refrigerator",
            "ownLimit",
            "45",
            "scale",
            "F",
            "rounds",
            "99");
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.text())
        .contains("role=\"alert\"", "value=\"Reach-in\"", "value=\"45\"", "41 °F", "0 to 24");
    assertThat(items("/places")).isEmpty();
    taken(
        "/kitchen/places",
        "name",
        "Reach-in",
        "kind",
        "refrigerator",
        "ownLimit",
        "3,5",
        "scale",
        "C");
    assertThat(items("/places").get(0).at("/ownLimit").asText()).isEqualTo("3.5 °C");
    assertThat(visit.open("/kitchen").text()).contains("the kitchen's own figure");
  }

  @Test
  void a_person_is_offered_where_initials_are_asked_for() {
    taken("/kitchen/people", "initials", "RO", "name", "Rosa O.");
    assertThat(visit.open("/kitchen").text()).contains("Rosa O.");
    assertThat(visit.open("/day").text()).contains("<option value=\"RO\">");
  }

  @Test
  void the_page_speaks_spanish() {
    describeSoup();
    assertThat(served.get("/kitchen", "Accept-Language", "es").text())
        .contains("Alimentos que se hacen a menudo", "nueces de árbol", "porciones: 24");
  }

  @ParameterizedTest
  @ValueSource(strings = {"/kitchen/name", "/kitchen/people", "/kitchen/places", "/kitchen/foods"})
  void a_form_without_its_token_is_refused(String address) {
    Map<String, String> forged =
        Map.of("name", "Forged", "initials", "F", "kind", "counter", "category", "soup_or_stew");
    assertThat(visit.submit(address, forged).status()).isEqualTo(403);
    assertThat(served.get("/api/v1/kitchen").json().at("/name").isNull()).isTrue();
    assertThat(items("/foods")).isEmpty();
    assertThat(items("/places")).isEmpty();
    assertThat(items("/people")).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("chillwright.web.HostilePagesTest#names")
  void a_name_is_only_text_wherever_it_is_said(String name) {
    taken("/kitchen/name", "name", name);
    taken("/kitchen/people", "initials", name.substring(0, 2), "name", name);
    taken("/kitchen/places", "name", name, "kind", "refrigerator");
    taken(
        "/kitchen/foods",
        "name",
        name,
        "category",
        "soup_or_stew",
        "container",
        name,
        "place",
        name,
        "reheating",
        name,
        "otherAllergens",
        name,
        "ingredients",
        name);
    taken("/day/readings", "entry", "reading", "place", name, "temperature", "50", "scale", "F");
    String asked = Visit.encoded(name);
    for (String address :
        new String[] {
          "/kitchen",
          "/kitchen?food=" + asked,
          "/kitchen?place=" + asked + "&person=" + asked,
          "/day",
          "/new-batch"
        }) {
      Reply page = visit.open(address);
      assertThat(page.status()).as(address).isEqualTo(200);
      assertThat(page.text()).as(address).doesNotContain("<script>", "</textarea></option>");
      assertThat(PageText.inline(page.text())).as(address).isEmpty();
    }
    assertThat(items("/foods").get(0).at("/name").asText()).isEqualTo(name);
  }
}
