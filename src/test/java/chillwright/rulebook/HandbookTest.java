package chillwright.rulebook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import chillwright.core.heat.Practice;
import chillwright.core.portions.Measure;
import chillwright.core.portions.Pan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The tables in this jar, each beside who printed its figures. */
class HandbookTest {
  private static final Handbook HANDBOOK = Handbook.shipped();

  @Test
  void the_files_of_this_jar_pass_their_schema() {
    assertThat(Shipped.handbook())
        .isNotEmpty()
        .allSatisfy(
            file ->
                assertThat(
                        SchemaCheck.HANDBOOK.allFaults(
                            YamlText.read(file, new Faults()).orElseThrow()))
                    .isEmpty());
  }

  /** What is only remembered is not shipped, and what is shipped says who printed it. */
  @Test
  void every_figure_has_its_source() {
    HANDBOOK.foods().forEach(food -> isSourced(food.source(), food.status()));
    HANDBOOK.surfaces().forEach(surface -> isSourced(surface.source(), surface.status()));
    HANDBOOK.pans().forEach(pan -> isSourced(pan.source(), pan.status()));
    HANDBOOK.measures().forEach(measure -> isSourced(measure.source(), measure.status()));
    HANDBOOK.lives().forEach(life -> isSourced(life.source(), life.status()));
    HANDBOOK.figures().forEach(figure -> isSourced(figure.source(), figure.status()));
    assertThat(HANDBOOK.foods()).hasSize(16);
    assertThat(HANDBOOK.pans()).hasSize(18);
    assertThat(HANDBOOK.measures()).hasSize(20);
  }

  private static void isSourced(String source, String status) {
    assertThat(source).hasSizeGreaterThan(10);
    assertThat(status).isIn("verified", "reported");
  }

  /** The steamer maker's handbook, Sizing up pan capacity: fluid ounces in use. */
  @ParameterizedTest
  @CsvSource({
    "full, 240, 420, 625",
    "two-thirds, 175, 294, 435",
    "half, 125, 208, 314",
    "third, 75, 125, 186",
    "quarter, 55, 95, 140",
    "sixth, 35, 55, 82"
  })
  void a_pan_holds_what_its_table_prints(String size, double low, double middle, double high) {
    assertThat(pan(size + "-2.5").usableFluidOunces()).isEqualTo(low);
    assertThat(pan(size + "-4").usableFluidOunces()).isEqualTo(middle);
    assertThat(pan(size + "-6").usableFluidOunces()).isEqualTo(high);
  }

  private static Pan pan(String key) {
    return HANDBOOK.pans().stream().filter(pan -> pan.key().equals(key)).findFirst().orElseThrow();
  }

  /**
   * Institute of Child Nutrition, Basics at a Glance: printed tablespoons and cups are rounded, 1
   * cup is 8 fl oz, 1 tablespoon half of one.
   */
  @ParameterizedTest
  @CsvSource({
    "scoop-6, 5.333", "scoop-8, 4", "scoop-10, 3", "scoop-12, 2.667", "scoop-16, 2",
    "scoop-20, 1.667", "scoop-24, 1.333", "scoop-30, 1", "scoop-40, 0.833", "ladle-6, 6"
  })
  void a_scoop_holds_what_its_table_prints(String key, double ounces) {
    Measure measure =
        HANDBOOK.measures().stream().filter(m -> m.key().equals(key)).findFirst().orElseThrow();
    assertThat(measure.fluidOunces()).isCloseTo(ounces, withinPercentage(7));
  }

  /** Who printed each is in the file; a freezer's load is 2 to 3 lb a cubic foot (USDA). */
  @Test
  void kitchen_figures_are_ranges() {
    Practice load = HANDBOOK.figure("freezer-load");
    assertThat(load.low()).isEqualTo(2);
    assertThat(load.high()).isEqualTo(3);
  }
}
