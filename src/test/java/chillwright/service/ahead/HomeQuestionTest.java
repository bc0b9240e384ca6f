package chillwright.service.ahead;

import static chillwright.service.ahead.QuestionTest.amount;
import static chillwright.service.ahead.QuestionTest.answer;
import static chillwright.service.ahead.QuestionTest.told;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chillwright.core.ahead.Ahead;
import chillwright.core.ahead.Filled;
import chillwright.core.ahead.Told;
import chillwright.print.AheadText;
import chillwright.print.Language;
import java.util.List;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a cook at home asks of the questions, and how plainly they answer. */
class HomeQuestionTest {
  /**
   * The same rules, and the federal hotline's 1.5 times as long from frozen: 6 h. The clock of this
   * test stands at noon of 24 November 2026.
   */
  @Test
  void a_start_that_has_passed_is_too_late_and_the_oven_is_told() {
    Ahead late = answer(Question.THAWING, "weight=12lb cooking=4h serve-at=2026-11-24T19:00");
    told(late, "thawing.pull.late");
    told(late, "thawing.soak.late");
    assertThat(told(late, "thawing.roast").filled().get(0).value())
        .isEqualTo(new Filled.Word("2026-11-24 13:00"));
    assertThat(says(late.told().get(0)))
        .startsWith("Too late to thaw it. What to do: into the oven still frozen by Tue 24 Nov")
        .endsWith("that takes 6 h instead of 4 h.");
    Ahead none = answer(Question.THAWING, "weight=12lb cooking=4h serve-at=2026-11-24T17:59");
    told(none, "thawing.roast.late");
    assertThat(none.told().get(0).key()).isEqualTo("thawing.none-makes");
    assertThat(says(none.told().get(1))).contains("served at Tue 24 Nov 2026 18:00 at the soonest");
  }

  /** University of Illinois Extension: 12 lb take 6 h in cold water; then 4 h of cooking. */
  @Test
  void too_late_for_the_refrigerator_it_is_told_to_go_into_cold_water() {
    Ahead late = answer(Question.THAWING, "weight=12lb cooking=4h serve-at=2026-11-25T06:00");
    assertThat(says(late.told().get(0)))
        .contains("What to do: into cold water by Tue 24 Nov 2026 20:00", "every 30 minutes");
    Ahead early = answer(Question.THAWING, "weight=12lb cooking=4h serve-at=2026-12-10T18:00");
    assertThat(says(early.told().get(0)))
        .isEqualTo("Into the refrigerator by Mon 7 Dec 2026 14:00.");
  }

  /**
   * USDA and a pull guide: 4 to 5 lb a day, so 12 lb take 57.6 to 72 h in the refrigerator; in cold
   * water 6 h; then 4 h of cooking. In 69 h it may be thawed, and cold water mends it if not.
   */
  @Test
  void between_the_shortest_and_the_longest_time_the_refrigerator_is_not_too_late() {
    Ahead in = answer(Question.THAWING, "weight=12lb cooking=4h serve-in=69h");
    Told perhaps = told(in, "thawing.refrigerator.perhaps");
    assertThat(amount(perhaps, "icyIn")).isEqualTo(59);
    assertThat(in.told()).extracting(Told::key).doesNotContain("thawing.none-makes");
    Ahead at = answer(Question.THAWING, "weight=12lb cooking=4h serve-at=2026-11-27T09:00");
    assertThat(says(at.told().get(0)))
        .startsWith("Into the refrigerator now")
        .contains("still icy by Thu 26 Nov 2026 23:00");
    Ahead late = answer(Question.THAWING, "weight=12lb cooking=4h serve-in=61h");
    told(late, "thawing.refrigerator.late");
  }

  /** Without the time that it cooks no hour is that of dinner: said before all else. */
  @Test
  void times_without_the_cooking_say_so_first() {
    Ahead answer = answer(Question.THAWING, "weight=6lb serve-at=2026-12-10T18:00");
    assertThat(says(answer.told().get(0))).contains("thawed when it is to be served, not cooked");
    Ahead late = answer(Question.THAWING, "weight=6lb serve-at=2026-11-24T13:00");
    assertThat(late.told())
        .extracting(Told::key)
        .startsWith("thawing.no-cooking", "thawing.now.unknown");
  }

