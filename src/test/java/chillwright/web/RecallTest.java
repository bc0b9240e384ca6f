package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A recall for an allergen that was forgotten. Food that contains a major allergen which its label
 * does not declare is misbranded (section 403(w)(1) of the Federal Food, Drug, and Cosmetic Act,
 * read as 21 U.S.C. 343(w)(1)), a part of a lot as well as what is made of it. What a firm that
 * recalls has to tell, 21 CFR 7.46(a) from memory: the product, how much was made and is left, and
 * to whom it went. The kitchen is of our own scenario.
 */
class RecallTest {
  private static final String ROWS =
      """
      lot,food,category,when,entry,portions,from,to
      H,Hazel bars,soup_or_stew,2026-03-02T08:00:00Z,cooked,96,,
      H,,,2026-03-02T10:00:00Z,portions,24,,H-1
      H-1,Small hazel bars,,2026-03-02T10:00:00Z,chilled,24,H,
      H-1,,,2026-03-02T11:00:00Z,portions,5,,Fair on the green
      H-1,,,2026-03-03T11:00:00Z,portions,6,,Café Río
      X,Syrup,soup_or_stew,2026-03-02T07:00:00Z,cooked,9,,
      M,Bar crumble,soup_or_stew,2026-03-02T13:00:00Z,prepared,30,H X,
      M,,,2026-03-02T14:00:00Z,served,4,,Table 2
      R,Plain rice,soup_or_stew,2026-03-02T09:00:00Z,cooked,10,,
      G,Granola,soup_or_stew,2026-03-02T09:30:00Z,cooked,10,,
      A,Almond loaf,soup_or_stew,2026-03-02T09:40:00Z,cooked,10,,
      H2,Hazel bars,soup_or_stew,2026-03-04T08:00:00Z,cooked,50,,
      """;

  @TempDir private Path folder;
  private Served served;

