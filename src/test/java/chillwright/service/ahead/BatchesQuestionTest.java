package chillwright.service.ahead;

import static chillwright.service.ahead.QuestionTest.amount;
import static chillwright.service.ahead.QuestionTest.answer;
import static chillwright.service.ahead.QuestionTest.faults;
import static chillwright.service.ahead.QuestionTest.told;
import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.ahead.Ahead;
import chillwright.core.ahead.Filled.Day;
import chillwright.core.ahead.Told;
import chillwright.core.log.Problem;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What leaves the freezer has its days out of it; the freezer's months help no parcel. */
class BatchesQuestionTest {
  private static final String BARS =
      "category=bar_cookies_cut_and_wrapped portions=96 batch=48 last-day=2027-06-10";
  private static final String SOUP =
      "category=soup_or_stew portions=96 batch=48 last-day=2027-06-10";

  private static LocalDate earliest(Ahead answer) {
    return ((Day) told(answer, "batches.earliest").filled().get(0).value()).day();
  }

  /**
   * Bars have 6 months in the freezer and the days that their kitchen states (common practice, no
   * source). Where those days are enough the freezer has to reach to 10 June only, so 10 December;
   * where not, it must for a buyer who keeps them frozen: 20 June, so 20 December.
   */
  @ParameterizedTest
  @CsvSource({
    "room-days=10, batches.room.enough, 2026-12-10",
    "room-days=9, batches.room.short, 2026-12-20",
    "per-day=1, batches.room.none, 2026-12-20"
  })
  void food_that_needs_no_cold_is_good_for_the_days_that_its_kitchen_states(
      String more, String key, LocalDate earliest) {
    Ahead answer = answer(Question.BATCHES, BARS + " then-days=10 " + more);
    assertThat(told(answer, key)).isSameAs(answer.told().get(1));
    assertThat(earliest(answer)).isEqualTo(earliest);
  }

  /** Food Code 3-501.17: 7 days, the making included; 6 once thawed, so good five days after. */
  @ParameterizedTest
  @CsvSource({"5, batches.thawed.enough, 2027-04-10", "6, batches.thawed.short, 2027-04-16"})
  void food_that_needs_the_cold_is_good_for_its_days_once_thawed(
      int then, String key, LocalDate earliest) {
    Ahead answer = answer(Question.BATCHES, SOUP + " then-days=" + then);
    assertThat(amount(told(answer, key), "daysOut")).isEqualTo(6);
    assertThat(answer.cautions()).contains("days-thawed");
    assertThat(earliest(answer)).isEqualTo(earliest);
  }

  @Test
  void nothing_is_told_of_days_that_nobody_asked_for() {
    assertThat(answer(Question.BATCHES, BARS).told())
        .extracting(Told::key)
        .noneMatch(key -> key.startsWith("batches.room") || key.startsWith("batches.thawed"))
        .contains("batches.stock.blank");
    assertThat(answer(Question.BATCHES, BARS + " stock=1").told())
        .extracting(Told::key)
        .doesNotContain("batches.stock.blank");
  }

  /** Asked on 24 November 2026. */
  @ParameterizedTest
  @CsvSource({
    "last-day=2026-11-23, past-day",
    "last-day=2026-11-24,",
    "room-days=3, needs-cold",
    "food-name=Soup, unknown-food-name"
  })
  void what_cannot_be_is_refused_at_its_field(String more, String code) {
    String given =
        more.startsWith("last") ? SOUP.replaceFirst("last-day=.*", more) : SOUP + " " + more;
    assertThat(faults(Question.BATCHES, given))
        .extracting(Problem::code)
        .isEqualTo(code == null ? List.of() : List.of(code));
  }
}
