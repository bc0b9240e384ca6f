package chillwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chillwright.core.forecast.Forecast;
import chillwright.core.forecast.Speedup;
import chillwright.core.forecast.Speedup.Act;
import chillwright.core.forecast.Speedup.Window;
import chillwright.core.log.Incoming;
import chillwright.core.measure.Temperature.Scale;
import chillwright.logfile.Cells;
import chillwright.logfile.CsvLog;
import chillwright.print.Language;
import chillwright.print.SpeedupText;
import chillwright.rulebook.BrokenRules;
import chillwright.rulebook.RuleLibrary;
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
 * What would bring food to 41 °F (5 °C) sooner, from rows of a log. Each time to go is held against
 * the published measurement named beside it; the logs are made so that the food's own readings
 * promise what was measured before the change.
 */
class SpeedupsTest {
  private static final Instant NOW = Instant.parse("2026-03-02T11:00:00Z");
  private static final String HEADER = "lot,food,category,when,entry,temperature,air,depth\n";

  /** Two readings, the second now, that promise 5 °C after so many hours in air of 1 °C. */
  private static String promises(double hours, double celsius, String depth) {
    double rate = Math.log((celsius - 1) / (5 - 1)) / hours;
    double hourAgo = 1 + (celsius - 1) * Math.exp(rate);
    return rows("%.2fC".formatted(hourAgo), "%.2fC".formatted(celsius), "1C", depth);
  }

  /** Cooked at 06:00, so that 41 °F is due at 12:00; only what was read after 09:00 counts. */
  private static String rows(String first, String second, String air, String depth) {
    return HEADER
        + "RC-1,Rice,cooked_rice_or_grain,2026-03-02T06:00:00Z,cooked,135F,%s,%s\n"
            .formatted(air, depth)
        + "RC-1,,,2026-03-02T09:00:00Z,action,,,\n"
        + "RC-1,,,2026-03-02T10:00:00Z,reading,%s,%s,\n".formatted(first, air)
        + "RC-1,,,2026-03-02T11:00:00Z,reading,%s,,\n".formatted(second);
  }

  /** The forecast of the last limit. */
  private static Forecast forecast(String csv) {
    try {
      RuleLibrary library = RuleLibrary.load(Optional.empty());
      Judge judge =
          new Judge(
              library.ruleBook("us-food-code-2022").orElseThrow(),
              library.keepingList(),
              ZoneOffset.UTC);
      List<Incoming> rows = new ArrayList<>();
      byte[] bytes = csv.getBytes(StandardCharsets.UTF_8);
      new CsvLog(new Cells(NOW)).read("log", new ByteArrayInputStream(bytes), rows::add);
      LogCheck.Checked checked = new LogCheck(judge, NOW).check(rows, NOW);
      assertThat(checked.problems()).isEmpty();
      List<Forecast> found = checked.forecasts(checked.lots().get(0));
      return found.get(found.size() - 1);
    } catch (BrokenRules | IOException broken) {
      throw new IllegalStateException(broken);
    }
  }

  private static Speedup speedup(Forecast forecast, Act act) {
    return forecast.speedups().stream().filter(of -> of.act() == act).findFirst().orElseThrow();
  }

  private static Window window(Forecast forecast, Act act) {
    return speedup(forecast, act).window().orElseThrow();
  }

  private static double minutes(Instant moment) {
    return Duration.between(NOW, moment).toSeconds() / 60.0;
  }

  /**
   * Rice cooled from 50 to 10 °C in 12.5 to 13.5 h at 10 cm, in about 10 h at 5 cm (Müftügil 2016,
   * J Food and Health Science, doi 10.3153/jfhs16019). At best the square of the depth (Dickerson
   * and Read 1973).
   */
  @ParameterizedTest
  @CsvSource({"10cm, 2, 5 cm", "4in, 2, 2 in", "10.2cm, 3, 5 cm", "'', 2, 5 cm"})
  void rice_half_as_deep(String depth, int pans, String shallow) {
    Forecast forecast = forecast(promises(13, 50, depth));
    assertThat(minutes(forecast.expected().orElseThrow())).isCloseTo(13 * 60, within(2.0));
    Speedup divided = speedup(forecast, Act.DIVIDE);
    Window window = divided.window().orElseThrow();
    assertThat(minutes(window.expected())).isCloseTo(10 * 60, within(10.0));
    assertThat(minutes(window.earliest()))
        .isCloseTo(minutes(forecast.earliest().orElseThrow()) / 4, within(10.0));
    assertThat(divided.pans()).isEqualTo(pans);
    assertThat(divided.depth().text()).isEqualTo(shallow);
    assertThat(divided.isDepthAssumed()).isEqualTo(depth.isEmpty());
  }

  /**
   * A joint of 110 mm took 5.1 h in air of 0 °C, 3.6 in water; a roast of 130 mm 10.3 and 8.5 h in
   * air and in water of 1 °C (James and James, Meat Refrigeration, 2002, table 16.7).
   */
  @ParameterizedTest
  @CsvSource({"5.1, 3.6", "10.3, 8.5"})
  void a_joint_in_water(double inAir, double inWater) {
    Window window = window(forecast(promises(inAir, 45, "")), Act.ICE_BATH);
    assertThat(inWater * 60).isBetween(minutes(window.earliest()), latest(window) + 1);
  }

