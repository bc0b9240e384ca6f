package chillwright.bench;

import chillwright.storage.Watching;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;

/** A bare table of the shape of a log, to which one row at a time is written durably. */
final class BareTable implements AutoCloseable {
  private final Connection connection;
  private final PreparedStatement insert;
  private int written;

  BareTable(Path file) throws SQLException {
    connection =
        DriverManager.getConnection("jdbc:sqlite:" + file + "?journal_mode=WAL&synchronous=FULL");
    try (Statement statement = connection.createStatement()) {
      statement.executeUpdate(
          "CREATE TABLE log_entry (lot_id INTEGER NOT NULL, seq INTEGER NOT NULL, entry TEXT NOT"
              + " NULL, word INTEGER NOT NULL, happened_at INTEGER NOT NULL, written_at INTEGER NOT"
              + " NULL, temperature INTEGER, temperature_scale INTEGER, person TEXT, PRIMARY KEY"
              + " (lot_id, seq)) STRICT, WITHOUT ROWID;"
              + "CREATE UNIQUE INDEX log_entry_entry ON log_entry (entry)");
    }
    insert = connection.prepareStatement("INSERT INTO log_entry VALUES (?,?,?,?,?,?,?,?,?)");
  }

  void slowCommits(long millis) throws SQLException {
    Watching.slowCommits(connection, millis);
  }

  /** Writes one row, which is on the disk when this returns, and returns the length of time. */
  long write() throws SQLException {
    int row = written++;
    long now = System.currentTimeMillis();
    long start = System.nanoTime();
    insert.setInt(1, row / 20);
    insert.setInt(2, row % 20);
    insert.setString(3, "e" + row * 2_654_435_761L);
    insert.setInt(4, 1);
    insert.setLong(5, now);
    insert.setLong(6, now);
    insert.setInt(7, 17_000);
    insert.setInt(8, 1);
    insert.setString(9, "MK");
    insert.executeUpdate();
    return System.nanoTime() - start;
  }

  @Override
  public void close() throws SQLException {
    insert.close();
    connection.close();
  }
}
