package chillwright.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * No statement that the program ran in its unit tests reads through a table that grows with the
 * kitchen's history. What the words of a plan mean is told at sqlite.org/eqp.html. A kitchen never
 * runs ANALYZE, so SQLite plans by the schema alone, and an empty database tells what a full one
 * would do.
 */
class StatementPlansIT {
  /** What may be read through: it stays as small as it is, whatever the kitchen's history. */
  private static final Map<String, String> SMALL =
      Map.ofEntries(
          Map.entry("kitchen", "one row"),
          Map.entry(
              "access_key", "a few keys, made by hand; read once, to learn whether there is any"),
          Map.entry("feed_key", "one key, made by hand"),
          Map.entry("probe", "as many as the kitchen has thermometers"),
          Map.entry("plan", "as many as the kitchen has events, written by hand"),
          Map.entry("plan_lot", "one row for each dish of a plan"),
          Map.entry("category_used", "at most as many as there are storage categories"),
          Map.entry("food", "one row for each dish that the kitchen makes, not for each batch"),
          Map.entry("place", "one row for each unit that stands in the kitchen"),
          Map.entry("person", "one row for each of those who work there"),
          Map.entry("sqlite_schema", "the tables and indexes; read when a database is opened"),
          Map.entry("sqlite_master", "the same, as a plan calls it"));

  /** As much of a statement as tells which one it is. */
  private static final int SHOWN = 300;

  /** A row or rows that the statement itself gives. */
  private static final Pattern GIVEN =
      Pattern.compile("SCAN (\\d+[ -])?(CONSTANT ROWS?|ROW VALUES CLAUSE)");

  private static final Pattern SCAN = Pattern.compile("SCAN (\\S+).*");

  @TempDir private Path folder;

  @Test
  void no_statement_that_was_run_reads_through_a_growing_table() throws Exception {
    try (Connection connection = Connections.writer(folder.resolve("kitchen.db"))) {
      Migrations.carried().apply(connection);
      List<String> faults = new ArrayList<>();
      for (String statement : statements()) {
        plan(connection, statement).stream()
            .filter(StatementPlansIT::readsThrough)
            .forEach(step -> faults.add(step + " in: " + shown(statement)));
      }
      assertThat(faults).isEmpty();
    }
  }

  @Test
  void a_step_that_reads_through_a_table_is_known_by_its_words() {
    assertThat(List.of("SCAN lot", "SCAN l USING INDEX lot_phase", "SCAN (subquery-1)"))
        .allMatch(StatementPlansIT::readsThrough);
    assertThat("SEARCH source USING AUTOMATIC COVERING INDEX (code=?)")
        .matches(StatementPlansIT::readsThrough);
    assertThat(
            List.of(
                "SCAN CONSTANT ROW",
                "SCAN 8-ROW VALUES CLAUSE",
                "SCAN kitchen",
                "SEARCH lot USING INDEX lot_phase (phase=?)"))
        .noneMatch(StatementPlansIT::readsThrough);
  }

  /** Else the record would be of no worth: a driver that logs in another way, say. */
  @Test
  void the_record_has_statements_of_every_growing_table() throws Exception {
    assumeThat(System.getProperty("test")).as("some of the unit tests were left out").isNull();
    List<String> statements = statements();
    try (Connection connection = Connections.writer(folder.resolve("kitchen.db"))) {
      Migrations.carried().apply(connection);
      assertThat(growing(connection))
          .hasSizeGreaterThan(5)
          .allSatisfy(
              table -> {
                assertThat(statements).anyMatch(s -> says(s, "(?i)insert.* into " + table));
                assertThat(statements).anyMatch(s -> says(s, "(?i)select.* from .*" + table));
              });
    }
  }

  private static String shown(String statement) {
    return statement.length() > SHOWN ? statement.substring(0, SHOWN) + " ..." : statement;
  }

  private static boolean says(String statement, String pattern) {
    return Pattern.compile(pattern + "\\b").matcher(statement.replace("\"", "")).find();
  }

  private static List<String> statements() throws IOException {
    Path file = Path.of(System.getProperty(StatementRecord.FILE, "target/statements.sql"));
    assertThat(file).as("written by the unit tests, so run them first: mvn verify").exists();
    List<String> statements = Files.readAllLines(file);
    assertThat(statements).isNotEmpty();
    return statements;
  }

  private static List<String> growing(Connection connection) throws SQLException {
    List<String> tables =
        column(connection, "SELECT name FROM sqlite_schema WHERE type = 'table'", "name");
    tables.removeAll(SMALL.keySet());
    return tables;
  }

  /** The texts as they were prepared: what is bound later does not change the first plan. */
  private static List<String> plan(Connection connection, String statement) throws SQLException {
    return column(connection, "EXPLAIN QUERY PLAN " + statement, "detail");
  }

  /** An index that SQLite makes for one statement alone is made of the whole table. */
  private static boolean readsThrough(String step) {
    Matcher scan = SCAN.matcher(step);
    boolean isScan = scan.matches() && !GIVEN.matcher(step).matches();
    return (isScan && !SMALL.containsKey(scan.group(1))) || step.contains(" AUTOMATIC ");
  }

  private static List<String> column(Connection connection, String query, String name)
      throws SQLException {
    List<String> cells = new ArrayList<>();
    try (Statement asked = connection.createStatement();
        ResultSet rows = asked.executeQuery(query)) {
      while (rows.next()) {
        cells.add(rows.getString(name));
      }
    }
    return cells;
  }
}