  /**
   * USDA, roasting times of turkey at 325 °F, not stuffed: 8 to 12 lb up to 3 h, 12 to 14 lb up to
   * 3 3/4 h, 14 to 18 lb 4 1/4, 18 to 20 lb 4 1/2, 20 to 24 lb 5; 165 °F. From frozen 1.5 times as
   * long.
   */
  @ParameterizedTest
  @CsvSource({
    "8lb, 3",
    "11.9lb, 3",
    "12lb, 3.75",
    "13.9lb, 3.75",
    "14lb, 4.25",
    "18lb, 4.5",
    "20lb, 5",
    "24lb, 5"
  })
  void a_whole_bird_of_no_stated_time_roasts_as_long_as_the_chart_says(String weight, double h) {
    Ahead answer = answer(Question.THAWING, "weight=" + weight + " serve-at=2026-11-24T13:00");
    assertThat(amount(told(answer, "thawing.taken-cooking"), "cooking")).isEqualTo(h);
    assertThat(amount(told(answer, "thawing.from-frozen.one"), "longest"))
        .isCloseTo(1.5 * h, within(1e-9));
    assertThat(answer.cautions()).contains("cook-through");
    assertThat(answer.sources()).extracting(Ahead.Source::source).anyMatch(s -> s.contains("325"));
  }

  /** The chart ends at 24 lb and begins at 8; a casserole is no bird. */
  @ParameterizedTest
  @ValueSource(strings = {"weight=7.9lb", "weight=24.1lb", "weight=12lb kind=casserole"})
  void of_what_is_not_in_the_chart_no_time_is_taken(String asked) {
    assertThat(answer(Question.THAWING, asked + " serve-at=2026-12-24T13:00").told())
        .extracting(Told::key)
        .contains("thawing.no-cooking")
        .doesNotContain("thawing.taken-cooking");
  }

  /** Arithmetic: 12 lb at 4 lb a day are 72 h. */
  @Test
  void more_than_two_days_are_told_as_days_too() {
    Ahead answer = answer(Question.THAWING, "weight=12lb");
    assertThat(new AheadText(Language.ENGLISH).says(answer.told().get(0)))
        .contains("58 h (2.4 days) to 72 h (3 days)");
  }

  /**
   * Published trials with chili (J. Child Nutr. Manag. 29(1) 2005): 2 in deep in a refrigerator
   * missed both limits of 3-501.14(A).
   */
  @Test
  void a_depth_that_misses_the_limits_is_told_what_would_make_them() {
    Ahead missed = answer(Question.COOLING, "food=chili surroundings=38F depth=2in");
    assertThat(missed.told().get(0).key()).isEqualTo("cooling.misses");
    List<Told> ways =
        missed.told().stream().filter(told -> told.key().startsWith("cooling.way.")).toList();
    assertThat(ways).hasSize(4);
    Ahead thin = answer(Question.COOLING, "food=chili surroundings=38F depth=5mm");
    assertThat(thin.told().get(0).key()).isEqualTo("cooling.makes");
    assertThat(thin.told()).noneMatch(told -> told.key().startsWith("cooling.way."));
  }

  /**
   * FDA Food Code 2022, 3-501.14(A), as advice: 70 °F within 2 h of 135 °F and 41 °F within 6. The
   * refrigerator of the federal charts for homes is at 40 °F; they print no time to cool. The
   * published trials above missed both limits at this depth.
   */
  @Test
  void at_home_a_time_is_told_too_and_what_a_food_business_must_do() {
    Ahead answer = home("food=chili surroundings=38F depth=3in to=39F");
    assertThat(says(told(answer, "cooling.advice.misses")))
        .contains("70 °F (21 °C) within 2 h", "41 °F (5 °C) within 6 h", "135 °F (57 °C)");
    assertThat(answer.told().stream().map(HomeQuestionTest::says).filter(s -> s.startsWith("Rea")))
        .satisfiesExactly(
            middle -> assertThat(middle).startsWith("Reaches 70 °F (21 °C) after about"),
            cold -> assertThat(cold).startsWith("Reaches 40 °F (4 °C) after about"),
            asked -> assertThat(asked).startsWith("Reaches 39 °F (4 °C) after about"));
    assertThat(answer.told()).extracting(Told::key).contains("cooling.way.shallower");
    assertThat(answer.sources())
        .extracting(Ahead.Source::source)
        .contains("3-501.14(A)(1)", "3-501.14(A)(2)", "FoodSafety.gov, Cold Food Storage Chart");
  }

