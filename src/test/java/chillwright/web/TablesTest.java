package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.logfile.CardFile;
import chillwright.service.CardKind;
import chillwright.service.CardRows;
import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Lists taken away as tables: comma-separated values as in RFC 4180, read by somebody else's
 * reader, and what is in them taken by another kitchen, which must judge it alike.
 */
class TablesTest {
  private static final String REPORT =
      "/api/v1/reports/out-of-compliance?from=2026-01-01T00:00:00Z&limit=200";

  private static final String AFTER_THE_SAMPLES = "2026-11-30T12:00:00Z";

  @TempDir private Path folder;
  private Served served;
  private Served other;

  @BeforeEach
  void open() throws IOException {
    served = Served.in(Files.createDirectory(folder.resolve("one")));
    other = Served.in(Files.createDirectory(folder.resolve("two")));
    served.at(AFTER_THE_SAMPLES);
    other.at(AFTER_THE_SAMPLES);
  }

  @AfterEach
  void close() {
    served.close();
    other.close();
  }

  private static List<CsvRecord> rows(Reply reply) {
    assertThat(reply.status()).as(reply.text()).isEqualTo(200);
    assertThat(reply.header("Content-Type")).startsWith("text/csv");
    assertThat(reply.header("Content-Disposition")).startsWith("attachment");
    return CsvReader.builder().ofCsvRecord(reply.text()).stream().toList();
  }

  private void importSamples() throws IOException {
    for (String file : List.of("week-1.csv", "week-2.csv", "places.csv")) {
      Reply reply =
          served.postCsv("/api/v1/imports", Files.readString(Path.of("sample-logs", file)));
      assertThat(reply.status()).as(reply.text()).isEqualTo(200);
    }
  }

  private List<String> lots(Served kitchen) {
    return CsvReader.builder().ofNamedCsvRecord(kitchen.get("/lots.csv").text()).stream()
        .map(row -> row.getField("lot"))
        .sorted()
        .toList();
  }

  @Test
  void logs_of_all_lots_make_the_same_record_elsewhere() throws IOException {
    importSamples();
    StringBuilder file = new StringBuilder();
    for (String lot : lots(served)) {
      List<String> lines = served.get("/lots/" + lot + "/log.csv").text().lines().toList();
      lines
          .subList(file.isEmpty() ? 0 : 1, lines.size())
          .forEach(line -> file.append(line).append("\r\n"));
    }
    Reply taken = other.postCsv("/api/v1/imports", file.toString());
    assertThat(taken.status()).as(taken.text()).isEqualTo(200);
    assertThat(lots(other)).hasSizeGreaterThan(10).isEqualTo(lots(served));
    JsonNode report = served.get(REPORT).json().at("/items");
    assertThat(report).hasSizeGreaterThan(3).isEqualTo(other.get(REPORT).json().at("/items"));
  }

  /** A list is no log: one reason, and where the log is; our own design, no source. */
  @Test
  void a_list_that_is_taken_for_a_log_has_one_fault_that_says_so() throws IOException {
    importSamples();
    String out = served.get(REPORT, "Accept", "text/csv").text();
    List<String> lists = new ArrayList<>(List.of(out));
    for (String address :
        List.of(
            "/on-hand.csv",
            "/lots.csv",
            "/trace.csv?lot=" + lots(served).get(0),
            "/pull.csv",
            "/plans.csv",
            "/day.csv",
            "/day/unfinished.csv",
            "/kitchen/foods.csv",
            "/kitchen/places.csv",
            "/kitchen/people.csv",
            "/kitchen/probes.csv")) {
      lists.add(served.get(address).text());
    }
    for (String list : lists) {
      JsonNode faults = other.postCsv("/api/v1/imports", list).json().at("/problems");
      assertThat(faults).as(list.lines().findFirst().orElse("")).hasSize(1);
      assertThat(faults.at("/0/code").asText()).isEqualTo("not-a-log");
      assertThat(faults.at("/0/says").asText()).contains("/lots/CODE/log.csv");
    }
  }

