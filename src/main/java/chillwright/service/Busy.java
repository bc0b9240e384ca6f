package chillwright.service;

/** As many plans as may be worked out at once are being worked out; asked again, it is answered. */
public final class Busy extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** Seconds after which it is worth asking again. */
  public static final int RETRY_SECONDS = 5;

  Busy() {
    super("as many plans are being worked out as may be at once");
  }
}
