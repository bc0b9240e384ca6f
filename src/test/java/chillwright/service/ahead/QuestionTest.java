package chillwright.service.ahead;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chillwright.core.ahead.Ahead;
import chillwright.core.ahead.Filled;
import chillwright.core.ahead.Filled.Amount;
import chillwright.core.ahead.Filled.Day;
import chillwright.core.ahead.Told;
import chillwright.core.heat.Reason;
import chillwright.core.log.Problem;
import chillwright.core.log.Problem.Where.InField;
import chillwright.print.AheadText;
import chillwright.print.Language;
import chillwright.rulebook.BrokenRules;
import chillwright.rulebook.RuleLibrary;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The questions: what they answer, in which words, and what they refuse. */
class QuestionTest {
  private static final List<Question> QUESTIONS = List.of(Question.values());
  private static final Setting FOOD_CODE = setting("us-food-code-2022");

  static Setting setting(String ruleSet) {
    try {
      RuleLibrary library = RuleLibrary.load(Optional.empty());
      return Setting.of(
          library,
          library.ruleBook(ruleSet).orElseThrow(),
          LocalDate.of(2026, 11, 24).atTime(12, 0).atZone(ZoneId.of("America/Denver")));
    } catch (BrokenRules broken) {
      throw new AssertionError(broken.getMessage(), broken);
    }
  }

  private static Map<String, String> given(String pairs) {
    Map<String, String> given = new LinkedHashMap<>();
    for (String pair : pairs.split(" ", -1)) {
      int equals = pair.indexOf('=');
      given.put(pair.substring(0, equals), pair.substring(equals + 1));
    }
    return given;
  }

  static Ahead answer(Question question, String pairs) {
    return answer(question, pairs, FOOD_CODE);
  }

  static Ahead answer(Question question, String pairs, Setting setting) {
    try {
      return question.answer(given(pairs), setting);
    } catch (BadQuestion bad) {
      throw new AssertionError(bad.problems().toString(), bad);
    }
  }

  static List<Problem> faults(Question question, String pairs) {
    try {
      question.answer(given(pairs), FOOD_CODE);
      return List.of();
    } catch (BadQuestion bad) {
      return bad.problems();
    }
  }

  static Told told(Ahead answer, String key) {
    return answer.told().stream()
        .filter(told -> told.key().equals(key))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no " + key + " in " + answer.told()));
  }

  static double amount(Told told, String name) {
    return told.filled().stream()
        .filter(filled -> filled.name().equals(name))
        .map(Filled::value)
        .map(value -> ((Amount) value).amount())
        .findFirst()
        .orElseThrow();
  }

  @ParameterizedTest
  @EnumSource
  void the_example_of_every_question_is_answered_with_its_sources(Question question) {
    Ahead answer = answer(question, question.example());
    assertThat(answer.question()).isEqualTo(question.key());
    assertThat(answer.told()).isNotEmpty().allMatch(told -> told.reason().isEmpty());
    assertThat(answer.cautions()).isNotEmpty();
    assertThat(answer.sources()).isNotEmpty();
  }

  /**
   * Published trials with chili (J. Child Nutr. Manag. 29(1) 2005; Food Prot. Trends 33 (2013)
   * 27-31): pans of 2 in and deeper in a refrigerator missed both limits.
   */
  @ParameterizedTest
  @CsvSource({"2in", "2.5in", "3in", "4in"})
  void chili_two_inches_deep_misses_the_limits_in_a_refrigerator_as_in_the_trials(String depth) {
    Ahead answer =
        answer(Question.COOLING, "food=chili surroundings=38F start=180F depth=" + depth);
    List<Told> stages =
        answer.told().stream().filter(told -> told.key().equals("cooling.stage")).toList();
    assertThat(stages).hasSize(2);
    assertThat(amount(stages.get(0), "shortest")).isGreaterThan(2);
    assertThat(amount(stages.get(1), "shortest")).isGreaterThan(6);
  }

  /** 3-501.14(A)(1) runs from 135 °F; food that is colder at the start never passed it. */
  @ParameterizedTest
  @CsvSource({"136F, From 135 °F", "135F, From 135 °F", "100F, From 100 °F"})
  void a_time_is_told_from_where_the_food_began(String start, String says) {
    Told told =
        told(
            answer(Question.COOLING, "surroundings=38F depth=2in start=" + start), "cooling.stage");
    assertThat(new AheadText(Language.ENGLISH).says(told)).startsWith(says);
  }

