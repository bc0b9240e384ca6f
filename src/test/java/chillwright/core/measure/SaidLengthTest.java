package chillwright.core.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** NIST SP 811, table 6: 1 d = 24 h, 1 h = 60 min; the ways to say it are common, no source. */
class SaidLengthTest {
  @ParameterizedTest
  @CsvSource({
    "12, 12",
    "1 day, 1",
    "12 days, 12",
    "12 días, 12",
    "2 weeks, 14",
    "2 semanas, 14",
    "a week, 7",
    "48 h, 2",
    "1 week 3 days, 10"
  })
  void whole_days_are_read_however_they_are_said(String text, int days) {
    assertThat(SaidLength.days(text)).hasValue(days);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "1.5", "36 h", "-1", "soon", "1 day ago", "12345678"})
  void what_is_no_whole_days_is_none(String text) {
    assertThat(SaidLength.days(text)).isEmpty();
  }

  /** NIST SP 811, 10.5.3: no comma between thousands, since in many countries it marks decimals. */
  @ParameterizedTest
  @ValueSource(strings = {"1,440 min", "2,000 min", "1,000 h", "1.000", "1,000", "1.000 h"})
  void what_may_be_thousands_is_no_length(String text) {
    assertThat(SaidLength.of(text)).isEmpty();
  }

  @Test
  void decimals_are_read_with_either_mark() {
    assertThat(SaidLength.of("1,5 h")).hasValue(Duration.ofMinutes(90));
    assertThat(SaidLength.of("0.125 h")).hasValue(Duration.ofSeconds(450));
    assertThat(SaidLength.of("1440 min")).hasValue(Duration.ofDays(1));
  }

  @Test
  void a_bare_figure_is_hours_where_hours_are_asked_for() {
    assertThat(SaidLength.of("1.5")).hasValue(Duration.ofMinutes(90));
    assertThat(SaidLength.of("0")).hasValue(Duration.ZERO);
    assertThat(SaidLength.of("1 día")).hasValue(Duration.ofDays(1));
    assertThat(SaidLength.of("x")).isEmpty();
  }
}
