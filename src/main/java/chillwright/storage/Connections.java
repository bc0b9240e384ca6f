package chillwright.storage;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConfig.JournalMode;
import org.sqlite.SQLiteConfig.SynchronousMode;

/** Opens connections to one database file, each with the settings that the promises rest on. */
final class Connections {
  /** Before this version two connections that reset the log at once could corrupt the file. */
  private static final String OLDEST = "3.51.3";

  /** The write-ahead log is cut back to this after a checkpoint; see {@link WriteAhead}. */
  private static final int LOG_BYTES = 64 * 1024 * 1024;

  /** Nobody else writes, so a lock is only ever held for the moment of a checkpoint. */
  private static final int BUSY_MILLISECONDS = 5_000;

  /** Those who wait to write wait as long for the readers of a checkpoint; reads are short. */
  private static final int CHECKPOINT_MILLISECONDS = 100;

  private Connections() {}

  /** The connection that writes and makes checkpoints. */
  static Connection writer(Path file) throws SQLException {
    SQLiteConfig config = common();
    // Readers go on while the one writer writes.
    config.setJournalMode(JournalMode.WAL);
    // A commit returns once it is on the disk: only then may it be acknowledged.
    config.setSynchronous(SynchronousMode.FULL);
    config.setJournalSizeLimit(LOG_BYTES);
    return connect(config, file);
  }

  /** A connection that can only read. */
  static Connection reader(Path file) throws SQLException {
    SQLiteConfig config = common();
    config.setReadOnly(true);
    return connect(config, file);
  }

  private static SQLiteConfig common() {
    SQLiteConfig config = new SQLiteConfig();
    // Off by default in SQLite: an entry without its lot would then be kept.
    config.enforceForeignKeys(true);
    config.setBusyTimeout(BUSY_MILLISECONDS);
    // Else the driver asks for the last key after every statement, and nobody reads it.
    config.setGetGeneratedKeys(false);
    return config;
  }

  /**
   * Copies the write-ahead log into the database and empties its file.
   *
   * @return false if readers took longer than is waited for, and it stays as it was
   */
  static boolean emptyWriteAhead(Connection writer) throws SQLException {
    execute(writer, "PRAGMA busy_timeout = " + CHECKPOINT_MILLISECONDS);
    try {
      return number(writer, "PRAGMA wal_checkpoint(TRUNCATE)") == 0;
    } finally {
      execute(writer, "PRAGMA busy_timeout = " + BUSY_MILLISECONDS);
    }
  }

  private static Connection connect(SQLiteConfig config, Path file) throws SQLException {
    return config.createConnection("jdbc:sqlite:" + file);
  }

  static void requireSoundVersion(Connection connection) throws SQLException {
    String found = text(connection, "SELECT sqlite_version()");
    if (Arrays.compare(numbers(found), numbers(OLDEST)) < 0) {
      throw new CannotOpenException(
          "SQLite " + found + " is too old to keep the log safely; it takes " + OLDEST + ".");
    }
  }

  static int[] numbers(String version) {
    return Arrays.stream(version.split("\\.")).mapToInt(Integer::parseInt).toArray();
  }

  static void execute(Connection connection, String statement) throws SQLException {
    try (Statement run = connection.createStatement()) {
      run.execute(statement);
    }
  }

  static String text(Connection connection, String query) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(query)) {
      return row.getString(1);
    }
  }

  static int number(Connection connection, String query) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(query)) {
      return row.getInt(1);
    }
  }
}
