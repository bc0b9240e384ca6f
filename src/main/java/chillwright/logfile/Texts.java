package chillwright.logfile;

import java.text.Normalizer;

/** Cells as text: trimmed, in Unicode's normal form C, and fit to be shown again. */
public final class Texts {
  private static final int SHOWN = 80;
  private static final char LINE_SEPARATOR = (char) 0x2028;
  private static final char PARAGRAPH_SEPARATOR = (char) 0x2029;

  private Texts() {}

  static boolean isBlank(char c) {
    return c == ' ' || (c <= '\r' && c >= '\t') || (c > 127 && isWideBlank(c));
  }

  /** The no-break spaces that spreadsheets and phones put in, and the byte-order mark. */
  private static boolean isWideBlank(char c) {
    return Character.isSpaceChar(c) || c == '\ufeff';
  }

  /** Without the blanks around it. */
  static String trimmed(String text) {
    int start = 0;
    int end = text.length();
    while (start < end && isBlank(text.charAt(start))) {
      start++;
    }
    while (end > start && isBlank(text.charAt(end - 1))) {
      end--;
    }
    return text.substring(start, end);
  }

  /** In normal form C, so that an accent typed in two ways is one text. */
  static String normal(String text) {
    for (int i = 0; i < text.length(); i++) {
      if (text.charAt(i) > 127) {
        return Normalizer.normalize(text, Normalizer.Form.NFC);
      }
    }
    return text;
  }

  /** Whether bytes that are no UTF-8 stood here: they come as half of a surrogate pair. */
  static boolean hasBrokenBytes(String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (Character.isSurrogate(c)) {
        boolean pair = i + 1 < text.length() && Character.isSurrogatePair(c, text.charAt(i + 1));
        if (!pair) {
          return true;
        }
        i++;
      }
    }
    return false;
  }

  /**
   * Whether it holds a control character, other than a line break where one may stand. What Unicode
   * calls a separator of lines or paragraphs breaks a line in some programs only: it is none here.
   */
  static boolean hasControls(String text, boolean breaksAllowed) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      boolean isBreak = c == '\n' || c == '\r';
      if ((Character.isISOControl(c) || isSeparator(c)) && !(breaksAllowed && isBreak)) {
        return true;
      }
    }
    return false;
  }

  /** Whether Unicode ends a line there: U+2028 or U+2029. */
  static boolean isSeparator(char c) {
    return c == LINE_SEPARATOR || c == PARAGRAPH_SEPARATOR;
  }

  /** The text as a message may show it: not too long, nothing in it that a terminal obeys. */
  public static String shown(String text) {
    StringBuilder shown = new StringBuilder();
    text.codePoints()
        .limit(SHOWN)
        .forEach(
            c -> {
              if (Character.isISOControl(c) || c == LINE_SEPARATOR || c == PARAGRAPH_SEPARATOR) {
                shown.append("\\u%04x".formatted(c));
              } else if (Character.getType(c) == Character.SURROGATE) {
                shown.append('\ufffd');
              } else {
                shown.appendCodePoint(c);
              }
            });
    return text.codePointCount(0, text.length()) > SHOWN ? shown + "…" : shown.toString();
  }
}
