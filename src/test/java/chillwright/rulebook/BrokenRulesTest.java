package chillwright.rulebook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import chillwright.core.log.Problem;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every way to break a rule or keeping file is refused with its place and what to do. */
class BrokenRulesTest {
  private static final String RULE_SET =
      """
      title: Rules for this test
      version: "1"
      status: guidance
      defers: The authority decides.
      last_checked: 2026-11-25
      settings:
        corrective-reheats: {value: 1, status: guidance, cite: {text: a, state: verified, copy: b}}
        freezing-day-counts: {value: true, status: guidance, cite: {text: a, state: verified, copy: b}}
        thawing-day-counts: {value: false, status: practice, cite: {text: a, state: none}}
      """;

  private static final String COOLING =
      """
      rules:
        - id: cooling.one
          says: Food cools.
          occasions: [cooling-cooked]
          shape: reach
          status: law
          actions: [{says: discard, cite: {text: practice, state: none}}]
          values:
            2020-01-01:
              from: {c: 57, f: 135}
              to: {c: 21, f: 70}
              within: PT2H
              cite: {text: s. 1, state: verified, copy: the code}
      last_checked: 2026-11-25
      """;

  private static final String OTHERS =
      """
      rules:
        - id: other.hold
          says: Food is held.
          occasions: [receiving]
          shape: hold
          status: law
          actions: []
          values:
            2020-01-01: {at-most: {f: 41}, at-least: {f: 135, passes: beyond}, cite: {text: s. 2, state: reported, copy: b}}
        - id: other.time
          says: Food is out.
          occasions: [set-out]
          shape: time-alone
          status: law
          actions: []
          values:
            2020-01-01: {within: PT2H, hot-air: {f: 90}, within-hot-air: PT1H, cite: {text: s. 3, state: verified, copy: b}}
        - id: other.days
          says: Food is kept.
          occasions: [date-mark]
          shape: day-count
          status: law
          actions: []
          values:
            2020-01-01: {days: 7, first-day: counts, cite: {text: s. 4, state: verified, copy: b}}
        - id: other.reheat
          says: Food is reheated.
          occasions: [reheating]
          shape: reach
          status: law
          actions: []
          values:
            2020-01-01: {from: {f: 41}, to: {f: 165}, cite: {text: s. 5, state: verified, copy: b}}
        - id: other.none
          says: Nothing is said.
          occasions: [no-temperature-limit]
          shape: no-figure
          status: law
          actions: []
          values:
            2020-01-01: {reason: Nothing is printed., cite: {text: s. 6, state: verified, copy: b}}
      last_checked: 2026-11-25
      """;

  private static final String KEEPING =
      """
      categories:
        soup:
          title: Soup
          fridge-days: {min: 3, max: 4}
          freezer-months: {min: 2, max: 3}
          freezes: well
          tcs: true
          ready-to-eat: true
          source: a chart
          status: verified
      last_checked: 2026-11-25
      """;

  @TempDir private Path dir;

  private void write(String file, String text) throws IOException {
    Path path = dir.resolve(file);
    Files.createDirectories(path.getParent());
    Files.writeString(path, text);
  }

  private void writeGood() throws IOException {
    write("set/ruleset.yaml", RULE_SET);
    write("set/cooling.yaml", COOLING);
    write("set/other.yaml", OTHERS);
    write("keeping/own.yaml", KEEPING);
  }

  private List<Problem> problems() {
    BrokenRules broken =
        catchThrowableOfType(BrokenRules.class, () -> RuleLibrary.load(Optional.of(dir)));
    return broken == null ? List.of() : broken.problems();
  }

  /** Code, file and pointer of each fault, such as "missing-key cooling.yaml/rules/0/id". */
  private List<String> places() {
    return problems().stream()
        .map(
            problem -> {
              Problem.Where.InField where = (Problem.Where.InField) problem.where();
              String file = Path.of(where.file()).getFileName().toString();
              return problem.code() + " " + file + where.pointer();
            })
        .toList();
  }

  private void breakIn(String file, String text, String good, String bad) throws IOException {
    assertThat(text).contains(good);
    write(file, text.replace(good, bad));
  }

  @Test
  void the_files_these_tests_break_are_good() throws IOException {
    writeGood();
    assertThatCode(() -> RuleLibrary.load(Optional.of(dir))).doesNotThrowAnyException();
  }

