package chillwright.core.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import chillwright.core.measure.Temperature.Scale;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class LimitTest {
  private static final Limit COLD = Limit.of(5, 41);
  private static final Limit MIDDLE = Limit.of(21, 70);
  private static final Limit HOT = Limit.of(57, 135);
  private static final Limit REHEATED = Limit.of(74, 165);

  /** 16 Del. Admin. Code 3-501.14(A)(2): "5 °C (41 °F) or less"; (A)(1): 21 °C (70 °F). */
  @ParameterizedTest(name = "{0} hundredths {1}: cold {2}, past the middle {3}")
  @CsvSource({
    "500, CELSIUS, true, true",
    "501, CELSIUS, false, true",
    "4100, FAHRENHEIT, true, true",
    "4101, FAHRENHEIT, false, true",
    "2100, CELSIUS, false, true",
    "2101, CELSIUS, false, false",
    "7000, FAHRENHEIT, false, true",
    "7001, FAHRENHEIT, false, false"
  })
  void the_cold_limits_pass_at_the_limit(
      int hundredths, Scale scale, boolean isCold, boolean isPastMiddle) {
    Temperature reading = new Temperature(hundredths, scale);
    assertThat(COLD.isColdEnough(reading)).isEqualTo(isCold);
    assertThat(MIDDLE.isColdEnough(reading)).isEqualTo(isPastMiddle);
  }

  /** 16 Del. Admin. Code 3-501.16(A)(1), 57 °C (135 °F); 3-403.11(A), 74 °C (165 °F). */
  @ParameterizedTest(name = "{0} hundredths {1}: hot {2}, reheated {3}")
  @CsvSource({
    "5700, CELSIUS, true, false",
    "5699, CELSIUS, false, false",
    "13500, FAHRENHEIT, true, false",
    "13480, FAHRENHEIT, false, false",
    "7400, CELSIUS, true, true",
    "7390, CELSIUS, true, false",
    "16500, FAHRENHEIT, true, true",
    "16499, FAHRENHEIT, true, false"
  })
  void the_hot_limits_are_judged_in_the_scale_of_the_reading(
      int hundredths, Scale scale, boolean isHot, boolean isReheated) {
    Temperature reading = new Temperature(hundredths, scale);
    assertThat(HOT.isHotEnough(reading)).isEqualTo(isHot);
    assertThat(REHEATED.isHotEnough(reading)).isEqualTo(isReheated);
  }

  /** 80 °F = 26.67 °C: FSIS Appendix B (1999) prints its middle limit in Fahrenheit only. */
  @Test
  void a_limit_printed_in_one_scale_is_compared_by_exact_conversion() {
    Limit eighty = new Limit(OptionalInt.empty(), OptionalInt.of(80_00), true);
    assertThat(eighty.isColdEnough(new Temperature(26_66, Scale.CELSIUS))).isTrue();
    assertThat(eighty.isColdEnough(new Temperature(26_67, Scale.CELSIUS))).isFalse();
    assertThat(eighty.text(Scale.CELSIUS)).isEqualTo("80 °F");
  }

  /** Minn. R. 4626.0408 asks for strictly below 41 °F at the start of time control. */
  @Test
  void a_limit_may_pass_only_beyond_itself() {
    Limit below = new Limit(OptionalInt.of(5_00), OptionalInt.of(41_00), false);
    assertThat(below.isColdEnough(new Temperature(41_00, Scale.FAHRENHEIT))).isFalse();
    assertThat(below.isColdEnough(new Temperature(40_99, Scale.FAHRENHEIT))).isTrue();
  }

  /** 0 °C = 32 °F, 100 °C = 212 °F and -40 in both, by definition of the two scales. */
  @ParameterizedTest(name = "{0} °C is {1} °F")
  @CsvSource({"0, 3200", "10000, 21200", "-4000, -4000", "500, 4100", "6000, 14000"})
  void both_scales_count_the_same(int celsius, int fahrenheit) {
    assertThat(new Temperature(celsius, Scale.CELSIUS).nineHundredths())
        .isEqualTo(new Temperature(fahrenheit, Scale.FAHRENHEIT).nineHundredths());
  }

  @Test
  void what_no_kitchen_reads_is_refused() {
    assertThat(Temperature.isAccepted(-100_00, Scale.FAHRENHEIT)).isTrue();
    assertThat(Temperature.isAccepted(-100_01, Scale.FAHRENHEIT)).isFalse();
    assertThat(Temperature.isAccepted(600_00, Scale.FAHRENHEIT)).isTrue();
    assertThat(Temperature.isAccepted(600_01, Scale.FAHRENHEIT)).isFalse();
    assertThatThrownBy(() -> new Temperature(600_01, Scale.FAHRENHEIT))
        .isInstanceOf(IllegalArgumentException.class);
  }

  static IntStream seeds() {
    return IntStream.range(0, 40);
  }

  /** Own convention: cooling a reading further can never turn "cold enough" into "too warm". */
  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void colder_never_becomes_too_warm(int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    Temperature reading = new Temperature(random.nextInt(-4000, 21000), Scale.FAHRENHEIT);
    Temperature colder =
        new Temperature(reading.hundredths() - random.nextInt(1, 5000), Scale.FAHRENHEIT);
    assertThat(COLD.isColdEnough(colder) || !COLD.isColdEnough(reading)).isTrue();
  }
}
