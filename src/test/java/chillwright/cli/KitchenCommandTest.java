package chillwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.rulebook.RuleLibrary;
import chillwright.service.Kitchen;
import chillwright.service.Opening;
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
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Foods, places, people and probes from the command line, on a real database. */
class KitchenCommandTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-03-05T12:00:00Z"), ZoneOffset.UTC);

  @TempDir private Path folder;

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String... args) {
    out.getBuffer().setLength(0);
    err.getBuffer().setLength(0);
    Console console = new Console(new PrintWriter(out), new PrintWriter(err), false);
    List<String> all = new ArrayList<>(List.of("kitchen"));
    all.addAll(List.of(args));
    all.addAll(List.of("--db", folder.resolve("kitchen.db").toString()));
    return Main.commandLine(CLOCK, console).execute(all.toArray(String[]::new));
  }

  private String file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text).toString();
  }

  @ParameterizedTest
  @CsvSource({"places, 13", "people, 4", "probes, 5"})
  void the_sample_kitchen_is_stored_whole(String kind, int count) {
    String file = "sample-logs/kitchen/" + kind + ".csv";
    assertThat(run(kind, file)).as(err.toString()).isZero();
    assertThat(out.toString()).contains(kind + " " + count + ".");
  }

  @Test
  void the_sample_foods_are_stored_and_listed_in_each_form() throws IOException {
    assertThat(run("foods", "sample-logs/kitchen/foods.csv")).as(err.toString()).isZero();
    assertThat(out.toString()).contains("foods 2.");
    assertThat(run("foods")).isZero();
    assertThat(out.toString())
        .contains("Barley and leek soup: category soup_or_stew; portions 24")
        .contains("allergens milk wheat", "otherAllergens celery");
    assertThat(run("foods", "--format", "json")).isZero();
    JsonNode foods = Json.MAPPER.readTree(out.toString());
    assertThat(foods.findValuesAsText("container")).containsExactly("2-inch pan", "quart tub");
    assertThat(run("foods", "--format", "csv")).isZero();
    String listed = out.toString();
    assertThat(run("foods", file("again.csv", listed))).as(err.toString()).isZero();
    assertThat(run("foods", "--format", "csv")).isZero();
    assertThat(out.toString()).isEqualTo(listed);
  }

  @Test
  void every_kind_comes_back_as_it_was_given() throws IOException {
    for (String[] given :
        new String[][] {
          {"places", "name,kind,ownLimit,rounds", "Walk-in,refrigerator,38 °F,3"},
          {"people", "initials,name", "RO,\"O., Rosa\""},
          {"probes", "name,scales,note", "P-2,fahrenheit,thin tip"}
        }) {
      String text = given[1] + "\r\n" + given[2] + "\r\n";
      assertThat(run(given[0], file(given[0] + ".csv", "\ufeff" + text))).as(text).isZero();
      assertThat(run(given[0], "--format", "csv")).isZero();
      assertThat(out.toString().strip()).isEqualTo(text.strip());
    }
  }

  /** The limit of cold holding is 41 °F: FDA Food Code 2022 3-501.16(A)(2). */
  @Test
  void every_fault_is_told_with_its_line_and_nothing_is_stored() throws IOException {
    String places = "name,kind,ownLimit\nWalk-in,refrigerator,39F\nChest,frezer,\nBox,other\n";
    assertThat(run("places", file("a.csv", places + "Reach-in,refrigerator,45F\nBox,other\n")))
        .isEqualTo(2);
    assertThat(err.toString())
        .contains("line 3, kind", "Did you mean freezer", "line 5, ownLimit", "41 °F")
        .contains("line 6, name", "Faults: 3. Nothing was stored.");
    assertThat(run("places")).isZero();
    assertThat(out.toString()).contains("No places are described");
    assertThat(run("foods", file("b.csv", "nam,category,category\n"))).isEqualTo(2);
    assertThat(err.toString())
        .contains("no column \"nam\"", "stands here twice", "\"name\" is missing");
    assertThat(run("foods", file("c.csv", ""))).isEqualTo(2);
    assertThat(run("foods", file("d.csv", "name,category\nSoup,\"soup\n"))).isEqualTo(2);
    assertThat(err.toString()).contains("quotation mark");
  }

  @Test
  void a_database_that_is_not_there_or_held_by_another_is_told_plainly() throws Exception {
    assertThat(run("people")).isEqualTo(2);
    assertThat(err.toString()).contains("There is no database");
    assertThat(folder.resolve("kitchen.db")).doesNotExist();
    assertThat(run("pots")).isEqualTo(2);
    String people = file("people.csv", "initials\nRO\n");
    assertThat(run("people", people)).isZero();
    Opening opening =
        new Opening(
            folder.resolve("kitchen.db"),
            Optional.empty(),
            Optional.empty(),
            ZoneOffset.UTC,
            RuleLibrary.load(Optional.empty()),
            CLOCK);
    try (Kitchen holding = Kitchen.open(opening)) {
      assertThat(holding.setUp().people()).hasSize(1);
      assertThat(run("people")).isEqualTo(2);
      assertThat(err.toString()).containsIgnoringCase("another");
    }
  }
}
