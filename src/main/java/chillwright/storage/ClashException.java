package chillwright.storage;

/** A write broke a rule of the schema, such as an id that is taken; nothing of it was kept. */
public final class ClashException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  ClashException(RuntimeException cause) {
    super("What was written does not fit what is stored: " + cause.getMessage(), cause);
  }
}
