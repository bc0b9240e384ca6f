package chillwright.web;

/** Text made safe to stand in a page, between tags and in quoted attributes. */
final class Html {
  private Html() {}

  static String escaped(String text) {
    StringBuilder safe = new StringBuilder(text.length() + 16);
    text.codePoints()
        .forEach(
            c -> {
              switch (c) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                case '\'' -> safe.append("&#39;");
                case '\n', '\t' -> safe.append((char) c);
                default -> safe.appendCodePoint(isShowable(c) ? c : 0xfffd);
              }
            });
    return safe.toString();
  }

  private static boolean isShowable(int c) {
    return !Character.isISOControl(c) && Character.getType(c) != Character.SURROGATE;
  }

  /** Words of a user, which may run in the other direction without turning the line around. */
  static String words(String text) {
    return "<bdi>" + escaped(text) + "</bdi>";
  }
}
