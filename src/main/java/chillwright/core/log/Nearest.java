package chillwright.core.log;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Finds the known words that someone who wrote an unknown one may have meant. */
public final class Nearest {
  private static final int AT_MOST = 3;
  private static final int FAR = Integer.MAX_VALUE;

  private Nearest() {}

  /** Up to three known words, the likeliest first; none if nothing comes near. */
  public static List<String> to(String given, Collection<String> known) {
    String plain = plain(given);
    if (plain.isEmpty() || plain.length() > LotId.LONGEST) {
      return List.of();
    }
    record Ranked(String word, int distance) {}
    return known.stream()
        .map(word -> new Ranked(word, distance(plain, plain(word))))
        .filter(ranked -> ranked.distance != FAR)
        .sorted(Comparator.comparingInt(Ranked::distance).thenComparing(Ranked::word))
        .limit(AT_MOST)
        .map(Ranked::word)
        .toList();
  }

  /** " Did you mean x or y?" with a space before it, or nothing if no known word comes near. */
  public static String question(String given, Collection<String> known) {
    List<String> nearest = to(given, known);
    return nearest.isEmpty() ? "" : " Did you mean " + String.join(" or ", nearest) + "?";
  }

  /** Whether one is the other with a letter or two amiss; of short words, with none. */
  static boolean isSlip(String given, String known) {
    int shorter = Math.min(given.length(), known.length());
    int allowed = shorter < 4 ? 0 : shorter < 8 ? 1 : 2;
    return given.length() <= LotId.LONGEST && edits(given, known) <= allowed;
  }

  static String plain(String text) {
    return text.toLowerCase(Locale.ROOT).replace('_', ' ').replace('-', ' ').strip();
  }

  /** Equal is 0; one word inside the other is as near as one wrong letter. */
  private static int distance(String given, String known) {
    int edits = edits(given, known);
    if (edits > 1 && given.length() >= 3 && (known.contains(given) || given.contains(known))) {
      return 1;
    }
    int allowed = Math.max(1, Math.min(given.length(), known.length()) / 3);
    return edits <= allowed ? edits : FAR;
  }

  /** How many letters must be put in, left out or changed: Levenshtein's distance. */
  private static int edits(String a, String b) {
    int[] last = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      last[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      int[] next = new int[b.length() + 1];
      next[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int change = last[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        next[j] = Math.min(change, Math.min(last[j], next[j - 1]) + 1);
      }
      last = next;
    }
    return last[b.length()];
  }
}