  /**
   * USDA: into the refrigerator within 2 hours, 1 above 90 °F. University of Nebraska Extension and
   * the cooling notice of Dubuque (Iowa): 2 in deep. Southern Nevada Health District: stir every 10
   * minutes. A test of bowls by a cookery magazine: 174 to 80 °F in 11.5 minutes and 36.
   */
  /** That stock moves as it cools is common practice, no source. */
  @Test
  void of_stock_the_tables_have_no_figure_and_a_time_is_the_longest() {
    Ahead stock = home("surroundings=38F depth=4in volume=2gal food=chicken_stock");
    assertThat(stock.told().stream().limit(5).map(HomeQuestionTest::says))
        .satisfiesExactly(
            first -> assertThat(first).startsWith("First of all"),
            thin -> assertThat(thin).contains("the tables have no figure", "the longest it may"),
            verdict -> assertThat(verdict).startsWith("As it stands"),
            middle -> assertThat(middle).matches("Reaches 70 °F .* after .* at most\\."),
            cold -> assertThat(cold).matches("Reaches 40 °F .* after .* at most\\."));
    assertThat(stock.told()).noneMatch(one -> one.key().equals("cooling.times.still"));
  }

  @Test
  void what_must_be_done_stands_first_then_how_long_it_takes_then_what_helps() {
    Ahead stock = home("surroundings=38F depth=8in diameter=12in");
    assertThat(stock.told().stream().limit(9).map(HomeQuestionTest::says))
        .satisfiesExactly(
            first ->
                assertThat(first)
                    .startsWith("First of all: into the refrigerator within 2 h")
                    .contains("within 1 h in air above 90 °F (32 °C)"),
            verdict -> assertThat(verdict).startsWith("As it stands it cools too slowly."),
            middle -> assertThat(middle).startsWith("Reaches 70 °F (21 °C) after about"),
            cold -> assertThat(cold).startsWith("Reaches 40 °F (4 °C) after about"),
            still -> assertThat(still).startsWith("These times are for food that cannot move"),
            bath ->
                assertThat(bath)
                    .contains("stir every 10 min", "174 °F (79 °C) to 80 °F (27 °C) in 12 min")
                    .contains("36 min in a plastic one"),
            ice -> assertThat(ice).contains("of ice for 15.7 qt (14.8 L), from 212 °F (100 °C)"),
            pans -> assertThat(pans).startsWith("Then divide it").contains("than 2 in (51 mm)"),
            recipe ->
                assertThat(recipe)
                    .contains(
                        "from 212 °F (100 °C) to 70 °F (21 °C); the pans in the refrigerator"));
    assertThat(stock.sources())
        .extracting(Ahead.Source::source)
        .anyMatch(source -> source.startsWith("University of Nebraska Extension"))
        .anyMatch(source -> source.startsWith("Southern Nevada Health District"));
    assertThat(home("surroundings=38F depth=5mm").told())
        .noneMatch(told -> told.key().startsWith("cooling.do."));
  }

  /**
   * Energy balance with 333.6 kJ/kg and 4.18 kJ/(kg K) (ASHRAE Handbook Refrigeration): a pot of 12
   * in by 8 in holds 14.8 L; as much water from 100 to 21 °C asks for 11.6 kg of ice, stew for less
   * by its specific heat of 0.85 to 0.95 of that of water and its density within a tenth of it. Ice
   * that stands for water of the recipe is part of those 14.8 L: 0.78 kg for each kg of the rest.
   */
  @Test
  void ice_for_a_pot_is_counted_by_its_size() {
    Ahead pot = home("surroundings=38F depth=8in diameter=12in");
    Told bath = told(pot, "cooling.do.bath-ice");
    assertThat(amount(bath, "of")).isCloseTo(14.83, within(0.01));
    assertThat(amount(bath, "ice")).isBetween(9.0, 11.6);
    Told ice = told(pot, "cooling.do.ingredient");
    assertThat(amount(ice, "ice") + amount(ice, "hot")).isCloseTo(14.83, within(0.01));
    assertThat(amount(ice, "water")).isEqualTo(amount(ice, "ice"));
    assertThat(amount(ice, "ice") / amount(ice, "hot"))
        .isCloseTo(amount(bath, "ice") / amount(bath, "of"), within(1e-9));
    Ahead unsaid = answer(Question.COOLING, "surroundings=38F depth=4in");
    assertThat(says(told(unsaid, "cooling.do.bath-ice.each"))).contains("of ice for each 1 qt");
    assertThat(says(told(unsaid, "cooling.do.ingredient.each"))).startsWith("Or for each 1 qt");
    told(unsaid, "cooling.way.bath");
  }

