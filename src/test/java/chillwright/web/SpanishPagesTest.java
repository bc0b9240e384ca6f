package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Who reads Spanish is told findings and dates in Spanish; the Spanish is our own, no source. */
class SpanishPagesTest {
  @TempDir private Path folder;
  private Served served;

  @BeforeEach
  void cook_a_soup_that_cools_too_slowly() {
    served = Served.in(folder);
    served.post("/api/v1/lots", "{'lot':'A','food':'Soup','category':'soup_or_stew'}");
    log("'when':'2026-03-03T07:00-07:00','entry':'cooked','temperature':'180F'");
    log("'when':'2026-03-03T07:05-07:00','entry':'reading','temperature':'130F'");
    log("'when':'2026-03-03T09:10-07:00','entry':'reading','temperature':'90F'");
  }

  private void log(String entry) {
    assertThat(served.post("/api/v1/lots/A/entries", "{" + entry + "}").status()).isEqualTo(201);
  }

  @AfterEach
  void close() {
    served.close();
  }

  private String page(String address, String language) {
    return served.get(address, "Accept-Language", language).text();
  }

  @Test
  void findings_are_told_in_the_language_of_the_visitor() {
    for (String address : new String[] {"/", "/lots/A", "/record"}) {
      assertThat(page(address, "es-MX"))
          .as(address)
          .contains("Aún 90 °F a las 09:10: debía llegar a 70 °F a más tardar a las 09:00.")
          .doesNotContain("Still 90 °F");
      assertThat(page(address, "en"))
          .as(address)
          .contains("Still 90 °F at 09:10: 70 °F was due by 09:00.");
    }
  }

  @Test
  void dates_are_told_in_the_language_of_the_visitor() {
    for (String address :
        new String[] {"/lots/A", "/keeps?category=soup_or_stew&made=2026-03-03"}) {
      assertThat(page(address, "es"))
          .as(address)
          .contains("Use o deseche a más tardar al final del 2026-03-09")
          .doesNotContain("Use or discard by");
    }
    assertThat(page("/keeps", "es")).contains("¿Congelarlo otra vez?");
    assertThat(page("/kitchen", "es")).contains("70 °F (21 °C) en 2 h o menos");
  }

  @Test
  void what_was_done_is_told_in_the_language_of_the_visitor() {
    log("'when':'2026-03-03T10:00-07:00','entry':'action','by':'MK','note':'basura'");
    assertThat(page("/record", "es")).contains("medida tomada a las 10:00 por MK, basura");
  }
}
