package chillwright.storage;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.forecast.Forecast;
import chillwright.core.kitchen.Allergen;
import chillwright.core.kitchen.AllergensSaid;
import chillwright.core.log.Incoming;
import chillwright.core.log.LotId;
import chillwright.logfile.Cells;
import chillwright.logfile.CsvLog;
import chillwright.rulebook.BrokenRules;
import chillwright.rulebook.RuleLibrary;
import chillwright.service.CoolingMethods.Asked;
import chillwright.service.Kitchen;
import chillwright.service.LotView;
import chillwright.service.Opening;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A kitchen's file of an older schema, with its rows, opened by this program. The old file is made
 * by the old scripts themselves, and filled with what this program stored, as far as its tables had
 * the columns.
 */
class UpgradeTest {
  private static final Instant NOW = Instant.parse("2026-03-02T12:30:00Z");
  private static final String LOG =
      """
      lot,food,category,when,entry,temperature,air,place,note
      OLD-1,Leek soup,soup_or_stew,2026-03-02T04:00:00Z,cooked,135F,,,
      OLD-1,,,2026-03-02T05:10:00Z,reading,70F,,,
      OLD-1,,,2026-03-02T09:00:00Z,chilled,41F,,Walk-in,
      OLD-2,Leek soup,soup_or_stew,2026-03-02T10:00:00Z,cooked,135F,38F,,by hand
      OLD-2,,,2026-03-02T11:00:00Z,reading,95F,,,
      OLD-2,,,2026-03-02T12:00:00Z,reading,75F,,,
      ,,,2026-03-02T12:10:00Z,reading,38F,,Walk-in,
      """;

  @TempDir private Path folder;

  private Opening opening(Path file) {
    try {
      return new Opening(
          file,
          Optional.of(ZoneOffset.UTC),
          Optional.empty(),
          ZoneId.of("UTC"),
          RuleLibrary.load(Optional.empty()),
          () -> NOW);
    } catch (BrokenRules broken) {
      throw new IllegalStateException(broken);
    }
  }

  private static List<Incoming> rows(String csv) throws IOException {
    List<Incoming> rows = new ArrayList<>();
    byte[] bytes = csv.getBytes(StandardCharsets.UTF_8);
    new CsvLog(new Cells(NOW)).read("log", new ByteArrayInputStream(bytes), rows::add);
    return rows;
  }

  private static String url(Path file) {
    return "jdbc:sqlite:" + file;
  }

  /** A file as the scripts up to that number made it, with the rows of another. */
  private Path old(int schema, Path newest) throws IOException, SQLException {
    Path scripts = Files.createDirectory(folder.resolve("scripts-" + schema));
    for (String name : Migrations.NAMES.subList(0, schema)) {
      Files.copy(Path.of(System.getProperty("basedir", ""), "schema", name), scripts.resolve(name));
    }
    Path file = folder.resolve("old-" + schema + ".db");
    try (Connection database = DriverManager.getConnection(url(file));
        Statement statement = database.createStatement()) {
      Migrations.in(scripts).apply(database);
      assertThat(Migrations.versionOf(database)).isEqualTo(schema);
      statement.executeUpdate("ATTACH '" + newest + "' AS newest");
      for (String table :
          strings(statement, "SELECT name FROM sqlite_schema WHERE type = 'table'")) {
        String columns =
            String.join(
                ",", strings(statement, "SELECT name FROM pragma_table_info('" + table + "')"));
        statement.executeUpdate(
            "INSERT OR REPLACE INTO main.%1$s (%2$s) SELECT %2$s FROM newest.%1$s"
                .formatted(table, columns));
      }
    }
    return file;
  }

  private static List<String> strings(Statement statement, String sql) throws SQLException {
    List<String> found = new ArrayList<>();
    try (ResultSet row = statement.executeQuery(sql)) {
      while (row.next()) {
        found.add(row.getString(1));
      }
    }
    return found;
  }

  /** No source: what was stored before must be there after. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7})
  void a_file_of_an_older_schema_is_read_and_written_as_before(int schema) throws Exception {
    Path newest = folder.resolve("newest.db");
    List<Forecast> before;
    try (Kitchen kitchen = Kitchen.open(opening(newest))) {
      kitchen.logbook().log(rows(LOG), Optional.empty());
      before = judged(kitchen, "OLD-2").forecasts();
    }
    try (Kitchen kitchen = Kitchen.open(opening(old(schema, newest)))) {
      assertThat(judged(kitchen, "OLD-1").timeline().entries()).hasSize(3);
      assertThat(judged(kitchen, "OLD-2").forecasts()).isEqualTo(before).isNotEmpty();
      assertThat(kitchen.coolingMethods().find(Asked.ALL).methods()).hasSize(1);
      String reading =
          """
          lot,when,entry,temperature,container,depth
          OLD-2,2026-03-02T12:20:00Z,reading,70F,full pan,2in
          """;
      kitchen.logbook().log(rows(reading), Optional.empty());
      assertThat(judged(kitchen, "OLD-2").timeline().entries()).hasSize(4);
    }
  }

  /** No source: an older file kept the last word on a food alone, so no more may be claimed. */
  @Test
  void of_an_older_file_it_is_known_that_earlier_words_on_allergens_are_not() throws Exception {
    Path newest = folder.resolve("newest.db");
    try (Kitchen kitchen = Kitchen.open(opening(newest))) {
      kitchen
          .setUp()
          .food(Map.of("name", "Rolls", "category", "soup_or_stew", "allergens", "wheat"));
    }
    try (Database database = Database.open(old(7, newest))) {
      assertThat(database.<Map<?, ?>>read(session -> session.setUp().allergensSaid()))
          .isEqualTo(
              Map.of(
                  "Rolls",
                  List.of(
                      new AllergensSaid(NOW, List.of(Allergen.WHEAT), Optional.empty(), false))));
    }
  }

  private static LotView.Judged judged(Kitchen kitchen, String lot) {
    return kitchen.lots().lot(new LotId(lot)).orElseThrow().judged().orElseThrow();
  }

  /** No source: a test of the test, since a file that is not old shows nothing. */
  @Test
  void the_old_file_lacks_what_came_later() throws Exception {
    Path newest = folder.resolve("newest.db");
    try (Kitchen kitchen = Kitchen.open(opening(newest))) {
      kitchen.logbook().log(rows(LOG), Optional.empty());
    }
    try (Connection database = DriverManager.getConnection(url(old(5, newest)));
        Statement statement = database.createStatement()) {
      assertThat(strings(statement, "SELECT name FROM pragma_table_info('log_entry')"))
          .contains("entry")
          .doesNotContain("container", "depth");
      assertThat(strings(statement, "SELECT entry FROM log_entry")).hasSize(6);
    }
  }
}
