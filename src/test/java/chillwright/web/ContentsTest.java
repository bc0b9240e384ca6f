package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.paper.Sheet;
import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.StreamSupport;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What is in a lot that was made of others. A major allergen has to be declared wherever it is
 * contained (section 403(w)(1) of the Federal Food, Drug, and Cosmetic Act, read as 21 U.S.C.
 * 343(w)(1)), so what is in a part is in the whole; that nothing is known of a part is told and
 * never reads as "none".
 */
class ContentsTest {
  @TempDir private Path folder;
  private Served served;

  @BeforeEach
  void open() {
    served = Served.in(folder);
    served.at("2026-03-03T20:00:00Z");
  }

  @AfterEach
  void close() {
    served.close();
  }

  private void food(String name, String allergens, String others, String ingredients) {
    served
        .kitchen()
        .setUp()
        .food(
            Map.of(
                "name",
                name,
                "category",
                "soup_or_stew",
                "allergens",
                allergens,
                "otherAllergens",
                others,
                "ingredients",
                ingredients));
  }

  private void log(String lot, String entry) {
    Reply reply =
        served.post(
            "/api/v1/lots/" + lot + "/entries",
            "{'when':'2026-03-03T10:00:00-07:00','entry':'%s'}".formatted(entry));
    assertThat(reply.status()).as(reply.text()).isEqualTo(201);
  }

  private void lot(String lot, String food, String... from) {
    String sources = from.length == 0 ? "" : ",'from':['" + String.join("','", from) + "']";
    Reply reply =
        served.post(
            "/api/v1/lots",
            "{'lot':'%s','food':'%s','category':'soup_or_stew'%s}".formatted(lot, food, sources));
    assertThat(reply.status()).as(reply.text()).isEqualTo(201);
  }

  private void cooked(String lot, String food, String... from) {
    lot(lot, food, from);
    log(lot, "cooked");
  }

  private JsonNode contents(String lot) {
    return served.get("/api/v1/lots/" + lot).json().at("/contents");
  }

  private String label(String lot, String sheet) throws IOException {
    Reply reply = Visit.labels(served, "/lots/" + lot + "/labels.pdf?sheet=" + sheet);
    try (PDDocument pdf = Loader.loadPDF(reply.response().body())) {
      return new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ").strip();
    }
  }

  private static List<String> texts(JsonNode list) {
    return list.findValuesAsText("food").isEmpty()
        ? StreamSupport.stream(list.spliterator(), false).map(JsonNode::asText).toList()
        : list.findValuesAsText("food");
  }

  @ParameterizedTest
  @MethodSource("sheets")
  void a_pot_of_two_soups_holds_what_both_hold(String sheet) throws IOException {
    food("Barley soup", "wheat", "celery", "water, barley,\nceleriac");
    food("Leek soup", "milk wheat", "", "leeks, milk");
    food("House pot", "soybeans", "", "salt");
    cooked("B", "Barley soup");
    cooked("L", "Leek soup");
    cooked("P", "House pot", "B", "L");
    cooked("P2", "House pot", "P");
    for (String lot : List.of("P", "P2")) {
      assertThat(texts(contents(lot).at("/allergens")))
          .containsExactly("milk", "wheat", "soybeans");
      assertThat(texts(contents(lot).at("/otherAllergens"))).containsExactly("celery");
      assertThat(contents(lot).at("/notOnFile")).isEmpty();
      assertThat(label(lot, sheet))
          .contains("Contains: milk, wheat, soybeans, celery")
          .doesNotContain("ON FILE");
    }
    assertThat(texts(contents("P").at("/ingredients")))
        .containsExactly("House pot", "Barley soup", "Leek soup");
    assertThat(label("P", "letter-10"))
        .contains("salt, Barley soup (water, barley, celeriac), Leek soup (leeks, milk)");
  }

