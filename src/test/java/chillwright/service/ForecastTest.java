package chillwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chillwright.core.forecast.Forecast;
import chillwright.core.forecast.Forecast.Doubt;
import chillwright.core.forecast.Forecast.Outlook;
import chillwright.core.forecast.Forecaster;
import chillwright.core.log.Incoming;
import chillwright.core.measure.Temperature;
import chillwright.core.measure.Temperature.Scale;
import chillwright.logfile.Cells;
import chillwright.logfile.CsvLog;
import chillwright.print.ForecastText;
import chillwright.print.Language;
import chillwright.rulebook.BrokenRules;
import chillwright.rulebook.RuleLibrary;
import chillwright.service.Judge.Judged;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Forecasts from rows of a log to the limits of FDA Food Code 2022 3-501.14(A): 135 to 70 °F within
 * 2 hours and to 41 °F within 6 in all. What is expected of each is arithmetic on the log-linear
 * curve, worked apart from this program.
 */
class ForecastTest {
  private static final Instant WRITTEN = Instant.parse("2026-03-03T00:00:00Z");
  private static final String HEADER = "lot,food,category,when,entry,temperature,air,place,note\n";
  private static final String FIRST =
      "SP-1,Leek soup,soup_or_stew,2026-03-02T10:00:00Z,cooked,135 F,%s,,\n";

  private static List<Forecast> forecasts(String rows, String at) {
    return forecasts(rows, at, Optional.empty());
  }

  private static List<Forecast> forecasts(String rows, String at, Optional<Temperature> around) {
    Instant now = Instant.parse("2026-03-02T" + at + ":00Z");
    RuleLibrary library = library();
    Judge judge =
        new Judge(
            library.ruleBook("us-food-code-2022").orElseThrow(),
            library.keepingList(),
            ZoneOffset.UTC);
    LogCheck.Checked checked = new LogCheck(judge, WRITTEN).check(incoming(HEADER + rows), now);
    assertThat(checked.problems()).isEmpty();
    Judged lot = checked.lots().get(0);
    return Forecaster.of(lot.timeline(), lot.ruleSet(), around, now);
  }

  private static RuleLibrary library() {
    try {
      return RuleLibrary.load(Optional.empty());
    } catch (BrokenRules broken) {
      throw new IllegalStateException(broken);
    }
  }

