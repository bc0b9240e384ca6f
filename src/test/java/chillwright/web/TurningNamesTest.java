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
 * Names of those who got portions that turn the line around them: the explicit formatting
 * characters of Unicode Standard Annex #9, section 2 (their list from memory), and Hebrew letters,
 * which are in isolates (section 2.4) wherever other words stand beside them.
 */
class TurningNamesTest {
  private static final String TURNING = "Ana\u202e\u2067moc\u200f";
  private static final String HEBREW = "\u05de\u05e8\u05e7";

  @TempDir private Path folder;
  private Served served;
  private Visit visit;
  private String taken = "";

  @BeforeEach
  void serve() {
    served = Served.in(folder);
    served.at("2026-03-02T20:00:00Z");
    String rows =
        """
        lot,food,category,when,entry,portions
        H,Hazel bars,bar_cookies_cut_and_wrapped,2026-03-02T08:00:00Z,cooked,96
        """;
    assertThat(served.postCsv("/api/v1/imports", rows).status()).isLessThan(300);
    visit = new Visit(served);
    visit.open("/lots/H");
    for (String name : List.of(TURNING, HEBREW)) {
      Reply reply =
          visit.submit(
              "/lots/H/entries",
              "entry",
              "portions",
              "portions",
              "2",
              "to",
              name,
              "back",
              "/on-hand");
      assertThat(reply.status()).as(reply.text()).isEqualTo(303);
      taken = Visit.target(reply);
    }
  }

  @AfterEach
  void close() {
    served.close();
  }

  private String words(String address) {
    return visit.open(address).text().replaceAll("(?s)<[^>]*>", "");
  }

  @Test
  void they_turn_no_line_of_a_page() {
    String asked = Visit.encoded(TURNING);
    for (String address : List.of("/trace?lot=H", "/lots/H", "/trace?to=" + asked)) {
      assertThat(words(address))
          .as(address)
          .contains("Anamoc")
          .doesNotContain("\u202e", "\u2067", "\u200f");
    }
    String alone = "\u2068" + HEBREW + "\u2069";
    assertThat(taken).startsWith("/on-hand?taken=");
    for (String address :
        List.of("/trace?lot=H", "/lots/H", "/trace?to=" + Visit.encoded(HEBREW), taken)) {
      assertThat(words(address)).as(address).contains(alone);
      assertThat(words(address).replace(alone, "")).as(address).doesNotContain(HEBREW);
    }
  }

  @Test
  void they_turn_no_cell_of_a_table() {
    assertThat(served.get("/trace.csv?lot=H").text())
        .contains(",taken,2,Anamoc,", ",2,Anamoc,", "," + HEBREW + ",")
        .doesNotContain("\u202e", "\u2067", "\u200f", "\u2068");
  }
}