  @BeforeEach
  void serve() {
    served = Served.in(folder);
    served.at("2026-03-01T08:00:00Z");
    food("Hazel bars", "wheat", "", "oats, flour");
    food("Bar crumble", "wheat", "celery", "bars, syrup");
    food("Plain rice", "", "", "rice, coconut milk");
    food("Granola", "tree_nuts", "", "oats");
    food("Almond loaf", "", "", "Almonds, eggs");
    served.at("2026-03-03T10:00:00Z");
    food("Hazel bars", "wheat tree_nuts", "", "oats, flour, hazelnuts");
    food("Granola", "", "", "oats");
    served.at("2026-03-04T20:00:00Z");
    Reply stored = served.postCsv("/api/v1/imports", ROWS);
    assertThat(stored.status()).as(stored.text()).isLessThan(300);
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
                "name", name,
                "category", "soup_or_stew",
                "allergens", allergens,
                "otherAllergens", others,
                "ingredients", ingredients));
  }

  private JsonNode recall(String allergen) {
    return served.get("/api/v1/trace?allergen=" + allergen).json();
  }

  private static List<String> codes(JsonNode lots) {
    return StreamSupport.stream(lots.spliterator(), false)
        .map(lot -> lot.at("/lot").asText())
        .toList();
  }

  private static JsonNode lot(JsonNode lots, String code) {
    return lots.get(codes(lots).indexOf(code));
  }

  @Test
  void every_lot_that_bears_it_is_found_with_its_parts_and_what_was_made_of_it() {
    JsonNode found = recall("tree_nuts");
    assertThat(codes(found.at("/lots"))).containsExactly("H", "G", "H-1", "M", "H2");
    JsonNode part = lot(found.at("/lots"), "H-1");
    assertThat(part.at("/portionsLeft").asInt()).isEqualTo(13);
    assertThat(part.at("/handOuts").findValuesAsText("to"))
        .containsExactly("Fair on the green", "Café Río");
    assertThat(part.at("/naming/foods")).hasSize(1);
    assertThat(part.at("/naming/foods/0").asText()).isEqualTo("Hazel bars");
    assertThat(found.at("/isCut").asBoolean()).isFalse();
  }

  @Test
  void what_was_made_or_left_before_it_was_named_is_told() {
    JsonNode lots = recall("tree_nuts").at("/lots");
    assertThat(lot(lots, "H").at("/naming/namedFrom").asText())
        .isEqualTo("2026-03-03T03:00:00-07:00");
    assertThat(lot(lots, "H").at("/naming/beganBefore").asBoolean()).isTrue();
    assertThat(lot(lots, "H").at("/naming/isCertain").asBoolean()).isTrue();
    assertThat(lot(lots, "H2").at("/naming/beganBefore").asBoolean()).isFalse();
    assertThat(lot(lots, "H-1").at("/handOuts").findValuesAsText("beforeNaming"))
        .containsExactly("true", "false");
  }

  @Test
  void lots_that_may_bear_it_stand_apart_with_the_reason() {
    JsonNode found = recall("tree_nuts").at("/recall");
    assertThat(codes(found.at("/unsure"))).containsExactly("X", "A");
    assertThat(found.at("/foods").findValuesAsText("food"))
        .containsExactly("Hazel bars", "Granola", "Almond loaf", "Syrup");
    assertThat(found.at("/foods").findValuesAsText("why"))
        .containsExactly("named", "named-before", "ingredients", "not-on-file");
    assertThat(found.at("/foods/1/since").asText()).isEqualTo("2026-03-03T03:00:00-07:00");
    assertThat(found.at("/foods/2/word").asText()).isEqualTo("almonds");
  }

  /**
   * Its label names the allergen still (as {@link ContentsTest} has it), so the lot bears it; our
   * own reading, no source.
   */
  @Test
  void a_lot_from_before_it_was_taken_out_bears_it_and_so_does_what_is_made_of_it() {
    String more =
        """
        lot,food,category,when,entry,portions,from,to
        G2,Granola,soup_or_stew,2026-03-03T12:00:00Z,cooked,10,,
        R2,Plain rice,soup_or_stew,2026-03-04T09:00:00Z,prepared,10,G,
        R3,Plain rice,soup_or_stew,2026-03-04T10:00:00Z,prepared,10,G2,
        """;
    assertThat(served.postCsv("/api/v1/imports", more).status()).isLessThan(300);
    JsonNode found = recall("tree_nuts");
    assertThat(codes(found.at("/lots"))).containsExactly("H", "G", "H-1", "M", "H2", "R2");
    assertThat(codes(found.at("/recall/unsure"))).containsExactly("X", "A", "G2", "R3");
    JsonNode naming = lot(found.at("/lots"), "R2").at("/naming");
    assertThat(naming.at("/foods/0").asText()).isEqualTo("Granola");
    assertThat(naming.at("/namedFrom").asText()).isEqualTo("2026-03-01T01:00:00-07:00");
    assertThat(naming.at("/beganBefore").asBoolean()).isFalse();
    assertThat(served.get("/lots/R2").text()).contains("tree nuts: named when it was made");
    assertThat(served.get("/lots/R3").text()).doesNotContain("tree nuts: named when it was made");
    String page = served.get("/trace?allergen=tree_nuts").text();
    String says = "Granola: not named since Tue 3 Mar 03:00, but named before.";
    assertThat(page).containsSubsequence("Lots that bear it", says, "Lots that may bear it", says);
  }

  @ParameterizedTest
  @ValueSource(strings = {"Tree%20Nuts", "tree-nuts", "WALNUT", "nuez", "almonds"})
  void one_of_the_law_is_found_by_whatever_word_tells_of_it(String word) {
    JsonNode found = recall(word);
    assertThat(codes(found.at("/lots"))).containsExactly("H", "G", "H-1", "M", "H2");
    assertThat(codes(found.at("/recall/unsure"))).containsExactly("X", "A");
  }

  @Test
  void food_on_file_of_which_nothing_is_said_may_bear_it() {
    served.at("2026-03-05T10:00:00Z");
    food("Plain rice", "", "", "");
    // The crumble is made of the syrup, of which nothing is on file.
    assertThat(codes(recall("milk").at("/recall/unsure"))).containsExactly("X", "R", "M");
  }

  @Test
  void one_in_the_kitchens_own_words_is_found_by_any_spelling() {
    JsonNode found = recall("C%C3%89LERY");
    assertThat(codes(found.at("/lots"))).containsExactly("M");
    assertThat(codes(found.at("/recall/unsure"))).containsExactly("X");
  }

  /** Our own reading, no source: what was named, left out and named again is certain no more. */
  @Test
  void labels_from_before_are_certain_only_where_the_record_shows_it() {
    served.at("2026-03-05T10:00:00Z");
    food("Granola", "tree_nuts", "", "oats");
    JsonNode lots = recall("tree_nuts").at("/lots");
    assertThat(lot(lots, "G").at("/naming/isCertain").asBoolean()).isFalse();
    assertThat(lot(lots, "G").at("/naming/namedFrom").asText())
        .isEqualTo("2026-03-05T03:00:00-07:00");
    assertThat(lot(lots, "H").at("/naming/isCertain").asBoolean()).isTrue();
  }

  @Test
  void the_page_and_its_table_tell_the_same() {
    String page = new Visit(served).open("/trace?allergen=tree_nuts").text();
    assertThat(page)
        .contains("Recall: tree nuts", "Lots that bear it", "Lots that may bear it")
        .contains("Labels made before", "before labels named it", "Fair on the green")
        .contains("the ingredients say “almonds”", "Nothing is on file of: Syrup")
        .contains("<option value=\"celery\"", "href=\"/trace.csv?allergen=tree_nuts\"")
        .doesNotContain("Plain rice</bdi>");
    List<String> table = served.get("/trace.csv?allergen=tree_nuts").text().lines().toList();
    assertThat(table.get(0))
        .contains(",note,bears,by_foods,named_from,before_naming")
        .endsWith(",labels_without,labels_naming,got_unnamed,row");
    assertThat(table).hasSize(1 + 1 + 2 + 1 + 1 + 1 + 1 + 1 + 3);
    assertThat(table)
        .filteredOn(row -> row.contains("Fair on the green") && row.endsWith(",lot"))
        .singleElement()
        .asString()
        .endsWith(",yes,Hazel bars,2026-03-03T03:00-07:00,yes,,,,lot");
    assertThat(table)
        .filteredOn(row -> row.startsWith("X,"))
        .singleElement()
        .asString()
        .endsWith(",unsure,Syrup,,,,,,lot");
    Reply both = served.get("/trace?allergen=tree_nuts&food=Rice&lot=");
    assertThat(both.status()).isEqualTo(400);
    assertThat(both.text())
        .contains("Nothing was traced", "Filled in are: Food: Rice; Recall: tree_nuts")
        .containsPattern("name=\"food\"[^>]*value=\"Rice\" aria-invalid=\"true\"")
        .contains("<select id=\"allergen\" name=\"allergen\" aria-invalid=\"true\">")
        .doesNotContainPattern("name=\"lot\"[^>]*aria-invalid");
    assertThat(served.get("/api/v1/trace?allergen=tree_nuts&food=Rice").status()).isEqualTo(422);
  }

  /** 21 CFR 7.49(a), from memory: a recall is told to each of those who got some. */
  @Test
  void one_list_names_everybody_to_be_told_once_with_what_and_when() {
    String more =
        """
        lot,food,category,when,entry,portions,to,note
        X,,,2026-03-03T08:00:00Z,portions,2,Olive Tearoom,
        H2,,,2026-03-04T12:00:00Z,portions,7,cafe rio,
        H2,,,2026-03-04T13:00:00Z,portions,3,,
        H2,,,2026-03-04T13:30:00Z,served,,,
        A,,,2026-03-04T14:00:00Z,discarded,,,burnt
        """;
    Reply stored = served.postCsv("/api/v1/imports", more);
    assertThat(stored.status()).as(stored.text()).isLessThan(300);
    String page = served.get("/trace?allergen=tree_nuts").text();
    String list = page.substring(page.indexOf("Whom to tell"), page.indexOf("Lots that bear it"));
    assertThat(list.replaceAll("<[^>]*>", " ").replaceAll("\\s+", " "))
        .containsSubsequence(
            "Café Río",
            "04:00: Small hazel bars (H-1), portions: 6",
            "05:00: Hazel bars (H2), portions: 7",
            "Fair on the green",
            "Small hazel bars (H-1), portions: 5 – before labels named it",
            "Table 2",
            "Bar crumble (M), portions: 4",
            "Olive Tearoom",
            "Syrup (X), portions: 2 – may bear it",
            "Nobody named: portions 3, entries 2; of these without a count: 1",
            "Hazel bars (H2), portions: 3")
        .doesNotContain("cafe rio", "Almond loaf");
    assertThat(served.get("/trace.csv?allergen=tree_nuts").text().lines())
        .contains(
            "H-1 H2,Small hazel bars; Hazel bars,,,,,,,2026-03-04T05:00-07:00,,13,Café Río,,,"
                + "yes,,,,,,,tell",
            "H-1,Small hazel bars,,,,,,,2026-03-02T04:00-07:00,,5,Fair on the green,,,"
                + "yes,,,yes,,,,tell",
            "X,Syrup,,,,,,,2026-03-03T01:00-07:00,,2,Olive Tearoom,,,unsure,,,,,,,tell",
            "H2,Hazel bars,,,,,,,2026-03-04T06:30-07:00,,3,,,,yes,,,,,,,nobody-named")
        .noneMatch(row -> row.endsWith(",cut"));
    assertThat(served.get("/trace?lot=R").text()).doesNotContain("Whom to tell");
    assertThat(served.get("/trace?to=Table+2").text()).doesNotContain("Whom to tell");
    assertThat(served.get("/trace?lot=H").text())
        .containsSubsequence("Whom to tell", "Fair on the green", "portions: 5");
    assertThat(served.get("/trace?lot=H", "Accept-Language", "es").text())
        .contains("A quién avisar");
  }
}
