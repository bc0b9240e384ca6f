package chillwright.storage;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * Holds a database for one process, by a lock on a file beside it. A lock on the database file
 * itself will not do: closing any other descriptor of that file drops SQLite's own locks. The
 * system lets go when the process ends, however it ends, so the file may stay behind.
 */
final class FileHold implements AutoCloseable {
  private final FileChannel channel;
  private final FileIdentity lock;

  private FileHold(FileChannel channel, FileIdentity lock) {
    this.channel = channel;
    this.lock = lock;
  }

  /** Whether the lock file is still the one that is held. */
  boolean isStillHeld() {
    return lock.isStillThere();
  }

  /**
   * @throws CannotOpenException if another process, or another part of this one, holds it
   */
  static FileHold on(Path database) {
    Path beside = database.resolveSibling(database.getFileName() + ".lock");
    try {
      FileChannel channel =
          FileChannel.open(beside, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      if (isLocked(channel)) {
        return new FileHold(channel, FileIdentity.of(beside));
      }
      channel.close();
    } catch (IOException e) {
      throw new CannotOpenException(
          "The file " + beside + " cannot be written: " + e.getMessage() + ".", e);
    }
    throw new CannotOpenException(
        "Another program is using "
            + database
            + ". Stop that one first, or send this to its address.");
  }

  private static boolean isLocked(FileChannel channel) throws IOException {
    try {
      FileLock lock = channel.tryLock();
      return lock != null;
    } catch (OverlappingFileLockException e) {
      return false;
    }
  }

  @Override
  public void close() {
    try {
      channel.close();
    } catch (IOException e) {
      throw new StorageException("The lock beside the database could not be given back.", e);
    }
  }
}
