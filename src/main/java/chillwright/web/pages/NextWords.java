package chillwright.web.pages;

import chillwright.core.log.Phase;
import chillwright.core.log.Word;
import chillwright.core.rules.Verdict;
import chillwright.service.LotView;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The words that an entry of a lot may have, what most often comes next first. */
final class NextWords {
  private NextWords() {}

  /** Common practice, no source: it is only the order in which words are offered. */
  static List<String> of(LotView view, Instant now) {
    List<Word> words = new ArrayList<>();
    Optional<Verdict> owed =
        view.judged()
            .flatMap(LotView.Judged::due)
            .map(due -> due.at(now))
            .filter(verdict -> verdict.compareTo(Verdict.NOT_SHOWN) <= 0);
    if (owed.isPresent()) {
      // What nobody read is read first; what was missed is acted on.
      boolean isUnread = owed.get() == Verdict.NOT_SHOWN;
      words.add(isUnread ? Word.READING : Word.ACTION);
      words.add(isUnread ? Word.ACTION : Word.REHEATING);
      words.addAll(List.of(Word.DISCARDED, Word.READING, Word.REHEATING));
    }
    view.state().standing().map(standing -> likely(standing.phase())).ifPresent(words::addAll);
    words.addAll(List.of(Word.READING, Word.PORTIONS, Word.DISCARDED, Word.ACTION));
    words.addAll(List.of(Word.values()));
    words.remove(Word.CORRECTION);
    return words.stream().distinct().map(Word::text).toList();
  }

  private static List<Word> likely(Phase phase) {
    return switch (phase) {
      case COOKED -> List.of(Word.READING, Word.COOLING, Word.HOT_HOLDING, Word.CHILLED);
      case PREPARED, RECEIVED, OPENED -> List.of(Word.READING, Word.CHILLED, Word.FROZEN);
      case HOT_HOLDING -> List.of(Word.READING, Word.SERVED, Word.COOLING);
      case COOLING -> List.of(Word.READING, Word.CHILLED, Word.FROZEN);
      case CHILLED -> List.of(Word.READING, Word.PORTIONS, Word.REHEATING, Word.FROZEN);
      case FROZEN -> List.of(Word.PORTIONS, Word.THAWING, Word.READING, Word.REHEATING);
      case THAWING -> List.of(Word.READING, Word.CHILLED, Word.REHEATING);
      case REHEATING -> List.of(Word.READING, Word.HOT_HOLDING, Word.SERVED);
      case TIME_CONTROL, SET_OUT -> List.of(Word.SERVED, Word.DISCARDED, Word.READING);
      case SERVED, DISCARDED -> List.of(Word.ACTION);
    };
  }
}
