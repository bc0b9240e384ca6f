package chillwright.core.portions;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.heat.Reason;
import chillwright.rulebook.Handbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Pans, shelves and measures. */
class PortionsTest {
  private static Pan pan(String key) {
    return Handbook.shipped().pans().stream()
        .filter(pan -> pan.key().equals(key))
        .findFirst()
        .orElseThrow();
  }

  /**
   * Derived: pans of 20 x 12 in with 2 in between stand 12 + 2 + 12 = 26 in wide and 20 + 2 + 20 =
   * 42 in long; an inch less and one fits less, turned or not.
   */
  @ParameterizedTest
  @CsvSource({
    "1, 42, 26, full-2.5, 4",
    "1, 41, 26, full-2.5, 3",
    "1, 42, 25, full-2.5, 3",
    "3, 42, 26, full-2.5, 12",
    "1, 12, 20, full-2.5, 1",
    "1, 11, 40, full-2.5, 0",
    "1, 22, 12, half-4, 2"
  })
  void pans_stand_side_by_side_with_air_between(
      int shelves, double length, double width, String pan, int fit) {
    assertThat(new Shelves(shelves, length, width, 2).fit(pan(pan))).isEqualTo(fit);
  }

  @Test
  void no_layer_is_deeper_than_its_pan() {
    assertThat(pan("full-2.5").fluidOunces(3).reason()).contains(Reason.PAN_TOO_SHALLOW);
    assertThat(pan("full-2.5").fluidOunces(2.5).value()).contains(240.0);
    assertThat(pan("full-4").fluidOunces(2).value()).contains(210.0);
  }

  /**
   * Institute of Child Nutrition, Basics at a Glance: a ladle of 8 oz is a cup, no. 16 is 1/4 cup.
   */
  @ParameterizedTest
  @CsvSource({"8, ladle-8", "2, scoop-16", "5.3, scoop-6", "1.7, scoop-20"})
  void a_portion_is_served_with_the_nearest_tool(double ounces, String tool) {
    assertThat(new Portion(ounces).tool(Handbook.shipped().measures()).map(Measure::key))
        .contains(tool);
  }

  @Test
  void a_portion_that_no_tool_measures_has_none() {
    assertThat(new Portion(25).tool(Handbook.shipped().measures())).isEmpty();
  }
}
