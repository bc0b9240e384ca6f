package chillwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;

/** How long does it keep, asked in the words that people use. */
class KeepCommandTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-03-05T12:00:00Z"), ZoneOffset.UTC);

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String... args) {
    out.getBuffer().setLength(0);
    err.getBuffer().setLength(0);
    Console console = new Console(new PrintWriter(out), new PrintWriter(err), false);
    return Main.commandLine(CLOCK, console).execute(args);
  }

  /** The words are those of the page /keeps; which kind each is, is common practice, no source. */
  @Test
  void keep_takes_the_words_of_the_page() {
    assertThat(run("keep", "chili", "--made", "2026-03-02")).isZero();
    assertThat(out.toString()).startsWith("Soup or stew (soup_or_stew)");
    assertThat(run("keep", "curry", "--made", "2026-03-02")).isEqualTo(2);
    assertThat(err.toString())
        .containsSubsequence("casserole_meat: Casserole", "casserole_poultry:");
    assertThat(run("keep", "lasagna", "--made", "2026-03-02")).isZero();
    assertThat(run("keep", "cake", "--made", "2026-03-02")).isEqualTo(2);
    assertThat(err.toString()).contains("cake_unfrosted: Cake without frosting");
    assertThat(run("keep", "garlic butter", "--made", "2026-03-02")).isEqualTo(2);
    assertThat(err.toString()).contains("no category may stand for it", "(common practice");
    assertThat(run("keep", "Soup or stew", "--made", "2026-03-02")).isZero();
    assertThat(out.toString()).contains("(soup_or_stew)");
    assertThat(run("keep", "chicken")).isEqualTo(2);
    assertThat(err.toString())
        .contains("may be one of these", "raw_poultry_whole: Raw chicken or turkey, whole");
    assertThat(run("keep", "gravel", "--made", "2026-03-02")).isEqualTo(2);
  }

  /** By its days once thawed alone: since when it is frozen nobody said. */
  @Test
  void what_is_frozen_since_no_stated_day_gets_no_date() {
    assertThat(run("keep", "frozen turkey soup", "--rule-set", "us-home")).isZero();
    assertThat(out.toString())
        .startsWith("Frozen, of no stated day: give it with --frozen")
        .contains("Once thawed: use within", "best quality for")
        .doesNotContain("2026-03-0", "efrigerator until");
  }

  @Test
  void a_bad_date_is_told_in_one_line() {
    assertThat(run("keep", "soup_or_stew", "--made", "yesterday")).isEqualTo(2);
    assertThat(err.toString().strip().lines())
        .singleElement()
        .asString()
        .contains("--made", "'yesterday' is no date. Write it like 2026-11-22.");
    assertThat(run("keep", "soup_or_stew", "--maed", "2026-03-02")).isEqualTo(2);
    assertThat(err.toString()).contains("--made");
  }
}