  @ParameterizedTest
  @MethodSource("sheets")
  void a_part_that_is_not_on_file_is_told_on_every_label(String sheet) throws IOException {
    food(
        "House pot",
        "milk eggs fish crustacean_shellfish tree_nuts peanuts wheat soybeans sesame",
        "celery and mustard",
        "");
    String stranger = "Stew from the other kitchen, with a name that is long";
    cooked("S", stranger);
    cooked("T", "Gravy");
    cooked("P", "House pot", "S", "T");
    assertThat(texts(contents("P").at("/notOnFile"))).containsExactly(stranger, "Gravy");
    assertThat(label("P", sheet))
        .contains("Allergens NOT ON FILE of: " + stranger + ", Gravy.")
        .contains("peanuts, wheat, soybeans, sesame, celery and mustard");
    assertThat(served.get("/lots/P").text())
        .contains("The allergens of " + stranger + ", Gravy are not on file");
    assertThat(served.get("/lots/P", "Accept-Language", "es").text())
        .contains("no están registrados");
  }

  @Test
  void food_that_nobody_described_never_reads_as_free_of_allergens() throws IOException {
    cooked("S", "Stew");
    assertThat(texts(contents("S").at("/notOnFile"))).containsExactly("Stew");
    assertThat(label("S", "letter-30")).contains("Allergens: NOT ON FILE.");
    lot("S-NEW", "Stew");
    assertThat(texts(contents("S-NEW").at("/notOnFile"))).containsExactly("Stew");
    assertThat(served.get("/lots/S").text()).doesNotContain("has named no allergen");
    food("Stew", "", "", "");
    assertThat(contents("S").at("/notOnFile")).isEmpty();
    assertThat(served.get("/lots/S").text()).contains("has named no allergen");
  }

  /** A part under another name holds what its source holds; what was made of it may hold more. */
  @Test
  void a_divided_lot_needs_no_description_of_its_own() throws IOException {
    food("Barley soup", "wheat", "", "water, barley");
    cooked("B", "Barley soup");
    lot("HALF", "Half pan", "B");
    log("HALF", "cooling");
    assertThat(texts(contents("HALF").at("/allergens"))).containsExactly("wheat");
    assertThat(contents("HALF").at("/notOnFile")).isEmpty();
    assertThat(label("HALF", "letter-10"))
        .contains("Contains: wheat", "Ingredients: water, barley");
    cooked("PIE", "Soup pie", "HALF");
    assertThat(texts(contents("PIE").at("/allergens"))).containsExactly("wheat");
    assertThat(texts(contents("PIE").at("/notOnFile"))).containsExactly("Soup pie");
    lot("PIE-NEW", "Soup pie", "HALF");
    assertThat(texts(contents("PIE-NEW").at("/allergens"))).containsExactly("wheat");
  }

  static List<String> sheets() {
    return Sheet.ALL.stream().map(Sheet::key).toList();
  }

  /**
   * Butter is made of milk and flour of wheat (Minnesota Department of Agriculture, "Food
   * ingredients that may cause allergies").
   */
  @Test
  void ingredients_that_name_an_allergen_that_is_not_declared_are_told_on_each_page() {
    String name = "Leek pie";
    served
        .kitchen()
        .setUp()
        .food(
            Map.of(
                "name", name,
                "category", "soup_or_stew",
                "allergens", "wheat",
                "ingredients", "flour, butter, leeks"));
    served.post("/api/v1/lots", "{'lot':'PIE','food':'Leek pie','category':'soup_or_stew'}");
    for (String page : List.of("/kitchen", "/new-batch?food=Leek+pie", "/lots/PIE")) {
      assertThat(served.get(page).text())
          .as(page)
          .contains("The ingredients name butter; not among the allergens: milk.")
          .contains("Only a short list of words is looked for")
          .doesNotContain("among the allergens: wheat");
    }
    assertThat(served.get("/api/v1/lots/PIE").json().at("/contents/allergens").toString())
        .isEqualTo("[\"wheat\"]");
    assertThat(served.get("/kitchen", "Accept-Language", "es").text())
        .contains("no está entre los alérgenos: leche");
    served
        .kitchen()
        .setUp()
        .food(
            Map.of(
                "name", name,
                "category", "soup_or_stew",
                "allergens", "wheat milk",
                "ingredients", "flour, butter, leeks"));
    assertThat(served.get("/lots/PIE").text()).doesNotContain("The ingredients name");
  }

