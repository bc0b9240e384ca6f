package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.kitchen.LabelsMade;
import chillwright.core.log.LotId;
import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Which labels did not name an allergen. A label that does not declare a major allergen makes the
 * food misbranded (section 403(w)(1) of the Federal Food, Drug, and Cosmetic Act, read as 21 U.S.C.
 * 343(w)(1)), so whoever recalls it must know which labels those are. The kitchen is of our own
 * scenario; that a document is told as made, and not as printed, is our own design, no source.
 */
class RecallLabelsTest {
  private static final String ROWS =
      """
      lot,food,category,when,entry,portions
      H,Hazel bars,bar_cookies_cut_and_wrapped,2026-03-02T08:00:00Z,cooked,96
      H2,Hazel bars,bar_cookies_cut_and_wrapped,2026-03-02T09:00:00Z,cooked,50
      """;

  @TempDir private Path folder;
  private Served served;

  @BeforeEach
  void serve() {
    served = Served.in(folder);
    served.at("2026-03-01T08:00:00Z");
    food("wheat", "");
    served.at("2026-03-02T12:00:10Z");
    Reply stored = served.postCsv("/api/v1/imports", ROWS);
    assertThat(stored.status()).as(stored.text()).isLessThan(300);
  }

  @AfterEach
  void close() {
    served.close();
  }

  private void food(String allergens, String others) {
    served
        .kitchen()
        .setUp()
        .food(
            Map.of(
                "name", "Hazel bars",
                "category", "bar_cookies_cut_and_wrapped",
                "allergens", allergens,
                "otherAllergens", others,
                "ingredients", "oats, flour"));
  }

  private void labels(String lot, String query) {
    Reply made = Visit.labels(served, "/lots/" + lot + "/labels.pdf?sheet=a4-8" + query);
    assertThat(made.status()).as(made.text()).isEqualTo(200);
    assertThat(made.header("Content-Type")).startsWith("application/pdf");
  }

  private JsonNode lot(int index) {
    return served.get("/api/v1/trace?allergen=tree_nuts").json().at("/lots/" + index);
  }

  private String page(String address, String... headers) {
    return served.get(address, headers).text().replaceAll("<[^>]*>", " ").replaceAll("\\s+", " ");
  }

  @Test
  void labels_that_did_not_name_it_are_told_with_their_time_and_number() {
    labels("H", "&count=24");
    served.at("2026-03-03T10:00:00Z");
    food("wheat tree_nuts", "celery");
    served.at("2026-03-03T12:30:00Z");
    labels("H", "&count=10&leaves=yes");
    JsonNode naming = lot(0).at("/naming");
    assertThat(naming.at("/labels").findValuesAsText("labels")).containsExactly("24", "10");
    assertThat(naming.at("/labels").findValuesAsText("named")).containsExactly("false", "true");
    assertThat(naming.at("/labels").findValuesAsText("leaves")).containsExactly("false", "true");
    assertThat(naming.at("/labels/0/madeAt").asText()).isEqualTo("2026-03-02T05:00:10-07:00");
    assertThat(lot(1).at("/naming/labels")).isEmpty();
    assertThat(page("/trace?allergen=tree_nuts"))
        .contains("Labels made that did not name it, with how many: Mon 2 Mar 05:00 (24)")
        .contains("Labels made that name it, with how many: Tue 3 Mar 05:30 (10)");
    assertThat(page("/trace?allergen=tree_nuts", "Accept-Language", "es"))
        .contains("Etiquetas hechas que no lo nombraban");
    assertThat(served.get("/trace.csv?allergen=tree_nuts").text().lines())
        .anyMatch(row -> row.startsWith("H,") && row.contains(",yes,24,10"))
        .anyMatch(row -> row.startsWith("H2,") && row.contains(",yes,,"));
    // Celery came with the nuts, milk never.
    assertThat(served.get("/api/v1/trace?allergen=celery").json().at("/lots/0/naming/labels"))
        .extracting(made -> made.at("/named").asBoolean())
        .containsExactly(false, true);
  }

