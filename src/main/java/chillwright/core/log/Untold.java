package chillwright.core.log;

import java.util.List;

/**
 * Foods that no kind of the keeping list may stand for, because each would give them days that no
 * source gives: garlic butter is no butter, chili oil no soup.
 *
 * @param words words for such food, in lower case, with "*" at one end for any words that join it
 * @param says why there are no days, what is known of such food, and who says so
 */
public record Untold(List<String> words, String says) {
  public Untold {
    words = List.copyOf(words);
  }
}
