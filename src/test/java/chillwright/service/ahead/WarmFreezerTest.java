package chillwright.service.ahead;

import static chillwright.service.ahead.QuestionTest.amount;
import static chillwright.service.ahead.QuestionTest.answer;
import static chillwright.service.ahead.QuestionTest.told;
import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.ahead.Ahead;
import chillwright.core.ahead.Told;
import chillwright.core.log.Problem;
import chillwright.print.AheadText;
import chillwright.print.Language;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * FDA Food Code 2022, 1-201.10: only food for safety under time and temperature control has a limit
 * of temperature; of all other food a thaw is a matter of quality.
 */
class WarmFreezerTest {
  private static final String BARS = "category=bar_cookies_cut_and_wrapped frozen=2026-11-01 ";

  private static String text(Ahead answer, Language language) {
    return new AheadText(language).answer(answer, "");
  }

  @ParameterizedTest
  @ValueSource(strings = {"25F:1d", "45F:24h", "0F:3d,-4.9C:1h"})
  void of_food_that_needs_no_cold_a_thaw_ends_the_freezer_s_date(String steps) {
    Ahead answer = answer(Question.FROZEN_LIFE, BARS + "room-days=8 steps=" + steps);
    assertThat(answer.told())
        .extracting(Told::key)
        .containsExactly("frozen-life.ended", "frozen-life.room.days");
    assertThat(amount(told(answer, "frozen-life.room.days"), "roomDays")).isEqualTo(8);
    assertThat(answer(Question.FROZEN_LIFE, BARS + "steps=" + steps).told())
        .extracting(Told::key)
        .containsExactly("frozen-life.ended", "frozen-life.room.none");
  }

  @ParameterizedTest
  @EnumSource
  void nothing_is_said_of_ice_crystals_or_of_safety_first(Language language) {
    for (String steps : new String[] {"45F:1d", "10F:1d"}) {
      assertThat(text(answer(Question.FROZEN_LIFE, BARS + "steps=" + steps), language))
          .doesNotContain("crystals", "cristales", "40 °F", "comes first", "va primero");
    }
  }

  /** USDA and FDA advice for food that needs the cold: ice crystals, or 40 °F or below. */
  @Test
  void of_food_that_needs_the_cold_safety_comes_first() {
    String soup = "category=soup_or_stew frozen=2026-11-01 steps=25F:1d";
    assertThat(text(answer(Question.FROZEN_LIFE, soup), Language.ENGLISH))
        .contains("safety comes first", "ice crystals", "40 °F");
  }

  @Test
  void a_spell_that_left_it_frozen_costs_days_as_before() {
    Ahead answer = answer(Question.FROZEN_LIFE, BARS + "steps=-5C:1d");
    assertThat(answer.told()).extracting(Told::key).containsExactly("frozen-life.fades");
  }

  /** Days at room temperature are a figure of the kitchen's own (common practice, no source). */
  @Test
  void with_its_beginning_told_there_is_a_date_and_the_days_left() {
    Ahead answer =
        answer(
            Question.FROZEN_LIFE,
            BARS + "room-days=2weeks steps=0F:1d,45F:24h,0F:2days since=2026-11-18T08:00");
    assertThat(answer.told())
        .extracting(Told::key)
        .containsExactly("frozen-life.warm", "frozen-life.ended.on", "frozen-life.room.until");
    assertThat(text(answer, Language.ENGLISH))
        .contains(
            "Warm from Thu 19 Nov 2026 08:00 until Fri 20 Nov 2026 08:00.",
            "At its best until Thu 3 Dec 2026; days left: 9.");
    assertThat(text(answer, Language.SPANISH)).contains("días que quedan: 9");
  }

  /** Six months are those of the keeping list for bars; the clock of this test says 24 November. */
  @Test
  void what_was_past_its_best_gains_nothing_by_a_thaw() {
    String bars = "category=bar_cookies_cut_and_wrapped frozen=2026-04-01 room-days=14 ";
    Ahead answer = answer(Question.FROZEN_LIFE, bars + "steps=45F:1d since=2026-11-22T08:00");
    assertThat(answer.told())
        .extracting(Told::key)
        .containsExactly("frozen-life.warm", "frozen-life.past");
    assertThat(text(answer, Language.ENGLISH))
        .contains("Past its best since Thu 1 Oct 2026")
        .doesNotContain("days left");
    assertThat(answer(Question.FROZEN_LIFE, bars + "steps=45F:1d").told())
        .extracting(Told::key)
        .containsExactly("frozen-life.past.unsure");
  }

  @Test
  void a_spell_that_is_not_over_is_refused() {
    assertThat(
            QuestionTest.faults(Question.FROZEN_LIFE, BARS + "steps=45F:2d since=2026-11-23T20:00"))
        .extracting(Problem::code)
        .containsExactly("not-over");
  }

  @Test
  void a_spell_before_it_was_frozen_is_refused() {
    assertThat(
            QuestionTest.faults(Question.FROZEN_LIFE, BARS + "steps=45F:1d since=2026-10-31T08:00"))
        .extracting(Problem::code)
        .containsExactly("before-frozen");
  }
}
