package chillwright.service.ahead;

import static chillwright.service.ahead.QuestionTest.answer;
import static chillwright.service.ahead.QuestionTest.told;
import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.ahead.Ahead;
import chillwright.core.ahead.Filled;
import chillwright.print.AheadText;
import chillwright.print.Language;
import org.junit.jupiter.api.Test;

/** What a cook at home asks of the questions, and how plainly they answer. */
class HomeQuestionTest {
  /**
   * The same rules, and the federal hotline's 1.5 times as long from frozen: 6 h. The clock of this
   * test stands at noon of 24 November 2026.
   */
  @Test
  void a_start_that_has_passed_is_too_late_and_the_oven_is_told() {
    Ahead late = answer(Question.THAWING, "weight=12lb cooking=4h serve-at=2026-11-24T19:00");
    told(late, "thawing.pull.late");
    told(late, "thawing.soak.late");
    assertThat(told(late, "thawing.roast").filled().get(0).value())
        .isEqualTo(new Filled.Word("2026-11-24 13:00"));
    Ahead none = answer(Question.THAWING, "weight=12lb cooking=4h serve-at=2026-11-24T17:59");
    told(none, "thawing.roast.late");
    told(none, "thawing.none-makes");
    told(answer(Question.THAWING, "weight=12lb serve-at=2026-11-24T19:00"), "thawing.no-cooking");
  }

  /** Arithmetic: 12 lb at 4 lb a day are 72 h. */
  @Test
  void more_than_two_days_are_told_as_days_too() {
    Ahead answer = answer(Question.THAWING, "weight=12lb");
    assertThat(new AheadText(Language.ENGLISH).says(answer.told().get(0)))
        .contains("58 h (2.4 days) to 72 h (3 days)");
  }
}
