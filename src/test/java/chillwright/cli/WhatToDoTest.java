package chillwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What a cook is told to do next. The limits are those of 16 Del. Admin. Code 3-501.14(A),
 * 3-501.16(A) and 3-403.11; that a reheat too late mends nothing is our reading of them, the
 * stricter of two, and once is common practice, no source.
 */
class WhatToDoTest {
  private static final String HEADER = "lot,food,category,when,entry,temperature,by,note\n";
  private static final String SOUP =
      "A,Barley soup,soup_or_stew,2026-03-02T12:00:00Z,cooked,180F,,\n";

  @TempDir private Path folder;

  private final StringWriter out = new StringWriter();

  /** What {@code check} says of a soup, hot at noon, at some moment of that day. */
  private String at(String time, String... rows) throws IOException {
    return by("", time, rows);
  }

  private String by(String rules, String time, String... rows) throws IOException {
    StringBuilder log = new StringBuilder(HEADER).append(SOUP);
    for (String row : rows) {
      int cells = row.split(",", -1).length;
      log.append("A,,,2026-03-02T").append(row).append(",".repeat(5 - cells)).append('\n');
    }
    Path file = Files.writeString(folder.resolve("log.csv"), log);
    out.getBuffer().setLength(0);
    Console console = new Console(new PrintWriter(out), new PrintWriter(out), false);
    String moment = "2026-03-02T" + time + "Z";
    String all = "check " + file + " --zone UTC --at " + moment + rules;
    Clock clock = Clock.fixed(Instant.parse(moment), ZoneOffset.UTC);
    Main.commandLine(clock, console).execute(all.split(" "));
    return out.toString();
  }

  @Test
  void while_something_is_owed_no_date_holds() throws IOException {
    String missed = at("14:10:00", "12:05:00Z,reading,130F", "14:05:00Z,reading,90F");
    assertThat(missed)
        .contains("Act first: no date holds until that is done and logged.")
        .doesNotContain("governs now", "Use or discard by the end of", "Last day");
    String acted =
        at(
            "14:30:00",
            "12:05:00Z,reading,130F",
            "14:05:00Z,reading,90F",
            "14:20:00Z,action,,MK,thrown into a bin");
    assertThat(acted).contains("out       cooling").doesNotContain("Act first");
  }

  @Test
  void a_cooling_that_cannot_be_shown_is_handled_as_missed() throws IOException {
    assertThat(at("15:00:00", "13:00:00Z,reading,120F", "14:30:00Z,reading,65F"))
        .contains(
            "a reading by 14:00 would have. Unless something else shows it, act as if it was"
                + " missed: Discard, or reheat to 165 °F");
  }

  @Test
  void a_reading_after_the_time_that_is_still_warm_asks_for_no_other_reading() throws IOException {
    assertThat(at("14:10:00", "12:30:00Z,reading,120F", "14:05:00Z,reading,74F"))
        .contains("Still 74 °F at 14:05, when the time was up (70 °F by 14:00, counted from")
        .doesNotContain("Take one now");
  }

  @Test
  void a_closed_lot_is_not_asked_for_a_reading() throws IOException {
    assertThat(at("15:00:00", "14:30:00Z,discarded,,MK,"))
        .contains("the lot is closed.")
        .doesNotContain("Take one now");
  }

  @Test
  void a_reheat_that_runs_says_by_when_it_counts() throws IOException {
    assertThat(at("13:40:00", "13:30:00Z,reading,120F", "13:35:00Z,reheating,"))
        .contains("70 °F by 14:00 (20 min left). Being reheated: reheat to 165 °F by then");
  }

  @Test
  void a_reheat_after_the_limit_is_told_to_mend_it_by_leave_alone() throws IOException {
    assertThat(
            at(
                "15:00:00",
                "12:05:00Z,reading,130F",
                "14:05:00Z,reading,90F",
                "14:10:00Z,reheating,",
                "14:40:00Z,reading,170F"))
        .contains("out       cooling.cooked.first-stage")
        .contains("A reheat this late mends it only if your authority allows it");
  }

  @Test
  void a_second_reheat_is_told_to_start_nothing() throws IOException {
    assertThat(
            at(
                "16:20:00",
                "13:30:00Z,reading,120F",
                "13:35:00Z,reheating,",
                "13:50:00Z,reading,170F",
                "15:30:00Z,reading,110F",
                "15:35:00Z,reheating,"))
        .contains("another reheat does not start the cooling again");
  }

