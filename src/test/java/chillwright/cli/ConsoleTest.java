package chillwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.service.Progress;
import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

/** The line of progress, as a terminal gets it: a carriage return goes to the line's beginning. */
class ConsoleTest {
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private Console console(boolean isWatched) {
    return new Console(new PrintWriter(out), new PrintWriter(err), isWatched);
  }

  @Test
  void a_result_takes_the_place_of_the_line() {
    Console console = console(true);
    console.progress().done("rows checked", 1_000);
    console.result("Stored.");
    console.result("Twice.");
    assertThat(out.toString())
        .isEqualToNormalizingNewlines(
            "\rrows checked: 1,000\r" + " ".repeat(19) + "\rStored.\nTwice.\n");
  }

  @Test
  void a_word_does_not_stand_behind_the_line() {
    Console console = console(true);
    console.progress().done("rows checked", 1_000);
    console.word("Line 3: no time.");
    assertThat(out.toString()).endsWith("\r");
    assertThat(err.toString()).isEqualToNormalizingNewlines("Line 3: no time.\n");
  }

  @Test
  void a_shorter_line_leaves_nothing_of_a_longer_one() {
    Progress progress = console(true).progress();
    progress.done("rows checked", 12_345_678);
    progress.done("rows stored", 1_000);
    assertThat(out.toString()).endsWith("\rrows stored: 1,000" + " ".repeat(6));
  }

  @Test
  void numbers_that_run_are_told_now_and_then() {
    Progress progress = console(true).progress();
    for (int count = 1; count <= 100_000; count++) {
      progress.done("rows checked", count);
    }
    assertThat(out.toString().split("\r")).hasSizeLessThan(1_000);
  }

  @Test
  void nothing_is_told_where_nobody_watches() {
    Console console = console(false);
    console.progress().done("rows checked", 1_000);
    console.result("Stored.");
    assertThat(out.toString()).isEqualToNormalizingNewlines("Stored.\n");
    assertThat(err.toString()).isEmpty();
  }
}
