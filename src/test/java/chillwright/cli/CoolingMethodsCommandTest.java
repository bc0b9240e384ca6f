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

/**
 * The ways of cooling from the command line. Margins are worked by hand from FDA Food Code 2022
 * 3-501.14(A): 135 °F at noon, 70 °F due at 14:00, 41 °F at 18:00.
 */
class CoolingMethodsCommandTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-03-09T00:00:00Z"), ZoneOffset.UTC);

  @TempDir private Path folder;

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String... args) {
    out.getBuffer().setLength(0);
    err.getBuffer().setLength(0);
    Console console = new Console(new PrintWriter(out), new PrintWriter(err), false);
    List<String> all = new ArrayList<>(List.of(args));
    all.addAll(List.of("--db", folder.resolve("kitchen.db").toString()));
    return Main.commandLine(CLOCK, console).execute(all.toArray(String[]::new));
  }

  private static String cooling(String lot, int day, String container, String seventy) {
    String date = "2026-03-0" + day + "T";
    return """
        %1$s,Bone stock,soup_or_stew,%2$s12:00:00Z,cooked,135F,,%3$s,2in
        %1$s,,,%2$s12:00:00Z,cooling,135F,ice bath,,
        %1$s,,,%2$s12:50:00Z,reading,90F,,,
        %1$s,,,%2$s%4$s:00Z,reading,70F,,,
        %1$s,,,%2$s17:00:00Z,reading,41F,,,
        """
        .formatted(lot, date, container, seventy);
  }

  private void store(String... coolings) throws IOException {
    String header = "lot,food,category,when,entry,temperature,place,container,depth\n";
    Path log = folder.resolve("log.csv");
    Files.writeString(log, header + String.join("", coolings));
    assertThat(run("import", log.toString(), "--zone", "UTC")).as(err.toString()).isZero();
  }

  @Test
  void a_way_that_made_its_limits_is_told_in_words() throws IOException {
    store(
        cooling("S1", 2, "full pan", "13:20"),
        cooling("S2", 3, "full pan", "13:40"),
        cooling("S3", 4, "full pan", "13:00"));
    assertThat(run("cooling-methods")).as(err.toString()).isZero();
    assertThat(out.toString())
        .contains("Bone stock", "full pan", "2 in", "ice bath", "20 min")
        .contains("not a validation of it");
  }

  @Test
  void the_same_stands_in_json_and_csv() throws IOException {
    String late = cooling("S2", 3, "=tub", "14:30").replace("12:50:00Z", "14:10:00Z");
    store(cooling("S1", 2, "full pan", "13:20"), late);
    assertThat(run("cooling-methods", "--format", "json")).isZero();
    JsonNode told = Json.MAPPER.readTree(out.toString());
    assertThat(told.findValuesAsText("worstMargin")).contains("PT40M", "PT1H", "PT-30M");
    assertThat(told.findValuesAsText("standing")).containsExactly("missed", "too-few");
    assertThat(run("cooling-methods", "--format", "csv")).isZero();
    assertThat(out.toString().lines().toList()).hasSizeGreaterThanOrEqualTo(3);
    assertThat(out.toString()).contains("full pan", "ice bath").doesNotContain(",=tub");
  }

  @Test
  void what_is_asked_narrows_it_down() throws IOException {
    store(cooling("S1", 2, "full pan", "13:20"), cooling("S2", 3, "tub", "13:30"));
    assertThat(run("cooling-methods", "--container", "TUB")).isZero();
    assertThat(out.toString()).contains("tub").doesNotContain("full pan");
    assertThat(run("cooling-methods", "--to", "2026-03-01")).isZero();
    assertThat(out.toString()).contains("No cooling that is over in this period");
  }

  @Test
  void a_database_that_is_not_there_is_a_fault() {
    assertThat(run("cooling-methods")).isEqualTo(2);
    assertThat(err.toString()).contains("There is no database");
  }
}
