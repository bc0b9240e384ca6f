package chillwright.paper;

/**
 * How a text is set.
 *
 * @param size in points
 */
record Style(double size, boolean isBold) {
  private static final double LEADING = 1.2;

  static Style plain(double size) {
    return new Style(size, false);
  }

  static Style bold(double size) {
    return new Style(size, true);
  }

  /** From one line to the next. */
  double leading() {
    return size * LEADING;
  }
}
