package chillwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.service.ahead.Question;
import chillwright.web.answers.Json;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Questions ahead as a user gives them: what is printed where, and how it ends. */
class AheadCommandTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-03-05T12:00:00Z"), ZoneOffset.UTC);

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(List<String> args) {
    Console console = new Console(new PrintWriter(out), new PrintWriter(err), false);
    return Main.commandLine(CLOCK, console).execute(args.toArray(String[]::new));
  }

  private static List<String> asked(Question question) {
    List<String> args = new ArrayList<>(List.of("ahead", question.key()));
    args.addAll(List.of(AheadCommand.options(question.example()).split(" ", -1)));
    return args;
  }

  @ParameterizedTest
  @EnumSource
  void every_example_of_the_help_is_answered_in_words(Question question) {
    assertThat(run(asked(question))).isZero();
    assertThat(err.toString()).isEmpty();
    assertThat(out.toString()).contains("Figures from:", "your local health authority decides");
  }

  @ParameterizedTest
  @EnumSource
  void every_example_of_the_help_is_answered_in_json(Question question) throws IOException {
    List<String> args = asked(question);
    args.addAll(List.of("--format", "json"));
    assertThat(run(args)).isZero();
    JsonNode answer = Json.MAPPER.readTree(out.toString());
    assertThat(answer.path("question").asText()).isEqualTo(question.key());
    assertThat(answer.path("told")).isNotEmpty();
  }

  /** Institute of Child Nutrition and the steamer maker's table; 20 L are 4 pans at 2 in. */
  @Test
  void figures_are_shown_in_both_systems() {
    run(List.of("ahead", "pans", "--volume", "20L", "--depth", "2in"));
    assertThat(out.toString())
        .contains("Pans needed: 4 (Full pan, 2 1/2 in deep), food 2 in (51 mm) deep, 6 qt (5.7 L)");
  }

  private static final List<String> ASKED_WRONG =
      List.of("ahead", "cooling", "--food", "chilix", "--start", "cold", "--depth", "2");

  @Test
  void every_fault_is_told_with_its_option() {
    assertThat(run(ASKED_WRONG)).isEqualTo(2);
    assertThat(out.toString()).isEmpty();
    assertThat(err.toString())
        .contains("--food: There is no food \"chilix\". Did you mean chili?")
        .contains("--start: \"cold\" cannot be read")
        .contains("--depth: \"2\" cannot be read");
  }

  @Test
  void on_its_own_it_shows_the_questions() {
    assertThat(run(List.of("ahead"))).isZero();
    assertThat(out.toString()).contains("cooling", "freezer-load", "outage", "never a verdict");
  }
}
