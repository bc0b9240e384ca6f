package chillwright.web;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads the pages as text. */
final class PageText {
  private static final Pattern FILE =
      Pattern.compile("<(?:link|script|img|iframe|source)[^>]* (?:href|src)=\"([^\"]*)\"");
  private static final Pattern BDI = Pattern.compile("(?s)<bdi[^>]*>.*?</bdi>");

  private static final Pattern VALUE = Pattern.compile("=\"[^\"]*\"");

  /** An element that runs, draws or loads something, written into the page itself. */
  private static final Pattern INLINE =
      Pattern.compile(
          "(?i)<script(?![^>]* src=)|<style|<[^>]* style=|<[^>]* on[a-z]+=|<iframe|<img|<b>&amp");

  private static final Pattern FIELD =
      Pattern.compile(
          "(?s)<input[^>]* name=\"([a-z]+)\"[^>]*? value=\"([^\"]*)\""
              + "|<textarea[^>]* name=\"([a-z]+)\"[^>]*>([^<]*)<"
              + "|<select[^>]* name=\"([a-z]+)\".*?</select>");
  private static final Pattern SELECTED =
      Pattern.compile("<option(?=[^>]* selected)[^>]* value=\"([^\"]*)\"");

  private PageText() {}

  /** What a browser sends of the form with that id, as it was opened. */
  static Map<String, String> fields(String page, String id) {
    int from = page.indexOf("id=\"" + id + "\"");
    Map<String, String> fields = new HashMap<>();
    Matcher found = FIELD.matcher(page.substring(from, page.indexOf("</form>", from)));
    while (found.find()) {
      if (found.group(1) != null) {
        fields.put(found.group(1), found.group(2));
      } else if (found.group(3) != null) {
        fields.put(found.group(3), found.group(4));
      } else {
        Matcher chosen = SELECTED.matcher(found.group());
        fields.put(found.group(5), chosen.find() ? chosen.group(1) : "");
      }
    }
    return fields;
  }

  /** What runs, draws or loads something besides the files that a page names. */
  static List<String> inline(String page) {
    return INLINE
        .matcher(VALUE.matcher(page).replaceAll("=\"\"").replace("<script src=\"\"", ""))
        .results()
        .map(match -> match.group())
        .toList();
  }

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
