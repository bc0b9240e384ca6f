package chillwright.rulebook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import chillwright.core.log.KeepingList;
import chillwright.core.rules.Citation;
import chillwright.core.rules.Rule;
import chillwright.core.rules.RuleSet;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A kitchen's own folder laid over what is in the jar. */
class LocalRulesTest {
  private static final LocalDate DAY = LocalDate.of(2026, 3, 2);

  private static final String RULE_SET =
      """
      title: A kitchen of its own
      version: "3"
      status: practice
      extends: us-food-code-2022
      last_checked: 2026-11-25
      """;

  @TempDir private Path dir;

  private void write(String file, String text) throws IOException {
    Path path = dir.resolve(file);
    Files.createDirectories(path.getParent());
    Files.writeString(path, text);
  }

  private RuleBook book(String id) throws BrokenRules {
    return RuleLibrary.load(Optional.of(dir)).ruleBook(id).orElseThrow();
  }

  private static String figures(RuleBook book, String id, LocalDate day) {
    return book.on(day).rule(id).map(Printed::figures).orElse("none");
  }

  /**
   * The 1999 and 2001 model codes: 45 °F, and 4 days at 45 °F (North Carolina's guide, reported).
   */
  @Test
  void the_sample_county_changes_its_cold_limits_and_nothing_else() throws BrokenRules {
    RuleLibrary library = RuleLibrary.load(Optional.of(Path.of("sample-logs/rules")));
    RuleBook county = library.ruleBook("example-county").orElseThrow();
    RuleSet rules = county.on(DAY);
    assertThat(county.extendsId()).contains("us-food-code-2022");
    assertThat(rules.rules())
        .filteredOn(rule -> county.isChanged(rule.id()))
        .extracting(rule -> rule.id() + ": " + Printed.figures(rule))
        .containsExactlyInAnyOrder(
            "cooling.cooked.total: from 135 °F (57 °C) to 45 °F (7 °C) in PT6H",
            "cooling.ambient: to 45 °F (7 °C) in PT4H",
            "receiving.temperature: at most 45 °F (7 °C) or at least 135 °F (57 °C)",
            "cold-holding.ordinary: at most 45 °F (7 °C)",
            "time-control.start.4h: at most 45 °F (7 °C) or at least 135 °F (57 °C)",
            "time-control.start.6h: at most 45 °F (7 °C)",
            "thawing.refrigerator: at most 45 °F (7 °C)",
            "thawing.running-water: at most 45 °F (7 °C)",
            "thawing.running-water.raw: at most 45 °F (7 °C) but for PT4H",
            "date-mark.last-day: 4 days, first day counts");
    RuleSet base = library.ruleBook("us-food-code-2022").orElseThrow().on(DAY);
    assertThat(rules.rules()).extracting(Rule::id).isEqualTo(ids(base));
    assertThat(rules.rule("hot-holding.ordinary")).isEqualTo(base.rule("hot-holding.ordinary"));
    assertThat(library.keepingList().category("stock_or_meat_broth").orElseThrow().fridge().max())
        .hasValue(2);
  }

  private static List<String> ids(RuleSet rules) {
    return rules.rules().stream().map(Rule::id).toList();
  }

  @Test
  void what_a_local_rule_leaves_out_is_taken_over() throws Exception {
    write("cool-kitchen/ruleset.yaml", RULE_SET);
    write(
        "cool-kitchen/cold-holding.yaml",
        """
        rules:
          - id: cold-holding.ordinary
            values:
              2026-01-01:
                at-most: {f: 38}
                cite: {text: own food safety plan, state: verified, copy: the plan of this kitchen}
        last_checked: 2026-11-25
        """);
    RuleBook book = book("cool-kitchen");
    RuleBook base = book("us-food-code-2022");
    Rule rule = book.on(DAY).rule("cold-holding.ordinary").orElseThrow();
    Rule from = base.on(DAY).rule("cold-holding.ordinary").orElseThrow();
    assertThat(Printed.figures(rule)).isEqualTo("at most 38 °F");
    assertThat(rule.citation())
        .isEqualTo(
            new Citation(
                "own food safety plan", "verified", Optional.of("the plan of this kitchen")));
    assertThat(rule.says()).isEqualTo(from.says());
    assertThat(rule.occasions()).isEqualTo(from.occasions());
    assertThat(rule.actions()).isEqualTo(from.actions());
    assertThat(rule.status()).isEqualTo("model-code");
    assertThat(book.defers()).isEqualTo(base.defers());
    assertThat(book.on(DAY).settings()).isEqualTo(base.on(DAY).settings());
    assertThat(book.on(DAY).version()).matches("3\\+[0-9a-f]{8}");
  }

