package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Who got what. One step back and one step forward is what 21 CFR 1.337 and 1.345 (2024) have food
 * businesses keep: the immediate previous sources and subsequent recipients; figures of the scheme
 * from memory, no limit rests on them. The lots are of our own scenario.
 */
class TraceTest {
  private static final String ROWS =
      """
      lot,food,category,when,entry,how,portions,from,to,note
      B,Oat bars,bar_cookies_cut_and_wrapped,2026-03-02T08:00:00Z,cooked,,96,,,
      B,,,2026-03-02T10:00:00Z,portions,,24,,P,
      P,,,2026-03-02T10:00:00Z,chilled,,24,B,,
      P,,,2026-03-02T11:00:00Z,portions,,5,,Fair on the green,
      P,,,2026-03-02T12:00:00Z,portions,counted,2,,,counted 17
      M,Bar crumble,soup_or_stew,2026-03-02T13:00:00Z,prepared,,30,B X,,
      X,Syrup,stock_or_meat_broth,2026-03-02T07:00:00Z,cooked,,9,,,
      M,,,2026-03-02T14:00:00Z,served,,4,,Table 2,
      C,OAT BARS,bar_cookies_cut_and_wrapped,2026-03-02T09:00:00Z,cooked,,10,,,
      N,Rice,stock_or_meat_broth,2026-03-02T09:00:00Z,cooked,,10,,,
      """;

  @TempDir private Path folder;
  private Served served;

  @BeforeEach
  void serve() {
    served = Served.in(folder);
    served.at("2026-03-02T20:00:00Z");
    Reply stored = served.postCsv("/api/v1/imports", ROWS);
    assertThat(stored.status()).as(stored.text()).isLessThan(300);
  }

  @AfterEach
  void close() {
    served.close();
  }

  private static List<String> codes(JsonNode trace) {
    return StreamSupport.stream(trace.at("/lots").spliterator(), false)
        .map(lot -> lot.at("/lot").asText())
        .toList();
  }

  @Test
  void a_food_is_followed_to_all_that_was_made_of_it() {
    JsonNode trace = served.get("/api/v1/trace?food=oat%20bars").json();
    assertThat(codes(trace)).containsExactly("B", "C", "P", "M");
    JsonNode part = trace.at("/lots/2");
    assertThat(part.at("/handOuts").findValuesAsText("kind")).containsExactly("taken", "counted");
    assertThat(part.at("/handOuts/0/to").asText()).isEqualTo("Fair on the green");
    assertThat(part.at("/handOuts/0/portions").asInt()).isEqualTo(5);
    assertThat(part.at("/portionsLeft").asInt()).isEqualTo(17);
    assertThat(trace.at("/lots/0/handOuts/0/kind").asText()).isEqualTo("other-lot");
    assertThat(trace.at("/lots/3/from").findValuesAsText("food"))
        .containsExactly("Oat bars", "Syrup");
    assertThat(trace.at("/isCut").asBoolean()).isFalse();
  }

  /** Our own design, no source: who recalls food must not miss it for a spelling. */
  @Test
  void a_part_of_a_name_finds_every_food_that_it_stands_in() {
    JsonNode trace = served.get("/api/v1/trace?food=BAR").json();
    assertThat(codes(trace)).containsExactly("B", "C", "P", "M");
    assertThat(texts(trace.at("/matched"))).containsExactly("Bar crumble", "OAT BARS", "Oat bars");
    assertThat(codes(served.get("/api/v1/trace?food=s%C3%BDrup").json())).containsExactly("X", "M");
    assertThat(new Visit(served).open("/trace?food=b%C3%A0r").text())
        .contains("Names found: Bar crumble · OAT BARS · Oat bars");
    assertThat(codes(served.get("/api/v1/trace?food=zzz").json())).isEmpty();
  }

