package chillwright.logfile;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.logfile.SaidTime.Toward;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Times as people say them; the twelve-hour clock as the US Government Printing Office's style
 * manual has it (12 a.m. is midnight, 12 p.m. noon; from memory), all else common practice, no
 * source.
 */
class SaidTimeTest {
  private static final ZoneId ZONE = ZoneId.of("America/Denver");
  private static final LocalDateTime NOW = LocalDateTime.parse("2026-11-26T10:00");

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "9:30 | 2026-11-26T09:30",
        "10:00 | 2026-11-26T10:00",
        "18:00 | 2026-11-25T18:00",
        "6 pm | 2026-11-25T18:00",
        "6:15 P.M. | 2026-11-25T18:15",
        "12 am | 2026-11-26T00:00",
        "12 pm | 2026-11-25T12:00",
        "6 de la tarde | 2026-11-25T18:00",
        "12 de la noche | 2026-11-26T00:00",
        "7 de la mañana | 2026-11-26T07:00",
        "yesterday 14:00 | 2026-11-25T14:00",
        "Yesterday at 2 pm | 2026-11-25T14:00",
        "last night 11 pm | 2026-11-25T23:00",
        "ayer 14:00 | 2026-11-25T14:00",
        "ayer a las 14:00 | 2026-11-25T14:00",
        "hoy 9:30 | 2026-11-26T09:30",
        "hoy  18:00 | 2026-11-26T18:00",
        "anteayer, 8:05 | 2026-11-24T08:05",
        "noon | 2026-11-25T12:00",
        "al mediodía | 2026-11-25T12:00",
        "yesterday at noon | 2026-11-25T12:00",
        "ayer al mediodía | 2026-11-25T12:00",
        "midnight | 2026-11-26T00:00",
        "a medianoche | 2026-11-26T00:00",
        "2026-11-25 18:00 | 2026-11-25T18:00",
        "2026-11-25T18:00 | 2026-11-25T18:00",
        "2026-11-25 6 pm | 2026-11-25T18:00"
      })
  void a_moment_is_read_as_it_is_said(String said, String moment) {
    assertThat(SaidTime.local(said, NOW, Toward.PAST)).contains(LocalDateTime.parse(moment));
  }

  @ParameterizedTest
  @CsvSource({"18:00, 2026-11-26T18:00", "9:30, 2026-11-27T09:30", "mañana 7 am, 2026-11-27T07:00"})
  void ahead_a_time_of_day_is_the_next_one(String said, String moment) {
    assertThat(SaidTime.local(said, NOW, Toward.AHEAD)).contains(LocalDateTime.parse(moment));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "six",
        "6",
        "24:00",
        "9:60",
        "13 pm",
        "0 am",
        "yesterday",
        "last night",
        "anoche",
        "this morning",
        "afternoon",
        "someday 9:00",
        "2026-02-30 9:00",
        "0026-11-25 18:00",
        "yesterday9:00",
        "14:00 yesterday yesterday"
      })
  void what_leaves_a_doubt_is_no_moment(String said) {
    assertThat(SaidTime.local(said, NOW, Toward.PAST)).isEmpty();
  }

  /** The hours are ours, each the earliest that the words are commonly said of; no source. */
  @ParameterizedTest
  @CsvSource({
    "last night, 2026-11-25T21:00",
    "Overnight, 2026-11-25T21:00",
    "all night, 2026-11-25T21:00",
    "anoche, 2026-11-25T21:00",
    "toda la noche, 2026-11-25T21:00",
    "this morning, 2026-11-26T06:00",
    "esta mañana, 2026-11-26T06:00",
    "this afternoon, 2026-11-26T00:00",
    "yesterday, 2026-11-25T12:00",
    "ayer, 2026-11-25T12:00",
    "ayer por la mañana, 2026-11-25T06:00"
  })
  void words_that_leave_the_hour_open_mean_the_earliest(String said, String moment) {
    assertThat(SaidTime.earliest(said, NOW)).contains(LocalDateTime.parse(moment));
    assertThat(SaidTime.local(said, NOW, Toward.PAST)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "18:00", "noon", "tonight", "tomorrow", "the other night"})
  void of_all_else_no_earliest_hour_is_guessed(String said) {
    assertThat(SaidTime.earliest(said, NOW)).isEmpty();
  }

  /** IANA tz database, America/Denver: on 8 March 2026 the clock goes from 01:59 to 03:00. */
  @ParameterizedTest
  @CsvSource({"01:59, false", "02:00, true", "02:30, true", "02:59, true", "03:00, false"})
  void an_hour_that_the_clock_skips_is_no_moment(String time, boolean isSkipped) {
    SaidTime.Read read = SaidTime.at(LocalDateTime.parse("2026-03-08T" + time), ZONE);
    if (isSkipped) {
      assertThat(read).isEqualTo(new SaidTime.Skipped(LocalTime.of(1, 59), LocalTime.of(3, 0)));
    } else {
      assertThat(read).isInstanceOf(SaidTime.At.class);
    }
  }

  /** IANA tz database, America/Denver: on 1 November 2026 the hour from 01:00 comes twice. */
  @Test
  void of_an_hour_that_comes_twice_the_earlier_is_taken() {
    Instant now = Instant.parse("2026-11-01T20:00:00Z");
    assertThat(SaidTime.moment("1:30", ZONE, now, Toward.PAST))
        .isEqualTo(new SaidTime.At(Instant.parse("2026-11-01T07:30:00Z"), true));
    assertThat(SaidTime.moment("2:00", ZONE, now, Toward.PAST))
        .isEqualTo(new SaidTime.At(Instant.parse("2026-11-01T09:00:00Z"), false));
    assertThat(SaidTime.moment("0:59", ZONE, now, Toward.PAST))
        .isEqualTo(new SaidTime.At(Instant.parse("2026-11-01T06:59:00Z"), false));
  }
}
