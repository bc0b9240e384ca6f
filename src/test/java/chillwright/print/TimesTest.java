package chillwright.print;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;

/**
 * Names of days and months as the Unicode CLDR (release 39, in the JDK) abbreviates them; the zone
 * is that of the IANA database.
 */
class TimesTest {
  private static final ZoneId ZONE = ZoneId.of("America/Denver");
  private static final Instant NOW = Instant.parse("2026-11-24T21:05:00Z");

  private final Times english = Times.at(NOW, ZONE, Language.ENGLISH);
  private final Times spanish = Times.at(NOW, ZONE, Language.SPANISH);

  @Test
  void a_moment_has_its_day_and_the_year_only_where_it_is_another() {
    assertThat(english.moment(NOW)).isEqualTo("Tue 24 Nov 14:05");
    assertThat(spanish.moment(NOW)).isEqualTo("mar 24 nov 14:05");
    assertThat(english.day(LocalDate.of(2027, 1, 2))).isEqualTo("Sat 2 Jan 2027");
    assertThat(spanish.day(LocalDate.of(2025, 9, 3))).isEqualTo("mié 3 sept 2025");
  }

  /** Midnight in Denver is seven hours later in Greenwich. */
  @Test
  void today_needs_no_day_and_ends_with_the_kitchens_midnight() {
    assertThat(english.clock(NOW)).isEqualTo("14:05");
    assertThat(english.clock(Instant.parse("2026-11-25T06:59:00Z"))).isEqualTo("23:59");
    assertThat(english.clock(Instant.parse("2026-11-25T07:00:00Z"))).isEqualTo("Wed 25 Nov 00:00");
  }

  @Test
  void what_is_kept_always_has_its_year() {
    Times kept = Times.kept(ZONE, Language.SPANISH);
    assertThat(kept.moment(NOW)).isEqualTo("mar 24 nov 2026 14:05");
    assertThat(kept.clock(NOW)).isEqualTo("mar 24 nov 2026 14:05");
  }

  @Test
  void in_a_sentence_spanish_has_its_article_and_preposition() {
    assertThat(spanish.said(NOW)).isEqualTo("a las 14:05");
    assertThat(spanish.said(Instant.parse("2026-11-25T08:30:00Z")))
        .isEqualTo("el mié 25 nov a la 01:30");
  }

  @Test
  void lines_of_arithmetic_are_told_with_the_same_days() {
    assertThat(english.retold("frozen 2026-11-23 + 2 months: best quality by 2027-01-23"))
        .isEqualTo("frozen Mon 23 Nov + 2 months: best quality by Sat 23 Jan 2027");
    assertThat(english.retold("discarded by 2026-11-24 18:00"))
        .isEqualTo("discarded by Tue 24 Nov 18:00");
    assertThat(english.retold("[3-501.17(A), (B)] lot 2026-11-24T18")).contains("2026-11-24T18");
  }

  /** IANA tz database, America/Denver: on 1 November 2026 the hour from 01:00 comes twice. */
  @Test
  void of_a_time_that_comes_twice_it_is_told_which_one_it_is() {
    assertThat(english.moment(Instant.parse("2026-11-01T07:30:00Z")))
        .isEqualTo("Sun 1 Nov 01:30 (the first of two)");
    assertThat(spanish.clock(Instant.parse("2026-11-01T08:30:00Z")))
        .isEqualTo("dom 1 nov 01:30 (la segunda de dos veces)");
    assertThat(english.hour(Instant.parse("2026-11-01T09:00:00Z"))).isEqualTo("02:00");
    assertThat(english.hour(Instant.parse("2026-11-01T06:59:00Z"))).isEqualTo("00:59");
  }
}
