package chillwright.service.ahead;

import static chillwright.service.ahead.QuestionTest.amount;
import static chillwright.service.ahead.QuestionTest.answer;
import static chillwright.service.ahead.QuestionTest.told;
import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.ahead.Ahead;
import chillwright.core.ahead.Filled;
import chillwright.core.ahead.Told;
import chillwright.print.AheadText;
import chillwright.print.Language;
import java.util.List;
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

  /**
   * Published trials with chili (J. Child Nutr. Manag. 29(1) 2005): 2 in deep in a refrigerator
   * missed both limits of 3-501.14(A).
   */
  @Test
  void a_depth_that_misses_the_limits_is_told_what_would_make_them() {
    Ahead missed = answer(Question.COOLING, "food=chili surroundings=38F depth=2in");
    assertThat(missed.told().get(0).key()).isEqualTo("cooling.misses");
    List<Told> ways =
        missed.told().stream().filter(told -> told.key().startsWith("cooling.way.")).toList();
    assertThat(ways).hasSize(3);
    Ahead thin = answer(Question.COOLING, "food=chili surroundings=38F depth=5mm");
    assertThat(thin.told().get(0).key()).isEqualTo("cooling.makes");
    assertThat(thin.told()).noneMatch(told -> told.key().startsWith("cooling.way."));
  }

  /** By definition: what is told of another way is what asking for that way tells. */
  @Test
  void another_way_is_told_as_if_it_had_been_asked_for() {
    Ahead missed = answer(Question.COOLING, "food=chili surroundings=38F depth=4in");
    Told fan = missed.told().stream().filter(t -> t.key().contains("way.sh")).findFirst().get();
    Ahead moved = answer(Question.COOLING, "food=chili surroundings=38F surface=moving_air");
    assertThat(amount(fan, "deepest")).isEqualTo(amount(told(moved, "cooling.deepest"), "surely"));
  }

  /** The same trials: the pan that is counted misses the limits where its air is still. */
  @Test
  void pans_of_two_inches_are_told_to_miss_the_cooling_limits() {
    told(answer(Question.PANS, "volume=20L depth=2in"), "pans.cooling.misses");
    told(answer(Question.PANS, "volume=20L depth=5mm"), "pans.cooling.makes");
  }
}
