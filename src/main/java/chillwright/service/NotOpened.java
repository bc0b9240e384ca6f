package chillwright.service;

/** A kitchen whose database is not opened; the message says why and what to do. */
public final class NotOpened extends RuntimeException {
  private static final long serialVersionUID = 1L;

  NotOpened(String says) {
    super(says);
  }

  NotOpened(String says, Throwable cause) {
    super(says, cause);
  }
}
