package chillwright.web.pages;

import java.util.List;

/** Codes of parts in short: "BAR-1 \u2026 BAR-4" where they are numbered one after another. */
final class PartCodes {
  private static final int MANY = 3;

  private PartCodes() {}

  static String inShort(List<String> codes) {
    String first = codes.get(0);
    String stem = first.substring(0, first.lastIndexOf('-') + 1);
    return codes.size() >= MANY && isNumbered(codes, stem)
        ? first + " \u2026 " + codes.get(codes.size() - 1)
        : String.join(", ", codes);
  }

  private static boolean isNumbered(List<String> codes, String stem) {
    String number = codes.get(0).substring(stem.length());
    if (!number.matches("\\d{1,6}")) {
      return false;
    }
    int first = Integer.parseInt(number);
    for (int at = 0; at < codes.size(); at++) {
      if (!codes.get(at).equals(stem + (first + at))) {
        return false;
      }
    }
    return true;
  }
}
