package chillwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.rulebook.PlanFile;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command as a user runs it; figures of FDA Food Code 2022 as in the plan's own citations. */
class PlanCommandTest {
  private static final String AT = "2026-11-26T08:00:00-07:00";

  /** How a run ended, and what it printed where. */
  private record CommandRun(int code, String out, String err) {
    static CommandRun of(String... args) {
      StringWriter out = new StringWriter();
      StringWriter err = new StringWriter();
      Console console = new Console(new PrintWriter(out), new PrintWriter(err), false);
      int code = Main.commandLine(Clock.systemUTC(), console).execute(args);
      return new CommandRun(code, out.toString(), err.toString());
    }
  }

  @TempDir private Path folder;

  private Path file(String text) throws IOException {
    Path file = folder.resolve("supper.yaml");
    Files.writeString(file, text);
    return file;
  }

  private static String supper(String more) {
    return """
        serving: 2026-12-12T18:00:00-07:00
        zone: America/Denver
        kitchen:
          has: {hob: 1}
        dishes:
          - dish: Leek soup
            category: soup_or_stew
            portions: 20
            route: chilled
            make: [{step: simmer, minutes: 60, uses: {hob: 1}}]
            finish: [{step: reheat, minutes: 60, uses: {hob: 1}}]
        %s"""
        .formatted(more);
  }

  private static JsonNode json(CommandRun run) throws IOException {
    return new ObjectMapper().readTree(run.out());
  }

  @Test
  void the_sample_has_a_plan() throws IOException {
    CommandRun run =
        CommandRun.of(
            "plan", "sample-logs/plans/harvest-supper.yaml", "--at", AT, "--format", "json");
    assertThat(run.code()).isZero();
    JsonNode plan = json(run);
    assertThat(plan.at("/verdict").asText()).isEqualTo("plan");
    assertThat(plan.at("/tasks")).isNotEmpty();
    assertThat(plan.at("/conflicts")).isEmpty();
    assertThat(plan.at("/bounds/0/citation").asText()).contains("3-501.17");
    for (JsonNode task : plan.at("/tasks")) {
      assertThat(task.has("uses")).isTrue();
      assertThat(task.at("/because").isArray()).isTrue();
    }
  }

  @Test
  void in_words_it_says_what_is_done_on_which_day() throws IOException {
    CommandRun run = CommandRun.of("plan", file(supper("")).toString(), "--at", AT);
    assertThat(run.code()).isZero();
    assertThat(run.out())
        .contains("On the table at Sat 12 Dec 2026 18:00")
        .contains("17:00 - 18:00  Leek soup: reheat: 165 °F (74 °C) within 2 h (hob 1)")
        .contains("Fri 11 Dec", "  17:00 - 18:00  Leek soup: simmer (hob 1)")
        .contains("between Sun 6 Dec 00:00 and Fri 11 Dec 17:00")
        .contains("Your local health authority decides");
  }

  @Test
  void without_a_plan_it_says_what_would_help() throws IOException {
    String second =
        """
          - dish: Bean stew
            category: soup_or_stew
            route: chilled
            make: [{step: simmer, minutes: 60, uses: {hob: 1}}]
            finish: [{step: reheat, minutes: 60, uses: {hob: 1}}]
        """;
    String path = file(supper(second)).toString();
    CommandRun words = CommandRun.of("plan", path, "--at", AT);
    assertThat(words.code()).isEqualTo(1);
    assertThat(words.out()).contains("There is no plan.", "this: hob. With 2 there");
    JsonNode plan = json(CommandRun.of("plan", path, "--at", AT, "--format", "json"));
    assertThat(plan.at("/verdict").asText()).isEqualTo("no-plan");
    assertThat(plan.at("/proven").asBoolean()).isTrue();
    assertThat(plan.at("/conflicts/0/resource").asText()).isEqualTo("hob");
    assertThat(plan.at("/conflicts/0/enough").asDouble()).isEqualTo(2);
  }

