package chillwright.storage;

/** A database that is not opened, with a plain word why and what to do. */
public final class CannotOpenException extends RuntimeException {
  CannotOpenException(String says) {
    super(says);
  }

  CannotOpenException(String says, Throwable cause) {
    super(says, cause);
  }
}