  /** By the definition of the two: what is sure holds by the tables as well. */
  @ParameterizedTest
  @CsvSource({"38F", "20F", "0F", "-10F", "-20F", "-35F"})
  void no_layer_is_surely_deeper_than_by_the_tables(String air) {
    String asked = "surface=moving_air surroundings=" + air;
    Told deepest =
        answer(Question.COOLING, asked).told().stream()
            .filter(told -> told.key().startsWith("cooling.deepest"))
            .findFirst()
            .orElseThrow();
    assertThat(amount(deepest, "surely")).isLessThanOrEqualTo(amount(deepest, "expected"));
  }

  /** Müftügil 2016: rice 5 cm deep in a refrigerator took about 10 h from 50 to 10 °C. */
  @Test
  void rice_in_a_refrigerator_takes_about_as_long_as_was_measured() {
    Ahead answer = answer(Question.COOLING, "food=rice surroundings=4C start=50C depth=5cm to=10C");
    Told reached = told(answer, "cooling.reaches");
    assertThat(amount(reached, "shortest")).isLessThan(15);
    assertThat(amount(reached, "longest")).isGreaterThan(10);
  }

  /** Both scales and both systems are the same question: 38 °F is 3.33 °C, 2 in is 50.8 mm. */
  @Test
  void it_can_be_asked_in_either_scale() {
    Ahead asked = answer(Question.COOLING, "surroundings=38F depth=2in start=212F");
    double ours = amount(told(asked, "cooling.stage"), "expected");
    asked = answer(Question.COOLING, "surroundings=3.33C depth=50.8mm start=100C");
    double metric = amount(told(asked, "cooling.stage"), "expected");
    assertThat(metric).isCloseTo(ours, within(0.01));
  }

  /** 41 °F air never brings food to 41 °F; the limit is 3-501.14(A)(2). */
  @Test
  void surroundings_that_are_too_warm_have_a_reason_and_no_time() {
    Ahead answer = answer(Question.COOLING, "surroundings=41F depth=2in");
    assertThat(told(answer, "cooling.stage").reason()).isEmpty();
    assertThat(told(answer, "cooling.stage.none").reason()).contains(Reason.NEVER_GETS_THERE);
    assertThat(told(answer, "cooling.deepest.none").reason()).contains(Reason.NEVER_GETS_THERE);
  }

  /** Derived: 20 L in layers of 2 in, 192 fl oz each by the steamer maker's table, is 4 pans. */
  @Test
  void a_pot_of_twenty_litres_takes_four_pans() {
    Ahead answer =
        answer(Question.PANS, "volume=20L depth=2in shelves=1 shelf-length=41in shelf-width=26in");
    assertThat(amount(told(answer, "pans.count"), "count")).isEqualTo(4);
    assertThat(amount(told(answer, "pans.fit.not"), "left")).isEqualTo(1);
  }

  /** Steam-kettle maker's portion table: 16 portions of 8 oz in a gallon. */
  @Test
  void portions_are_a_volume_and_have_a_ladle() {
    Ahead answer = answer(Question.PANS, "portions=160 portion=8floz");
    assertThat(amount(told(answer, "pans.volume"), "volume"))
        .isCloseTo(10 * 3.785411784, within(1e-6));
    assertThat(told(answer, "pans.ladle").filled().get(0).value()).isEqualTo(new Filled.Word("8"));
  }

  /** Federal hotline: a turkey of 12 lb, 4 h thawed, 6 h from frozen; cold water 30 min a pound. */
  @Test
  void a_bird_still_frozen_at_nine_makes_dinner_only_from_frozen() {
    Ahead answer = answer(Question.THAWING, "weight=12lb cooking=4h serve-in=9h");
    assertThat(amount(told(answer, "thawing.from-frozen.makes"), "whole")).isEqualTo(6);
    assertThat(amount(told(answer, "thawing.water.late"), "whole")).isEqualTo(10);
    told(answer, "thawing.refrigerator.late");
  }

  @Test
  void where_nothing_makes_dinner_it_says_so() {
    told(answer(Question.THAWING, "weight=12lb cooking=4h serve-in=5h"), "thawing.none-makes");
  }

  /** Derived: soup, 2 to 3 months; a week at 10 °F (-12.2 °C) by Q10 3 costs 6.2 days. */
  @Test
  void a_warm_week_moves_the_dates_of_quality() {
    Ahead answer =
        answer(Question.FROZEN_LIFE, "category=soup_or_stew frozen=2026-11-01 steps=10F:7d");
    Told best = told(answer, "frozen-life.best");
    assertThat(amount(best, "cost")).isCloseTo(7 * (Math.pow(3, 0.5778) - 1), within(0.01));
    assertThat(best.filled().get(0).value()).isEqualTo(new Day(LocalDate.of(2026, 12, 25)));
    assertThat(best.filled().get(1).value()).isEqualTo(new Day(LocalDate.of(2027, 1, 1)));
  }

