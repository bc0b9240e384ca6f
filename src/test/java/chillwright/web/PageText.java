package chillwright.web;

import java.util.List;
import java.util.regex.Pattern;

/** Reads the pages as text. */
final class PageText {
  private static final Pattern FILE =
      Pattern.compile("<(?:link|script|img|iframe|source)[^>]* (?:href|src)=\"([^\"]*)\"");
  private static final Pattern BDI = Pattern.compile("(?s)<bdi[^>]*>.*?</bdi>");

  private PageText() {}

  /** The addresses of what a browser loads with a page. */
  static List<String> files(String page) {
    return FILE.matcher(page).results().map(match -> match.group(1)).toList();
  }

  /** Text as it stands between tags. */
  static String escaped(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }

  /** The page without what is isolated from the direction of its line. */
  static String outsideBdi(String page) {
    return BDI.matcher(page).replaceAll("");
  }
}