  /**
   * A description tells of the next batch. What was named while a lot was there is contained in it
   * whatever is taken out of the description afterwards, and 21 U.S.C. 343(w)(1) asks for the
   * allergen of the food that is in the package; which recipe that was nobody can tell here, so the
   * label warns (our own reading, no source).
   */
  @ParameterizedTest
  @MethodSource("sheets")
  void an_allergen_taken_out_stays_on_lots_that_began_before(String sheet) throws IOException {
    served.at("2026-03-01T12:00:00Z");
    food("Walnut date bars", "eggs tree_nuts", "mustard, celery", "walnuts, dates, egg white");
    served.at("2026-03-03T20:00:00Z");
    cooked("W", "Walnut date bars");
    food("Bar crumble", "wheat", "", "bars, flour");
    cooked("C", "Bar crumble", "W");
    assertThat(served.get("/lots/W").text()).doesNotContain("taken out", "today’s description");
    served.at("2026-03-04T10:00:00Z");
    food("Walnut date bars", "tree_nuts", "celery", "walnuts, dates");
    served.at("2026-03-04T12:00:00Z");
    lot("NEXT", "Walnut date bars");
    served.post("/api/v1/lots/NEXT/entries", "{'when':'2026-03-04T11:00:00Z','entry':'cooked'}");

    assertThat(texts(contents("W").at("/allergens"))).containsExactly("eggs", "tree_nuts");
    assertThat(texts(contents("W").at("/otherAllergens"))).containsExactly("celery", "mustard");
    assertThat(contents("W").at("/takenOut").toString())
        .isEqualTo(
            "[{\"food\":\"Walnut date bars\",\"allergens\":[\"eggs\"],"
                + "\"otherAllergens\":[\"mustard\"]}]");
    assertThat(texts(contents("C").at("/allergens"))).containsExactly("eggs", "tree_nuts", "wheat");
    assertThat(texts(contents("NEXT").at("/allergens"))).containsExactly("tree_nuts");
    assertThat(contents("NEXT").at("/takenOut")).isEmpty();

    assertThat(label("W", sheet)).contains("Contains: eggs, tree nuts, celery, mustard");
    assertThat(label("C", sheet)).contains("Contains: eggs, tree nuts, wheat, celery, mustard");
    assertThat(label("NEXT", sheet)).contains("tree nuts, celery").doesNotContain("eggs");
    assertThat(served.get("/lots/W").text())
        .contains("eggs, mustard: named when it was made, taken out of the description of Walnut")
        .containsSubsequence("id=\"labels\"", "those of today’s description", "labels.pdf");
    assertThat(served.get("/lots/C").text()).contains("The allergens of Walnut date bars were");
    assertThat(served.get("/lots/NEXT").text()).doesNotContain("taken out", "today’s description");
    assertThat(served.get("/lots/W", "Accept-Language", "es").text())
        .contains("huevo", "después se quitó de la descripción de Walnut date bars");
  }

  /** Named, left out and named again: it is named, and nothing was taken out. */
  @Test
  void what_is_named_again_is_not_told_as_taken_out() {
    served.at("2026-03-01T12:00:00Z");
    food("Bars", "eggs", "", "");
    served.at("2026-03-03T20:00:00Z");
    cooked("B", "Bars");
    served.at("2026-03-04T10:00:00Z");
    food("Bars", "", "", "");
    food("Stew", "", "", "");
    cooked("S", "Stew");
    assertThat(served.get("/lots/B").text())
        .contains("Contains: eggs", "eggs: named when it was made")
        .doesNotContain("has named no allergen");
    served.at("2026-03-05T10:00:00Z");
    food("Bars", "eggs", "", "");
    assertThat(contents("B").at("/takenOut")).isEmpty();
    assertThat(texts(contents("B").at("/allergens"))).containsExactly("eggs");
    assertThat(texts(contents("S").at("/allergens"))).isEmpty();
  }
}