  @Test
  void food_held_hot_shows_how_long_nobody_looked() throws IOException {
    assertThat(at("19:00:00", "12:10:00Z,hot-holding,150F", "13:00:00Z,reading,140F"))
        .contains("last read 6 h ago");
  }

  @Test
  void a_late_reheat_that_the_authority_allows_starts_a_clock_of_its_own() throws IOException {
    String[] rows = {
      "12:05:00Z,reading,130F",
      "14:05:00Z,reading,90F",
      "14:10:00Z,reheating,",
      "14:15:00Z,action,,MK,the inspector allows it",
      "14:40:00Z,reading,170F"
    };
    assertThat(at("15:00:00", rows))
        .contains("out       cooling.cooked.first-stage: Still 90 °F at 14:05")
        .contains("70 °F by 16:40", "41 °F by 20:40");
  }

  /** USDA food safety advice: refrigerate within 2 hours; what is discarded has no last day. */
  @Test
  void no_day_runs_of_food_that_is_out() throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("out.csv"),
            """
            lot,food,category,when,entry
            A,Bean chili,soup_or_stew,2026-03-02T18:00:00Z,cooked
            A,,,2026-03-02T21:15:00Z,chilled
            """);
    out.getBuffer().setLength(0);
    Console console = new Console(new PrintWriter(out), new PrintWriter(out), false);
    Clock clock = Clock.fixed(Instant.parse("2026-03-03T10:00:00Z"), ZoneOffset.UTC);
    Main.commandLine(clock, console)
        .execute("check", file.toString(), "--zone", "UTC", "--rule-set", "us-home");
    assertThat(out.toString()).contains("Discard.").doesNotContain("date-mark", "Last day");
  }

  /** A freezer row alone proves nothing; common practice, no source. */
  @Test
  void days_run_again_of_food_found_thawed_on_a_later_day() throws IOException {
    String log =
        HEADER
            + SOUP
            + "A,,,2026-03-02T13:00:00Z,chilled,40F,,\n"
            + "A,,,2026-03-02T15:00:00Z,frozen,,,\n"
            + "A,,,2026-03-05T09:00:00Z,reading,36F,,\n";
    Path file = Files.writeString(folder.resolve("soft.csv"), log);
    out.getBuffer().setLength(0);
    Console console = new Console(new PrintWriter(out), new PrintWriter(out), false);
    Clock clock = Clock.fixed(Instant.parse("2026-03-05T10:00:00Z"), ZoneOffset.UTC);
    Main.commandLine(clock, console).execute("check", file.toString(), "--zone", "UTC");
    assertThat(out.toString())
        .contains("pending   date-mark.last-day: Last day Tue 10 Mar")
        .doesNotContain("the count stands still");
  }

  /** The kitchen's own colder limit is an example, no source. */
  @Test
  void a_kitchen_that_holds_colder_judges_food_that_has_cooled() throws IOException {
    Path set = Files.createDirectories(folder.resolve("rules/our-kitchen"));
    Files.writeString(
        set.resolve("ruleset.yaml"),
        """
        extends: us-food-code-2022
        title: Our kitchen
        version: "1"
        status: practice
        defers: Your local health authority decides.
        last_checked: 2026-03-01
        """);
    Files.writeString(
        set.resolve("cold-holding.yaml"),
        """
        last_checked: 2026-03-01
        rules:
          - id: cold-holding.ordinary
            says: Cold food is held at the kitchen's own limit or below.
            occasions: [cold-holding]
            shape: hold
            status: practice
            actions: []
            values:
              2020-01-01:
                at-most: {c: 3.33, f: 38}
                cite: {text: "common practice, no source", state: reported, copy: our own notebook}
        """);
    String rules = " --rules " + folder.resolve("rules") + " --rule-set our-kitchen";
    String cooled =
        by(
            rules,
            "20:00:00",
            "13:30:00Z,reading,70F",
            "17:00:00Z,reading,41F",
            "19:00:00Z,reading,40F");
    assertThat(cooled)
        .contains("out       cold-holding.ordinary")
        .contains("in        cooling.cooked.total");
    assertThat(by(rules, "18:00:00", "13:30:00Z,reading,70F", "17:00:00Z,reading,41F"))
        .doesNotContain("cold-holding.ordinary");
  }
}
