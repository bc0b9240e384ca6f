package chillwright.core.kitchen;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.kitchen.KnownPlace.Kind;
import chillwright.core.measure.Temperature;
import chillwright.core.rules.RuleSet;
import chillwright.rulebook.BrokenRules;
import chillwright.rulebook.RuleLibrary;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the readings of places are held against. */
class PlaceLimitTest {
  private static RuleSet rules(String id) {
    try {
      return RuleLibrary.load(Optional.empty())
          .ruleBook(id)
          .orElseThrow()
          .on(LocalDate.parse("2026-03-03"));
    } catch (BrokenRules e) {
      throw new AssertionError(e);
    }
  }

  private static Temperature read(String text) {
    double degrees = Double.parseDouble(text.substring(0, text.length() - 1));
    return text.endsWith("F") ? Temperature.fahrenheit(degrees) : Temperature.celsius(degrees);
  }

  private static PlaceLimit limit(Kind kind, String own, String rules) {
    Optional<Temperature> figure = Optional.ofNullable(own).map(PlaceLimitTest::read);
    return PlaceLimit.of(new KnownPlace("P", kind, figure, 2), rules(rules)).orElseThrow();
  }

  /** FDA Food Code 2022 3-501.16(A)(1) and (2); FoodSafety.gov, Cold Food Storage Chart. */
  @ParameterizedTest
  @CsvSource({
    "REFRIGERATOR, us-food-code-2022, 41F, true",
    "REFRIGERATOR, us-food-code-2022, 41.5F, false",
    "REFRIGERATOR, us-food-code-2022, 5C, true",
    "REFRIGERATOR, us-food-code-2022, 5.1C, false",
    "REFRIGERATOR, us-home, 40F, true",
    "REFRIGERATOR, us-home, 41F, false",
    "HOT_HOLDING, us-food-code-2022, 135F, true",
    "HOT_HOLDING, us-food-code-2022, 57C, true",
    "HOT_HOLDING, us-food-code-2022, 134F, false",
    "FREEZER, us-food-code-2022, 0F, true",
    "FREEZER, us-food-code-2022, -18C, true",
    "FREEZER, us-food-code-2022, 1F, false",
  })
  void a_reading_is_held_against_what_is_printed(
      Kind kind, String rules, String reading, boolean isMet) {
    assertThat(limit(kind, null, rules).isMet(read(reading))).isEqualTo(isMet);
  }

  /** The model code prints no figure for stored frozen food: it stays frozen (3-501.11). */
  @Test
  void the_figure_of_a_freezer_is_about_quality() {
    assertThat(limit(Kind.FREEZER, null, "us-food-code-2022").source())
        .isEqualTo(PlaceLimit.Source.QUALITY);
  }

  /** A choice of our own: a kitchen that asks more of itself is held to that. */
  @ParameterizedTest
  @CsvSource({
    "REFRIGERATOR, 38F, 38F, true",
    "REFRIGERATOR, 38F, 39F, false",
    "REFRIGERATOR, 38F, 3.3C, true",
    "REFRIGERATOR, 38F, 3.4C, false",
    "HOT_HOLDING, 140F, 139F, false",
    "FREEZER, -10F, -9F, false",
    "FREEZER, 5F, 5F, true",
  })
  void a_figure_of_its_own_goes_before(Kind kind, String own, String reading, boolean isMet) {
    PlaceLimit limit = limit(kind, own, "us-food-code-2022");
    assertThat(limit.source()).isEqualTo(PlaceLimit.Source.HOUSE);
    assertThat(limit.isMet(read(reading))).isEqualTo(isMet);
  }

  @Test
  void a_counter_has_no_limit() {
    KnownPlace counter = new KnownPlace("P", Kind.COUNTER, Optional.empty(), 0);
    assertThat(PlaceLimit.of(counter, rules("us-food-code-2022"))).isEmpty();
  }

  /**
   * The eight of the Food Allergen Labeling and Consumer Protection Act of 2004 (milk, egg, fish,
   * Crustacean shellfish, tree nuts, wheat, peanuts, soybeans), and sesame by the FASTER Act of
   * 2021, as fda.gov lists them.
   */
  @Test
  void the_allergens_are_those_of_the_law() {
    assertThat(Arrays.stream(Allergen.values()).map(Allergen::key))
        .containsExactlyInAnyOrder(
            "milk",
            "eggs",
            "fish",
            "crustacean_shellfish",
            "tree_nuts",
            "wheat",
            "peanuts",
            "soybeans",
            "sesame");
  }
}