  /** Own rule: people edit a figure and forget the version, also that of the set they extend. */
  @Test
  void a_figure_edited_without_a_new_version_makes_another_version() throws Exception {
    write("base/ruleset.yaml", RULE_SET);
    write("top/ruleset.yaml", RULE_SET.replace("us-food-code-2022", "base"));
    write("base/cold-holding.yaml", coldHoldingAt(38));
    List<String> before = List.of(book("base").version(), book("top").version());
    assertThat(List.of(book("base").version(), book("top").version())).isEqualTo(before);
    write("base/cold-holding.yaml", coldHoldingAt(39));
    assertThat(List.of(book("base").version(), book("top").version()))
        .doesNotContainAnyElementsOf(before);
    write("base/cold-holding.yaml", "# as it was\n" + coldHoldingAt(38));
    assertThat(List.of(book("base").version(), book("top").version())).isEqualTo(before);
  }

  private static String coldHoldingAt(int fahrenheit) {
    return """
        rules:
          - id: cold-holding.ordinary
            values:
              2026-01-01:
                at-most: {f: %d}
                cite: {text: own food safety plan, state: verified, copy: the plan of this kitchen}
        last_checked: 2026-11-25
        """
        .formatted(fahrenheit);
  }

  @Test
  void a_category_of_the_kitchen_changes_what_names_the_figures() throws Exception {
    RuleLibrary shipped = RuleLibrary.load(Optional.empty());
    RuleBook book = shipped.ruleBook("us-home").orElseThrow();
    write(
        "keeping/own.yaml",
        Files.readString(Path.of("src/test/resources/rulebook/good/keeping/own.yaml")));
    RuleLibrary own = RuleLibrary.load(Optional.of(dir));
    assertThat(own.ruleBook("us-home").orElseThrow().version()).isEqualTo(book.version());
    assertThat(own.figures(book)).isNotEqualTo(shipped.figures(book));
  }

  @Test
  void a_kitchen_may_set_a_limit_of_its_own_without_a_printed_source() throws Exception {
    write("cool-kitchen/ruleset.yaml", RULE_SET.replace("practice", "house"));
    write(
        "cool-kitchen/cold-holding.yaml",
        """
        rules:
          - id: cold-holding.ordinary
            status: house
            values:
              2026-01-01:
                at-most: {f: 38}
                cite: {text: "house rule, Alder kitchen", state: house}
        last_checked: 2026-11-25
        """);
    Rule rule = book("cool-kitchen").on(DAY).rule("cold-holding.ordinary").orElseThrow();
    assertThat(Printed.figures(rule)).isEqualTo("at most 38 °F");
    assertThat(rule.status()).isEqualTo("house");
    assertThat(rule.citation())
        .isEqualTo(new Citation("house rule, Alder kitchen", "house", Optional.empty()));
  }

  /** Or a kitchen's own figure would pass for its authority's. */
  @Test
  void a_house_rule_says_that_it_is_one() throws Exception {
    write("cool-kitchen/ruleset.yaml", RULE_SET);
    write(
        "cool-kitchen/cold-holding.yaml",
        """
        rules:
          - id: cold-holding.ordinary
            values: {2026-01-01: {at-most: {f: 38}, cite: {text: "house rule", state: house}}}
        last_checked: 2026-11-25
        """);
    assertThatThrownBy(() -> book("cool-kitchen"))
        .isInstanceOf(BrokenRules.class)
        .hasMessageContaining("status: house");
  }