  /** A layer under an inch is no kitchen advice: ours, common practice, no source. */
  @Test
  void a_cook_is_told_no_layer_that_no_pan_holds_and_no_minutes_of_a_day() {
    for (Ahead answer :
        List.of(
            home("surroundings=38F depth=8in diameter=12in"),
            answer(Question.COOLING, "surroundings=38F depth=8in diameter=12in"))) {
      assertThat(answer.told().stream().map(HomeQuestionTest::says))
          .noneMatch(says -> says.matches("(?s).*\\b0[.][0-9] in\\b.*"))
          .noneMatch(says -> says.matches("(?s).*\\b([2-9][0-9]) h\\b.*"))
          .anyMatch(says -> says.contains("at any depth that a pan is filled to"))
          .anyMatch(says -> says.contains("Ice bath that is stirred"));
    }
  }

  /** By definition: the depth that is told to make the limits is judged to make them. */
  @Test
  void at_home_a_thin_layer_is_told_to_be_quick_enough() {
    Ahead deep = home("surroundings=34F depth=4in");
    String depth = " depth=%.0fmm".formatted(amount(told(deep, "cooling.deepest.thin"), "surely"));
    told(home("surroundings=34F" + depth), "cooling.advice.makes");
    told(home("surroundings=38F"), "cooling.advice");
  }

  /** FDA Food Code 2022, 3-501.14(A)(2): six hours in all. */
  @ParameterizedTest
  @CsvSource({"us-home", "us-food-code-2022"})
  void no_time_beyond_six_hours_is_told_without_a_warning(String ruleSet) {
    int beyond = 0;
    for (int millimetres = 5; millimetres <= 60; millimetres += 5) {
      for (String to : List.of("65F", "41F", "39F", "38.2F")) {
        String pairs = "surroundings=38F depth=%dmm to=%s".formatted(millimetres, to);
        Ahead answer = answer(Question.COOLING, pairs, QuestionTest.setting(ruleSet));
        boolean isLong =
            answer.told().stream()
                .flatMap(told -> told.filled().stream())
                .filter(filled -> filled.name().equals("longest"))
                .anyMatch(filled -> ((Filled.Amount) filled.value()).amount() > 6);
        beyond += isLong ? 1 : 0;
        assertThat(answer.told())
            .extracting(Told::key)
            .satisfies(
                keys ->
                    assertThat(isLong && keys.stream().noneMatch(HomeQuestionTest::warns))
                        .as(pairs)
                        .isFalse());
      }
    }
    assertThat(beyond).isGreaterThan(4);
  }

  private static boolean warns(String key) {
    return key.matches("cooling[.](advice[.])?(misses|unsure|long)");
  }

  private static String says(Told told) {
    return new AheadText(Language.ENGLISH).says(told);
  }

  private static Ahead home(String pairs) {
    return answer(Question.COOLING, pairs, QuestionTest.setting("us-home"));
  }

  /** By definition: what is told of another way is what asking for that way tells. */
  @Test
  void another_way_is_told_as_if_it_had_been_asked_for() {
    Ahead missed = answer(Question.COOLING, "food=chili surroundings=38F depth=4in");
    Told fan = missed.told().stream().filter(t -> t.key().contains("way.sh")).findFirst().get();
    Ahead moved = answer(Question.COOLING, "food=chili surroundings=38F surface=moving_air");
    assertThat(amount(fan, "deepest"))
        .isEqualTo(amount(told(moved, "cooling.deepest.thin"), "surely"));
  }

