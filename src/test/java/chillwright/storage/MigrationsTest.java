package chillwright.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Migrations against SQLite itself. What {@code user_version}, transactions and {@code STRICT} do
 * is described at sqlite.org/pragma.html, lang_transaction.html and stricttables.html.
 */
class MigrationsTest {
  @TempDir private Path folder;
  private Path scripts;
  private Path file;

  @BeforeEach
  void make_folders() throws IOException {
    scripts = Files.createDirectory(folder.resolve("scripts"));
    file = folder.resolve("kitchen.db");
  }

  @Test
  void the_named_scripts_are_those_of_the_folder() throws IOException {
    assertThat(names(Path.of(System.getProperty("basedir", ""), "schema")))
        .isEqualTo(Migrations.NAMES);
  }

  @Test
  void an_empty_database_gets_the_whole_schema() throws SQLException {
    Migrations carried = Migrations.carried();
    try (Connection database = open()) {
      assertThat(Migrations.versionOf(database)).isZero();
      carried.apply(database);
      assertThat(Migrations.versionOf(database)).isEqualTo(carried.newest());
      assertThat(tables(database)).contains("kitchen");
    }
  }

  @Test
  void applying_again_changes_nothing() throws SQLException {
    try (Connection database = open()) {
      Migrations.carried().apply(database);
      List<String> before = tables(database);
      Migrations.carried().apply(database);
      assertThat(tables(database)).isEqualTo(before);
    }
  }

  @Test
  void an_older_database_gets_what_it_lacks_and_keeps_its_rows() throws Exception {
    script("0001_pot.sql", "CREATE TABLE pot (id INTEGER PRIMARY KEY) STRICT;");
    try (Connection database = open()) {
      Migrations.in(scripts).apply(database);
      run(database, "INSERT INTO pot VALUES (7)");
      script("0002_lid.sql", "CREATE TABLE lid (id INTEGER PRIMARY KEY) STRICT;");
      Migrations.in(scripts).apply(database);
      assertThat(tables(database)).containsExactly("lid", "pot");
      assertThat(number(database, "SELECT id FROM pot")).isEqualTo(7);
      assertThat(Migrations.versionOf(database)).isEqualTo(2);
    }
  }

  @Test
  void a_script_may_hold_triggers_comments_and_many_statements() throws Exception {
    script(
        "0001_pot.sql",
        """
        -- a semicolon; in a comment
        CREATE TABLE pot (id INTEGER PRIMARY KEY, seen INTEGER NOT NULL DEFAULT 0) STRICT;
        CREATE TRIGGER pot_seen AFTER INSERT ON pot BEGIN
          UPDATE pot SET seen = 1 WHERE id = NEW.id;
          UPDATE pot SET seen = seen + 1 WHERE id = NEW.id;
        END;
        INSERT INTO pot (id) VALUES (7)
        -- no semicolon at the end
        """);
    try (Connection database = open()) {
      Migrations.in(scripts).apply(database);
      assertThat(number(database, "SELECT seen FROM pot")).isEqualTo(2);
    }
  }

  @Test
  void a_broken_script_leaves_nothing_behind_and_says_why() throws Exception {
    script("0001_pot.sql", "CREATE TABLE pot (id INTEGER PRIMARY KEY) STRICT;");
    script(
        "0002_lid.sql",
        "CREATE TABLE lid (id INTEGER PRIMARY KEY) STRICT; INSERT INTO no_such VALUES (1);");
    try (Connection database = open()) {
      Migrations migrations = Migrations.in(scripts);
      assertThatThrownBy(() -> migrations.apply(database))
          .isInstanceOf(SQLException.class)
          .hasMessageContaining("no_such");
      assertThat(tables(database)).containsExactly("pot");
      assertThat(Migrations.versionOf(database)).isEqualTo(1);
      // The failed transaction is over: the connection can be used again.
      run(database, "BEGIN IMMEDIATE");
      run(database, "ROLLBACK");
    }
  }

  @Test
  void the_first_error_is_kept_when_sqlite_has_rolled_back_by_itself() throws Exception {
    script(
        "0001_pot.sql",
        """
        CREATE TABLE pot (id INTEGER PRIMARY KEY) STRICT;
        INSERT INTO pot VALUES (7);
        INSERT OR ROLLBACK INTO pot VALUES (7);
        """);
    try (Connection database = open()) {
      Migrations migrations = Migrations.in(scripts);
      assertThatThrownBy(() -> migrations.apply(database))
          .isInstanceOf(SQLException.class)
          .hasMessageContaining("UNIQUE")
          .satisfies(fault -> assertThat(fault.getSuppressed()).hasSize(1));
      assertThat(tables(database)).isEmpty();
    }
  }

