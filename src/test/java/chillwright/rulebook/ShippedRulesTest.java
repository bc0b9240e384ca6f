package chillwright.rulebook;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.log.Problem;
import chillwright.core.measure.Temperature;
import chillwright.core.rules.Citation;
import chillwright.core.rules.Occasion;
import chillwright.core.rules.Rule;
import chillwright.core.rules.RuleSet;
import chillwright.core.rules.Shape;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The figures in this jar, each beside the clause it is printed in. */
class ShippedRulesTest {
  private static final LocalDate DAY = LocalDate.of(2026, 3, 2);
  private static final RuleLibrary LIBRARY = load();

  private static RuleLibrary load() {
    try {
      return RuleLibrary.load(Optional.empty());
    } catch (BrokenRules e) {
      throw new AssertionError(e.getMessage(), e);
    }
  }

  private static RuleSet set(String id) {
    return LIBRARY.ruleBook(id).orElseThrow().on(DAY);
  }

  private static Rule rule(String set, String id) {
    return set(set).rule(id).orElseThrow();
  }

  /** The table names its sources. */
  @ParameterizedTest(name = "{0}: {1}")
  @CsvFileSource(resources = "/rulebook/us-food-code-2022.csv", delimiter = '|')
  void the_food_code_figures_are_those_of_the_clause(String id, String figures, String clause) {
    Rule rule = rule("us-food-code-2022", id);
    assertThat(Printed.figures(rule)).isEqualTo(figures);
    assertThat(rule.citation().text()).isEqualTo(clause);
    assertThat(rule.status()).isEqualTo("model-code");
  }

  /** The table names its sources. */
  @ParameterizedTest(name = "{0}: {1}")
  @CsvFileSource(resources = "/rulebook/us-home.csv", delimiter = '|')
  void the_home_figures_are_those_of_the_advice(String id, String figures, String state) {
    Rule rule = rule("us-home", id);
    assertThat(Printed.figures(rule)).isEqualTo(figures);
    assertThat(rule.citation().state()).isEqualTo(state);
    assertThat(rule.status()).isEqualTo("guidance");
  }

  @Test
  void the_tables_leave_no_rule_out() {
    assertThat(set("us-food-code-2022").rules()).hasSize(24);
    assertThat(set("us-home").rules()).hasSize(10);
  }

  /**
   * 16 Del. Admin. Code 3-501.16: 57 °C or 135 °F, 5 °C or 41 °F; the pairs are printed rounded.
   */
  @ParameterizedTest(name = "{0} {1} {2}: meets {3}? {4}")
  @CsvSource({
    "hot-holding.ordinary, 13500, FAHRENHEIT, true",
    "hot-holding.ordinary, 13499, FAHRENHEIT, false",
    "hot-holding.ordinary, 5700, CELSIUS, true",
    "hot-holding.ordinary, 5699, CELSIUS, false",
    "hot-holding.roast, 13000, FAHRENHEIT, true",
    "hot-holding.roast, 12999, FAHRENHEIT, false",
    "hot-holding.roast, 5400, CELSIUS, true",
    "hot-holding.roast, 5399, CELSIUS, false",
    "cold-holding.ordinary, 4100, FAHRENHEIT, true",
    "cold-holding.ordinary, 4101, FAHRENHEIT, false",
    "cold-holding.ordinary, 500, CELSIUS, true",
    "cold-holding.ordinary, 501, CELSIUS, false",
    "thawing.water, 7000, FAHRENHEIT, true",
    "thawing.water, 7001, FAHRENHEIT, false",
    "thawing.water, 2100, CELSIUS, true",
    "thawing.water, 2101, CELSIUS, false"
  })
  void a_reading_meets_the_figure_printed_in_its_own_scale(
      String id, int hundredths, Temperature.Scale scale, boolean meets) {
    Shape.Hold hold = (Shape.Hold) rule("us-food-code-2022", id).shape();
    Temperature reading = new Temperature(hundredths, scale);
    boolean isMet =
        hold.atMost().map(limit -> limit.isColdEnough(reading)).orElse(false)
            || hold.atLeast().map(limit -> limit.isHotEnough(reading)).orElse(false);
    assertThat(isMet).isEqualTo(meets);
  }

  static Stream<Rule> all_rules() {
    return LIBRARY.ruleBooks().stream().flatMap(book -> book.on(DAY).rules().stream());
  }

  @ParameterizedTest
  @MethodSource("all_rules")
  void every_rule_and_action_is_cited(Rule rule) {
    assertThat(rule.says()).endsWith(".");
    assertThat(rule.citation().text()).isNotBlank();
    assertThat(rule.citation().state()).isIn("verified", "reported");
    assertThat(rule.citation().copy()).isPresent();
    assertThat(rule.actions())
        .extracting(Rule.Action::citation)
        .allSatisfy(ShippedRulesTest::is_honest);
  }