  @Test
  void every_fault_is_told_at_once() throws IOException {
    String broken =
        """
        serving: tomorrow
        guests: 0
        kitchens: {}
        dishes:
          - dish: ""
            category: soup_or_stew
            route: tinned
            make: [{step: simmer, minutes: 0}]
        """;
    CommandRun run = CommandRun.of("plan", file(broken).toString(), "--at", AT);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err())
        .contains("Faults: 6")
        .contains("serving", "guests", "kitchens", "dish", "route", "minutes");
    assertThat(run.out()).isEmpty();
  }

  @Test
  void what_the_schema_cannot_see_is_told_too() throws IOException {
    String broken =
        """
        serving: 2026-11-01T18:00:00-07:00
        zone: Nowhere/Town
        kitchen: {has: {oven: 1}}
        dishes:
          - {dish: A, category: soups, route: chilled, make: [{step: s, minutes: 5}]}
          - dish: A
            category: soup_or_stew
            route: frozen
            make: [{step: s, minutes: 5, uses: {ovn: 1}}]
        """;
    CommandRun run = CommandRun.of("plan", file(broken).toString(), "--at", AT);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err())
        .contains("not after")
        .contains("no time zone")
        .contains("not in the keeping list")
        .contains("another dish has this name")
        .contains("a frozen dish needs it")
        .contains("no such thing");
  }

  @Test
  void what_is_nested_without_end_is_a_fault() throws IOException {
    CommandRun run = CommandRun.of("plan", file("[".repeat(100_000)).toString(), "--at", AT);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("nested too deeply");
  }

  @Test
  void the_schema_is_printed_and_accepts_the_sample() throws IOException {
    CommandRun run = CommandRun.of("plan", "--schema");
    assertThat(run.out().strip()).isEqualTo(PlanFile.schema().strip());
    assertThat(new ObjectMapper().readTree(run.out()).at("/title").asText()).isNotEmpty();
  }

  private static final String SCALED =
      """
      serving: 2026-12-12T18:00:00-07:00
      guests: %s
      kitchen:
        has: {hob: 1, refrigerator: 60}
      dishes:
        - dish: Leek soup
          category: soup_or_stew
          portionsPerGuest: 1.5
          portionFluidOunces: 8
          pan: full-2.5
          route: chilled
          make: [{step: simmer, minutes: 60}]
          finish: [{step: reheat, minutes: 60}]
      """;

  /**
   * A full pan of 2 1/2 in holds 240 fl oz in use (a steamer maker's table of pans), so 192 filled
   * 2 in deep: 60 portions of 8 fl oz are 480 fl oz, two and a half such pans, so three. An 8 oz
   * ladle is one of the ladles of the Institute of Child Nutrition.
   */
  @Test
  void guests_become_portions_and_portions_pans() throws IOException {
    String path = file(SCALED.formatted("40")).toString();
    JsonNode pans = json(CommandRun.of("plan", path, "--at", AT, "--format", "json")).at("/pans/0");
    assertThat(pans.at("/portions").asInt()).isEqualTo(60);
    assertThat(pans.at("/litres").asDouble()).isEqualTo(14.2);
    assertThat(pans.at("/pans").asInt()).isEqualTo(3);
    assertThat(pans.at("/fits/refrigerator").asBoolean()).isTrue();
    assertThat(pans.at("/tools/0").asText()).isEqualTo("ladle-8");
    CommandRun text = CommandRun.of("plan", path, "--at", AT);
    assertThat(text.out()).contains("60 portions are 14.2 litres: 3 of the pan").contains("fits");
  }

  /** Seven pans of 20 x 12 x 2 1/2 in take up 68.8 litres, of 60 in the refrigerator. */
  @Test
  void more_guests_than_the_refrigerator_holds_are_told() throws IOException {
    String path = file(SCALED.formatted("110")).toString();
    JsonNode plan = json(CommandRun.of("plan", path, "--at", AT, "--format", "json"));
    assertThat(plan.at("/verdict").asText()).isEqualTo("no-plan");
    assertThat(plan.at("/pans/0/room").asDouble()).isEqualTo(68.8);
    assertThat(plan.at("/pans/0/fits/refrigerator").asBoolean()).isFalse();
    assertThat(plan.at("/conflicts/0/why").asText()).isEqualTo("step-needs-more");
  }

  private static final String WEEKS =
      """
      serving: 2026-12-12T18:00:00Z
      zone: UTC
      guests: 60
      dishes:
        - dish: Barley bread
          category: yeast_bread_baked
          route: frozen
          thawHours: 4
          ingredientsFor: 20
          ingredients:
            - {name: Flour, amount: 0.75, unit: kg}
            - {name: salt}
            - {name: lemons, amount: 0.35}
          make: [{step: bake, minutes: 60}]
        - dish: Rolls
          category: yeast_bread_baked
          route: fresh
          ingredients:
            - {name: flour, amount: 0.5, unit: kg}
            - {name: eggs, amount: 6}
          make: [{step: bake, minutes: 60}]
      """;

  /**
   * 60 of a recipe for 20: 0.75 kg three times, and half a kilogram as written: 2.75 kg. 1.05
   * lemons are two to buy.
   */
  @Test
  void what_the_dishes_of_a_week_take_is_one_list() throws IOException {
    String path = file(WEEKS).toString();
    JsonNode plan = json(CommandRun.of("plan", path, "--at", AT, "--format", "json"));
    JsonNode weeks = plan.at("/shopping");
    assertThat(weeks).as(plan.toString()).hasSize(1);
    assertThat(weeks.at("/0/week").asText()).isEqualTo("2026-W50");
    assertThat(weeks.at("/0/from").asText()).isEqualTo("2026-12-07");
    assertThat(weeks.at("/0/items"))
        .extracting(JsonNode::toString)
        .containsExactly(
            "{\"name\":\"eggs\",\"amount\":6,\"unit\":\"\",\"dishes\":[\"Rolls\"]}",
            "{\"name\":\"Flour\",\"amount\":2.75,\"unit\":\"kg\","
                + "\"dishes\":[\"Barley bread\",\"Rolls\"]}",
            "{\"name\":\"lemons\",\"amount\":2,\"unit\":\"\",\"dishes\":[\"Barley bread\"]}",
            "{\"name\":\"salt\",\"amount\":null,\"unit\":\"\",\"dishes\":[\"Barley bread\"]}");
    assertThat(CommandRun.of("plan", path, "--at", AT).out())
        .contains("To buy for the week of Mon 7 Dec (2026-W50)")
        .contains("  2.75 kg Flour (Barley bread, Rolls)", "  6 eggs (Rolls)", "  salt (Barley");
  }

  @Test
  void every_fault_of_ingredients_is_told_at_once() throws IOException {
    String broken =
        WEEKS
            .replace("name: salt", "name: ''")
            .replace("amount: 6", "amount: 0")
            .replace("unit: kg}\n      - {name: eggs", "unit: kg, of: 1}\n      - {name: eggs")
            .replace("ingredientsFor: 20", "ingredientsFor: 0");
    CommandRun run = CommandRun.of("plan", file(broken).toString(), "--at", AT);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err())
        .contains("Faults: 4")
        .contains("ingredients/1/name", "ingredients/1/amount", "ingredientsFor", "of");
  }

  @Test
  void every_fault_of_portions_and_pans_is_told_at_once() throws IOException {
    String path =
        file(SCALED
                .formatted("40")
                .replace("full-2.5", "full-9")
                .replace("portionsPerGuest: 1.5", "portionsPerGuest: 1\n    portions: 4")
                .replace("category: soup", "portionMillilitres: 200\n    category: soup"))
            .toString();
    CommandRun run = CommandRun.of("plan", path, "--at", AT);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err())
        .contains("there is no such pan", "Write one of the two", "portionFluidOunces too");
  }
}
