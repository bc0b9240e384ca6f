package chillwright.paper;

import java.text.Normalizer;
import java.util.HashMap;
import java.util.Map;
import java.util.function.IntPredicate;

/**
 * Letters of the Arabic script as they are joined when written (The Unicode Standard, section 9.2).
 * Each form is a character of its own in Unicode's presentation blocks, whose names say which it
 * is; what a font lacks stays as it was.
 */
final class Joined {
  private static final int ALONE = 0;
  private static final int FINAL = 1;
  private static final int INITIAL = 2;
  private static final int MEDIAL = 3;
  private static final String[] NAMES = {
    " ISOLATED FORM", " FINAL FORM", " INITIAL FORM", " MEDIAL FORM"
  };

  private static final int TATWEEL = 0x640;
  private static final int LAM = 0x644;

  /** The forms of a letter, or of lam and the alef after it; 0 for one that it does not have. */
  private static final Map<String, int[]> FORMS = forms();

  private Joined() {}

  private static Map<String, int[]> forms() {
    Map<String, int[]> forms = new HashMap<>();
    for (int point = 0xfb50; point <= 0xfbff; point++) {
      add(forms, point);
    }
    for (int point = 0xfe80; point <= 0xfefc; point++) {
      add(forms, point);
    }
    return forms;
  }

  private static void add(Map<String, int[]> forms, int point) {
    String name = Character.isDefined(point) ? Character.getName(point) : "";
    String plain = Normalizer.normalize(Character.toString(point), Normalizer.Form.NFKC);
    boolean isPair = plain.length() == 2 && plain.charAt(0) == LAM && name.contains("LAM WITH");
    for (int form = 0; form < NAMES.length; form++) {
      if (name.endsWith(NAMES[form]) && (plain.length() == 1 || isPair)) {
        forms.computeIfAbsent(plain, key -> new int[NAMES.length])[form] = point;
      }
    }
  }

  /**
   * The text with its letters in the forms that they have beside one another, in the same order.
   *
   * @param has whether a character can be drawn
   */
  static String of(String text, IntPredicate has) {
    if (text.codePoints().noneMatch(point -> forms(point).length > 0)) {
      return text;
    }
    StringBuilder joined = new StringBuilder();
    for (int at = 0; at < text.length(); at++) {
      String pair = text.substring(at, Math.min(text.length(), at + 2));
      boolean isBefore = joinsOnwards(before(text, at));
      int[] both = pair.length() == 2 ? FORMS.getOrDefault(pair, new int[0]) : new int[0];
      int form = both.length == 0 ? 0 : both[isBefore ? FINAL : ALONE];
      if (form != 0 && has.test(form)) {
        joined.appendCodePoint(form);
        at++;
      } else {
        joined.append(letter(text, at, isBefore, has));
      }
    }
    return joined.toString();
  }

  private static String letter(String text, int at, boolean isBefore, IntPredicate has) {
    int[] forms = forms(text.charAt(at));
    if (forms.length == 0) {
      return text.substring(at, at + 1);
    }
    boolean isAfter = forms[INITIAL] != 0 && joinsBack(after(text, at));
    int form = isBefore ? (isAfter ? MEDIAL : FINAL) : (isAfter ? INITIAL : ALONE);
    int chosen = forms[form] == 0 ? forms[ALONE] : forms[form];
    return chosen != 0 && has.test(chosen)
        ? Character.toString(chosen)
        : text.substring(at, at + 1);
  }

  private static int[] forms(int point) {
    return FORMS.getOrDefault(Character.toString(point), new int[0]);
  }

  /** Whether a letter reaches to the one after it. */
  private static boolean joinsOnwards(int point) {
    return point == TATWEEL || (forms(point).length > 0 && forms(point)[INITIAL] != 0);
  }

  /** Whether a letter reaches to the one before it. */
  private static boolean joinsBack(int point) {
    return point == TATWEEL || (forms(point).length > 0 && forms(point)[FINAL] != 0);
  }

  /** The letter before that place, marks above and below left out; 0 for none. */
  private static int before(String text, int at) {
    int place = at - 1;
    while (place >= 0 && isMark(text.charAt(place))) {
      place--;
    }
    return place < 0 ? 0 : text.charAt(place);
  }

  private static int after(String text, int at) {
    int place = at + 1;
    while (place < text.length() && isMark(text.charAt(place))) {
      place++;
    }
    return place >= text.length() ? 0 : text.charAt(place);
  }

  private static boolean isMark(char letter) {
    return Character.getType(letter) == Character.NON_SPACING_MARK;
  }
}
