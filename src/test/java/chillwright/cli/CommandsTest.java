package chillwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.answers.Json;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands as a user gives them: what they print where, and how they end. */
class CommandsTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-03-05T12:00:00Z"), ZoneOffset.UTC);

  /** S. Nevada Health District and 16 Del. Admin. Code 3-501.14(A); minutes derived. */
  private static final String COOLED =
      """
      lot,food,category,when,entry,temperature
      A,Barley soup,soup_or_stew,2026-03-02T12:00:00Z,cooked,135F
      A,,,2026-03-02T13:45:00Z,reading,70F
      A,,,2026-03-02T17:45:00Z,reading,41F
      """;

  @TempDir private Path folder;

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String... args) {
    out.getBuffer().setLength(0);
    err.getBuffer().setLength(0);
    Console console = new Console(new PrintWriter(out), new PrintWriter(err), false);
    return Main.commandLine(CLOCK, console).execute(args);
  }

  private String file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text).toString();
  }

  @Test
  void check_ends_with_0_where_nothing_is_out() throws IOException {
    assertThat(run("check", file("a.csv", COOLED), "--zone", "UTC")).isZero();
    assertThat(out.toString()).contains("Barley soup", "3-501.14(A)(1)", "us-food-code-2022");
    assertThat(err.toString()).isEmpty();
  }

  @Test
  void check_ends_with_1_where_something_is_out() throws IOException {
    String late = COOLED.replace("13:45:00Z,reading,70F", "14:00:00Z,reading,78F");
    String at = "2026-03-02T18:00:00Z";
    assertThat(run("check", file("a.csv", late), "--zone", "UTC", "--at", at)).isEqualTo(1);
    assertThat(out.toString())
        .contains("Discard, or reheat to 165 °F and start again if your authority allows (until");
    assertThat(run("check", file("a.csv", late), "--zone", "UTC")).isEqualTo(1);
    assertThat(out.toString())
        .contains("if your authority allows (no longer: that was until Mon 2 Mar 18:00).");
  }

  @Test
  void check_ends_with_2_where_the_input_is_at_fault() throws IOException {
    String broken = COOLED.replace("135F", "135").replace("reading,41F", "readin,41F");
    assertThat(run("check", file("a.csv", broken))).isEqualTo(2);
    assertThat(err.toString()).contains("line 2, temperature", "line 4, entry", "Faults: 2");
  }

  @Test
  void rows_after_the_moment_are_left_out() throws IOException {
    String at = "2026-03-02T13:00:00Z";
    assertThat(run("check", file("a.csv", COOLED), "--at", at, "--zone", "UTC", "--format", "json"))
        .isZero();
    JsonNode lot = Json.MAPPER.readTree(out.toString()).path("lots").get(0);
    assertThat(lot.path("verdict").asText()).isEqualTo("pending");
    assertThat(lot.path("findings").get(0).path("deadline").asText())
        .isEqualTo("2026-03-02T14:00:00Z");
  }

  @Test
  void check_prints_the_promised_shape() throws IOException {
    run("check", file("a.csv", COOLED), "--zone", "UTC", "--format", "json");
    JsonNode answer = Json.MAPPER.readTree(out.toString());
    assertThat(answer.path("ruleSet").path("id").asText()).isEqualTo("us-food-code-2022");
    assertThat(answer.has("checkedAt")).isTrue();
    JsonNode lot = answer.path("lots").get(0);
    JsonNode finding = finding(lot, "cooling.cooked.total");
    assertThat(finding.path("verdict").asText()).isEqualTo("in");
    assertThat(finding.path("citation").asText()).isEqualTo("3-501.14(A)(2)");
    assertThat(finding.path("limit").asText()).isEqualTo("41 °F within 6 h");
    assertThat(finding.path("longest").asText()).isEqualTo("PT5H45M");
    for (String key :
        new String[] {
          "dateMarkLastDay",
          "daysLeftWhenThawed",
          "chilledLastDay",
          "discardAt",
          "bestQualityBy",
          "qualityLimit",
          "governs",
          "because"
        }) {
      assertThat(lot.path("keeping").has(key)).as(key).isTrue();
    }
    assertThat(lot.path("keeping").path("dateMarkLastDay").asText()).isEqualTo("2026-03-08");
    assertThat(answer.path("problems").isArray()).isTrue();
  }

  private static JsonNode finding(JsonNode lot, String rule) {
    for (JsonNode finding : lot.path("findings")) {
      if (finding.path("rule").asText().equals(rule)) {
        return finding;
      }
    }
    throw new AssertionError("no finding " + rule);
  }

  @Test
  void import_stores_once_and_skips_what_is_known() throws IOException {
    String db = folder.resolve("k.db").toString();
    String log = file("a.csv", COOLED);
    assertThat(run("import", log, "--db", db, "--zone", "UTC")).isZero();
    assertThat(out.toString()).contains("3 entries of 1 lot");
    assertThat(run("import", log, "--db", db)).isZero();
    assertThat(out.toString()).contains("0 entries of 0 lots", "3 rows were known already");
    assertThat(run("recompute", "--db", db)).isZero();
    assertThat(out.toString()).contains("rows changed: 0");
  }

  @Test
  void import_stores_nothing_of_a_file_with_a_fault() throws IOException {
    String db = folder.resolve("k.db").toString();
    String log = file("a.csv", COOLED + "B,,,2026-03-02T12:00:00Z,cooked,135F\n");
    assertThat(run("import", log, "--db", db, "--zone", "UTC")).isEqualTo(2);
    assertThat(out.toString()).contains("Nothing was stored");
    assertThat(run("import", log, "--db", db, "--good-lots-only")).isEqualTo(2);
    assertThat(out.toString()).contains("3 entries of 1 lot");
  }

  @Test
  void another_zone_or_rule_set_than_the_stored_one_is_refused() throws IOException {
    String db = folder.resolve("k.db").toString();
    String log = file("a.csv", COOLED);
    run("import", log, "--db", db, "--zone", "UTC");
    assertThat(run("import", log, "--db", db, "--zone", "America/Denver")).isEqualTo(2);
    assertThat(err.toString()).contains("UTC", "America/Denver", "--zone");
    assertThat(run("import", log, "--db", db, "--rule-set", "us-home")).isEqualTo(2);
    assertThat(err.toString()).contains("us-food-code-2022", "us-home");
  }

  @Test
  void keep_answers_a_question_about_a_category() {
    assertThat(run("keep", "soup_or_stew", "--made", "2026-04-01")).isZero();
    assertThat(out.toString()).contains("Tue 7 Apr");
    assertThat(run("keep", "soup", "--made", "2026-04-01")).isZero();
    assertThat(out.toString()).startsWith("Soup or stew (soup_or_stew)").contains("Tue 7 Apr");
    assertThat(run("keep", "soup_or_stew", "--made", "2026-04-02", "--frozen", "2026-04-01"))
        .isEqualTo(2);
    assertThat(err.toString())
        .contains("--frozen 2026-04-01 is too early: give a day not before 2026-04-02");
  }

  @Test
  void a_date_that_cannot_be_is_told_in_plain_words() {
    assertThat(run("keep", "soup_or_stew", "--made", "11/22/2026")).isEqualTo(2);
    assertThat(err.toString()).contains("Write it like 2026-11-22").doesNotContain("java");
    assertThat(run("keep", "soup_or_stew", "--until", "2026-04-01")).isEqualTo(2);
    assertThat(err.toString()).contains("give the day it was opened too");
    assertThat(run("keep", "curry")).isEqualTo(2);
    assertThat(err.toString()).contains("soup_or_stew: Soup or stew", "casserole_meat: Cas");
  }

  /** 3-501.18(A): past its days food is discarded; frozen too late it has no days to give back. */
  @Test
  void keep_never_says_use_at_once_of_food_frozen_after_its_last_day() {
    run("keep", "soup_or_stew", "--made", "2026-02-01", "--frozen", "2026-02-09");
    assertThat(out.toString())
        .contains("> Its last day, Sat 7 Feb, had passed before it was frozen: discard")
        .doesNotContain("use at once", "best quality by Thu 9 Apr  ");
    run(
        "keep",
        "soup_or_stew",
        "--made",
        "2026-02-01",
        "--frozen",
        "2026-02-09",
        "--thawed",
        "2026-03-01",
        "--format",
        "json");
    assertThat(out.toString())
        .contains("\"lastDayMissed\" : \"2026-02-07\"", "had passed before it was frozen: discard");
  }

  /** FoodSafety.gov chart: soup 3-4 days, 2-3 months of quality, no safety limit while frozen. */
  @Test
  void keep_says_what_has_passed() {
    run("keep", "soup_or_stew", "--made", "2026-02-01", "--rule-set", "us-home");
    assertThat(out.toString())
        .contains("Its last day passed on Thu 5 Feb: discard")
        .doesNotContain("governs now");
    run("keep", "soup_or_stew", "--made", "2025-12-31", "--frozen", "2026-01-01");
    assertThat(out.toString())
        .contains("Frozen: past its best on Sun 1 Mar: quality only")
        .contains("> Frozen: quality fades after Wed 1 Apr; that is no safety limit  (this");
    run("keep", "soup_or_stew", "--frozen", "2026-03-01");
    assertThat(out.toString()).contains("give made (--made) to learn the days left after thawing");
    run("keep", "cookies_baked", "--frozen", "2026-03-01");
    assertThat(out.toString()).doesNotContain("--made");
  }

  /** USDA, leftovers: after more than 2 hours outside it is discarded, so no later date holds. */
  @Test
  void what_is_to_be_discarded_has_no_later_date() throws IOException {
    String log =
        """
        lot,food,category,when,entry
        A,Barley soup,soup_or_stew,2026-03-01T09:00:00Z,cooked
        A,,,2026-03-01T13:00:00Z,chilled
        """;
    Files.writeString(folder.resolve("out.csv"), log);
    run("check", folder.resolve("out.csv").toString(), "--rule-set", "us-home");
    assertThat(out.toString()).contains("Discard").doesNotContain("In the refrigerator until");
  }

  /** FoodSafety.gov, food safety during a power outage: fruit pies are kept, warm too. */
  @Test
  void days_of_what_needs_no_cold_are_told_as_quality() {
    run("keep", "apple pie", "--rule-set", "us-home");
    assertThat(out.toString())
        .contains("In the refrigerator: at its best until the end of ", "so no last day applies")
        .doesNotContain("In the refrigerator until");
    run("keep", "chicken soup", "--rule-set", "us-home");
    assertThat(out.toString()).contains("In the refrigerator until the end of ");
  }

  /** FoodSafety.gov on power outages: ice crystals or 40 °F or below may be refrozen. */
  @Test
  void at_home_a_thawed_lot_gets_a_plain_answer_on_refreezing() throws IOException {
    String hard =
        """
        lot,food,category,when,entry,how,temperature
        A,Barley soup,soup_or_stew,2026-03-01T09:00:00Z,cooked,,
        A,,,2026-03-01T10:00:00Z,frozen,hard,
        """;
    String soft = hard + "A,,,2026-03-05T08:00:00Z,reading,soft,";
    String[] rules = {"--zone", "UTC", "--rule-set", "us-home"};
    check(file("a.csv", hard + "A,,,2026-03-05T08:00:00Z,reading,crystals,\n"), rules);
    assertThat(out.toString()).contains("it may be refrozen");
    check(file("a.csv", soft + "\n"), rules);
    assertThat(out.toString()).contains("take one now. At 40 °F or below it may be refrozen");
    check(file("a.csv", soft + "50F\nA,,,2026-03-05T11:00:00Z,reading,soft,50F\n"), rules);
    assertThat(out.toString()).contains("Do not refreeze it: discard.");
    run(
        "keep",
        "soup_or_stew",
        "--made",
        "2026-03-01",
        "--frozen",
        "2026-03-02",
        rules[2],
        rules[3]);
    assertThat(out.toString()).contains("Freeze it again? It may be refrozen while it has ice");
  }

  /** 16 Del. Admin. Code 3-501.14(A)(1) and 3-501.19(B): 2 hours to 70 °F; 4 hours without heat. */
  @Test
  void bounds_and_deadlines_read_as_a_cook_would_say_them() throws IOException {
    String pot =
        """
        lot,food,category,when,entry,temperature
        A,Barley soup,soup_or_stew,2026-03-05T08:00:00Z,cooked,135F
        A,,,2026-03-05T10:10:00Z,reading,65F
        B,Barley soup,soup_or_stew,2026-03-05T09:00:00Z,prepared,40F
        B,,,2026-03-05T11:00:00Z,time-control,40F
        """;
    check(file("a.csv", pot), "--zone", "UTC");
    assertThat(out.toString())
        .contains("only that it took at most 2 h 10 min", "Serve or discard by 15:00 (3 h left)")
        .doesNotContain("between 0 s", "Gone by", "gone by");
  }

  private void check(String file, String... options) {
    List<String> line = new ArrayList<>(List.of("check", file));
    line.addAll(List.of(options));
    run(line.toArray(String[]::new));
  }

  @Test
  void rules_shows_what_a_local_set_changes() {
    assertThat(run("rules")).isZero();
    assertThat(out.toString()).contains("us-food-code-2022", "us-home");
    assertThat(run("rules", "example-county", "--rules", "sample-logs/rules")).isZero();
    assertThat(out.toString()).contains("(changed here)", "45 °F (7 °C) or below");
    assertThat(run("rules", "atlantis")).isEqualTo(2);
    assertThat(err.toString()).contains("atlantis", "us-home");
  }

  @Test
  void every_command_has_help_and_a_wrong_one_says_so() {
    for (String command :
        new String[] {"serve", "demo", "check", "import", "keep", "rules", "recompute"}) {
      assertThat(run(command, "--help")).as(command).isZero();
      assertThat(out.toString()).contains("Usage: chillwright " + command, "Exit codes");
    }
    assertThat(run("chek")).isEqualTo(2);
    assertThat(run("check", "no-such-file.csv")).isEqualTo(2);
    assertThat(err.toString()).contains("no-such-file.csv");
  }

  /** Own rule: what is stored is never shown beside limits that did not judge it. */
  @Test
  void lots_are_judged_again_once_a_rule_file_was_edited() throws IOException {
    Path rules = Files.createDirectories(folder.resolve("rules/own-plan"));
    Files.writeString(
        rules.resolve("ruleset.yaml"),
        """
        title: Own plan
        version: "1"
        status: practice
        extends: us-food-code-2022
        last_checked: 2026-11-25
        """);
    Files.writeString(rules.resolve("cold-holding.yaml"), coldHoldingAt(38));
    String log = file("a.csv", COOLED + "A,,,2026-03-03T08:00:00Z,reading,40F\n");
    String db = folder.resolve("kitchen.db").toString();
    String dir = rules.getParent().toString();
    String[] again = {"import", log, "--db", db, "--zone", "UTC", "--rules", dir};
    assertThat(
            run(
                "import",
                log,
                "--db",
                db,
                "--zone",
                "UTC",
                "--rule-set",
                "own-plan",
                "--rules",
                dir))
        .isZero();
    assertThat(run(again)).isZero();
    assertThat(err.toString()).doesNotContain("judged again");
    Files.writeString(rules.resolve("cold-holding.yaml"), coldHoldingAt(40));
    assertThat(run(again)).isZero();
    assertThat(err.toString()).contains("judged again now", "Lots judged again: 1; rows changed: ");
    assertThat(run("recompute", "--db", db, "--rules", dir)).isZero();
    assertThat(out.toString()).contains("Lots judged again: 1; rows changed: 0.");
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
  void a_row_changed_since_the_last_import_is_a_fault_that_says_what_to_do() throws IOException {
    String db = folder.resolve("kitchen.db").toString();
    assertThat(run("import", file("a.csv", COOLED), "--db", db, "--zone", "UTC")).isZero();
    String changed = file("a.csv", COOLED.replace("reading,70F", "reading,68F"));
    assertThat(run("import", changed, "--db", db)).isEqualTo(2);
    assertThat(err.toString())
        .contains("line 3, temperature", "A.2", "70 °F, not 68 °F", "\"correction\"");
    assertThat(out.toString()).contains("Nothing was stored");
  }
}
