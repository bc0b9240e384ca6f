package chillwright.storage;

/**
 * The disk or the database file failed. Nothing of the write is acknowledged; whether it was kept
 * is known only after the file was opened again.
 */
public final class StorageException extends RuntimeException {
  StorageException(String says, Throwable cause) {
    super(says, cause);
  }
}