  @ParameterizedTest(name = "{0} -> {1}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          title: Rules for this test | '' | missing-key /title | title: this key is missing. Write the name people know the rules by
          version: "1" | version: 1 | wrong-value /version | Write the version of this data in quotes
          status: guidance | status: rumour | wrong-value /status | law, model-code, guidance or practice
          defers: The authority decides. | '' | missing-key /defers | Write the sentence that says who decides
          last_checked: 2026-11-25 | '' | missing-key /last_checked | Write a calendar day
          last_checked: 2026-11-25 | last_checked: 2026-02-30 | wrong-value /last_checked | 2026-02-30 does not fit here. Write a calendar day
          title: Rules | titel: x\\ntitle: Rules | unknown-key /titel | Check its spelling, or take it out; known are title, version
          thawing-day-counts | thawing-days-count | unknown-key /settings/thawing-days-count | known are corrective-reheats, freezing-day-counts, thawing-day-counts
          value: 1, | value: -1, | wrong-value /settings/corrective-reheats/value | a whole number of reheats, 0 or more
          value: true, | value: yes, | wrong-value /settings/freezing-day-counts/value | true or false
          value: true, | '' | missing-key /settings/freezing-day-counts/value | this key is missing
          state: none | state: memory | wrong-value /settings/thawing-day-counts/cite/state | what is only remembered is not used
          """)
  void a_broken_rule_set_file_is_refused(String good, String bad, String place, String says)
      throws IOException {
    writeGood();
    breakIn("set/ruleset.yaml", RULE_SET, good, bad.replace("\\n", "\n"));
    expect(place.replaceFirst(" ", " ruleset.yaml"), says);
  }

  @ParameterizedTest(name = "{0} -> {1}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          rules: | rulez: | unknown-key /rulez | no such key is known here
          last_checked: 2026-11-25 | '' | missing-key /last_checked | Write a calendar day
          id: cooling.one | id: Cooling One | wrong-value /rules/0/id | such as cooling.cooked.total
          id: cooling.one | id: chilling.one | wrong-file /rules/0/id | belongs into chilling.yaml. Move it there
          says: Food cools. | says: "" | wrong-value /rules/0/says | Write the rule as one plain sentence
          says: Food cools. | '' | missing-key /rules/0/says | Write the rule as one plain sentence
          occasions: [cooling-cooked] | occasions: [] | wrong-value /rules/0/occasions | a list of the occasions
          [cooling-cooked] | [cooling-coked] | unknown-occasion /rules/0/occasions/0 | Write one of these: cooling-cooked, cooling-ambient
          shape: reach | shape: reech | wrong-value /rules/0/shape | reach, hold, time-alone, day-count, stays-frozen or no-figure
          [cooling-cooked] | [date-mark] | shape-does-not-fit /rules/0/shape | reach judges nothing on the occasion date-mark. Write one of these: day-count
          status: law | status: lore | wrong-value /rules/0/status | law, model-code, guidance or practice
          actions: [{says: discard, | actions: [{do: discard, | unknown-key /rules/0/actions/0/do | known are says, cite
          2020-01-01: | 2020-13-01: | wrong-key /rules/0/values/2020-13-01 | Write the day from which the figures are in force
          2020-01-01: | spring: | wrong-key /rules/0/values/spring | such as 2022-12-28
          to: {c: 21, f: 70} | to: 70 | wrong-value /rules/0/values/2020-01-01/to | Write the figures as printed, in one scale or both, such as {c: 21, f: 70}
          to: {c: 21, f: 70} | to: {passes: at} | missing-key /rules/0/values/2020-01-01/to/f | with its scale as printed
          to: {c: 21, f: 70} | to: {c: 21.005} | wrong-value /rules/0/values/2020-01-01/to/c | with two decimals at most
          to: {c: 21, f: 70} | to: {c: .nan} | wrong-value /rules/0/values/2020-01-01/to/c | a number of degrees
          to: {c: 21, f: 70} | to: {k: 294} | unknown-key /rules/0/values/2020-01-01/to/k | known are c, f, passes
          to: {c: 21, f: 70} | to: {f: -200} | wrong-value /rules/0/values/2020-01-01/to/f | a number of degrees from -100 to 600
          to: {c: 21, f: 70} | to: {c: -99} | out-of-range /rules/0/values/2020-01-01/to/c | -100 to 600 °F
          to: {c: 21, f: 70} | to: {c: 70, f: 21} | scales-disagree /rules/0/values/2020-01-01/to | 70 °C and 21 °F are not the same temperature
          to: {c: 21, f: 70} | to: {c: 21, f: 72} | scales-disagree /rules/0/values/2020-01-01/to | Write both as printed
          to: {c: 21, f: 70} | to: {c: 60, f: 140} | upside-down /rules/0/values/2020-01-01 | so that from is warmer than to
          to: {c: 21, f: 70} | to: {f: 135} | upside-down /rules/0/values/2020-01-01 | cooling falls
          to: {c: 21, f: 70} | '' | missing-key /rules/0/values/2020-01-01/to | Write the figures as printed
          within: PT2H | within: 2 h | wrong-value /rules/0/values/2020-01-01/within | an elapsed time such as PT2H
          within: PT2H | within: PT0S | no-time /rules/0/values/2020-01-01/within | Write the time as printed
          within: PT2H | inside: PT2H | unknown-key /rules/0/values/2020-01-01/inside | known are from, to, within
          cite: {text: s. 1, state: verified, copy: the code} | '' | missing-key /rules/0/values/2020-01-01/cite | Write where the figures are printed
          copy: the code} | } | missing-key /rules/0/values/2020-01-01/cite/copy | Write the copy that was read
          text: s. 1, state: verified | text: s. 1, state: memory | wrong-value /rules/0/values/2020-01-01/cite/state | a limit without a source is not used
          text: s. 1, state: verified | text: s. 1, state: none | wrong-value /rules/0/values/2020-01-01/cite/state | a limit without a source is not used
          text: s. 1, state | text: "", state | wrong-value /rules/0/values/2020-01-01/cite/text | the clause as people cite it
          """)
  void a_broken_topic_file_is_refused(String good, String bad, String place, String says)
      throws IOException {
    writeGood();
    breakIn("set/cooling.yaml", COOLING, good, bad);
    List<Problem> problems = problems();
    assertThat(places()).contains(place.replaceFirst(" ", " cooling.yaml"));
    assertThat(problems).extracting(Problem::says).anyMatch(sentence -> sentence.contains(says));
  }

