package chillwright.web.pages;

import chillwright.core.log.Phase;
import chillwright.core.log.Word;
import chillwright.core.rules.Acts;
import chillwright.core.rules.Finding;
import chillwright.core.rules.Remark;
import chillwright.core.rules.Shape.Hold;
import chillwright.core.rules.Shape.Reach;
import chillwright.core.rules.Verdict;
import chillwright.service.LotView;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** The words that an entry of a lot may have, what most often comes next first. */
final class NextWords {
  /** Of a lot that is only made known: how food begins. */
  private static final List<Word> BEGUN = List.of(Word.COOKED, Word.PREPARED, Word.RECEIVED);

  private NextWords() {}

  /** Common practice, no source: it is only the order in which words are offered. */
  static List<String> of(LotView view, Instant now) {
    List<Word> words = new ArrayList<>();
    if (waitsForReading(view, now)) {
      words.add(Word.READING);
    }
    boolean isOwed =
        view.judged()
            .flatMap(LotView.Judged::due)
            .filter(due -> due.at(now).compareTo(Verdict.NOT_SHOWN) <= 0)
            .isPresent();
    if (isOwed) {
      words.add(Word.ACTION);
      words.add(Word.READING);
      words.add(Word.REHEATING);
      words.add(Word.DISCARDED);
    } else if (NotForUse.reasons(view, now).stream().anyMatch(f -> Acts.isMissed(f, now))) {
      words.addAll(List.of(Word.ACTION, Word.DISCARDED, Word.REHEATING));
    }
    boolean needsCold = needsCold(view);
    words.addAll(
        view.state().standing().map(standing -> likely(standing.phase(), needsCold)).orElse(BEGUN));
    words.addAll(List.of(Word.READING, Word.PORTIONS, Word.DISCARDED, Word.ACTION));
    words.addAll(List.of(Word.values()));
    words.remove(Word.CORRECTION);
    if (!needsCold) {
      words.removeIf(word -> word == Word.HOT_HOLDING);
    }
    return words.stream().distinct().map(Word::text).toList();
  }

  /** Whether a clock runs that only a reading answers, or ran out without one. */
  static boolean waitsForReading(LotView view, Instant now) {
    return view.judged().map(LotView.Judged::findings).orElse(List.of()).stream()
        .anyMatch(
            finding ->
                finding.at(now) == Verdict.PENDING
                    ? takesReading(finding)
                    : finding.at(now) == Verdict.NOT_SHOWN && finding.has(Remark.READING_OVERDUE));
  }

  /** Whether a reading of the food is what a finding waits for. */
  static boolean takesReading(Finding finding) {
    return finding.rule().shape() instanceof Reach || finding.rule().shape() instanceof Hold;
  }

  /** Of food without entries nobody knows. */
  private static boolean needsCold(LotView view) {
    return view.judged().map(of -> of.timeline().food().category().tcs()).orElse(true);
  }

  private static List<Word> likely(Phase phase, boolean needsCold) {
    if (!needsCold && (phase == Phase.COOKED || phase == Phase.PREPARED)) {
      return List.of(Word.FROZEN, Word.PORTIONS, Word.READING);
    }
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
      case SERVED, DISCARDED, USED_UP, PUT_BACK, COUNTED_OUT -> List.of(Word.ACTION);
    };
  }
}
