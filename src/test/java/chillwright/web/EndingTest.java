package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What became of a lot of which nothing is left. A record kept for tracing has to tell what was
 * handed on from what was made into other food (21 CFR 1.337 and 1.345, from memory), so a list may
 * not say "served" of what nobody was served.
 */
class EndingTest {
  private static final String ROWS =
      """
      lot,food,category,when,entry,how,portions,from,to
      D,Bars,bar_cookies_cut_and_wrapped,2026-03-02T08:00:00Z,cooked,,8,,
      D,,,2026-03-02T10:00:00Z,portions,,8,,D-1
      D-1,,,2026-03-02T10:00:00Z,chilled,,8,D,
      B,Bars,bar_cookies_cut_and_wrapped,2026-03-02T08:00:00Z,cooked,,10,,
      B,,,2026-03-02T10:00:00Z,portions,,4,,B-1
      B-1,,,2026-03-02T10:00:00Z,chilled,,4,B,
      B-1,,,2026-03-02T10:30:00Z,portions,,4,,B
      C,Broth,stock_or_meat_broth,2026-03-02T08:00:00Z,cooked,,6,,
      C,,,2026-03-02T11:00:00Z,portions,,6,,P
      P,Pot,soup_or_stew,2026-03-02T11:00:00Z,cooked,,6,C,
      M,Rolls,soup_or_stew,2026-03-02T08:00:00Z,cooked,,3,,
      M,,,2026-03-02T12:00:00Z,portions,counted,3,,
      T,Pies,soup_or_stew,2026-03-02T08:00:00Z,cooked,,3,,
      T,,,2026-03-02T12:00:00Z,portions,,3,,Ana
      S,Stew,soup_or_stew,2026-03-02T08:00:00Z,cooked,,3,,
      S,,,2026-03-02T12:00:00Z,served,,3,,
      X,Rice,soup_or_stew,2026-03-02T08:00:00Z,cooked,,3,,
      X,,,2026-03-02T12:00:00Z,discarded,,,,
      """;

  @TempDir private Path folder;
  private Served served;

  @BeforeEach
  void serve() {
    served = Served.in(folder);
    served.at("2026-03-02T13:00:00Z");
    Reply stored = served.postCsv("/api/v1/imports", ROWS);
    assertThat(stored.status()).as(stored.text()).isLessThan(300);
  }

  @AfterEach
  void close() {
    served.close();
  }

  private String phase(String lot) {
    return served.get("/api/v1/lots/" + lot).json().at("/phase").asText();
  }

  private List<String> listed(String phase) {
    return served.get("/api/v1/lots?phase=" + phase).json().at("/items").findValuesAsText("lot");
  }

  @Test
  void only_what_was_served_is_called_so() {
    assertThat(listed("served")).containsExactly("S");
    assertThat(listed("discarded")).containsExactly("X");
    assertThat(listed("used-up")).containsExactlyInAnyOrder("D", "C", "T");
    assertThat(listed("put-back")).containsExactly("B-1");
    assertThat(listed("counted-out")).containsExactly("M");
    assertThat(List.of(phase("D"), phase("B-1"), phase("M"), phase("S"), phase("B")))
        .containsExactly("used-up", "put-back", "counted-out", "served", "cooked");
  }

  @Test
  void the_list_of_all_lots_tells_what_became_of_each() {
    String page = new Visit(served).open("/lots").text();
    assertThat(page)
        .contains("divided, none left", "put into P, none left", "put back into B, none left")
        .contains("counted, none left", "all taken, none left", "served, 0 portions left")
        .contains("discarded, 0 portions left");
  }

  @Test
  void so_does_its_table() {
    List<String> rows = served.get("/lots.csv").text().lines().toList();
    assertThat(rows.get(0)).startsWith("lot,food,category,phase,place,").contains(",ended,");
    assertThat(ended(rows, "D")).isEqualTo("divided D-1");
    assertThat(ended(rows, "C")).isEqualTo("combined P");
    assertThat(ended(rows, "B-1")).isEqualTo("put-back B");
    assertThat(ended(rows, "M")).isEqualTo("counted-out");
    assertThat(ended(rows, "T")).isEqualTo("taken Ana");
    assertThat(ended(rows, "S")).isEqualTo("served");
    assertThat(ended(rows, "B")).isEmpty();
  }

  private static String ended(List<String> rows, String lot) {
    int column = List.of(rows.get(0).split(",", -1)).indexOf("ended");
    return rows.stream()
        .filter(row -> row.startsWith(lot + ","))
        .findFirst()
        .orElseThrow()
        .split(",", -1)[column];
  }
}
