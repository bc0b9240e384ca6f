package chillwright.storage;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.function.Function;

/**
 * The database of one kitchen, held by this process alone. One thread writes, others read at the
 * same time; what {@link #write} returns from is on the disk.
 */
public final class Database implements AutoCloseable {
  /** "Chil", set by the first script: tells a kitchen's database from any other SQLite file. */
  private static final int APPLICATION_ID = 0x4368696c;

  private final FileHold hold;
  private final Readers readers;
  private final Writer writer;

  private Database(FileHold hold, Readers readers, Writer writer) {
    this.hold = hold;
    this.readers = readers;
    this.writer = writer;
  }

  /**
   * Opens the database, or makes it. One with an older schema is first copied to a file beside it
   * and then brought up to date.
   *
   * @throws CannotOpenException with a plain word, if it is in use, not a kitchen's, made by a
   *     newer version, or not readable
   */
  public static Database open(Path file) {
    return open(file, Migrations.carried());
  }

  static Database open(Path file, Migrations migrations) {
    Path place = placeOf(file);
    FileHold hold = FileHold.on(place);
    try {
      bringUpToDate(place, migrations);
      Readers readers = new Readers(place);
      FileIdentity opened = FileIdentity.of(place);
      Writer writer = new Writer(place, readers, () -> opened.isStillThere() && hold.isStillHeld());
      return new Database(hold, readers, writer);
    } catch (Migrations.NewerDatabaseException e) {
      hold.close();
      throw new CannotOpenException(e.getMessage(), e);
    } catch (SQLException | IOException e) {
      hold.close();
      throw new CannotOpenException(
          "The database " + place + " cannot be opened: " + e.getMessage(), e);
    } catch (RuntimeException e) {
      hold.close();
      throw e;
    }
  }

  /** The same file by the same name, however it was reached, so that its lock is one lock. */
  private static Path placeOf(Path file) {
    try {
      Path absolute = file.toAbsolutePath();
      if (Files.exists(absolute)) {
        return absolute.toRealPath();
      }
      Files.createDirectories(absolute.getParent());
      return absolute.getParent().toRealPath().resolve(absolute.getFileName());
    } catch (IOException e) {
      throw new CannotOpenException(
          "The folder of " + file + " cannot be used: " + e.getMessage(), e);
    }
  }

  private static void bringUpToDate(Path file, Migrations migrations)
      throws SQLException, IOException {
    if (Files.exists(file) && Files.size(file) > 0) {
      requireOurs(file);
      if (FileIdentity.hasSecondName(file)) {
        throw new CannotOpenException(
            file + " has a second name (a hard link), by which another program could write it.");
      }
    }
    try (Connection connection = Connections.writer(file)) {
      Connections.requireSoundVersion(connection);
      int found = Migrations.versionOf(connection);
      if (found > 0 && found < migrations.newest()) {
        copy(connection, copyName(file, found));
      }
      migrations.apply(connection);
    }
  }

  /** Looked at through a connection that changes nothing, since it may be somebody else's file. */
  private static void requireOurs(Path file) throws SQLException {
    try (Connection connection = Connections.reader(file)) {
      boolean isEmpty = Connections.number(connection, "SELECT count(*) FROM sqlite_schema") == 0;
      if (!isEmpty && Connections.number(connection, "PRAGMA application_id") != APPLICATION_ID) {
        throw new CannotOpenException(
            file + " holds another program's database. Give another file with --db.");
      }
    }
  }

  private static Path copyName(Path file, int schema) {
    String base = file.getFileName() + ".schema-" + schema;
    Path copy = file.resolveSibling(base + ".copy");
    for (int number = 2; Files.exists(copy); number++) {
      copy = file.resolveSibling(base + "-" + number + ".copy");
    }
    return copy;
  }

  private static void copy(Connection connection, Path copy) throws SQLException, IOException {
    try (PreparedStatement vacuum = connection.prepareStatement("VACUUM INTO ?")) {
      vacuum.setString(1, copy.toString());
      vacuum.execute();
    }
    // The copy must be on the disk before the original is changed.
    try (FileChannel written = FileChannel.open(copy, StandardOpenOption.WRITE)) {
      written.force(true);
    }
  }

  /**
   * Runs the work in a transaction and returns once it is on the disk. If the work throws, nothing
   * of it is kept and what it threw is thrown here.
   *
   * @throws StorageException if the disk failed
   */
  public <T> T write(Function<Session, T> work) {
    return writer.write(work);
  }

  /** Runs the work on one unchanging state of the database, beside any writes. */
  public <T> T read(Function<Session, T> work) {
    return readers.read(work);
  }

  /** Finishes the writes that wait, then closes the file. */
  @Override
  public void close() {
    try (hold) {
      writer.finish();
      readers.close();
      writer.closeConnection();
    }
  }

  /** How many writes were begun since the database was opened, those that failed too. */
  public long writes() {
    return writer.writes();
  }

  /** How many commits there were since the database was opened: grows with every change. */
  public long commits() {
    return writer.commits();
  }
}
