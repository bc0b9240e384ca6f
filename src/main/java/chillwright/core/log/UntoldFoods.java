package chillwright.core.log;

import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * Finds the food that no kind may stand for. A phrase is of such food where it is one of its words,
 * or ends with one ("spicy tuna poke"), or begins with one that something joins ("ceviche of
 * sole"). A dish that has such food in it is that dish ("pasta with shrimp"), and of two words at
 * the same end the longer one tells; but what is in oil or in a jar is that ("tuna in oil").
 */
final class UntoldFoods {
  private static final String ANY = "*";

  /** A word for such food, as it is compared. */
  record Word(Untold untold, String folded) {}

  private final KeepingList list;

  UntoldFoods(KeepingList list) {
    this.list = list;
  }

  static Stream<Word> words(Untold untold) {
    return untold.words().stream().map(word -> new Word(untold, folded(word)));
  }

  Optional<Untold> find(String phrase) {
    int atStart = longestKind(word -> isStart(word, phrase));
    int atEnd = longestKind(word -> isEnd(word, phrase));
    return first(word -> isWhole(word, phrase))
        .or(() -> first(word -> FoodWords.isJoined(word) && isEnd(word, phrase)))
        .or(() -> first(word -> isStart(word, phrase) && word.length() > atStart))
        .or(() -> first(word -> atStart == 0 && isEnd(word, phrase) && word.length() > atEnd));
  }

  private Optional<Untold> first(Predicate<String> isMeant) {
    return list.untoldWords().stream()
        .filter(word -> isMeant.test(word.folded()))
        .map(Word::untold)
        .findFirst();
  }

  private int longestKind(Predicate<String> isMeant) {
    return list.words().stream()
        .map(FoodWords.Word::folded)
        .filter(isMeant)
        .mapToInt(String::length)
        .max()
        .orElse(0);
  }

  /** The word as phrases are folded, its "*" left where it stands. */
  private static String folded(String word) {
    String folded = FoodWords.folded(word);
    if (word.startsWith(ANY)) {
      return ANY + " " + folded;
    }
    return word.endsWith(ANY) ? folded + " " + ANY : folded;
  }

  /** "garlic butter" by "* butter", but not "bread and butter". */
  private static boolean isWhole(String word, String phrase) {
    if (word.endsWith(ANY)) {
      return phrase.startsWith(word.substring(0, word.length() - 1));
    }
    if (!word.startsWith(ANY)) {
      return phrase.equals(word);
    }
    String end = word.substring(1);
    return phrase.endsWith(end)
        && !FoodWords.hasJoining(phrase.substring(0, phrase.length() - end.length()));
  }

  private static boolean isStart(String word, String phrase) {
    return phrase.startsWith(word + " ") && FoodWords.isJoined(phrase.substring(word.length() + 1));
  }

  private static boolean isEnd(String word, String phrase) {
    return phrase.endsWith(" " + word);
  }
}
