package chillwright.logfile;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.logfile.Times.Flaw;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class TimesTest {
  /**
   * RFC 3339 section 5.8, the examples without a leap second, with what the section says of them.
   */
  @ParameterizedTest(name = "{0} is {1}")
  @CsvSource({
    "1985-04-12T23:20:50.52Z, 1985-04-12T23:20:50.520Z",
    "1996-12-19T16:39:57-08:00, 1996-12-20T00:39:57Z",
    "1937-01-01T12:00:27.87+00:20, 1937-01-01T11:40:27.870Z",
  })
  void the_examples_of_rfc_3339_are_read(String text, Instant moment) {
    assertThat(Times.millis(text)).hasValue(moment.toEpochMilli());
  }

  /**
   * RFC 3339 section 5.6: "T" and "Z" may be lower case, a space may stand for "T"; 4.3: -00:00.
   */
  @ParameterizedTest
  @CsvSource({
    "2026-03-02T14:05:00Z",
    "2026-03-02t14:05:00z",
    "2026-03-02 14:05:00Z",
    "2026-03-02T14:05Z",
    "2026-03-02T14:05:00-00:00",
    "2026-03-02T14:05:00.0009999Z",
    "2026-03-02T09:05-05:00",
    "2026-03-03T08:05:00+18:00",
    "2026-03-01T20:05:00-18:00",
  })
  void the_same_moment_may_be_written_in_several_ways(String text) {
    assertThat(Times.millis(text)).hasValue(Instant.parse("2026-03-02T14:05:00Z").toEpochMilli());
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource({
    "2026-03-02T14:05:00, NO_OFFSET",
    "2026-03-02 14:05, NO_OFFSET",
    "2026-02-29T14:05:00Z, NO_SUCH_TIME",
    "2100-02-29T14:05:00Z, NO_SUCH_TIME",
    "2026-13-01T14:05:00Z, NO_SUCH_TIME",
    "2026-04-31T14:05:00Z, NO_SUCH_TIME",
    "2026-03-02T24:00:00Z, NO_SUCH_TIME",
    "2026-03-02T14:60:00Z, NO_SUCH_TIME",
    "1990-12-31T23:59:60Z, NO_SUCH_TIME",
    "2026-03-02T14:05:00+18:60, NO_SUCH_TIME",
    "2026-03-02T14:05:00-0500, UNREADABLE",
    "2026-03-02T14:05:00-05, UNREADABLE",
    "2026-03-02T14:05:00.Z, UNREADABLE",
    "2026-03-02T14:05:00ZZ, UNREADABLE",
    "2026-03-02T14.05.00Z, UNREADABLE",
    "26-03-02T14:05:00Z, UNREADABLE",
    "2026/03/02T14:05:00Z, UNREADABLE",
    "3/2/2026 2:05 PM, UNREADABLE",
    "2026-03-02, UNREADABLE",
    "-026-03-02T14:05:00Z, UNREADABLE",
    "two o'clock, UNREADABLE",
    "Z, UNREADABLE",
  })
  void other_texts_are_told_apart_by_what_they_lack(String text, Flaw flaw) {
    assertThat(Times.millis(text)).isEmpty();
    assertThat(Times.flaw(text)).isEqualTo(flaw);
  }

  @Test
  void a_leap_day_is_a_day() {
    assertThat(Times.millis("2028-02-29T00:00:00Z")).isPresent();
    assertThat(Times.date("2028-02-29")).contains(LocalDate.of(2028, 2, 29));
    assertThat(Times.date("2026-02-29")).isEmpty();
    assertThat(Times.date("2026-2-28")).isEmpty();
  }

  static IntStream seeds() {
    return IntStream.range(0, 200);
  }

  /** Against the JDK's own reader of such times. */
  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void any_moment_is_read_as_the_jdk_reads_it(int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    OffsetDateTime moment =
        Instant.ofEpochMilli(random.nextLong(0, 4_000_000_000_000L))
            .atOffset(ZoneOffset.ofTotalSeconds(60 * random.nextInt(-18 * 60, 18 * 60 + 1)));
    assertThat(Times.millis(moment.toString())).hasValue(moment.toInstant().toEpochMilli());
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void a_time_with_one_character_changed_is_read_as_the_jdk_reads_it_or_refused(int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    StringBuilder text = new StringBuilder("2026-03-02T14:05:00.5-05:00");
    text.setCharAt(random.nextInt(text.length()), "0123456789-:TZ+. x".charAt(random.nextInt(18)));
    Times.millis(text.toString())
        .ifPresent(
            millis ->
                assertThat(OffsetDateTime.parse(text.toString().replace(' ', 'T')).toInstant())
                    .isEqualTo(Instant.ofEpochMilli(millis)));
  }
}
