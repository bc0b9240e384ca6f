package chillwright.paper;

import java.text.Bidi;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;

/** Text made ready to be drawn: nothing that cannot be seen, and letters from left to right. */
final class Glyphs {
  private static final String OPENING = "()[]{}<>";
  private static final String CLOSING = ")(][}{><";

  private Glyphs() {}

  /**
   * The characters that can be seen, in the order in which they are written. Marks that turn the
   * direction of text, joiners and lone halves of a character are left out; a break is a blank.
   */
  static String visible(String text) {
    StringBuilder kept = new StringBuilder();
    Normalizer.normalize(text, Normalizer.Form.NFC)
        .codePoints()
        .forEach(
            point -> {
              switch (Character.getType(point)) {
                case Character.CONTROL,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR,
                    Character.SPACE_SEPARATOR ->
                    kept.append(' ');
                case Character.FORMAT, Character.SURROGATE, Character.UNASSIGNED -> {}
                default -> {
                  if (!isVariationSelector(point)) {
                    kept.appendCodePoint(point);
                  }
                }
              }
            });
    return kept.toString().replaceAll(" +", " ").strip();
  }

  private static boolean isVariationSelector(int point) {
    return (point >= 0xfe00 && point <= 0xfe0f) || (point >= 0xe0100 && point <= 0xe01ef);
  }

  /** A line in the order in which it is drawn, where some of it runs from right to left. */
  static String leftToRight(String line) {
    char[] letters = line.toCharArray();
    if (!Bidi.requiresBidi(letters, 0, letters.length)) {
      return line;
    }
    Bidi bidi = new Bidi(line, Bidi.DIRECTION_DEFAULT_LEFT_TO_RIGHT);
    int count = bidi.getRunCount();
    byte[] levels = new byte[count];
    List<String> runs = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      levels[i] = (byte) bidi.getRunLevel(i);
      String run = line.substring(bidi.getRunStart(i), bidi.getRunLimit(i));
      runs.add(levels[i] % 2 == 0 ? run : turned(run));
    }
    Object[] ordered = runs.toArray();
    Bidi.reorderVisually(levels, 0, ordered, 0, count);
    StringBuilder drawn = new StringBuilder();
    for (Object run : ordered) {
      drawn.append(run);
    }
    return drawn.toString();
  }

  private static String turned(String run) {
    StringBuilder turned = new StringBuilder(run).reverse();
    for (int i = 0; i < turned.length(); i++) {
      int at = OPENING.indexOf(turned.charAt(i));
      if (at >= 0) {
        turned.setCharAt(i, CLOSING.charAt(at));
      }
    }
    return turned.toString();
  }
}
