package chillwright.storage;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
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

/**
 * Brings a database to the schema of this program: numbered scripts, each applied once, in order,
 * and in a transaction of its own. SQLite's {@code user_version} holds the number of the last one.
 *
 * <p>The build runs this file from source, before anything else is compiled, to make the database
 * that the typed tables are generated from. So it uses no other class of this program.
 */
public final class Migrations {
  /**
   * The scripts in the jar, oldest first. A folder inside a jar cannot simply be listed, so they
   * are named here; a test holds this list against the folder.
   */
  static final List<String> NAMES =
      List.of(
          "0001_kitchen.sql",
          "0002_set_up.sql",
          "0003_plans.sql",
          "0004_probe.sql",
          "0005_address.sql",
          "0006_container.sql",
          "0007_plan_lots.sql",
          "0008_allergens.sql",
          "0009_room_days.sql",
          "0010_label_prints.sql",
          "0011_several_plan_lots.sql",
          "0012_sign_out.sql");

  private final List<Script> scripts;

  private Migrations(List<Script> scripts) {
    this.scripts = List.copyOf(scripts);
    for (int i = 0; i < this.scripts.size(); i++) {
      requireNumber(i + 1, this.scripts.get(i).name());
    }
  }

  /** One script: its file name, four digits, an underscore and a noun, and its statements. */
  private record Script(String name, String sql) {}

  /** The database was written by a program that knows more scripts than this one. */
  public static final class NewerDatabaseException extends RuntimeException {
    NewerDatabaseException(int found, int known) {
      super(
          "This database was made by a newer version of the program: its schema is number "
              + found
              + ", the newest known here is "
              + known
              + ". Start the newer version, or open a copy made before the change.");
    }
  }

  /** The scripts that this program carries. */
  public static Migrations carried() {
    List<Script> scripts = new ArrayList<>();
    for (String name : NAMES) {
      scripts.add(new Script(name, resource("/schema/" + name)));
    }
    return new Migrations(scripts);
  }

  /**
   * The scripts of a folder, in the order of their names; files of another kind are passed over.
   */
  static Migrations in(Path folder) throws IOException {
    List<Script> scripts = new ArrayList<>();
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".sql")).sorted().toList()) {
        scripts.add(new Script(file.getFileName().toString(), Files.readString(file)));
      }
    }
    return new Migrations(scripts);
  }

  /** The schema number that {@link #apply} leads to. */
  public int newest() {
    return scripts.size();
  }

  /** The schema number of a database; 0 for an empty one. */
  public static int versionOf(Connection database) throws SQLException {
    try (Statement statement = database.createStatement();
        ResultSet row = statement.executeQuery("PRAGMA user_version")) {
      return row.getInt(1);
    }
  }

  /**
   * Applies the scripts that the database has not had. When one fails, nothing of it stays, those
   * before it do, and its error is thrown. The connection must be in auto-commit mode, since each
   * script begins and ends its own transaction.
   *
   * @throws NewerDatabaseException if the database is past the newest script; it stays untouched
   */
  public void apply(Connection database) throws SQLException {
    int found = versionOf(database);
    if (found > newest()) {
      throw new NewerDatabaseException(found, newest());
    }
    for (int number = found + 1; number <= newest(); number++) {
      applyOne(database, number);
    }
  }

  private void applyOne(Connection database, int number) throws SQLException {
    try (Statement statement = database.createStatement()) {
      // Taken at once: a second writer then waits here and not half way through the script. If this
      // line fails there is nothing to roll back.
      statement.executeUpdate("BEGIN IMMEDIATE");
      try {
        // Of the driver's methods this one runs a whole script, triggers included.
        statement.executeUpdate(scripts.get(number - 1).sql());
        statement.executeUpdate("PRAGMA user_version = " + number);
        statement.executeUpdate("COMMIT");
      } catch (SQLException fault) {
        rollBack(statement, fault);
        throw fault;
      }
    }
  }

  private static void rollBack(Statement statement, SQLException fault) {
    try {
      statement.executeUpdate("ROLLBACK");
    } catch (SQLException second) {
      // SQLite rolls back by itself on some errors; what matters is the first one.
      fault.addSuppressed(second);
    }
  }

  private static void requireNumber(int number, String name) {
    if (!name.matches("\\d{4}_[a-z_]+\\.sql") || Integer.parseInt(name.substring(0, 4)) != number) {
      throw new IllegalArgumentException(
          String.format(
              "schema/%s: expected script number %04d here, named like %04d_noun.sql.",
              name, number, number));
    }
  }

  private static String resource(String path) {
    try (InputStream in = Migrations.class.getResourceAsStream(path)) {
      if (in == null) {
        throw new FileNotFoundException(path);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new IllegalStateException("The program's own " + path + " cannot be read.", e);
    }
  }

  /** Applies the scripts of a folder to a database file: {@code Migrations FOLDER FILE}. */
  public static void main(String[] args) throws IOException, SQLException {
    if (args.length != 2) {
      throw new IllegalArgumentException("Give the folder of the scripts and the database file.");
    }
    Path file = Path.of(args[1]).toAbsolutePath();
    Files.createDirectories(file.getParent());
    try (Connection database = DriverManager.getConnection("jdbc:sqlite:" + file)) {
      in(Path.of(args[0])).apply(database);
    }
  }
}
