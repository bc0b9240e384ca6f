package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * One place however it is typed. The Unicode Standard, General Punctuation: U+2011 is a
 * non-breaking hyphen, U+2013 an en dash.
 */
class PlaceSpellingTest {
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

  private void name() {
    served.kitchen().setUp().place(Map.of("name", "Walk-in 2", "kind", "refrigerator"));
  }

  private static String log(String place) {
    return "lot,food,category,when,entry,place,temperature\n"
        + "S-1,Leek soup,soup_or_stew,2026-03-03T08:00:00-07:00,chilled,"
        + place
        + ",\n"
        + ",,,2026-03-03T08:30:00-07:00,reading,"
        + place
        + ",39F\n";
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"Walk-in 2", "walk-in 2", "WALK\u2011IN 2", "Walk\u2013in 2", "Walk-in  2"})
  void pages_requests_and_files_find_the_place(String typed) {
    name();
    Visit visit = new Visit(served);
    visit.open("/day");
    Reply read =
        visit.submit(
            "/day/readings", "entry", "reading", "place", typed, "temperature", "38", "scale", "F");
    assertThat(read.status()).as(read.text()).isEqualTo(303);
    Reply posted =
        served.post(
            "/api/v1/readings",
            "{'place':'"
                + typed
                + "','when':'2026-03-03T17:10:00Z','entry':'reading',"
                + "'temperature':'40F'}");
    assertThat(posted.status()).as(posted.text()).isEqualTo(201);
    assertThat(served.postCsv("/api/v1/imports", log(typed)).status()).isEqualTo(200);
    String asked = "?place=" + Visit.encoded(typed);
    assertThat(served.get("/api/v1/readings" + asked).json().at("/items")).hasSize(3);
    assertThat(served.get("/api/v1/readings").json().at("/items").findValuesAsText("place"))
        .containsOnly("Walk-in 2");
    assertThat(served.get("/api/v1/lots" + asked).json().at("/items")).hasSize(1);
    assertThat(visit.open("/on-hand" + asked).text()).contains("Leek soup");
  }

  /** A file that was imported before the kitchen named its places can be imported again. */
  @Test
  void a_place_named_later_makes_no_row_a_changed_one() {
    assertThat(served.postCsv("/api/v1/imports", log("walk\u2011in 2")).status()).isEqualTo(200);
    name();
    Reply again = served.postCsv("/api/v1/imports", log("walk\u2011in 2"));
    assertThat(again.status()).as(again.text()).isEqualTo(200);
    assertThat(served.get("/api/v1/readings").json().at("/items")).hasSize(1);
  }

  @Test
  void another_name_is_another_place() {
    name();
    served.postCsv("/api/v1/imports", log("Walk-in 3"));
    assertThat(served.get("/api/v1/readings?place=Walk-in+2").json().at("/items")).isEmpty();
  }
}
