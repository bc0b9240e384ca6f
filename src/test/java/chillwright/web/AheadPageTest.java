package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.service.ahead.Question;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The questions before cooking on a page; their answers are checked where they are worked out. */
class AheadPageTest {
  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void serve() {
    served = Served.in(folder);
    visit = new Visit(served);
  }

  @AfterEach
  void close() {
    served.close();
  }

  @ParameterizedTest
  @EnumSource
  void the_example_of_each_question_is_answered(Question question) {
    String asked = question.example().replace(" ", "&");
    for (String language : new String[] {"en", "es"}) {
      visit.open("/ahead");
      visit.submit("/ways", "language", language, "back", "/");
      Served.Reply reply = visit.open("/ahead?question=" + question.key() + "&" + asked);
      assertThat(reply.status()).as(reply.text()).isEqualTo(200);
      assertThat(reply.text()).contains("id=\"answer\"");
    }
  }

  /** Cold water, 30 minutes a pound: USDA FSIS, The Big Thaw; 12 lb are six hours. */
  @Test
  void a_bird_still_frozen_in_the_morning_is_answered_without_set_up() {
    String page = visit.open("/ahead?question=thawing&weight=12lb&cooking=4h&serve-in=9h").text();
    assertThat(page).contains("6 h");
  }

  @Test
  void what_is_wrong_is_told_and_stays_in_the_form() {
    Served.Reply reply = visit.open("/ahead?question=thawing&weight=%3Cb%3E&serve-in=soon");
    assertThat(reply.status()).isEqualTo(422);
    assertThat(reply.text())
        .contains("role=\"alert\"")
        .contains("value=\"soon\"")
        .doesNotContain("<b>");
    assertThat(visit.open("/ahead?question=nothing").status()).isEqualTo(200);
  }

  /** RFC 3986, 3.5: the part after # is kept by the browser and names the place to show. */
  @Test
  void an_answer_is_in_sight_where_one_asked() {
    assertThat(visit.open("/ahead").text()).contains("action=\"/ahead#answer\"");
    String keeps = visit.open("/keeps?left=yes&hours=3").text();
    assertThat(keeps)
        .contains("action=\"/keeps#answer\"", "action=\"/keeps#left-out\"", "id=\"left-out\"");
    assertThat(visit.open("/ahead?question=pans&volume=20L&depth=5cm").text())
        .contains("surroundings=38F&amp;depth=5cm#answer");
  }
}
