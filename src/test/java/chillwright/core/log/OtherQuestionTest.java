package chillwright.core.log;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** How people say it in both languages: common practice, no source. */
class OtherQuestionTest {
  @ParameterizedTest
  @CsvSource({
    "chili left out since last night, LEFT_OUT",
    "ham left out overnight, LEFT_OUT",
    "rice left in the pot overnight, LEFT_OUT",
    "leftover pizza left on counter, LEFT_OUT",
    "soup overnight, LEFT_OUT",
    "stew that sat out, LEFT_OUT",
    "Chili on the counter, LEFT_OUT",
    "caldo fuera del refrigerador, LEFT_OUT",
    "arroz dejado en la olla, LEFT_OUT",
    "sopa toda la noche, LEFT_OUT",
    "olvidé el arroz, LEFT_OUT",
    "may I refreeze soup, FREEZE_AGAIN",
    "re-freeze fish, FREEZE_AGAIN",
    "can soup be frozen again, FREEZE_AGAIN",
    "volver a congelar pollo, FREEZE_AGAIN",
    "meat after the power was out, POWER_OUT",
    "milk without power, POWER_OUT",
    "forgotten rice, LEFT_OUT",
    "soup standing on the stove, LEFT_OUT",
    "leche sin luz, POWER_OUT"
  })
  void what_became_of_a_food_is_another_question(String given, OtherQuestion asked) {
    assertThat(OtherQuestion.of(given)).contains(asked);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "leftover turkey",
        "leftovers",
        "overnight oats",
        "overnight french toast",
        "frozen turkey",
        "take out pizza",
        "takeout rice",
        "chili",
        "sour cream",
        "pollo congelado",
        "rollout cookies",
        "table cream",
        "power balls",
        "power bowl",
        "standing rib roast",
        "forgotten cookies",
        "what is left of the ham",
        "standby stew",
        "12 lb turkey",
        "pan dulce",
        "sobras de pollo"
      })
  void a_food_is_no_other_question(String given) {
    assertThat(OtherQuestion.of(given)).isEmpty();
  }
}
