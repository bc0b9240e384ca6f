package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Portions taken in passing, from the list of what is on hand. Our own design, no source: who
 * touches a button must see what it did, and who sells must be able to say for whom.
 */
class TakenTest {
  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void open() {
    served = Served.in(folder);
    served.at("2026-03-03T20:00:00Z");
    Reply stored =
        served.postCsv(
            "/api/v1/imports",
            """
            lot,food,category,when,entry,portions,from,to,place
            B-1,Oat bars,bar_cookies_cut_and_wrapped,2026-03-02T08:00:00Z,cooked,20,,,Shelf
            B-1,,,2026-03-02T10:00:00Z,portions,4,,B-2,
            B-2,,,2026-03-02T10:00:00Z,chilled,4,B-1,,
            """);
    assertThat(stored.status()).as(stored.text()).isLessThan(300);
    visit = new Visit(served);
    visit.open("/on-hand");
  }

  @AfterEach
  void close() {
    served.close();
  }

  private String take(String portions, String to) {
    String[] form = {
      "entry", "portions", "portions", portions, "to", to, "back", "/on-hand?place=Shelf"
    };
    Reply taken = visit.submit("/lots/B-1/entries", form);
    assertThat(taken.status()).as(taken.text()).isEqualTo(303);
    return Visit.target(taken);
  }

  @Test
  void the_list_tells_what_was_taken_for_whom_and_what_is_left() {
    String receipt = visit.open(take("3", "Fair & Co")).text();
    assertThat(receipt)
        .contains("Taken of Oat bars for Fair &amp; Co, portions: 3. Left there: 13.")
        .containsPattern("role=\"status\".*href=\"/lots/B-1\"")
        .contains("/lots/B-1/correct?entry=");
    Matcher wrong = Pattern.compile("/lots/B-1/correct\\?entry=[^\"]+").matcher(receipt);
    assertThat(wrong.find()).isTrue();
    // What was told of them is at hand; of a box that is gone no temperature tells anything.
    assertThat(visit.open(wrong.group()).text())
        .containsSubsequence("name=\"portions\"", "name=\"to\"", "<summary>", "id=\"temperature\"");
    assertThat(visit.open(take("2", "")).text())
        .contains("Taken of Oat bars, portions: 2. Left there: 11.");
    assertThat(visit.open("/on-hand").text()).doesNotContain("Taken of");
  }

  /** The fields stand before what is folded away, and what has no count says nothing. */
  @Test
  void portions_are_taken_on_the_page_of_a_lot_with_their_number() {
    String page = visit.open("/lots/B-2?entry=portions").text();
    assertThat(page).containsSubsequence("name=\"portions\"", "name=\"to\"", "<summary>More");
    Reply mute = visit.submit("/lots/B-2/entries", "entry", "portions", "to", "Fair");
    assertThat(mute.status()).isEqualTo(422);
    assertThat(mute.text()).contains("Give how many portions were taken");
    Reply taken =
        visit.submit("/lots/B-2/entries", "entry", "portions", "portions", "1", "to", "Fair");
    assertThat(taken.status()).isEqualTo(303);
  }

  @Test
  void nothing_is_told_that_the_record_does_not_have() {
    take("3", "Fair");
    for (String made : new String[] {"B-1+none", "NO+none", "B-1", "%3Cb%3E+x", "B-1+x+y"}) {
      Reply page = visit.open("/on-hand?taken=" + made);
      assertThat(page.status()).as(made).isEqualTo(200);
      assertThat(page.text()).as(made).doesNotContain("Taken of");
    }
  }

  /** A lot that portions were divided into is nobody; a cook who names nobody has no field more. */
  @Test
  void for_whom_is_asked_openly_once_somebody_was_named() {
    String folded = "<details><summary>To whom</summary>";
    assertThat(visit.open("/on-hand").text()).contains(folded).doesNotContain("id=\"recipients\"");
    take("1", "");
    assertThat(visit.open("/on-hand").text()).contains(folded);
    take("1", "Fair");
    assertThat(visit.open("/on-hand").text())
        .doesNotContain(folded, "<option value=\"B-2\">")
        .contains("aria-label=\"To whom\"", "<option value=\"Fair\">");
  }
}
