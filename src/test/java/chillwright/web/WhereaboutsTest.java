package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Food that is reheated, held hot, set out or used by the clock left the refrigerator: common
 * practice, no source.
 */
class WhereaboutsTest {
  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void open() {
    served = Served.in(folder);
    served.cookSoup("S-1");
    visit = new Visit(served);
    visit.open("/kitchen");
    String[] walkIn = {"name", "Walk-in", "kind", "refrigerator"};
    assertThat(visit.submit("/kitchen/places", walkIn).status()).isEqualTo(303);
    log("'when':'2026-03-03T10:05:00-07:00','entry':'chilled','place':'Walk-in'");
  }

  @AfterEach
  void close() {
    served.close();
  }

  private void log(String entry) {
    var logged = served.post("/api/v1/lots/S-1/entries", "{" + entry + "}");
    assertThat(logged.status()).as(logged.text()).isEqualTo(201);
  }

  private String place() {
    return served.get("/api/v1/lots/S-1").json().at("/place").asText("");
  }

  @ParameterizedTest
  @CsvSource({
    "reheating, '', ''",
    "hot-holding, '', ''",
    "set-out, '', ''",
    "time-control, '', ''",
    "reading, '', Walk-in",
    "cooling, '', Walk-in",
    "reheating, Stove, Stove",
  })
  void what_is_heated_or_set_out_stands_in_no_refrigerator(
      String word, String given, String place) {
    served.at("2026-03-03T17:10:00Z");
    String at = given.isEmpty() ? "" : ",'place':'" + given + "'";
    String read = word.equals("reading") ? ",'temperature':'150F'" : "";
    log("'when':'2026-03-03T10:08:00-07:00','entry':'" + word + "'" + at + read);
    assertThat(place()).isEqualTo(place.equals("''") ? "" : place);
    String[] warm = {"entry", "reading", "place", "Walk-in", "temperature", "46", "scale", "F"};
    assertThat(visit.submit("/day/readings", warm).status()).isEqualTo(303);
    boolean isInside = visit.open("/day").text().contains("Inside now, read them:");
    assertThat(isInside).isEqualTo(place.equals("Walk-in"));
  }

  @Test
  void it_is_known_again_once_a_row_names_one() {
    served.at("2026-03-03T17:20:00Z");
    log("'when':'2026-03-03T10:08:00-07:00','entry':'hot-holding','temperature':'150F'");
    log("'when':'2026-03-03T10:09:00-07:00','entry':'reading','temperature':'150F'");
    assertThat(place()).isEmpty();
    log("'when':'2026-03-03T10:12:00-07:00','entry':'chilled','place':'Walk-in'");
    assertThat(place()).isEqualTo("Walk-in");
  }
}