  private static double latest(Window window) {
    return minutes(window.latest().orElseThrow());
  }

  /**
   * Pots of 600 g of soup took 272 minutes in air of 0 °C at 1 m/s, 228 at 3 and 197 at 6 (James
   * and others, 2010, International Institute of Refrigeration, 2010-0537).
   */
  @Test
  void soup_in_moving_air() {
    Forecast forecast = forecast(promises(272 / 60.0, 50, ""));
    Window window = window(forecast, Act.MOVING_AIR);
    assertThat(minutes(window.expected())).isCloseTo(228, within(2.0));
    assertThat(minutes(window.earliest())).isLessThan(197);
    assertThat(window.latest()).isEqualTo(forecast.latest());
  }

  /**
   * Soup of 80 °F in a bowl on ice, stirred, is at 41 °F after 17.75 minutes in steel and 55.56 in
   * plastic: our arithmetic from a magazine's test, 174 to 80 °F in 11.5 and 36 minutes. A layer of
   * 4 in, 0.1016 m, has 2.90 times as much food for its wall as that bowl (0.035 m).
   */
  @ParameterizedTest
  @CsvSource({"1.25in, 17.75, 17.75, 55.56", "4in, 17.75, 51.53, 161.3"})
  void soup_stirred_on_ice(String depth, double earliest, double expected, double latest) {
    Window window = window(forecast(rows("100F", "80F", "38F", depth)), Act.STIRRED_ICE_BATH);
    assertThat(minutes(window.earliest())).isCloseTo(earliest, within(1.0));
    assertThat(minutes(window.expected())).isCloseTo(expected, within(1.0));
    assertThat(latest(window)).isCloseTo(latest, within(1.0));
  }

  /**
   * From 80 to 41 °F in air of 38 °F takes ln(42 / 3) = 2.639 steps of the curve, in a freezer of 0
   * °F ln(80 / 41) = 0.6685: 0.2533 of the time (our arithmetic on the log-linear curve).
   */
  @Test
  void food_moved_to_a_freezer_keeps_its_curve() {
    Forecast forecast = forecast(rows("100F", "80F", "38F", ""));
    double own = minutes(forecast.expected().orElseThrow());
    assertThat(minutes(window(forecast, Act.FREEZER).expected()))
        .isCloseTo(own * 0.2533, within(1.0));
  }

  /** No source: it follows from the meaning of the list. */
  @Test
  void the_soonest_comes_first_and_what_no_figure_times_last() {
    Forecast forecast = forecast(promises(13, 50, "10cm"));
    assertThat(forecast.speedups())
        .extracting(Speedup::act)
        .startsWith(Act.STIRRED_ICE_BATH)
        .endsWith(Act.STIR, Act.ICE_IN_FOOD)
        .hasSize(7);
    List<Window> windows =
        forecast.speedups().stream().map(Speedup::window).flatMap(Optional::stream).toList();
    assertThat(windows).extracting(Window::expected).isSorted();
    assertThat(windows)
        .allSatisfy(window -> assertThat(window.expected()).isAfterOrEqualTo(window.earliest()))
        .allSatisfy(window -> assertThat(window.expected()).isBeforeOrEqualTo(last(window)));
  }

  private static Instant last(Window window) {
    return window.latest().orElseThrow();
  }

  /** No source: in time it needs no haste, with one reading nothing shows that it is late. */
  @Test
  void food_in_time_or_untold_has_none() {
    String cooked =
        HEADER + "RC-1,Rice,cooked_rice_or_grain,2026-03-02T10:00:00Z,cooked,135F,34F,\n";
    String read = "RC-1,,,2026-03-02T10:50:00Z,reading,75F,,\n";
    assertThat(forecast(cooked).speedups()).isEmpty();
    assertThat(forecast(cooked + read).speedups()).isEmpty();
  }

  /** Where the air is warmer than the limit neither shallow pans nor a fan bring it there. */
  @Test
  void in_air_that_is_too_warm_only_ice_has_a_time() {
    Forecast forecast = forecast(rows("100F", "80F", "45F", "4in"));
    assertThat(forecast.speedups())
        .extracting(Speedup::act)
        .containsExactly(Act.STIRRED_ICE_BATH, Act.STIR, Act.ICE_IN_FOOD);
  }

  /** The words tell an assumed depth, count from now, and give the untimed in one line. */
  @Test
  void the_words_say_what_was_assumed() {
    Forecast forecast = forecast(rows("100F", "80F", "38F", ""));
    SpeedupText text = new SpeedupText(ZoneOffset.UTC, Scale.FAHRENHEIT, NOW, Language.ENGLISH);
    List<SpeedupText.Line> lines = text.lines(List.of(forecast));
    assertThat(lines).hasSize(6);
    assertThat(lines.get(0).says())
        .isEqualTo(
            "Stand it in ice water, keep ice in the water, and stir the food all the time: 41 °F"
                + " about 11:52 (11:18 to 13:42).");
    assertThat(lines.get(0).basis()).contains("food 4 in deep", "4 in (10 cm) is assumed");
    assertThat(lines.get(5).says()).startsWith("No time can be told for this: stir it now");
    assertThat(text.best(forecast)).contains(lines.get(0).says());
  }
}