  /**
   * IIR, 4th ed. 2006: minced beef 6 months at -12 °C, 10 at -18 °C, as shares of life (derived).
   */
  @Test
  void a_printed_life_is_used_as_it_is_printed() {
    Ahead answer =
        answer(Question.FROZEN_LIFE, "life=beef_minced frozen=2026-01-01 steps=-12C:10d");
    Told fades = told(answer, "frozen-life.fades.over");
    assertThat(amount(fades, "used")).isCloseTo(100 * 10 / 181.0, within(1e-6));
    assertThat(amount(fades, "cost")).isCloseTo(10 * 304 / 181.0 - 10, within(1e-6));
  }

  /**
   * USDA-FSIS and a pull guide: 24 h for 4 lb at the longest; 12 lb are 72 h before 4 h of oven.
   */
  @Test
  void a_serving_time_gives_the_hour_to_take_it_out() {
    Ahead answer = answer(Question.THAWING, "weight=12lb cooking=4h serve-at=2026-12-24T18:00");
    assertThat(told(answer, "thawing.pull").filled().get(0).value())
        .isEqualTo(new Filled.Word("2026-12-21 14:00"));
    assertThat(told(answer, "thawing.soak").filled().get(0).value())
        .isEqualTo(new Filled.Word("2026-12-24 08:00"));
  }

  /**
   * Household freezer handbook: 2 lb of meat a cubic foot in a day, so 15 packs of 2 lb in 15 ft3.
   */
  @Test
  void packs_are_spread_over_days() {
    Ahead answer = answer(Question.FREEZER_LOAD, "freezer=15ft3 kind=meat weight=61lb pack=2lb");
    assertThat(amount(told(answer, "freezer-load.packs"), "packs")).isEqualTo(31);
    assertThat(amount(told(answer, "freezer-load.packs"), "perDay")).isEqualTo(15);
    assertThat(amount(told(answer, "freezer-load.days"), "days")).isEqualTo(3);
  }

  /**
   * FoodSafety.gov chart: soup is at its best 2 to 3 months. 300 portions less 20 are 6 batches of
   * 48; to be at its best on 28 February none is frozen before 28 December (worked by hand).
   */
  @Test
  void a_season_of_orders_takes_so_many_batches_between_two_days() {
    Ahead answer =
        answer(
            Question.BATCHES,
            "category=soup_or_stew portions=300 batch=48 stock=20 last-day=2027-02-18 then-days=10"
                + " per-day=2");
    assertThat(amount(told(answer, "batches.count"), "batches")).isEqualTo(6);
    assertThat(amount(told(answer, "batches.count"), "portions")).isEqualTo(288);
    assertThat(told(answer, "batches.earliest").filled().get(0).value())
        .isEqualTo(new Day(LocalDate.of(2026, 12, 28)));
    assertThat(told(answer, "batches.begin-by").filled().get(0).value())
        .isEqualTo(new Day(LocalDate.of(2027, 2, 15)));
    assertThat(told(answer, "batches.begin-by").filled().get(2).value())
        .isEqualTo(new Day(LocalDate.of(2027, 2, 17)));
    assertThat(amount(told(answer, "batches.spread"), "days")).isEqualTo(10);
    told(
        answer(
            Question.BATCHES,
            "category=soup_or_stew portions=9 batch=1 stock=9" + " last-day=2026-12-18"),
        "batches.none");
    Ahead late =
        answer(Question.BATCHES, "category=soup_or_stew portions=90 batch=1 last-day=2026-11-28");
    assertThat(told(late, "batches.late")).isNotNull();
  }

