package chillwright.logfile;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.logfile.SaidTime.Edge;
import chillwright.logfile.SaidTime.Toward;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
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
        "2026-11-25 6 pm | 2026-11-25T18:00",
        "since 6pm | 2026-11-25T18:00",
        "since about 6 p.m. | 2026-11-25T18:00",
        "until yesterday 19:00 | 2026-11-25T19:00",
        "desde las 6 de la tarde | 2026-11-25T18:00",
        "desde ayer a las 14:00 | 2026-11-25T14:00",
        "desde hace 3 horas | 2026-11-26T07:00",
        "an hour ago | 2026-11-26T09:00",
        "18 | 2026-11-25T18:00",
        "today 9 | 2026-11-26T09:00",
        "6 pm yesterday | 2026-11-25T18:00",
        "las 11 de anoche | 2026-11-25T23:00",
        "11 de la noche de ayer | 2026-11-25T23:00",
        "this morning at 7 | 2026-11-26T07:00",
        "yesterday evening 7 | 2026-11-25T19:00",
        "ayer por la tarde a las 5 | 2026-11-25T17:00",
        "last night 9:30 | 2026-11-25T21:30",
        "last night at midnight | 2026-11-26T00:00",
        "last night 1:30 am | 2026-11-26T01:30",
        "anoche a la 1 de la madrugada | 2026-11-26T01:00",
        "ayer por la noche a la 1 | 2026-11-26T01:00",
        "Monday 6 pm | 2026-11-23T18:00",
        "el martes a las 14:00 | 2026-11-24T14:00",
        "Thursday 9:30 | 2026-11-26T09:30",
        "Thursday 10:30 | 2026-11-19T10:30"
      })
  void a_moment_is_read_as_it_is_said(String said, String moment) {
    assertThat(SaidTime.times(said, NOW, Toward.PAST)).containsExactly(LocalDateTime.parse(moment));
  }

  @ParameterizedTest
  @CsvSource({"18:00, 2026-11-26T18:00", "9:30, 2026-11-27T09:30", "mañana 7 am, 2026-11-27T07:00"})
  void ahead_a_time_of_day_is_the_next_one(String said, String moment) {
    assertThat(SaidTime.times(said, NOW, Toward.AHEAD))
        .containsExactly(LocalDateTime.parse(moment));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "six",
        "3 h",
        "last night 10 am",
        "this morning 6 pm",
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
    assertThat(SaidTime.times(said, NOW, Toward.PAST)).isEmpty();
  }

  /** Where the half of the day is not said, and both halves have passed. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "6 | 2026-11-25T18:00 | 2026-11-26T06:00",
        "desde las 9 | 2026-11-25T21:00 | 2026-11-26T09:00",
        "yesterday at 6 | 2026-11-25T06:00 | 2026-11-25T18:00",
        "12 | 2026-11-25T12:00 | 2026-11-26T00:00",
        "yesterday at midnight | 2026-11-25T00:00 | 2026-11-26T00:00",
        "last night 5:15 | 2026-11-25T17:15 | 2026-11-26T05:15"
      })
  void what_has_two_meanings_is_both(String said, String first, String second) {
    assertThat(SaidTime.times(said, NOW, Toward.PAST))
        .containsExactly(LocalDateTime.parse(first), LocalDateTime.parse(second));
    assertThat(SaidTime.moment(said, ZONE, NOW.atZone(ZONE).toInstant(), Toward.PAST))
        .isEqualTo(new SaidTime.Either(LocalDateTime.parse(first), LocalDateTime.parse(second)));
  }

  /** At one in the morning, 1:30 of "last night" is that of the day before. */
  @Test
  void the_early_hours_of_last_night_have_passed() {
    LocalDateTime one = LocalDateTime.parse("2026-11-26T01:00");
    assertThat(SaidTime.times("last night 1:30 am", one, Toward.PAST))
        .containsExactly(LocalDateTime.parse("2026-11-25T01:30"));
    assertThat(SaidTime.times("last night 11 pm", one, Toward.PAST))
        .containsExactly(LocalDateTime.parse("2026-11-25T23:00"));
    assertThat(SaidTime.times("tonight 1 am", NOW, Toward.AHEAD))
        .containsExactly(LocalDateTime.parse("2026-11-27T01:00"));
  }

  /** A day counts from now, also where another moment bounds a bare time of day. */
  @ParameterizedTest
  @CsvSource({
    "yesterday 18:00, 2026-11-25T18:00",
    "18:00, 2026-11-25T18:00",
    "19:30, 2026-11-24T19:30"
  })
  void yesterday_is_the_day_before_now(String said, String moment) {
    Instant end = LocalDateTime.parse("2026-11-25T19:00").atZone(ZONE).toInstant();
    Instant now = NOW.atZone(ZONE).toInstant();
    assertThat(SaidTime.passed(said, ZONE, now, end, Edge.EARLIEST))
        .isEqualTo(
            new SaidTime.At(LocalDateTime.parse(moment).atZone(ZONE).toInstant(), false, false));
  }

  /** The hours are ours, each the earliest that the words are commonly said of; no source. */
  @ParameterizedTest
  @CsvSource({
    "last night, 2026-11-25T18:00",
    "Overnight, 2026-11-25T18:00",
    "all night, 2026-11-25T18:00",
    "anoche, 2026-11-25T18:00",
    "toda la noche, 2026-11-25T18:00",
    "this morning, 2026-11-26T00:00",
    "esta mañana, 2026-11-26T00:00",
    "this afternoon, 2026-11-26T00:00",
    "yesterday, 2026-11-25T00:00",
    "ayer, 2026-11-25T00:00",
    "ayer por la mañana, 2026-11-25T00:00",
    "ayer por la noche, 2026-11-25T18:00",
    "since last night, 2026-11-25T18:00",
    "desde ayer, 2026-11-25T00:00",
    "desde anoche, 2026-11-25T18:00",
    "Monday, 2026-11-23T00:00",
    "today, 2026-11-26T00:00",
    "Thursday, 2026-11-26T00:00",
    "jueves, 2026-11-26T00:00",
    "Thursday afternoon, 2026-11-19T12:00",
    "Wednesday night, 2026-11-25T18:00"
  })
  void words_that_leave_the_hour_open_mean_the_earliest(String said, String moment) {
    assertThat(SaidTime.roughly(said, NOW, Edge.EARLIEST)).contains(LocalDateTime.parse(moment));
    assertThat(SaidTime.times(said, NOW, Toward.PAST)).isEmpty();
  }

  /** As above; of an end the latest is the careful one. */
  @ParameterizedTest
  @CsvSource({
    "last night, 2026-11-26T06:00",
    "this morning, 2026-11-26T10:00",
    "yesterday, 2026-11-26T00:00",
    "Thursday, 2026-11-26T10:00",
    "Wednesday night, 2026-11-26T06:00",
    "ayer por la tarde, 2026-11-25T20:00"
  })
  void of_an_end_they_mean_the_latest(String said, String moment) {
    assertThat(SaidTime.roughly(said, NOW, Edge.LATEST)).contains(LocalDateTime.parse(moment));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "18:00", "noon", "tonight", "tomorrow", "the other night"})
  void of_all_else_no_earliest_hour_is_guessed(String said) {
    assertThat(SaidTime.roughly(said, NOW, Edge.EARLIEST)).isEmpty();
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

  /** IANA tz database: 03:10 on 8 March 2026 in Denver is an hour and ten minutes after 01:00. */
  @Test
  void hours_ago_are_hours_that_passed_whatever_the_clock_did() {
    Instant spring = Instant.parse("2026-03-08T09:10:30Z");
    Instant autumn = Instant.parse("2026-11-01T09:30:00Z");
    for (Instant now : List.of(spring, autumn)) {
      for (int hours : new int[] {1, 2, 3}) {
        Instant then = now.truncatedTo(ChronoUnit.MINUTES).minus(Duration.ofHours(hours));
        String said = hours + " h ago";
        assertThat(SaidTime.moment(said, ZONE, now, Toward.PAST))
            .isEqualTo(new SaidTime.At(then, false, false));
        assertThat(SaidTime.passed(said, ZONE, now, now, Edge.EARLIEST))
            .isEqualTo(new SaidTime.At(then, false, false));
      }
    }
  }

  /** IANA tz database, America/Denver: on 1 November 2026 the hour from 01:00 comes twice. */
  @Test
  void of_an_hour_that_comes_twice_the_earlier_is_taken() {
    Instant now = Instant.parse("2026-11-01T20:00:00Z");
    assertThat(SaidTime.moment("1:30", ZONE, now, Toward.PAST))
        .isEqualTo(new SaidTime.At(Instant.parse("2026-11-01T07:30:00Z"), true, false));
    assertThat(SaidTime.moment("2:00", ZONE, now, Toward.PAST))
        .isEqualTo(new SaidTime.At(Instant.parse("2026-11-01T09:00:00Z"), false, false));
    assertThat(SaidTime.moment("0:59", ZONE, now, Toward.PAST))
        .isEqualTo(new SaidTime.At(Instant.parse("2026-11-01T06:59:00Z"), false, false));
  }
}