  @Test
  void figures_change_and_end_on_their_days_and_the_earliest_serve_earlier_logs() throws Exception {
    write("dated/ruleset.yaml", RULE_SET);
    write(
        "dated/date-mark.yaml",
        """
        rules:
          - id: date-mark.last-day
            values:
              2026-01-01:
                days: 5
                first-day: counts
                cite: {text: new order, state: verified, copy: the order}
              2020-07-01:
                days: 4
                first-day: does-not-count
                cite: {text: old order, state: verified, copy: the order}
              2026-06-01: null
        last_checked: 2026-11-25
        """);
    RuleBook book = book("dated");
    String id = "date-mark.last-day";
    assertThat(figures(book, id, LocalDate.of(1999, 1, 1)))
        .isEqualTo("4 days, first day does not count");
    assertThat(figures(book, id, LocalDate.of(2025, 12, 31)))
        .isEqualTo("4 days, first day does not count");
    assertThat(figures(book, id, LocalDate.of(2026, 1, 1))).isEqualTo("5 days, first day counts");
    assertThat(figures(book, id, LocalDate.of(2026, 5, 31))).isEqualTo("5 days, first day counts");
    assertThat(figures(book, id, LocalDate.of(2026, 6, 1))).isEqualTo("none");
    assertThat(book.on(LocalDate.of(2026, 1, 1)).rule(id).orElseThrow().citation().text())
        .isEqualTo("new order");
  }

  @Test
  void a_local_set_may_extend_a_local_set_and_change_settings() throws Exception {
    write("a-town/ruleset.yaml", RULE_SET.replace("us-food-code-2022", "z-state"));
    write(
        "z-state/ruleset.yaml",
        RULE_SET
            + """
            defers: The state decides.
            settings:
              freezing-day-counts:
                value: false
                status: guidance
                cite: {text: date-marking sheet, state: verified, copy: North Carolina}
            """);
    write(
        "z-state/food.yaml",
        """
        rules:
          - id: food.second-note
            says: A rule of the state's own.
            occasions: [no-temperature-limit]
            shape: no-figure
            status: law
            actions: []
            values:
              2026-01-01:
                reason: It has no figure.
                cite: {text: state code 1, state: verified, copy: the state code}
        last_checked: 2026-11-25
        """);
    RuleBook town = book("a-town");
    assertThat(town.defers()).isEqualTo("The state decides.");
    assertThat(town.on(DAY).settings()).isEqualTo(new RuleSet.Settings(1, false, true));
    assertThat(town.on(DAY).rules()).last().extracting(Rule::id).isEqualTo("food.second-note");
    assertThat(town.isChanged("food.second-note")).isFalse();
    assertThat(book("z-state").isChanged("food.second-note")).isTrue();
    assertThat(town.choices()).hasSize(3);
  }

  @Test
  void a_local_category_is_added_or_stands_in_place_of_a_shipped_one() throws Exception {
    String category =
        """
        categories:
          %s:
            title: Gravy of this kitchen
            fridge-days: {max: 2}
            freezes: "no"
            tcs: true
            ready-to-eat: true
            source: own trial
            status: reported
        last_checked: 2026-11-25
        """;
    write("keeping/one.yaml", category.formatted("gravy"));
    write("keeping/two.yaml", category.formatted("gravy_2"));
    KeepingList list = RuleLibrary.load(Optional.of(dir)).keepingList();
    assertThat(list.categories()).hasSize(59);
    assertThat(list.category("gravy").orElseThrow().title()).isEqualTo("Gravy of this kitchen");
    assertThat(list.category("gravy").orElseThrow().freezer().max()).isEmpty();
    assertThat(list.category("gravy_2")).isPresent();
  }

  @Test
  void files_that_are_no_yaml_and_hidden_ones_are_left_alone() throws Exception {
    write("own/ruleset.yaml", RULE_SET);
    write("README.md", "Our rules.");
    write(".hidden/draft.yaml", "[");
    write("own/.draft.yaml", "[");
    assertThat(book("own").title()).isEqualTo("A kitchen of its own");
  }

  @Test
  void four_days_at_45_is_there_for_the_cases() throws BrokenRules {
    Path folder = Path.of("src/test/resources/local/four-days-at-45");
    RuleBook book = RuleLibrary.load(Optional.of(folder)).ruleBook("four-days-at-45").orElseThrow();
    assertThat(figures(book, "date-mark.last-day", DAY)).isEqualTo("4 days, first day counts");
    assertThat(figures(book, "cold-holding.ordinary", DAY)).isEqualTo("at most 45 °F (7 °C)");
  }
}
