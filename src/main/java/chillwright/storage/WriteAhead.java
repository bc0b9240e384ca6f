package chillwright.storage;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.concurrent.TimeUnit;

/**
 * Keeps the write-ahead file short. SQLite begins it anew only at a moment when nobody reads what
 * is in it, and where one reader always overlaps the next no such moment comes: the file would grow
 * for as long as they go on. So once it is longer than usual the writer makes that moment: it waits
 * for the readers that are there, while those that come next are led to the database itself.
 */
final class WriteAhead {
  /** Without readers in the way the file stays at a quarter of this. */
  private static final long LONG = 16L * 1024 * 1024;

  /**
   * A reader that takes longer than the writer waits is left alone for so long, or until the file
   * has grown by {@link #MORE}: a quick disk takes a hundred megabytes in that time.
   */
  private static final long PAUSE_NANOS = TimeUnit.SECONDS.toNanos(1);

  private static final long MORE = LONG / 2;

  private final Path file;
  private long nextTry = System.nanoTime();
  private long nextLength = LONG;

  WriteAhead(Path database) {
    this.file = of(database);
  }

  /** The file that SQLite keeps beside a database. */
  static Path of(Path database) {
    return database.resolveSibling(database.getFileName() + "-wal");
  }

  /** To be called between transactions of the writer. */
  void shorten(Session writer) throws SQLException {
    long length = length();
    if (length < LONG || (length < nextLength && System.nanoTime() - nextTry < 0)) {
      return;
    }
    if (writer.emptyWriteAhead()) {
      nextLength = LONG;
    } else {
      nextLength = length + MORE;
      nextTry = System.nanoTime() + PAUSE_NANOS;
    }
  }

  private long length() {
    try {
      return Files.size(file);
    } catch (IOException notThere) {
      // Of no consequence: a file that is needed is told of by the next commit.
      return 0;
    }
  }
}