  @Test
  void the_page_of_a_lot_lists_the_labels_made_of_it_the_newest_first() {
    assertThat(page("/lots/H")).doesNotContain("Labels made of it");
    labels("H", "&count=2");
    served.at("2026-03-03T10:00:00Z");
    food("", "");
    labels("H2", "");
    food("wheat tree_nuts", "celery");
    for (int minute = 1; minute < 4; minute++) {
      served.at("2026-03-03T10:0" + minute + ":00Z");
      labels("H", "&leaves=yes&count=" + minute);
    }
    assertThat(page("/lots/H"))
        .containsSubsequence(
            "Labels made of it",
            "03:03: labels 3, for who buys or gets it; allergens named: tree nuts, wheat, celery",
            "03:02: labels 2,",
            "03:01: labels 1,",
            "Earlier ones (1)",
            "05:00: labels 2, for the own kitchen; allergens named: wheat");
    // What was taken out of the description stays on what was made before.
    assertThat(page("/lots/H2")).contains("labels 1, for the own kitchen; allergens named: wheat");
  }

  @Test
  void the_same_document_within_a_minute_counts_once() {
    labels("H", "&count=2");
    served.at("2026-03-02T12:00:50Z");
    labels("H", "&count=2");
    assertThat(made("H")).hasSize(1);
    labels("H", "&count=3");
    assertThat(made("H")).hasSize(2);
    // In another language it is another document of as many labels.
    labels("H", "&count=3&language=es");
    assertThat(made("H")).hasSize(3);
    served.at("2026-03-02T12:01:00Z");
    labels("H", "&count=2");
    assertThat(made("H")).hasSize(4);
    HttpRequest.Builder head = served.request("/lots/H/labels.pdf?count=7");
    assertThat(served.send(head.method("HEAD", BodyPublishers.noBody())).status()).isEqualTo(200);
    assertThat(served.get("/lots/H/labels.pdf?count=0").status()).isEqualTo(400);
    assertThat(made("H")).hasSize(4);
  }

