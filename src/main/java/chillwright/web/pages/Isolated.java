package chillwright.web.pages;

import java.text.Bidi;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Words of somebody inside a line of ours. Marks that only turn the line around (the explicit
 * formatting characters of Unicode Standard Annex #9, section 2) are left out; words written from
 * right to left keep their direction to themselves by a first strong isolate and its end.
 */
final class Isolated {
  private static final Pattern TURNING =
      Pattern.compile("[\\u061c\\u200e\\u200f\\u202a-\\u202e\\u2066-\\u2069]");

  private static final char BEGINS = '\u2068';
  private static final char ENDS = '\u2069';

  private Isolated() {}

  /** As it stands in a line beside other words. */
  static String of(String words) {
    String plain = plain(words);
    char[] letters = plain.toCharArray();
    return Bidi.requiresBidi(letters, 0, letters.length) ? BEGINS + plain + ENDS : plain;
  }

  /** Several, in one line. */
  static String joined(List<String> all) {
    return all.stream().map(Isolated::of).collect(Collectors.joining(" \u00b7 "));
  }

  /** As it stands alone, such as in the cell of a table. */
  static String plain(String words) {
    return TURNING.matcher(words).replaceAll("");
  }
}