  /** A part has its days from the whole: FDA Food Code 2022 3-501.17 counts from its making. */
  @Test
  void the_log_of_a_part_holds_the_log_that_it_needs() throws IOException {
    String log =
        """
        lot,food,category,when,entry,temperature,portions,from,to
        W,Bean pot,soup_or_stew,2026-03-01T10:00:00-07:00,prepared,39F,8,,
        W-1,,,2026-03-01T10:30:00-07:00,chilled,39F,4,W,
        W,,,2026-03-01T10:30:00-07:00,portions,,4,,W-1
        W-1-1,,,2026-03-01T11:30:00-07:00,chilled,39F,2,W-1,
        W-1,,,2026-03-01T11:30:00-07:00,portions,,2,,W-1-1
        """;
    assertThat(served.postCsv("/api/v1/imports", log).status()).isEqualTo(200);
    String part = served.get("/lots/W-1-1/log.csv").text();
    assertThat(part).containsSubsequence("\r\nW,", "\r\nW-1,", "\r\nW-1-1,");
    Reply taken = other.postCsv("/api/v1/imports", part);
    assertThat(taken.status()).as(taken.text()).isEqualTo(200);
    String keeping = "/keeping/dateMarkLastDay";
    assertThat(other.get("/api/v1/lots/W-1-1").json().at(keeping).asText())
        .isNotEmpty()
        .isEqualTo(served.get("/api/v1/lots/W-1-1").json().at(keeping).asText());
  }

  /** What was divided off is judged with the whole, by one file. */
  @Test
  void the_log_of_a_batch_holds_those_of_its_parts() throws IOException {
    String log =
        """
        lot,food,category,when,entry,temperature,portions,from,to
        B,Bean pot,soup_or_stew,2026-03-01T10:00:00-07:00,prepared,39F,8,,
        B-1,,,2026-03-01T10:30:00-07:00,frozen,,4,B,
        B,,,2026-03-01T10:30:00-07:00,portions,,4,,B-1
        B-1-1,,,2026-03-01T11:30:00-07:00,frozen,,2,B-1,
        B-1,,,2026-03-01T11:30:00-07:00,portions,,2,,B-1-1
        T,Bean tray,soup_or_stew,2026-03-01T12:00:00-07:00,prepared,39F,2,B-1,
        """;
    assertThat(served.postCsv("/api/v1/imports", log).status()).isEqualTo(200);
    String batch = served.get("/lots/B/log.csv").text();
    assertThat(batch).containsSubsequence("\r\nB,", "\r\nB-1,", "\r\nB-1-1,");
    assertThat(batch).doesNotContain("Bean tray");
    Reply taken = other.postCsv("/api/v1/imports", batch);
    assertThat(taken.status()).as(taken.text()).isEqualTo(200);
    assertThat(lots(other)).containsExactlyInAnyOrder("B", "B-1", "B-1-1");
  }

  /** Cells that a spreadsheet would run, as OWASP lists them under CSV injection (from memory). */
  @Test
  void a_log_with_cells_like_formulas_is_known_when_it_comes_back() throws IOException {
    String log =
        """
        lot,food,category,when,entry,temperature,note
        RT-1,=A1,soup_or_stew,2026-03-01T10:00:00-07:00,cooked,180F,@SUM(1)
        RT-1,,,2026-03-01T11:00:00-07:00,reading,100F,-2 more
        """;
    assertThat(served.postCsv("/api/v1/imports", log).status()).isEqualTo(200);
    String taken = served.get("/lots/RT-1/log.csv").text();
    assertThat(taken).contains("'=A1", "'@SUM(1)", "'-2 more");
    Reply again = served.postCsv("/api/v1/imports", taken);
    assertThat(again.status()).as(again.text()).isEqualTo(200);
    assertThat(served.get("/lots/RT-1/log.csv").text()).isEqualTo(taken);
  }

  @Test
  void readings_of_places_are_a_log_file_too() throws IOException {
    importSamples();
    String address = "/record/readings.csv?from=2026-01-01&to=2026-12-31";
    List<CsvRecord> rows = rows(served.get(address));
    assertThat(rows).hasSizeGreaterThan(10);
    Reply taken = other.postCsv("/api/v1/imports", served.get(address).text());
    assertThat(taken.status()).as(taken.text()).isEqualTo(200);
    assertThat(taken.json().at("/readings").asInt()).isEqualTo(rows.size() - 1);
    assertThat(rows(other.get(address))).hasSameSizeAs(rows);
  }