  @Test
  void portions_whose_labels_do_not_name_it_are_asked_about_and_marked() {
    labels("H", "&count=24");
    Visit visit = new Visit(served);
    visit.open("/lots/H");
    String[] box = {"entry", "portions", "portions", "2", "to", "Olive Tearoom"};
    assertThat(visit.submit("/lots/H/entries", box).status()).isEqualTo(303);
    served.at("2026-03-03T10:00:00Z");
    food("wheat tree_nuts", "celery");
    served.at("2026-03-03T11:00:00Z");
    String[] late = {"entry", "portions", "portions", "3", "to", "Café Río"};
    Reply asked = visit.submit("/lots/H/entries", late);
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text())
        .contains("The labels of H were made Mon 2 Mar 05:00 and do not name: tree nuts, celery.")
        .contains("<a href=\"/lots/H?labels=again&amp;count=1#labels\">To the labels</a>");
    assertThat(visit.open("/lots/H?labels=again&count=1").text())
        .contains("<details id=\"labels\" open>");
    assertThat(visit.confirm("/lots/H/entries", late).status()).isEqualTo(303);
    served.at("2026-03-03T12:00:00Z");
    // What stays in the house has no label to be read.
    String[] gone = {"entry", "portions", "portions", "1", "how", "counted", "note", "count"};
    assertThat(visit.submit("/lots/H/entries", gone).status()).isEqualTo(303);
    labels("H", "&count=9");
    served.at("2026-03-03T13:00:00Z");
    String[] right = {"entry", "portions", "portions", "4", "to", "Fair on the green"};
    assertThat(visit.submit("/lots/H/entries", right).status()).isEqualTo(303);
    assertThat(lot(0).at("/handOuts").findValuesAsText("labelsUnnamed"))
        .containsExactly("true", "true", "false", "false");
    assertThat(page("/trace?allergen=tree_nuts"))
        .containsSubsequence(
            "Whom to tell",
            "Hazel bars (H), portions: 3 – taken with labels that did not name it",
            "Hazel bars (H), portions: 4 ",
            "Hazel bars (H), portions: 2 – taken with labels that did not name it");
    assertThat(served.get("/trace.csv?allergen=tree_nuts").text().lines())
        .anyMatch(row -> row.contains("Café Río") && row.endsWith(",24,9,yes,lot"))
        .anyMatch(row -> row.contains("Fair on the green") && row.endsWith(",24,9,,lot"));
  }

  @Test
  void saying_a_further_allergen_tells_which_labels_lack_it_and_leads_to_its_trace() {
    labels("H", "&count=24&leaves=yes");
    assertThat(taken("H", "Olive Tearoom").status()).isEqualTo(303);
    assertThat(page("/lots/H")).doesNotContain("The last labels made of it");
    Visit visit = new Visit(served);
    visit.open("/kitchen");
    String[] said = {
      "name", "Hazel bars", "category", "bar_cookies_cut_and_wrapped", "allergens", "wheat",
      "allergens", "tree_nuts", "otherAllergens", "", "ingredients", "oats, flour"
    };
    Reply saved = visit.submit("/kitchen/foods", said);
    assertThat(saved.status()).isEqualTo(303);
    String tells = saved.header("Location");
    assertThat(page(tells))
        .contains("Hazel bars names tree nuts now.")
        .contains("whose last labels do not name it: 1.")
        .contains("by name: 1; taken so with nobody named, times: 0. H Trace tree nuts");
    assertThat(served.get(tells).text()).contains("href=\"/trace?allergen=tree_nuts\"");
    assertThat(page("/lots/H"))
        .contains("The last labels made of it do not name: tree nuts. Make new labels")
        .contains("To the labels");
    assertThat(page("/lots/H2")).doesNotContain("The last labels made of it");
    // Said again nothing is new; and of an allergen that it does not name nothing is told.
    assertThat(visit.submit("/kitchen/foods", said).header("Location")).isEqualTo("/kitchen#foods");
    assertThat(page("/kitchen?said=Hazel+bars&added=milk")).doesNotContain("names milk now");
    served.at("2026-03-02T12:05:00Z");
    labels("H", "&count=24&leaves=yes");
    served.at("2026-03-02T12:06:00Z");
    assertThat(page("/lots/H")).doesNotContain("The last labels made of it");
  }

  /** A label in the own freezer tells the buyer nothing. */
  @Test
  void labels_for_the_own_freezer_do_not_answer_for_those_that_left() {
    labels("H", "&count=24&leaves=yes");
    served.at("2026-03-03T10:00:00Z");
    food("wheat tree_nuts", "");
    served.at("2026-03-03T11:00:00Z");
    labels("H", "&count=24");
    assertThat(taken("H", "Olive Tearoom").status()).isEqualTo(422);
    assertThat(lot(0).at("/handOuts/0/labelsUnnamed").asBoolean()).isTrue();
    served.at("2026-03-03T11:30:00Z");
    labels("H", "&count=24&leaves=yes");
    served.at("2026-03-03T12:00:00Z");
    assertThat(taken("H", "Fair").status()).isEqualTo(303);
    assertThat(lot(0).at("/handOuts").findValuesAsText("labelsUnnamed"))
        .containsExactly("true", "false");
  }

  /** Asked first, and then ticked. */
  private Reply taken(String lot, String to) {
    Visit visit = new Visit(served);
    visit.open("/lots/" + lot);
    String[] box = {"entry", "portions", "portions", "2", "to", to};
    Reply reply = visit.submit("/lots/" + lot + "/entries", box);
    if (reply.status() == 422) {
      assertThat(reply.text()).contains("and do not name: tree nuts");
      assertThat(visit.confirm("/lots/" + lot + "/entries", box).status()).isEqualTo(303);
    }
    return reply;
  }

  @Test
  void what_was_labelled_before_it_was_divided_is_asked_about_as_a_part() {
    labels("H", "&count=30&leaves=yes");
    served.at("2026-03-02T13:00:00Z");
    Visit visit = new Visit(served);
    visit.open("/lots/H");
    assertThat(visit.submit("/lots/H/parts", "parts", "1", "portions", "24").status())
        .isEqualTo(303);
    served.at("2026-03-03T10:00:00Z");
    food("wheat tree_nuts", "");
    served.at("2026-03-03T10:30:00Z");
    // Those made of the whole since are not on the part.
    labels("H", "&count=3&leaves=yes");
    served.at("2026-03-03T11:00:00Z");
    assertThat(taken("H-1", "Olive Tearoom").status()).isEqualTo(422);
    assertThat(taken("H", "Fair").status()).isEqualTo(303);
    JsonNode lots = served.get("/api/v1/trace?allergen=tree_nuts").json().at("/lots");
    assertThat(lots.findValues("handOuts"))
        .filteredOn(outs -> outs.toString().contains("Olive Tearoom"))
        .allMatch(outs -> outs.toString().contains("\"labelsUnnamed\":true"))
        .isNotEmpty();
  }

  /** Own convention: boxes that nothing else tells of may bear what was made of the whole. */
  @Test
  void what_was_labelled_as_the_whole_since_counts_for_a_part_without_labels_of_its_own() {
    Visit visit = new Visit(served);
    visit.open("/lots/H");
    assertThat(visit.submit("/lots/H/parts", "parts", "2", "portions", "24").status())
        .isEqualTo(303);
    served.at("2026-03-02T13:00:00Z");
    assertThat(taken("H-2", "Early Fair").status()).isEqualTo(303);
    labels("H", "&count=30&leaves=yes");
    served.at("2026-03-03T10:00:00Z");
    food("wheat tree_nuts", "");
    served.at("2026-03-03T10:30:00Z");
    assertThat(taken("H-1", "Olive Tearoom").status()).isEqualTo(422);
    // With labels of its own it goes by those.
    labels("H-2", "&count=20&leaves=yes");
    served.at("2026-03-03T11:00:00Z");
    assertThat(taken("H-2", "Fair").status()).isEqualTo(303);
  }

  /** Own convention: the box that stands in the whole again bears the label of the part. */
  @Test
  void what_was_labelled_as_a_part_that_was_put_back_is_asked_about_as_the_whole() {
    Visit visit = new Visit(served);
    visit.open("/lots/H");
    assertThat(visit.submit("/lots/H/parts", "parts", "2", "portions", "24").status())
        .isEqualTo(303);
    served.at("2026-03-02T13:00:00Z");
    labels("H-2", "&count=24&leaves=yes");
    served.at("2026-03-02T14:00:00Z");
    assertThat(taken("H", "Early Fair").status()).isEqualTo(303);
    served.at("2026-03-02T15:00:00Z");
    visit.open("/lots/H-2");
    Reply back = visit.submit("/lots/H-2/put-back");
    assertThat(back.status()).as(back.text()).isEqualTo(303);
    served.at("2026-03-03T10:00:00Z");
    food("wheat tree_nuts", "");
    served.at("2026-03-03T11:00:00Z");
    assertThat(taken("H", "Olive Tearoom").status()).isEqualTo(422);
    // H itself had no labels: who got some before the part came back got none of the part's.
    assertThat(lot(0).at("/handOuts").findValuesAsText("labelsUnnamed")).contains("true");
    assertThat(page("/trace?allergen=tree_nuts"))
        .containsPattern("Olive Tearoom[^(]*Hazel bars \\(H\\), portions: 2 – taken with labels")
        .doesNotContainPattern("Early Fair[^(]*\\(H\\), portions: 2 – taken with labels");
    labels("H", "&count=70&leaves=yes");
    served.at("2026-03-03T12:00:00Z");
    assertThat(taken("H", "Fair").status()).isEqualTo(303);
  }

  /** Own convention: wrapped bars that share a box now were labelled as the lots they were. */
  @Test
  void what_was_labelled_as_lots_that_were_put_together_is_asked_about() {
    labels("H", "&count=24&leaves=yes");
    served.at("2026-03-02T13:00:00Z");
    Visit visit = new Visit(served);
    visit.open("/lots/H");
    Reply made =
        visit.submit(
            "/lots/H/combined",
            "from",
            "H2",
            "entry",
            "prepared",
            "food",
            "Hazel bars",
            "category",
            "bar_cookies_cut_and_wrapped");
    assertThat(made.status()).as(made.text()).isEqualTo(303);
    String code = Visit.target(made).replaceFirst("/lots/([^?#]+).*", "$1");
    served.at("2026-03-03T10:00:00Z");
    food("wheat tree_nuts", "");
    served.at("2026-03-03T11:00:00Z");
    assertThat(taken(code, "Olive Tearoom").status()).isEqualTo(422);
    assertThat(page("/trace?allergen=tree_nuts"))
        .contains(
            "Hazel bars (" + code + "), portions: 2 – taken with labels that did not name it");
    labels(code, "&count=24&leaves=yes");
    served.at("2026-03-03T12:00:00Z");
    assertThat(taken(code, "Fair").status()).isEqualTo(303);
  }

  /** A lot may lead back a hundred generations; each is looked at once. */
  @Test
  @Timeout(60)
  void parts_of_parts_without_labels_are_followed_in_time() {
    StringBuilder rows = new StringBuilder("lot,food,category,when,entry,portions,from\n");
    String whole = "H";
    for (int i = 1; i <= 60; i++) {
      String part = "P-" + i;
      String when = "2026-03-02T08:%02d:00Z".formatted(i - 1);
      rows.append("%s,,,%s,cooling,90,%s%n".formatted(part, when, whole));
      whole = part;
    }
    Reply stored = served.postCsv("/api/v1/imports", rows.toString());
    assertThat(stored.status()).as(stored.text()).isLessThan(300);
    assertThat(taken(whole, "Fair").status()).isEqualTo(303);
    food("wheat tree_nuts", "");
    assertThat(served.get("/api/v1/trace?allergen=tree_nuts").status()).isEqualTo(200);
  }

  /** W3C, Fetch Metadata Request Headers: what a browser says of a request nobody made by hand. */
  @ParameterizedTest
  @CsvSource({
    "Sec-Purpose, prefetch, 0",
    "Sec-Fetch-Dest, image, 0",
    "Sec-Fetch-Site, cross-site, 0",
    "Sec-Fetch-Dest, document, 1",
  })
  void only_what_somebody_opened_is_on_record(String header, String says, int kept) {
    assertThat(served.get("/lots/H/labels.pdf?count=2", header, says).status()).isEqualTo(200);
    assertThat(made("H")).hasSize(kept);
  }

  private List<LabelsMade> made(String lot) {
    return served.kitchen().labels().of(new LotId(lot));
  }

  @Test
  void the_newest_of_very_many_are_kept_with_hostile_words() {
    food("wheat", "\u202e<b>'); DROP TABLE lot; " + "x".repeat(400));
    for (int i = 0; i < LabelsMade.MOST + 3; i++) {
      served
          .kitchen()
          .labels()
          .note(
              Map.of(
                  new LotId("H"),
                  new LabelsMade(
                      served.kitchen().now().plusSeconds(i),
                      i + 1,
                      false,
                      List.of(),
                      served.kitchen().setUp().food("Hazel bars").orElseThrow().otherAllergens())));
    }
    assertThat(made("H")).hasSize(LabelsMade.MOST);
    assertThat(made("H").get(0).labels()).isEqualTo(4);
    food("tree_nuts", "");
    assertThat(page("/trace?allergen=tree_nuts")).contains("Only the newest 300 documents");
    assertThat(served.get("/lots/H").text()).doesNotContain("<b>'").contains("Only the newest 300");
  }
}