  @Test
  void a_thaw_is_no_matter_of_quality() {
    String soup = "category=soup_or_stew frozen=2026-11-01 steps=";
    Ahead answer = answer(Question.FROZEN_LIFE, soup + "45F:1h,30F:1h,45F:1h");
    assertThat(told(answer, "frozen-life.best.none").reason()).contains(Reason.NOT_FROZEN);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          COOLING      | food=chilix depth=2 start=9 faces=x | food depth start faces
          COOLING      | surroundings=38F to=41F                  | depth
          COOLING      | volume=2gal                              | depth
          COOLING      | depth=2in start=36F                      | start
          COOLING      | depth=2in start=38F surroundings=38F     | start
          COOLING      | depth=2in surroundings=220F              | surroundings
          PANS         | volume=20L portions=3 pan=vat depth=0in  | pan depth volume portion
          PANS         | volume=20L shelves=0                     | shelves shelf-length shelf-width
          ICE          | start=95 to=x                            | start to volume
          ICE          | food=chili                               | volume
          FREEZING     | shape=cube air=cold                      | thickness shape air
          FREEZER_LOAD | kind=fish weight=6                       | freezer kind weight
          THAWING      | serve-in=soon                            | weight serve-in
          FROZEN_LIFE  | category=soup frozen=10/11 steps=10F q10=0 | category frozen q10 steps
          FROZEN_LIFE  | frozen=2026-11-01 steps=10F:7d           | category
          FROZEN_LIFE  | life=beef frozen=2026-11-01 steps=1F:1d  | life
          FREEZER_LOAD | freezer=15ft3 pack=1lb                   | weight
          THAWING      | weight=1lb serve-at=soon kind=soup       | serve-at kind
          OUTAGE       | appliance=van                            | appliance without-power
          """)
  void every_fault_is_told_at_once(Question question, String given, String names) {
    List<Problem> faults = faults(question, given);
    assertThat(faults)
        .extracting(fault -> ((InField) fault.where()).pointer())
        .containsExactlyInAnyOrder(names.split(" ", -1));
    assertThat(faults).allMatch(fault -> fault.says().length() > 20);
  }

  static IntStream seeds() {
    return IntStream.range(0, 8);
  }

  private static final List<String> VALUES =
      List.of(
          "38F",
          "-18C",
          "0F",
          "212F",
          "600F",
          "-100F",
          "4.5 C",
          "2in",
          "5cm",
          "0.1mm",
          "4000mm",
          "20L",
          "1ml",
          "4000L",
          "15ft3",
          "12lb",
          "1g",
          "4h",
          "1min",
          "300d",
          "3",
          "1",
          "top",
          "both",
          "cylinder",
          "sphere",
          "meat",
          "full-freezer",
          "2026-11-01",
          "10F:7d",
          "10F:7d,-40C:400d",
          "full-4",
          "sixth-6",
          "chili",
          "biscuit_dough",
          "moving_air",
          "stirred_bath",
          "soup_or_stew",
          "",
          " ",
          "0",
          "-1",
          "NaN",
          "1e9",
          "\u0000",
          "ñ",
          "٣F");

  /** Mostly a value of the right kind, however large or small; now and then any at all. */
  private static String value(Parameter parameter, SplittableRandom random) {
    List<String> fitting =
        switch (parameter.label()) {
          case "TEMP" -> VALUES.stream().filter(v -> v.matches("[-0-9.]+ ?[FC]")).toList();
          case "LENGTH" -> VALUES.stream().filter(v -> v.matches("[0-9.]+(mm|cm|in)")).toList();
          case "VOLUME" -> VALUES.stream().filter(v -> v.matches("[0-9.]+(ml|L|ft3)")).toList();
          case "WEIGHT" -> VALUES.stream().filter(v -> v.matches("[0-9.]+(lb|g)")).toList();
          case "TIME" -> VALUES.stream().filter(v -> v.matches("[0-9.]+(h|min|d)")).toList();
          default -> List.of();
        };
    boolean isAny = fitting.isEmpty() || random.nextInt(5) == 0;
    List<String> from = isAny ? VALUES : fitting;
    return from.get(random.nextInt(from.size()));
  }

  /** Whatever is asked, there is an answer in words or every fault; never anything else. */
  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void any_question_is_answered_in_each_language_or_refused(int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int answered = 0;
    for (int run = 0; run < 400; run++) {
      Question question = QUESTIONS.get(random.nextInt(QUESTIONS.size()));
      Map<String, String> given = new LinkedHashMap<>(given(question.example()));
      List<Parameter> parameters = new ArrayList<>(question.parameters());
      for (int i = 0; i < 1 + random.nextInt(3); i++) {
        Parameter parameter = parameters.get(random.nextInt(parameters.size()));
        given.put(parameter.name(), value(parameter, random));
      }
      try {
        Ahead answer = question.answer(given, FOOD_CODE);
        for (Language language : Language.values()) {
          assertThat(new AheadText(language).answer(answer, ""))
              .as(given.toString())
              .doesNotContain("{", "NaN", "Infinity");
        }
        answered++;
      } catch (BadQuestion bad) {
        assertThat(bad.problems()).isNotEmpty();
      }
    }
    assertThat(answered).isGreaterThan(20);
  }

  @ParameterizedTest
  @EnumSource
  void every_reason_has_words(Reason reason) {
    for (Language language : Language.values()) {
      assertThat(new AheadText(language).reason(reason)).isNotBlank();
    }
  }
}