  private static void is_honest(Citation citation) {
    boolean hasSource = !citation.state().equals("none");
    assertThat(citation.copy().isPresent()).isEqualTo(hasSource);
    assertThat(citation.text().startsWith("common practice, no source")).isEqualTo(!hasSource);
  }

  @ParameterizedTest
  @MethodSource("all_rules")
  void every_rule_with_a_figure_says_what_to_do_when_it_is_missed(Rule rule) {
    assertThat(rule.actions().isEmpty()).isEqualTo(rule.shape() instanceof Shape.NoFigure);
  }

  /** The stricter act first: authorities disagree whether late food may be reheated. */
  @Test
  void a_missed_first_stage_offers_discarding_before_reheating() {
    assertThat(rule("us-food-code-2022", "cooling.cooked.first-stage").actions())
        .extracting(Rule.Action::says)
        .containsExactly("discard", "reheat to 165 °F and start again if your authority allows");
    assertThat(rule("us-food-code-2022", "cooling.cooked.total").actions())
        .extracting(Rule.Action::says)
        .containsExactly("discard");
  }

  @Test
  void every_set_says_who_decides_and_when_it_was_checked() {
    assertThat(LIBRARY.ruleBooks())
        .extracting(RuleBook::id)
        .containsExactly("us-food-code-2022", "us-home");
    assertThat(LIBRARY.ruleBooks())
        .allSatisfy(
            book -> {
              assertThat(book.defers()).contains("health authority", "record, not about the food");
              assertThat(book.lastChecked()).isAfter(LocalDate.of(2026, 1, 1));
              assertThat(book.extendsId()).isEmpty();
              assertThat(book.on(DAY).rules()).noneMatch(rule -> book.isChanged(rule.id()));
            });
  }

  /**
   * Once: a food service's two-stage cooling log. Both days count: the stricter of Jefferson County
   * (Colorado), which counts the freezing day, and North Carolina, which counts the thawing day.
   */
  @Test
  void the_settings_are_the_stricter_published_ones() {
    RuleBook book = LIBRARY.ruleBook("us-food-code-2022").orElseThrow();
    assertThat(book.on(DAY).settings()).isEqualTo(new RuleSet.Settings(1, true, true));
    assertThat(book.choices())
        .extracting(Choice::key)
        .containsExactly("corrective-reheats", "freezing-day-counts", "thawing-day-counts");
    assertThat(book.choices()).extracting(Choice::status).containsOnly("guidance");
    assertThat(book.choices().get(1).citation().text())
        .contains("Jefferson County", "North Carolina");
  }

  @Test
  void a_home_reheat_is_one_rule_whatever_the_method() {
    RuleSet home = set("us-home");
    assertThat(home.rules(Occasion.REHEATING_SERVE_NOW)).hasSize(1);
    assertThat(home.rules(Occasion.REHEATING_MICROWAVE)).isEqualTo(home.rules(Occasion.REHEATING));
    assertThat(home.rules(Occasion.COOLING_COOKED)).isEmpty();
  }

  @Test
  void a_rule_without_a_figure_says_why() {
    assertThat(rule("us-home", "thawing.water-change").says())
        .isEqualTo(
            "Food thawed in cold water, changed every 30 minutes, is cooked at once."
                + " The advice gives a method and no temperature.");
  }

  /** At run time only a kitchen's own files are held against the schemas. */
  @Test
  void the_files_of_this_jar_pass_their_schemas() {
    Shelf shelf = Shipped.shelf();
    for (RuleFolder folder : shelf.folders()) {
      for (TextFile file : folder.files()) {
        boolean isRuleSet = file.stem().equals("ruleset");
        assertThat(faults(isRuleSet ? SchemaCheck.RULE_SET : SchemaCheck.TOPIC, file)).isEmpty();
      }
    }
    assertThat(shelf.keeping())
        .allSatisfy(file -> assertThat(faults(SchemaCheck.KEEPING, file)).isEmpty());
  }

  private static List<Problem> faults(SchemaCheck check, TextFile file) {
    return check.allFaults(YamlText.read(file, new Faults()).orElseThrow());
  }

  @Test
  void the_index_names_every_folder_and_file() throws IOException {
    Path rules = Path.of("src/main/resources/rules");
    List<String> indexed =
        Files.readAllLines(rules.resolve("index.txt")).stream()
            .filter(line -> !line.startsWith("#"))
            .flatMap(ShippedRulesTest::indexed)
            .toList();
    try (Stream<Path> files = Files.walk(rules)) {
      assertThat(indexed)
          .containsExactlyInAnyOrderElementsOf(
              files
                  .filter(file -> file.toString().endsWith(".yaml"))
                  .map(file -> rules.relativize(file).toString().replace('\\', '/'))
                  .toList());
    }
  }

  private static Stream<String> indexed(String line) {
    List<String> words = List.of(line.split(" ", -1));
    return Stream.concat(Stream.of("ruleset"), words.stream().skip(1))
        .map(topic -> words.get(0) + "/" + topic + ".yaml");
  }
}
