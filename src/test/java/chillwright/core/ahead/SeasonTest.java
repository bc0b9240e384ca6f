package chillwright.core.ahead;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Days by the calendar; worked by hand. */
class SeasonTest {
  private static Season season(int portions, String today, String last, String until, int months) {
    return new Season(
        portions,
        10,
        1,
        LocalDate.parse(today),
        LocalDate.parse(last),
        LocalDate.parse(until),
        months);
  }

  /** Both sides: a day earlier its months would be over the day before. */
  @ParameterizedTest
  @CsvSource({
    "2026-12-28, 2, 2026-10-28",
    "2027-03-31, 1, 2027-03-01",
    "2027-03-28, 1, 2027-02-28",
    "2028-02-29, 12, 2027-03-01"
  })
  void none_is_frozen_so_early_that_it_is_past_its_best(String until, int months, String first) {
    LocalDate earliest = season(10, "2026-01-01", until, until, months).earliest();
    assertThat(earliest).isEqualTo(first);
    assertThat(earliest.plusMonths(months)).isAfterOrEqualTo(until);
    assertThat(earliest.minusDays(1).plusMonths(months)).isBefore(until);
  }

  @Test
  void no_batch_is_made_in_the_past_and_the_last_the_day_before_it_leaves() {
    Season season = season(35, "2026-12-10", "2026-12-18", "2026-12-28", 2);
    assertThat(season.batches()).isEqualTo(4);
    assertThat(season.earliest()).isEqualTo("2026-12-10");
    assertThat(season.latest()).isEqualTo("2026-12-17");
    assertThat(season.beginBy()).isEqualTo("2026-12-14");
    assertThat(season.room()).isEqualTo(8);
    assertThat(season.spread()).isEqualTo(2);
  }

  @Test
  void a_season_that_is_over_has_no_room() {
    Season season = season(35, "2026-12-19", "2026-12-18", "2026-12-28", 2);
    assertThat(season.room()).isZero();
    assertThat(season.spread()).isZero();
  }
}
