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
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/** Every way to break a rule or keeping file is refused with its place and what to do. */
class BrokenRulesTest {
  private static final List<String> GOOD =
      List.of("set/ruleset.yaml", "set/cooling.yaml", "set/other.yaml", "keeping/own.yaml");

  @TempDir private Path dir;

  private void write(String file, String text) throws IOException {
    Path path = dir.resolve(file);
    Files.createDirectories(path.getParent());
    Files.writeString(path, text);
  }

  private void writeGood() throws IOException {
    for (String file : GOOD) {
      write(file, good(file));
    }
  }

  private static String good(String file) throws IOException {
    return Files.readString(Path.of("src/test/resources/rulebook/good").resolve(file));
  }

  private List<Problem> problems() {
    BrokenRules broken =
        catchThrowableOfType(BrokenRules.class, () -> RuleLibrary.load(Optional.of(dir)));
    return broken == null ? List.of() : broken.problems();
  }

  /** Code, file and pointer of each fault, such as "missing-key cooling.yaml/rules/0/id". */
  private List<String> places() {
    return places(problems());
  }

  private static List<String> places(List<Problem> problems) {
    return problems.stream()
        .map(
            problem -> {
              Problem.Where.InField where = (Problem.Where.InField) problem.where();
              String file = Path.of(where.file()).getFileName().toString();
              return problem.code() + " " + file + where.pointer();
            })
        .toList();
  }

  private void breakIn(String file, String good, String bad) throws IOException {
    String text = good(file);
    assertThat(text).contains(good);
    write(file, text.replace(good, bad));
  }

  @Test
  void the_files_these_tests_break_are_good() throws IOException {
    writeGood();
    assertThatCode(() -> RuleLibrary.load(Optional.of(dir))).doesNotThrowAnyException();
  }

  @ParameterizedTest(name = "{0}: {1} -> {2}")
  @CsvFileSource(resources = "/rulebook/broken.csv", delimiter = '|', quoteCharacter = '\'')
  void a_broken_file_is_refused(String file, String good, String bad, String place, String says)
      throws IOException {
    writeGood();
    breakIn(file, good, bad.replace("\\n", "\n"));
    String name = Path.of(file).getFileName().toString();
    expect(place.replaceFirst(" ", " " + name), says);
  }

  @Test
  void figures_from_memory_are_not_used() throws IOException {
    writeGood();
    breakIn("keeping/own.yaml", "status: verified", "status: memory");
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
    breakIn("keeping/own.yaml", "status: verified", "status: practice");
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
    breakIn("set/cooling.yaml", good, bad.replace("\\n", "\n    "));
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
    write(file, good("set/cooling.yaml"));
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
    write("My County/ruleset.yaml", good("set/ruleset.yaml"));
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
    write("us-home/ruleset.yaml", good("set/ruleset.yaml"));
    expect("id-twice us-home", "write extends: us-home to change single limits");
  }

  @Test
  void a_category_stands_in_one_file_of_the_folder() throws IOException {
    writeGood();
    write("keeping/second.yaml", good("keeping/own.yaml"));
    expect("id-twice second.yaml/categories/soup", "Take one of the two out");
  }

  private static String local(String base) {
    return "title: A\nversion: \"1\"\nstatus: law\nlast_checked: 2026-11-25\nextends: " + base;
  }

  @Test
  void extending_what_is_not_there_is_refused() throws IOException {
    writeGood();
    write("county/ruleset.yaml", local("sett"));
    write("county/cooling.yaml", good("set/cooling.yaml").replace("    says: Food cools.\n", ""));
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
    breakIn("set/cooling.yaml", "shape: reach", "shape: reech");
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
    breakIn("set/ruleset.yaml", "status: guidance\ndefers", "status: rumour\ndefers");
    write(
        "set/cooling.yaml",
        good("set/cooling.yaml").replace("says: Food cools.", "says: \"\"").replace("PT2H", "2 h"));
    breakIn("set/other.yaml", "days: 7", "days: 0");
    breakIn("keeping/own.yaml", "min: 3, max: 4", "min: 5, max: 4");
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
    breakIn("set/cooling.yaml", "to: {c: 21, f: 70}", "to: 70");
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
    assertThat(places(problems)).contains(place);
    assertThat(problems).extracting(Problem::says).anyMatch(sentence -> sentence.contains(says));
  }
}
