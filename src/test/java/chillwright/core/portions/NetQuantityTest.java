package chillwright.core.portions;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Pairs of amounts by NIST Handbook 44, appendix C: 1 oz (avdp) = 28.349523125 g, 1 lb = 453.59237
 * g, 1 US fl oz = 29.57353 mL; 5 % is our own slack for rounding.
 */
class NetQuantityTest {
  private static NetQuantity read(String text) {
    return NetQuantity.read(text).orElseThrow();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Net Wt 12 oz (340 g)",
        "24 oz (680 g)",
        "24 OZ. (1 lb, 8 oz; 680 g)",
        "1 lb, 8 oz (680 g)",
        "Net Wt 1 lb 8 oz (680 g)",
        "1 lb 8 oz",
        "Net Wt 24 oz (1 lb 8 oz) 680 g",
        "NET WT. 1 1/2 LBS (680 g)",
        "2.2 lb (1 kg)",
        "35.3 oz (1,000 g)",
        "Peso neto: 1,5 kg (3.3 libras)",
        "12 fl. oz. (355 mL)",
        "12 oz (355 ml)",
        "1 qt (946 mL)",
        "6 bars (12 oz; 340 g)",
        "12 oz",
        "340 g",
        "6 bars"
      })
  void amounts_that_are_one_and_the_same_agree(String text) {
    assertThat(read(text).agrees()).isTrue();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "24 oz (6800 g)",
        "Net Wt 12 oz (34 g)",
        "12 oz (320 g)",
        "12 oz (359 g)",
        "1 lb (500 g)",
        "1 kg (1 lb)",
        "12 fl oz (320 mL)",
        "1 gal (4.5 L)"
      })
  void amounts_more_than_five_in_a_hundred_apart_do_not(String text) {
    assertThat(read(text).agrees()).isFalse();
  }

  /**
   * 1 oz = 28.3495 g, 1 lb = 453.592 g, 1 fl oz = 29.57353 mL (NIST SP 811, appendix B.8). NIST
   * Handbook 130, Uniform Packaging and Labeling Regulation, on rounding: no rounded declaration
   * may overstate the quantity; a conversion goes by the accuracy of the original measurement. The
   * rounder of two figures is taken for the original: our own reading of that.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "1 oz (28 g)          | 12 | 12 oz (340 g)", // 340.19
        "28 g (1 oz)          | 12 | 340 g (12 oz)",
        "Net Wt 2 oz (56.7 g) | 12 | Net Wt 24 oz (680.3 g)", // 680.388
        "1 1/2 oz (43 g)      | 3  | 4.5 oz (127 g)", // 127.57
        "1 1/4 oz (35 g)      | 12 | 15 oz (425 g)", // 425.24
        "1.25 OZ (35g)        | 12 | 15 OZ (425g)",
        "Net Wt 1\u00bc oz (35 g) | 12 | Net Wt 15 oz (425 g)",
        "\u00bd oz (14 g)        | 12 | 6 oz (170 g)", // 170.10
        "12.75 oz (361 g)     | 2  | 25.5 oz (722 g)", // 722.9
        "0.125 lb (57 g)      | 8  | 1 lb (453 g)", // 453.59
        "1.06 oz (30 g)       | 12 | 12.69 oz (360 g)", // 12.698
        "3.5 oz (100 g)       | 12 | 42.3 oz (1200 g)", // 42.33
        "2.2 lb (1 kg)        | 3  | 6.6 lb (3 kg)", // 6.614
        "1 lb 8 oz (680 g)    | 3  | 4 lb 8 oz (2041 g)", // 72 oz, 2041.17 g
        "1 lb 1.6 oz (500 g)  | 2  | 2 lb 3.2 oz (1000 g)", // 35.27 oz
        "1 lb (16 oz) 453 g   | 2  | 2 lb (32 oz) 907 g", // 907.18
        "12 fl oz (355 mL)    | 6  | 72 fl oz (2129 mL)", // 2129.29
        "1 oz (29 ml)         | 10 | 10 oz (295 ml)", // 295.74
        "1 oz (28 g)          | 1  | 1 oz (28 g)",
        "6 bars (6 oz; 170 g) | 2  | 12 bars (12 oz; 340 g)", // 340.19
        "1 bar                | 7  | 7 bar",
        "1,000 g              | 2  | 2000 g",
        "0,5 kg               | 4  | 2 kg",
        "1/3 lb               | 10 | 3.33333 lb"
      })
  void so_many_portions_are_so_many_times_the_quantity(String one, int times, String all) {
    assertThat(read(one).times(times).text()).isEqualTo(all);
  }

  @ParameterizedTest
  @ValueSource(strings = {"1e3 oz", "1E3 g", "2e-1 kg", "\u00bc", "oz"})
  void what_tells_no_quantity_is_refused(String text) {
    assertThat(NetQuantity.read(text)).isEmpty();
  }

  /** A label whose two figures agree for one portion has two that agree for any number of them. */
  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void a_total_agrees_with_itself(int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int ounces = random.nextInt(4, 60);
    String one = "%d oz (%d g)".formatted(ounces, Math.round(ounces * 28.3495));
    assertThat(read(one).times(random.nextInt(1, 200)).agrees()).as(one).isTrue();
  }

  private static IntStream seeds() {
    return IntStream.range(0, 40);
  }
}