  @Test
  void what_somebody_got_is_listed_over_all_foods() {
    JsonNode trace = served.get("/api/v1/trace?to=FAIR").json();
    assertThat(codes(trace)).containsExactly("P");
    assertThat(trace.at("/lots/0/handOuts").findValuesAsText("portions")).containsExactly("5");
    assertThat(texts(trace.at("/matched"))).containsExactly("Fair on the green");
    assertThat(codes(served.get("/api/v1/trace?to=table").json())).containsExactly("M");
    assertThat(new Visit(served).open("/trace?to=fair").text())
        .contains("What went to: fair", "Names found: Fair on the green", "counted: 5.")
        .doesNotContain("Table 2", "found missing");
    assertThat(served.get("/trace.csv?to=fair").text().lines().toList()).hasSize(2);
  }

  /** "P" is a lot to which portions were divided, and nobody who got some. */
  @Test
  void a_lot_is_nobody_who_got_portions() {
    JsonNode trace = served.get("/api/v1/trace?to=P").json();
    assertThat(codes(trace)).isEmpty();
    assertThat(texts(trace.at("/matched"))).isEmpty();
  }

  /** The last word counts: a correction that names somebody else takes the first one out. */
  @Test
  void who_got_it_by_mistake_got_nothing() {
    Reply stored =
        served.postCsv(
            "/api/v1/imports",
            """
            lot,when,entry,portions,to,id,corrects,note
            C,2026-03-02T12:00:00Z,portions,2,Ana,c-1,,
            C,2026-03-02T12:30:00Z,correction,,Bea,,c-1,wrong name
            """);
    assertThat(stored.status()).as(stored.text()).isLessThan(300);
    assertThat(codes(served.get("/api/v1/trace?to=ana").json())).isEmpty();
    assertThat(codes(served.get("/api/v1/trace?to=bea").json())).containsExactly("C");
  }

  private static List<String> texts(JsonNode list) {
    return StreamSupport.stream(list.spliterator(), false).map(JsonNode::asText).toList();
  }

  @Test
  void a_lot_is_followed_alone() {
    assertThat(codes(served.get("/api/v1/trace?lot=X").json())).containsExactly("X", "M");
    assertThat(served.get("/api/v1/trace?lot=NO").status()).isEqualTo(404);
    assertThat(served.get("/api/v1/trace").status()).isEqualTo(422);
    assertThat(served.get("/api/v1/trace?lot=X&food=Rice").status()).isEqualTo(422);
  }

  @Test
  void the_page_and_its_table_tell_the_same() {
    String page = new Visit(served).open("/trace?food=Oat+bars").text();
    assertThat(page)
        .contains("Fair on the green", "Table 2", "Syrup", "counted, found missing")
        .contains("href=\"/trace.csv?food=Oat+bars\"")
        .doesNotContain("Rice</bdi>");
    String table = served.get("/trace.csv?food=Oat+bars").text();
    assertThat(table.lines().toList()).hasSize(1 + 1 + 1 + 2 + 1 + 2);
    assertThat(table).contains(",taken,5,Fair on the green,");
    assertThat(served.get("/trace?lot=NO").status()).isEqualTo(400);
    assertThat(served.get("/trace.csv").status()).isEqualTo(400);
    assertThat(new Visit(served).open("/record").text()).contains("href=\"/trace\"");
  }

  /** Our own design, no source: a page shows what anybody reads, the answer all. */
  @Test
  void ten_thousand_lots_are_traced() {
    StringBuilder rows = new StringBuilder("lot,food,category,when,entry,portions,from,to\n");
    for (int i = 0; i < 5_000; i++) {
      String when = "2026-03-02T10:%02d:00Z".formatted(i % 60);
      rows.append("T%d,Tray,soup_or_stew,%s,prepared,8,,\n".formatted(i, when));
      rows.append("T%d,,,%s,portions,4,,T%d-1\n".formatted(i, when, i));
      rows.append("T%d-1,,,%s,chilled,4,T%d,\n".formatted(i, when, i));
    }
    Reply stored = served.postCsv("/api/v1/imports", rows.toString());
    assertThat(stored.status()).as(stored.text()).isLessThan(300);
    assertThat(codes(served.get("/api/v1/trace?food=Tray").json())).hasSize(10_000);
    JsonNode recall = served.get("/api/v1/trace?allergen=milk").json();
    assertThat(recall.at("/recall/unsure")).hasSize(10_000 + 6);
    assertThat(new Visit(served).open("/trace?food=Tray").text())
        .contains("Only the first 500 lots are shown");
  }
}
