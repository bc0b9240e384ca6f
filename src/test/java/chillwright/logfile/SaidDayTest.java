package chillwright.logfile;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.logfile.SaidTime.Toward;
import java.time.LocalDate;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Days as people say them. 2026-11-26 is a Thursday (Gregorian calendar); the words are common
 * practice, no source.
 */
class SaidDayTest {
  private static final LocalDate TODAY = LocalDate.parse("2026-11-26");

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2026-11-22 | 2026-11-22",
        "today | 2026-11-26",
        "Yesterday | 2026-11-25",
        "yesterday morning | 2026-11-25",
        "ayer | 2026-11-25",
        "anteayer | 2026-11-24",
        "3 days ago | 2026-11-23",
        "hace 3 días | 2026-11-23",
        "10 Nov 2026 | 2026-11-10",
        "10 November 2026 | 2026-11-10",
        "Nov 10, 2026 | 2026-11-10",
        "November 10th | 2026-11-10",
        "26 nov | 2026-11-26",
        "18 December | 2025-12-18",
        "Tue 10 Nov 2026 | 2026-11-10",
        "martes 10 de noviembre de 2026 | 2026-11-10",
        "1º de mayo | 2026-05-01",
        "10 ago. 2026 | 2026-08-10",
        "29 February | 2024-02-29",
        "Monday | 2026-11-23",
        "jueves | 2026-11-26"
      })
  void a_day_that_was_is_read(String said, LocalDate day) {
    assertThat(SaidDay.read(said, TODAY, Toward.PAST)).contains(day);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "18 December | 2026-12-18",
        "18 de diciembre | 2026-12-18",
        "Dec 18 | 2026-12-18",
        "10 Nov | 2027-11-10",
        "26 November | 2026-11-26",
        "29 February | 2028-02-29",
        "tomorrow | 2026-11-27",
        "Monday | 2026-11-30"
      })
  void a_day_to_come_is_read(String said, LocalDate day) {
    assertThat(SaidDay.read(said, TODAY, Toward.AHEAD)).contains(day);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "10",
        "10/11/2026",
        "10.11.",
        "31 November",
        "29 February 2026",
        "Mon 10 Nov 2026",
        "last night",
        "yesterday 6 pm",
        "5 hours ago",
        "2026-02-30",
        "32 May",
        "10 Nomber"
      })
  void what_is_no_day_or_two_is_none(String said) {
    assertThat(SaidDay.read(said, TODAY, Toward.PAST)).isEmpty();
  }
}