  /** The same trials: the pan that is counted misses the limits where its air is still. */
  @Test
  void pans_of_two_inches_are_told_to_miss_the_cooling_limits() {
    told(answer(Question.PANS, "volume=20L depth=2in"), "pans.cooling.misses");
    told(answer(Question.PANS, "volume=20L depth=5mm"), "pans.cooling.makes");
  }

  /** NIST Handbook 44, Appendix C, for the factors; the ways to write are common, no source. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          LENGTH | 2 inches | 50.8
          LENGTH | 5 centímetros | 50
          VOLUME | 2 gallons | 7.5708
          VOLUME | 5,5 litros | 5.5
          VOLUME | 8 fl. oz. | 0.23659
          VOLUME | 15 cubic feet | 424.75
          MASS | 12 pounds | 5.4431
          PIECE | 12 lb turkey | 5.4431
          PIECE | 12lb frozen turkey | 5.4431
          MASS | 12 lbs. | 5.4431
          MASS | 2,5 kilos | 2.5
          MASS | 3 libras | 1.3608
          TIME | 19h30min | 19.5
          TIME | 19 h 30 | 19.5
          TIME | 3:30 h | 3.5
          TIME | 3:30 | 3.5
          TIME | 3 1/2 h | 3.5
          TIME | 3½ hours | 3.5
          TIME | 3.5 hours | 3.5
          TIME | 3/4 hour | 0.75
          LENGTH | 2 1/2 in | 63.5
          MASS | 12 1/4 lb | 5.5565
          MASS | ½ kg | 0.5
          TIME | 90 min | 1.5
          TIME | 90 minutos | 1.5
          TIME | 1 hour and 30 minutes | 1.5
          TIME | 2 días | 48
          TIME | 1 day | 24
          TIME | 12 days | 288
          TIME | 2 weeks | 336
          TIME | 2 Semanas | 336
          TIME | una semana | 168
          TIME | 1 día y 6 horas | 30
          TIME | 1 week, 2 days and 3 h | 219
          TIME | 3h 30min | 3.5
          TIME | half an hour | 0.5
          TIME | dos horas y media | 2.5
          TIME | an hour and a half | 1.5
          TIME | un día y medio | 36
          """)
  void amounts_are_taken_as_people_write_them(Measured kind, String text, double amount) {
    assertThat(kind.read(text)).hasValueCloseTo(amount, Percentage.withPercentage(0.01));
  }

  @ParameterizedTest
  @CsvSource({
    "TIME, 3:75 h",
    "TIME, -1h",
    "MASS, 12 stones",
    "MASS, 12",
    "TIME, 3 5/4 h",
    "TIME, 1/0 h",
    "TIME, 6 h 1 day",
    "TIME, 2 h 2 h",
    "TIME, 2 weeks later",
    "TIME, 2 months",
    "TIME, days",
    "LENGTH, 1.000.000 cm"
  })
  void what_is_no_amount_is_not_guessed_at(Measured kind, String text) {
    assertThat(kind.read(text)).isEmpty();
  }

  /** Pounds or kilograms differ by more than two: nothing is guessed. */
  @ParameterizedTest
  @CsvSource({
    "THAWING, weight=12, no-unit-weight, 12 lb or 12 kg?",
    "COOLING, surroundings=38F depth=8, no-unit-length, 8 in or 8 cm?",
    "ICE, volume=20 start=203F to=41F, no-unit-volume, 20 qt or 20 L?",
    "FREEZER_LOAD, freezer=15 weight=60lb, no-unit-freezer, 15 ft3 or 15 L?",
    "THAWING, weight=12lb cooking=3½, no-unit-time, 3½ h or 3½ min?"
  })
  void a_figure_without_its_unit_is_asked_about(
      Question question, String pairs, String code, String asks) {
    assertThat(QuestionTest.faults(question, pairs))
        .singleElement()
        .satisfies(
            fault -> {
              assertThat(fault.code()).isEqualTo(code);
              assertThat(fault.says()).contains(asks, "with its unit");
            });
  }

  @Test
  void the_food_that_was_taken_is_named_where_none_was_chosen() {
    told(answer(Question.ICE, "volume=20L start=203F to=41F"), "assumed-food");
    assertThat(answer(Question.ICE, "volume=20L food=chili start=203F to=41F").told()).hasSize(1);
  }
}
