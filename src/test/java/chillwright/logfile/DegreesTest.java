package chillwright.logfile;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.measure.Temperature;
import chillwright.core.measure.Temperature.Scale;
import java.math.BigDecimal;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The forms and limits are those that the format of this project's log files states. */
class DegreesTest {
  @ParameterizedTest(name = "{0} is {1} hundredths {2}")
  @CsvSource({
    "128.5F, 12850, FAHRENHEIT",
    "53.6 C, 5360, CELSIUS",
    "41°F, 4100, FAHRENHEIT",
    "-4 °C, -400, CELSIUS",
    "\u22124 °C, -400, CELSIUS",
    "+4 °C, 400, CELSIUS",
    "41f, 4100, FAHRENHEIT",
    "5c, 500, CELSIUS",
    "41.05 ° F, 4105, FAHRENHEIT",
    "41\u00a0°F, 4100, FAHRENHEIT",
    "41ºF, 4100, FAHRENHEIT",
    "41℉, 4100, FAHRENHEIT",
    "5℃, 500, CELSIUS",
    "0041.00F, 4100, FAHRENHEIT",
    "-0F, 0, FAHRENHEIT",
    "-0.5C, -50, CELSIUS",
    "600F, 60000, FAHRENHEIT",
    "600.00F, 60000, FAHRENHEIT",
    "-100F, -10000, FAHRENHEIT",
    "315.55C, 31555, CELSIUS",
    "-73.33C, -7333, CELSIUS",
  })
  void temperatures_are_read_as_written(String text, int hundredths, Scale scale) {
    assertThat(Degrees.read(text)).contains(new Temperature(hundredths, scale));
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "128.5 | no-scale | The scale is missing. Write 128.5F or 128.5C.",
        "41° | no-scale | The scale is missing. Write 41F or 41C.",
        "53,6 C | decimal-comma | Write the decimals after a dot: 53.6 C, not with a comma.",
        "4100F | out-of-range | 4100 °F is outside what a kitchen's probe reads, -100 to 600 °F"
            + " (-73 to 315 °C). Did you mean 41 °F?",
        "1355F | out-of-range | 1355 °F is outside what a kitchen's probe reads, -100 to 600 °F"
            + " (-73 to 315 °C). Did you mean 135.5 °F?",
        "1100F | out-of-range | 1100 °F is outside what a kitchen's probe reads, -100 to 600 °F"
            + " (-73 to 315 °C). Did you mean 110 °F?",
        "1650F | out-of-range | 1650 °F is outside what a kitchen's probe reads, -100 to 600 °F"
            + " (-73 to 315 °C). Did you mean 165 °F?",
        "400C | out-of-range | 400 °C is outside what a kitchen's probe reads, -100 to 600 °F"
            + " (-73 to 315 °C). Did you mean 40 °C?",
        "600.01F | out-of-range | 600.01 °F is outside what a kitchen's probe reads, -100 to 600 °F"
            + " (-73 to 315 °C).",
        "-100.01F | out-of-range | -100.01 °F is outside what a kitchen's probe reads, -100 to 600"
            + " °F (-73 to 315 °C).",
        "315.56C | out-of-range | 315.56 °C is outside what a kitchen's probe reads, -100 to 600 °F"
            + " (-73 to 315 °C).",
        "-73.34C | out-of-range | -73.34 °C is outside what a kitchen's probe reads, -100 to 600 °F"
            + " (-73 to 315 °C).",
        "99999999999F | out-of-range | 99999999999 °F is outside what a kitchen's probe reads, -100"
            + " to 600 °F (-73 to 315 °C).",
        "128.555F | too-many-decimals | A reading has at most two decimals, such as 128.55F.",
        "301K | bad-temperature | After the number goes F or C and nothing else. Write it like"
            + " 128.5F or 53.6 C.",
        "41FF | bad-temperature | After the number goes F or C and nothing else. Write it like"
            + " 128.5F or 53.6 C.",
        "5.F | bad-temperature | This is not a temperature. Write it like 128.5F or 53.6 C.",
        ".5F | bad-temperature | This is not a temperature. Write it like 128.5F or 53.6 C.",
        "- 4F | bad-temperature | This is not a temperature. Write it like 128.5F or 53.6 C.",
        "F | bad-temperature | This is not a temperature. Write it like 128.5F or 53.6 C.",
        "warm | bad-temperature | This is not a temperature. Write it like 128.5F or 53.6 C.",
      })
  void other_texts_are_refused_with_what_to_do(String text, String code, String says) {
    assertThat(Degrees.read(text)).isEmpty();
    assertThat(Degrees.flaw(text)).isEqualTo(new Degrees.Flaw(code, says));
  }

  static IntStream seeds() {
    return IntStream.range(0, 200);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void what_a_temperature_prints_is_read_back(int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    Temperature read = new Temperature(random.nextInt(-7333, 31556), Scale.CELSIUS);
    assertThat(Degrees.read(read.text())).contains(read);
    String plain = BigDecimal.valueOf(read.hundredths(), 2).toPlainString();
    assertThat(Degrees.read(plain + "C")).contains(read);
  }
}
