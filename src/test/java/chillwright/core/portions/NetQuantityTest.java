package chillwright.core.portions;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
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

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Net Wt 2 oz (56.7 g) | 12 | Net Wt 24 oz (680.4 g)",
        "1 1/2 oz (43 g)      | 3  | 4.5 oz (129 g)",
        "1 bar                | 7  | 7 bar",
        "1,000 g              | 2  | 2000 g",
        "0,5 kg               | 4  | 2 kg",
        "1/3 lb               | 10 | 3.33333 lb"
      })
  void so_many_portions_are_so_many_times_the_quantity(String one, int times, String all) {
    assertThat(read(one).times(times).text()).isEqualTo(all);
  }
}
