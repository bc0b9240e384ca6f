package chillwright.web.pages;

import chillwright.core.log.Word;
import java.util.List;

/**
 * What is wrong with the entries of a lot: first which one, then how it should read.
 *
 * @param entries those that can be corrected, the newest first
 * @param chosen the entry that is wrong, as it stands; none where it is still to be chosen
 * @param isFirst whether it is the lot's first, whose word, time and note stay
 * @param isFrozen whether the lot may read below zero
 * @param form as it should read
 */
public record CorrectView(
    String code,
    String food,
    List<LotPageView.Entry> entries,
    List<LotPageView.Entry> chosen,
    boolean isFirst,
    boolean isFrozen,
    List<String> words,
    List<String> hows,
    List<String> places,
    List<Choice> categories,
    Filled form) {
  public CorrectView {
    entries = List.copyOf(entries);
    chosen = List.copyOf(chosen);
    words = List.copyOf(words);
    hows = List.copyOf(hows);
    places = List.copyOf(places);
    categories = List.copyOf(categories);
  }

  /** Whether it tells of portions that were taken, so that their number stands first. */
  public boolean isShare() {
    return form.given("entry").equals(Word.PORTIONS.text());
  }

  /** Whether it tells of portions alone: what was not read beside them is asked for last. */
  public boolean isUnread() {
    return isShare() && !form.has("temperature");
  }
}