  @Test
  void a_period_that_is_none_is_refused_in_words() {
    Reply reply = served.get("/record/readings.csv?from=2026-03-02&to=2026-03-01");
    assertThat(reply.status()).isEqualTo(400);
    assertThat(reply.text()).contains("2026-03-02 is later than 2026-03-01");
  }

  @ParameterizedTest
  @EnumSource
  void what_a_kitchen_says_of_itself_is_taken_again(CardKind kind) throws IOException {
    String name = kind.name().toLowerCase(Locale.ROOT);
    Path sample = Path.of("sample-logs", "kitchen", name + ".csv");
    served
        .kitchen()
        .setUp()
        .all(kind, CardFile.read(name, Files.newInputStream(sample), kind.cells()).cards());
    Reply table = served.get("/kitchen/" + name + ".csv");
    assertThat(rows(table)).hasSizeGreaterThan(1);
    CardFile again =
        CardFile.read(
            name,
            new ByteArrayInputStream(table.text().getBytes(StandardCharsets.UTF_8)),
            kind.cells());
    assertThat(again.problems()).isEmpty();
    other.kitchen().setUp().all(kind, again.cards());
    assertThat(CardRows.of(other.kitchen().setUp(), kind))
        .isNotEmpty()
        .isEqualTo(CardRows.of(served.kitchen().setUp(), kind));
  }

  /** FDA Food Code 2022 3-501.16(A)(2): 41 °F; 3-501.14(A): 70 °F two hours after 135 °F. */
  @Test
  void the_round_and_what_is_unfinished_are_tables_too() {
    served.at("2026-03-03T17:15:00Z");
    served.cookSoup("S-1");
    served
        .kitchen()
        .setUp()
        .place(Map.of("name", "Walk-in", "kind", "refrigerator", "rounds", "2"));
    String reading = "{'place':'Walk-in','temperature':'46F','when':'2026-03-03T10:00:00-07:00'}";
    assertThat(served.post("/api/v1/readings", reading).status()).isEqualTo(201);
    List<CsvRecord> round = rows(served.get("/day.csv"));
    assertThat(round).hasSize(2);
    assertThat(round.get(0).getFields()).startsWith("place", "kind", "limit");
    assertThat(round.get(1).getFields())
        .startsWith("Walk-in", "refrigerator")
        .containsSubsequence("rules", "2", "1", "yes", "2026-03-03T10:00-07:00", "46 °F", "no", "");
    List<CsvRecord> open = rows(served.get("/day/unfinished.csv"));
    assertThat(open.get(1).getFields())
        .startsWith("S-1", "Barley soup", "", "", "cooling.cooked.first-stage");
    Visit visit = new Visit(served);
    assertThat(visit.open("/day").text())
        .contains("href=\"/day.csv\"", "href=\"/day/unfinished.csv\"");
  }

  @Test
  void plans_are_a_row_each() {
    served.at("2026-03-03T17:15:00Z");
    PageSecurityTest.plan(served);
    List<CsvRecord> rows = rows(served.get("/plans.csv"));
    assertThat(rows.get(0).getFields()).containsExactly("plan", "name", "serving");
    assertThat(rows).hasSize(2);
    assertThat(rows.get(1).getField(0)).isEqualTo(PageSecurityTest.PLAN);
    assertThat(rows.get(1).getField(2)).matches("\\d{4}-\\d\\d-\\d\\d \\d\\d:\\d\\d");
    assertThat(new Visit(served).open("/plans").text()).contains("href=\"/plans.csv\"");
  }

  @Test
  void tasks_of_a_plan_are_a_row_each() {
    served.at("2026-03-03T17:15:00Z");
    PageSecurityTest.plan(served);
    List<CsvRecord> rows = rows(served.get("/plans/" + PageSecurityTest.PLAN + "/tasks.csv"));
    assertThat(rows.get(0).getFields())
        .containsExactly("dish", "task", "step", "start", "end", "uses");
    String all =
        rows.stream().map(row -> String.join(" ", row.getFields())).collect(Collectors.joining());
    assertThat(all).contains("Soup make simmer 2026-03-").doesNotContain("1.0");
  }
}
