package chillwright.service.ahead;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chillwright.core.ahead.Filled;
import chillwright.core.ahead.Told;
import chillwright.print.AheadText;
import chillwright.print.Language;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is taken where a cook does not say how warm it is round the food, or the food itself. */
class AroundTest {
  private static List<Told> told(Question question, String ruleSet, String pairs) {
    return QuestionTest.answer(question, pairs, QuestionTest.setting(ruleSet)).told();
  }

  private static List<String> says(List<Told> told) {
    return told.stream().map(new AheadText(Language.ENGLISH)::says).toList();
  }

  /**
   * What is taken is our own, no source, but for melting ice: 32 °F by definition of the scale. The
   * answer is that of the same question with the figure given.
   */
  @ParameterizedTest
  @CsvSource({
    "still_air, 38F, 38 °F (3 °C)",
    "moving_air, 38F, 38 °F (3 °C)",
    "counter, 75F, 75 °F (24 °C)",
    "running_water, 68F, 68 °F (20 °C)",
    "stirred_bath, 32F, 32 °F (0 °C)"
  })
  void a_usual_figure_is_taken_and_shown(String surface, String given, String shown) {
    String asked = "depth=4in surface=" + surface;
    List<Told> taken = told(Question.COOLING, "us-home", asked);
    List<String> said = says(told(Question.COOLING, "us-home", asked + " surroundings=" + given));
    assertThat(says(taken)).containsAll(said);
    assertThat(says(taken))
        .filteredOn(line -> line.startsWith("You gave no temperature"))
        .singleElement()
        .asString()
        .contains(shown);
    assertThat(said).noneMatch(line -> line.startsWith("You gave no temperature"));
  }

  /** A room of 75 °F cools nothing to the 41 °F of 3-501.14(A)(2). */
  @Test
  void on_a_counter_it_is_said_that_it_never_gets_cold() {
    assertThat(told(Question.COOLING, "us-home", "depth=2in surface=counter"))
        .extracting(Told::key)
        .contains("cooling.advice.never")
        .doesNotContain("cooling.advice.misses");
    assertThat(told(Question.COOLING, "us-food-code-2022", "depth=2in surface=counter"))
        .extracting(Told::key)
        .contains("cooling.never");
  }

  /** FoodSafety.gov, food safety during a power outage: above 40 °F for more than 2 h, discard. */
  @Test
  void at_home_food_that_thawed_for_too_long_has_no_date() {
    String soup = "category=soup_or_stew frozen=2026-11-01 steps=";
    assertThat(told(Question.FROZEN_LIFE, "us-home", soup + "45F:1h,45F:61min"))
        .extracting(Told::key)
        .containsExactly("frozen-life.discard");
    for (String cold : List.of("45F:2h", "40F:3h", "45F:90min,30F:1h,45F:90min")) {
      assertThat(told(Question.FROZEN_LIFE, "us-home", soup + cold))
          .extracting(Told::key)
          .doesNotContain("frozen-life.discard");
    }
  }

  /** 2 US gallons are 7.57 L: 231 cubic inches a gallon, NIST Handbook 44, appendix C. */
  @Test
  void the_ice_is_told_for_what_there_is_of_it() {
    Filled of =
        told(Question.COOLING, "us-home", "depth=4in volume=2gal food=chicken_stock").stream()
            .filter(told -> told.key().equals("cooling.do.bath-ice"))
            .flatMap(told -> told.filled().stream())
            .filter(filled -> filled.name().equals("of"))
            .findFirst()
            .orElseThrow();
    assertThat(((Filled.Amount) of.value()).amount()).isCloseTo(7.57, within(0.01));
  }

  /**
   * FDA Food Code 2022, 3-501.14(A)(2): 41 °F. FoodSafety.gov, Cold Food Storage Chart: at home the
   * refrigerator is at 40 °F. Water boils at 212 °F at sea level.
   */
  @ParameterizedTest
  @CsvSource({"us-food-code-2022, 41F, 41 °F (5 °C)", "us-home, 40F, 40 °F (4 °C)"})
  void ice_is_told_from_boiling_to_what_the_rules_ask(String rules, String end, String shown) {
    List<String> taken = says(told(Question.ICE, rules, "volume=2gal"));
    assertThat(taken.get(0))
        .isEqualTo(says(told(Question.ICE, rules, "volume=2gal start=212F to=" + end)).get(0));
    assertThat(taken)
        .anyMatch(line -> line.contains("boiling is taken, 212 °F (100 °C)"))
        .anyMatch(line -> line.contains(shown + " is taken, as cold as the rules ask"));
  }

  /** Which food is like another is our own, no source; the words are those of the keeping list. */
  @ParameterizedTest
  @CsvSource({
    "stock, 'Chicken stock, home-made'",
    "bone-broth, 'Chicken stock, home-made'",
    "caldo, 'Chicken stock, home-made'",
    "soup, Vegetable beef soup",
    "chilli, Chili with beans",
    "stew, Beef stew",
    "salsa, Tomato sauce",
    "frijoles, 'Pinto beans, boiled'",
    "chicken, 'Turkey breast, roasted'"
  })
  void a_food_is_found_by_the_words_of_the_keeping_list(String word, String like) {
    assertThat(says(told(Question.ICE, "us-home", "volume=2gal food=" + word)))
        .contains(
            "The tables have no such food: these figures are for " + like + ", the nearest to it.");
  }

  @Test
  void a_food_of_the_tables_is_itself_and_a_word_for_two_is_asked_about() {
    assertThat(told(Question.ICE, "us-home", "volume=2gal food=chicken_stock"))
        .extracting(Told::key)
        .doesNotContain("like-food", "assumed-food");
    assertThat(QuestionTest.faults(Question.ICE, "volume=2gal food=curry"))
        .singleElement()
        .satisfies(
            fault -> assertThat(fault.says()).contains("Beef stew or Lasagna with meat sauce"));
  }
}
