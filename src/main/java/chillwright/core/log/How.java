package chillwright.core.log;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** How something was done or found: a closed list, each for certain words only. */
public enum How {
  /** Reheated for one order and served at once. */
  SERVE_NOW("serve-now", Word.REHEATING),
  /** Reheated in a microwave oven, stirred and covered. */
  MICROWAVE("microwave", Word.REHEATING),
  /** Commercially processed and packaged ready-to-eat food. */
  COMMERCIAL("commercial", Word.REHEATING),
  /** A whole meat roast cooked by the roast time-temperature table. */
  ROAST("roast", Word.COOKED, Word.HOT_HOLDING),
  REFRIGERATOR("refrigerator", Word.THAWING),
  RUNNING_WATER("running-water", Word.THAWING),
  WHILE_COOKING("while-cooking", Word.THAWING),
  FOUR_HOURS("4h", Word.TIME_CONTROL),
  SIX_HOURS("6h", Word.TIME_CONTROL),
  /** Received warmer than the cold limit as law allows, such as some shellfish or milk. */
  LAW_ALLOWS("law-allows", Word.RECEIVED),
  /** Frozen hard. */
  HARD("hard", Word.FROZEN, Word.READING),
  /** Partly thawed, with ice crystals left: neither thawed nor out. */
  CRYSTALS("crystals", Word.FROZEN, Word.READING),
  /** Thawed, soft to the touch. */
  SOFT("soft", Word.FROZEN, Word.READING),
  /** Portions that were found missing when somebody counted: nobody got them. */
  COUNTED("counted", Word.PORTIONS),
  /** The authority gave its leave. */
  ALLOWED("allowed", Word.ACTION),
  /** Of a place: empty or switched off on that day, so that nobody reads it. */
  NOT_IN_USE("not-in-use", Word.ACTION);

  private final String text;
  private final Set<Word> words;

  How(String text, Word first, Word... more) {
    this.text = text;
    this.words = EnumSet.of(first, more);
  }

  /** As written in log files and requests. */
  public String text() {
    return text;
  }

  public boolean goesWith(Word word) {
    return words.contains(word);
  }

  public static Optional<How> ofText(String text) {
    return Arrays.stream(values()).filter(how -> how.text.equals(text)).findFirst();
  }

  /** Whether it tells of food, and not of a place. */
  public boolean isOfFood() {
    return this != NOT_IN_USE;
  }

  /** All that may stand with that word, in the order of this list; empty for most words. */
  public static List<How> allowedFor(Word word) {
    return Arrays.stream(values()).filter(how -> how.goesWith(word)).toList();
  }
}