  @ParameterizedTest(name = "{0} -> {1}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          at-least: {f: 135, passes: beyond} | at-least: {f: 135, passes: over} | wrong-value /rules/0/values/2020-01-01/at-least/passes | beyond where it does not
          at-most: {f: 41}, at-least: {f: 135, passes: beyond}, | '' | missing-key /rules/0/values/2020-01-01/at-most | Write the figures as printed
          at-most: {f: 41} | at-most: {f: 140} | upside-down /rules/0/values/2020-01-01 | at-most is colder than at-least
          within-hot-air: PT1H, | '' | missing-key /rules/1/values/2020-01-01/within-hot-air | an elapsed time
          within-hot-air: PT1H, | within-hot-air: PT2H, | upside-down /rules/1/values/2020-01-01 | hot air shortens the time
          days: 7 | days: 0 | wrong-value /rules/2/values/2020-01-01/days | a whole number of days from 1 to 1000, or chart
          days: 7 | days: 6.5 | wrong-value /rules/2/values/2020-01-01/days | a whole number of days
          days: 7 | days: map | wrong-value /rules/2/values/2020-01-01/days | or chart
          first-day: counts | first-day: true | wrong-value /rules/2/values/2020-01-01/first-day | does-not-count where the day after is
          from: {f: 41}, to: {f: 165} | from: {f: 165}, to: {f: 41} | upside-down /rules/3/values/2020-01-01 | reheating rises
          reason: Nothing is printed., | '' | missing-key /rules/4/values/2020-01-01/reason | why there is no figure
          id: other.reheat | id: other.days | id-twice /rules/3/id | Take one of the two out
          """)
  void every_shape_has_its_own_faults(String good, String bad, String place, String says)
      throws IOException {
    writeGood();
    breakIn("set/other.yaml", OTHERS, good, bad);
    expect(place.replaceFirst(" ", " other.yaml"), says);
  }

  @ParameterizedTest(name = "{0} -> {1}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          soup: | Soup of the day: | wrong-key /categories/Soup of the day | such as soup_or_stew
          title: Soup | '' | missing-key /categories/soup/title | a text that is not empty
          min: 3, max: 4 | min: 5, max: 4 | upside-down /categories/soup/fridge-days | Write the smaller figure as min
          min: 3, max: 4 | min: -3 | wrong-value /categories/soup/fridge-days/min | a whole number from 0 to 1000
          min: 3, max: 4 | '' | wrong-value /categories/soup/fridge-days | a range such as {min: 3, max: 4}
          freezes: well | freezes: nicely | wrong-value /categories/soup/freezes | well, poorly or no
          tcs: true | tcs: maybe | wrong-value /categories/soup/tcs | else false
          source: a chart | '' | missing-key /categories/soup/source | who printed the figures
          fridge-days | fridge-weeks | unknown-key /categories/soup/fridge-weeks | known are title, fridge-days
          last_checked: 2026-11-25 | '' | missing-key /last_checked | a calendar day
          """)
  void a_broken_keeping_file_is_refused(String good, String bad, String place, String says)
      throws IOException {
    writeGood();
    breakIn("keeping/own.yaml", KEEPING, good, bad);
    expect(place.replaceFirst(" ", " own.yaml"), says);
  }