  private static List<Incoming> incoming(String csv) {
    List<Incoming> rows = new ArrayList<>();
    byte[] bytes = csv.getBytes(StandardCharsets.UTF_8);
    try {
      new CsvLog(new Cells(WRITTEN)).read("log", new ByteArrayInputStream(bytes), rows::add);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
    return rows;
  }

  private static String reading(String time, String temperature) {
    return "SP-1,,,2026-03-02T%s:00Z,reading,%s,,,\n".formatted(time, temperature);
  }

  private static double minutes(Optional<Instant> moment, String clock) {
    Instant expected = Instant.parse("2026-03-02T" + clock + ":00Z");
    return Duration.between(expected, moment.orElseThrow()).toSeconds() / 60.0;
  }

  /** 135 to 95 °F in an hour in air of 38 °F: 70 °F at 2.09 h and 41 °F at 6.54 h, both missed. */
  @Test
  void two_readings_tell_when_both_limits_are_reached() {
    List<Forecast> found = forecasts(FIRST.formatted("38 F") + reading("11:00", "95 F"), "11:00");
    assertThat(found).hasSize(2);
    assertThat(minutes(found.get(0).expected(), "12:05")).isCloseTo(0.4, within(1.0));
    assertThat(minutes(found.get(1).expected(), "16:32")).isCloseTo(0.4, within(1.0));
    assertThat(found).extracting(Forecast::outlook).containsOnly(Outlook.LATE);
    assertThat(found.get(0).basis().has(Doubt.TWO_READINGS)).isTrue();
    assertThat(found.get(0).earliest().orElseThrow())
        .isBefore(found.get(0).expected().orElseThrow());
  }

  /** A reading above the limit shows that it was not there yet; no table, it follows from that. */
  @Test
  void nothing_is_told_for_the_moment_of_the_newest_reading_or_before_it() {
    String rows = FIRST.formatted("38 F") + reading("10:50", "71 F") + reading("11:00", "70.1 F");
    Forecast first = forecasts(rows, "11:00").get(0);
    Instant next = Instant.parse("2026-03-02T11:01:00Z");
    assertThat(first.earliest().orElseThrow()).isAfterOrEqualTo(next);
    assertThat(first.expected().orElseThrow()).isAfterOrEqualTo(first.earliest().orElseThrow());
  }

  /** The same in the other scale. */
  @Test
  void celsius_readings_are_held_against_the_celsius_limits() {
    String rows =
        "SP-1,Leek soup,soup_or_stew,2026-03-02T10:00:00Z,cooked,57.2 C,3.3 C,,\n"
            + reading("11:00", "35 C");
    List<Forecast> found = forecasts(rows, "11:00");
    assertThat(minutes(found.get(0).expected(), "12:06")).isCloseTo(0, within(2.0));
    assertThat(found.get(0).target().orElseThrow().temperature().text()).endsWith("°C");
  }

  /**
   * In air of 38 °F food at 135 °F must read 93.7 °F or less after one hour, and 88.8 °F after one
   * hour and ten minutes, to be at 70 °F after two.
   */
  @ParameterizedTest
  @CsvSource({"10:00, 93", "10:20, 88"})
  void the_target_lies_on_the_curve_that_meets_the_limit(String now, int atMost) {
    Forecast first = forecasts(FIRST.formatted("38 F"), now).get(0);
    assertThat(first.expected()).isEmpty();
    assertThat(first.basis().has(Doubt.ONE_READING)).isTrue();
    assertThat(first.target().orElseThrow().temperature())
        .isEqualTo(Temperature.fahrenheit(atMost));
  }

  @Test
  void what_is_around_the_food_may_never_let_it_get_there() {
    String warm = FIRST.formatted("41 F") + reading("11:00", "95 F") + reading("11:30", "80 F");
    List<Forecast> found = forecasts(warm, "11:30");
    assertThat(found.get(0).expected()).isPresent();
    assertThat(found.get(1).expected()).isEmpty();
    assertThat(found.get(1).basis().has(Doubt.NEVER_THERE)).isTrue();
    assertThat(found.get(1).outlook()).isEqualTo(Outlook.LATE);
    assertThat(forecasts(warm.replace("41 F", "40.9 F"), "11:30").get(1).expected()).isPresent();
  }

  @Test
  void without_surroundings_nothing_bounds_how_late_it_is() {
    String rows = FIRST.formatted("") + reading("11:00", "95 F");
    Forecast alone = forecasts(rows, "11:00").get(0);
    assertThat(alone.latest()).isEmpty();
    assertThat(alone.basis().has(Doubt.SURROUNDINGS_NOT_LOGGED)).isTrue();
    Forecast placed = forecasts(rows, "11:00", Optional.of(Temperature.fahrenheit(38))).get(0);
    assertThat(placed.latest()).isPresent();
    assertThat(placed.basis().has(Doubt.SURROUNDINGS_NOT_LOGGED)).isFalse();
  }

  /** A curve is never fitted across a move, or an action. */
  @ParameterizedTest
  @CsvSource({
    "'SP-1,,,2026-03-02T11:10:00Z,chilled,,,Walk-in,'",
    "'SP-1,,,2026-03-02T11:10:00Z,action,,,,put into ice water'"
  })
  void a_changed_cooling_begins_a_new_curve(String row) {
    String rows =
        FIRST.formatted("38 F") + reading("11:00", "110 F") + row + "\n" + reading("11:20", "90 F");
    assertThat(forecasts(rows, "11:20").get(0).basis().has(Doubt.ONE_READING)).isTrue();
    String more = rows + reading("11:30", "80 F");
    assertThat(forecasts(more, "11:30").get(0).expected()).isPresent();
    assertThat(forecasts(more, "11:30").get(0).basis().readings()).isEqualTo(2);
  }

  @Test
  void food_that_does_not_get_colder_is_not_forecast() {
    String rows = FIRST.formatted("38 F") + reading("11:00", "95 F");
    assertThat(forecasts(rows + reading("11:20", "96 F"), "11:20").get(0).expected()).isEmpty();
    Forecast stuck =
        forecasts(rows + reading("11:20", "96 F") + reading("11:40", "96 F"), "11:40").get(0);
    assertThat(stuck.basis().has(Doubt.NOT_FALLING)).isTrue();
  }

  /** Readings on one curve never widen the window as they get more. */
  @Test
  void more_readings_on_the_curve_never_widen_it() {
    double rate = 0.45;
    Duration before = Duration.ofDays(365);
    StringBuilder rows = new StringBuilder(FIRST.formatted("38 F"));
    for (int i = 1; i <= 8; i++) {
      double fahrenheit = 38 + 97 * Math.exp(-rate * i / 4);
      String clock = "%02d:%02d".formatted(10 + i / 4, i % 4 * 15);
      rows.append(reading(clock, "%.2f F".formatted(fahrenheit)));
      Forecast total =
          forecasts(rows.toString(), clock).get(forecasts(rows.toString(), clock).size() - 1);
      Duration width =
          Duration.between(total.earliest().orElseThrow(), total.latest().orElseThrow());
      assertThat(width).isLessThanOrEqualTo(before.plusMinutes(1));
      before = width;
    }
    assertThat(before).isLessThan(Duration.ofHours(6));
  }

  /** Ten degrees in 55 minutes are no fall of a tenth a second, whatever the last digit does. */
  @Test
  void readings_within_seconds_tell_no_slope() {
    StringBuilder rows = new StringBuilder(FIRST.formatted("38 F"));
    for (int second = 0; second < 5; second++) {
      String time = "10:55:0" + second;
      rows.append("SP-1,,,2026-03-02T%sZ,reading,%.1f F,,,%n".formatted(time, 125 - second / 10.0));
    }
    assertThat(forecasts(rows.toString(), "10:57").get(0).outlook()).isEqualTo(Outlook.LATE);
    String two = FIRST.formatted("38 F") + "SP-1,,,2026-03-02T10:00:01Z,reading,134 F,,,\n";
    assertThat(forecasts(two, "10:01").get(0).outlook()).isEqualTo(Outlook.NOT_TOLD);
  }

  /** 16 minutes after 82 °F, at 65 to 44 °F above the air in 20: 10:56, for a limit at 12:00. */
  @ParameterizedTest
  @CsvSource({"10:50, IN_TIME", "11:30, UNREAD", "13:00, UNREAD"})
  void what_should_be_there_and_was_not_read_is_not_in_time(String now, Outlook outlook) {
    String rows =
        FIRST.formatted("38 F")
            + reading("10:10", "117 F")
            + reading("10:20", "103 F")
            + reading("10:40", "82 F");
    Forecast first = forecasts(rows, now).get(0);
    assertThat(first.outlook()).isEqualTo(outlook);
    String says = says(first, now, Language.ENGLISH);
    String spanish = says(first, now, Language.SPANISH);
    if (outlook == Outlook.IN_TIME) {
      assertThat(says).startsWith("Expected to reach 70 °F about 10:56").contains("In time if");
    } else {
      assertThat(says)
          .startsWith("It was expected at 70 °F about 10:56")
          .contains("nobody looked since: read it now.")
          .endsWith(now.equals("13:00") ? "The limit was 12:00." : "The limit is 12:00.");
      assertThat(spanish).contains("mídalo ahora").doesNotContain("A tiempo");
    }
  }

  private static String says(Forecast forecast, String now, Language language) {
    Instant moment = Instant.parse("2026-03-02T" + now + ":00Z");
    return new ForecastText(ZoneOffset.UTC, Scale.FAHRENHEIT, moment, language).says(forecast);
  }

  /** The limit of 12:00 has passed; the readings still tell of a later moment. */
  @Test
  void a_limit_that_has_passed_is_told_as_passed() {
    String rows = FIRST.formatted("38 F") + reading("10:30", "120 F") + reading("11:00", "107 F");
    Forecast first = forecasts(rows, "12:30").get(0);
    assertThat(says(first, "12:30", Language.ENGLISH))
        .contains("Expected to reach 70 °F about 13:15", "Too late: the limit was 12:00.")
        .doesNotContain("To be in time");
    assertThat(says(forecasts(rows, "13:30").get(0), "13:30", Language.ENGLISH))
        .contains("was expected at 70 °F about 13:15", "read it now", "The limit was 12:00.");
  }

  /** Seconds apart tell a probe's last digit: 4-203.11 allows it 1 °C. They count as one. */
  @Test
  void readings_seconds_apart_promise_nothing() {
    String rows =
        FIRST.formatted("38 F")
            + "SP-1,,,2026-03-02T10:00:20Z,reading,132 F,,,\n"
            + "SP-1,,,2026-03-02T10:00:40Z,reading,129 F,,,\n";
    Forecast first = forecasts(rows, "10:01").get(0);
    assertThat(first.outlook()).isEqualTo(Outlook.NOT_TOLD);
    assertThat(first.basis().has(Doubt.ONE_READING)).isTrue();
  }

  @Test
  void food_that_is_cold_or_gone_has_no_forecast() {
    String cold = FIRST.formatted("38 F") + reading("11:00", "60 F") + reading("12:00", "41 F");
    assertThat(forecasts(cold, "12:00")).isEmpty();
    String gone =
        FIRST.formatted("38 F")
            + reading("11:00", "95 F")
            + "SP-1,,,2026-03-02T11:30:00Z,discarded,,,,\n";
    assertThat(forecasts(gone, "11:30")).isEmpty();
  }

  /** Worked as above with what the walk-in read, not with the usual 38 °F. */
  @Test
  void a_check_takes_the_surroundings_from_readings_of_the_place_it_stands_in() {
    String rows =
        """
        SP-1,Leek soup,soup_or_stew,2026-03-02T10:00:00Z,cooked,135 F,,,
        SP-1,,,2026-03-02T10:01:00Z,cooling,,,walk-in,
        SP-1,,,2026-03-02T10:10:00Z,reading,130 F,,,
        SP-1,,,2026-03-02T11:10:00Z,reading,100 F,,,
        ,,,2026-03-02T10:30:00Z,reading,60 F,,other,
        """;
    String walkIn = ",,,2026-03-02T10:40:00Z,reading,50 F,,walk-in,\n";
    assertThat(checked(rows).get(0).basis().doubts()).contains(Doubt.SURROUNDINGS_NOT_LOGGED);
    List<Forecast> told = checked(rows + walkIn);
    assertThat(told.get(0).basis().doubts()).doesNotContain(Doubt.SURROUNDINGS_NOT_LOGGED);
    assertThat(told).isEqualTo(forecasts(rows, "11:30", Optional.of(Temperature.fahrenheit(50))));
  }

  @Test
  void what_a_place_read_before_the_food_was_hot_again_is_not_around_it() {
    String rows =
        """
        SP-1,Leek soup,soup_or_stew,2026-03-01T10:00:00Z,chilled,38 F,,,
        SP-1,,,2026-03-01T11:00:00Z,frozen,,,freezer,
        ,,,2026-03-02T08:00:00Z,reading,-5 F,,freezer,
        SP-1,,,2026-03-02T09:00:00Z,reheating,30 F,,,
        SP-1,,,2026-03-02T10:00:00Z,reading,170 F,,,
        SP-1,,,2026-03-02T10:30:00Z,reading,130 F,,,
        SP-1,,,2026-03-02T11:10:00Z,reading,100 F,,,
        """;
    assertThat(checked(rows).get(0).basis().doubts()).contains(Doubt.SURROUNDINGS_NOT_LOGGED);
  }

  private static List<Forecast> checked(String rows) {
    Instant now = Instant.parse("2026-03-02T11:30:00Z");
    Judge judge =
        new Judge(
            library().ruleBook("us-food-code-2022").orElseThrow(),
            library().keepingList(),
            ZoneOffset.UTC);
    LogCheck.Checked checked = new LogCheck(judge, WRITTEN).check(incoming(HEADER + rows), now);
    return checked.forecasts(checked.lots().get(0));
  }
}