  @Test
  void a_busy_database_gives_its_own_error() throws Exception {
    script("0001_pot.sql", "CREATE TABLE pot (id INTEGER PRIMARY KEY) STRICT;");
    Migrations migrations = Migrations.in(scripts);
    try (Connection other = open();
        Connection database = DriverManager.getConnection(url() + "?busy_timeout=1")) {
      run(other, "BEGIN IMMEDIATE");
      assertThatThrownBy(() -> migrations.apply(database))
          .isInstanceOf(SQLException.class)
          .hasMessageContaining("SQLITE_BUSY")
          .satisfies(fault -> assertThat(fault.getSuppressed()).isEmpty());
    }
  }

  @Test
  void a_newer_database_is_refused_and_stays_as_it_was() throws SQLException {
    int known = Migrations.carried().newest();
    try (Connection database = open()) {
      run(database, "PRAGMA user_version = " + (known + 1));
      assertThatThrownBy(() -> Migrations.carried().apply(database))
          .isInstanceOf(Migrations.NewerDatabaseException.class)
          .hasMessageContaining("newer version")
          .hasMessageContaining("number " + (known + 1))
          .hasMessageContaining("known here is " + known);
      assertThat(tables(database)).isEmpty();
      assertThat(Migrations.versionOf(database)).isEqualTo(known + 1);
    }
  }

  @Test
  void a_gap_in_the_numbers_is_refused() throws IOException {
    script("0002_lid.sql", "SELECT 1;");
    assertThatThrownBy(() -> Migrations.in(scripts))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("0002_lid.sql")
        .hasMessageContaining("0001");
  }

  @Test
  void the_command_makes_the_folder_of_the_database() throws Exception {
    Path made = folder.resolve("new").resolve("schema.sqlite");
    script("0001_pot.sql", "CREATE TABLE pot (id INTEGER PRIMARY KEY) STRICT;");
    Migrations.main(new String[] {scripts.toString(), made.toString()});
    assertThat(made).exists();
  }

  /** Script 0011 makes room for several lots of a dish; what plans followed before stays. */
  @Test
  void the_lot_that_a_dish_had_stays_and_another_can_be_put_beside_it() throws Exception {
    Path carried = Path.of(System.getProperty("basedir", ""), "schema");
    for (String name : Migrations.NAMES.subList(0, 10)) {
      Files.copy(carried.resolve(name), scripts.resolve(name));
    }
    try (Connection database = open()) {
      run(database, "PRAGMA foreign_keys = ON");
      Migrations.in(scripts).apply(database);
      run(database, "INSERT INTO plan (code, input, said_at) VALUES ('P', '', 1)");
      for (String lot : List.of("A-1", "A-2")) {
        run(
            database,
            "INSERT INTO lot (code, food, category, created_at, use_first)"
                + " VALUES ('%s', 'Soup', 'soup', 1, 0)".formatted(lot));
      }
      run(database, "INSERT INTO plan_lot (plan, dish, lot) VALUES ('P', 'Soup', 'A-1')");
      Migrations.carried().apply(database);
      run(database, "INSERT INTO plan_lot (plan, dish, lot) VALUES ('P', 'Soup', 'A-2')");
      assertThat(number(database, "SELECT count(*) FROM plan_lot WHERE dish = 'Soup'"))
          .isEqualTo(2);
      assertThatThrownBy(
              () -> run(database, "INSERT INTO plan_lot VALUES ('P', 'Soup', 'NO-SUCH-LOT')"))
          .hasMessageContaining("FOREIGN KEY");
    }
  }

  private Connection open() throws SQLException {
    return DriverManager.getConnection(url());
  }

  private String url() {
    return "jdbc:sqlite:" + file;
  }

  private void script(String name, String sql) throws IOException {
    Files.writeString(scripts.resolve(name), sql);
  }

  private static List<String> names(Path schema) throws IOException {
    try (Stream<Path> files = Files.list(schema)) {
      return files.map(f -> f.getFileName().toString()).sorted().toList();
    }
  }

  private static void run(Connection database, String sql) throws SQLException {
    try (Statement statement = database.createStatement()) {
      statement.executeUpdate(sql);
    }
  }

  private static int number(Connection database, String sql) throws SQLException {
    try (Statement statement = database.createStatement();
        ResultSet row = statement.executeQuery(sql)) {
      return row.getInt(1);
    }
  }

  private static List<String> tables(Connection database) throws SQLException {
    List<String> names = new ArrayList<>();
    try (Statement statement = database.createStatement();
        ResultSet row =
            statement.executeQuery(
                "SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name")) {
      while (row.next()) {
        names.add(row.getString(1));
      }
    }
    return names;
  }
}