  @Test
  void figures_from_memory_are_not_used() throws IOException {
    writeGood();
    breakIn("keeping/own.yaml", KEEPING, "status: verified", "status: memory");
    assertThat(places())
        .containsExactlyInAnyOrder(
            "wrong-value own.yaml/categories/soup/fridge-days",
            "wrong-value own.yaml/categories/soup/freezer-months");
    assertThat(problems())
        .extracting(Problem::says)
        .allMatch(s -> s.contains("a status other than memory"));
  }

  @Test
  void days_from_practice_must_be_quality_only() throws IOException {
    writeGood();
    breakIn("keeping/own.yaml", KEEPING, "status: verified", "status: practice");
    expect("missing-key own.yaml/categories/soup/days-are-quality", "true");
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          status: law | says: twice | line 6, column 5: found duplicate key says
          shape: reach | shape: [reach | line 6
          values: | values: *nowhere | found undefined alias nowhere
          occasions: [cooling-cooked] | occasions: &all [a]\\nstatus: *all | aliases
          says: Food cools. | says: Food: cools. | line 3
          """)
  void what_is_no_yaml_is_refused_with_line_and_column(String good, String bad, String says)
      throws IOException {
    writeGood();
    breakIn("set/cooling.yaml", COOLING, good, bad.replace("\\n", "\n    "));
    expect("yaml-syntax cooling.yaml", says);
  }

  @Test
  void an_empty_file_is_refused() throws IOException {
    writeGood();
    write("set/cooling.yaml", "");
    expect("wrong-value cooling.yaml", "a list of rules and the day they were last checked");
  }

  @Test
  void a_file_that_is_not_utf_8_is_refused() throws IOException {
    writeGood();
    Files.write(dir.resolve("set/cooling.yaml"), "# 5 °C".getBytes(StandardCharsets.ISO_8859_1));
    expect("not-utf-8 cooling.yaml", "Save it as UTF-8.");
  }

  @ParameterizedTest
  @CsvSource({"cooling.yaml", "set/deeper/cooling.yaml", "set/freezing.yml", "keeping/a/b.yaml"})
  void a_file_that_would_not_be_read_is_refused(String file) throws IOException {
    writeGood();
    write(file, COOLING);
    String name = Path.of(file).getFileName().toString();
    expect("misplaced-file " + name, "Move it into a folder named by its rule set's id");
  }

  @Test
  void a_folder_without_a_rule_set_file_is_refused() throws IOException {
    writeGood();
    Files.delete(dir.resolve("set/ruleset.yaml"));
    assertThat(places()).containsExactly("missing-file set");
  }

  @Test
  void a_folder_that_is_no_id_is_refused() throws IOException {
    writeGood();
    write("My County/ruleset.yaml", RULE_SET);
    expect("folder-name My County", "such as example-county");
  }

  @Test
  void a_folder_without_rule_files_is_refused() {
    expect("no-rule-files " + dir.getFileName(), "Name the folder that holds");
    dir = dir.resolve("not-there");
    expect("no-rule-files not-there", "Name the folder that holds");
  }

  @Test
  void a_shipped_rule_set_is_not_replaced() throws IOException {
    writeGood();
    write("us-home/ruleset.yaml", RULE_SET);
    expect("id-twice us-home", "write extends: us-home to change single limits");
  }

  @Test
  void a_category_stands_in_one_file_of_the_folder() throws IOException {
    writeGood();
    write("keeping/second.yaml", KEEPING);
    expect("id-twice second.yaml/categories/soup", "Take one of the two out");
  }

  private static String local(String base) {
    return "title: A\nversion: \"1\"\nstatus: law\nlast_checked: 2026-11-25\nextends: " + base;
  }

  @Test
  void extending_what_is_not_there_is_refused() throws IOException {
    writeGood();
    write("county/ruleset.yaml", local("sett"));
    write("county/cooling.yaml", COOLING.replace("    says: Food cools.\n", ""));
    expect(
        "unknown-rule-set ruleset.yaml/extends",
        "there is no rule set sett. Name one of these: us-food-code-2022, us-home, set.");
  }

  @Test
  void extending_in_a_circle_is_refused_at_each_of_them() throws IOException {
    write("a/ruleset.yaml", local("b"));
    write("b/ruleset.yaml", local("c"));
    write("c/ruleset.yaml", local("b"));
    write("d/ruleset.yaml", local("d"));
    assertThat(problems())
        .extracting(Problem::code)
        .containsExactly("extends-in-a-circle", "extends-in-a-circle", "extends-in-a-circle");
    assertThat(problems()).extracting(Problem::says).anyMatch(s -> s.contains("b -> c -> b"));
    assertThat(problems()).extracting(Problem::says).anyMatch(s -> s.contains("d -> d"));
  }

  @Test
  void changing_a_rule_that_is_not_there_needs_the_whole_rule() throws IOException {
    writeGood();
    write("county/ruleset.yaml", local("set"));
    write(
        "county/cooling.yaml",
        """
        rules:
          - id: cooling.onn
            status: law
            values:
              2020-01-01:
                to: {f: 45}
                cite: {text: s. 9, state: verified, copy: the county code}
        last_checked: 2026-11-25
        """);
    expect(
        "unknown-rule cooling.yaml/rules/0/id",
        "Correct the id; for a new rule write it whole, also says, occasions, shape, actions.");
  }

  @Test
  void a_local_figure_is_held_against_the_shape_it_takes_over() throws IOException {
    writeGood();
    write("county/ruleset.yaml", local("set"));
    write(
        "county/cooling.yaml",
        """
        rules:
          - id: cooling.one
            values:
              2020-01-01:
                at-most: {f: 45}
                to: {f: 150}
                from: {f: 135}
                cite: {text: s. 9, state: verified}
        last_checked: 2026-11-25
        """);
    assertThat(places())
        .containsExactlyInAnyOrder(
            "unknown-key cooling.yaml/rules/0/values/2020-01-01/at-most",
            "missing-key cooling.yaml/rules/0/values/2020-01-01/cite/copy");
  }

  @Test
  void a_fault_of_the_base_is_told_once() throws IOException {
    writeGood();
    breakIn("set/cooling.yaml", COOLING, "shape: reach", "shape: reech");
    write("county/ruleset.yaml", local("set"));
    write(
        "county/cooling.yaml",
        """
        rules:
          - id: cooling.one
            values:
              2020-01-01: {to: {f: 45}, cite: {text: s. 9, state: verified, copy: b}}
        last_checked: 2026-11-25
        """);
    assertThat(places()).containsExactly("wrong-value cooling.yaml/rules/0/shape");
  }

  @Test
  void all_faults_of_all_files_come_at_once() throws IOException {
    writeGood();
    breakIn("set/ruleset.yaml", RULE_SET, "status: guidance\ndefers", "status: rumour\ndefers");
    write(
        "set/cooling.yaml",
        COOLING.replace("says: Food cools.", "says: \"\"").replace("PT2H", "2 h"));
    breakIn("set/other.yaml", OTHERS, "days: 7", "days: 0");
    breakIn("keeping/own.yaml", KEEPING, "min: 3, max: 4", "min: 5, max: 4");
    write("county/ruleset.yaml", local("nowhere"));
    write("odd/ruleset.yaml", "title: [");
    assertThat(places())
        .containsExactlyInAnyOrder(
            "wrong-value ruleset.yaml/status",
            "wrong-value cooling.yaml/rules/0/says",
            "wrong-value cooling.yaml/rules/0/values/2020-01-01/within",
            "wrong-value other.yaml/rules/2/values/2020-01-01/days",
            "upside-down own.yaml/categories/soup/fridge-days",
            "unknown-rule-set ruleset.yaml/extends",
            "yaml-syntax ruleset.yaml");
  }

  @Test
  void a_fault_names_file_keys_given_and_allowed() throws IOException {
    writeGood();
    breakIn("set/cooling.yaml", COOLING, "to: {c: 21, f: 70}", "to: 70");
    String file = dir.resolve("set/cooling.yaml").toString();
    assertThat(problems())
        .containsExactly(
            new Problem(
                "wrong-value",
                new Problem.Where.InField(file, "/rules/0/values/2020-01-01/to"),
                "70",
                "the figures as printed, in one scale or both, such as {c: 21, f: 70}",
                file
                    + ", rules, 0, values, 2020-01-01, to: 70 does not fit here. Write the figures"
                    + " as printed, in one scale or both, such as {c: 21, f: 70}."));
  }

  private void expect(String place, String says) {
    List<Problem> problems = problems();
    assertThat(places()).contains(place);
    assertThat(problems).extracting(Problem::says).anyMatch(sentence -> sentence.contains(says));
  }
}
