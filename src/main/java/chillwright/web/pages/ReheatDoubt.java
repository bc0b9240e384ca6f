package chillwright.web.pages;

import chillwright.core.log.LotId;
import chillwright.core.log.Row;
import chillwright.core.log.Word;
import chillwright.core.rules.Finding;
import chillwright.core.rules.Occasion;
import chillwright.core.rules.Remark;
import chillwright.core.rules.Shape.Reach;
import chillwright.core.rules.Verdict;
import chillwright.service.LotView;
import java.time.Instant;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

/**
 * Food that is held hot, or handed on, before anything shows that its reheat reached what the rule
 * set asks of it. Food reheated for one order at once is not asked about. The question is our own.
 */
final class ReheatDoubt {
  private static final Set<Word> ASKED =
      EnumSet.of(Word.HOT_HOLDING, Word.SERVED, Word.PORTIONS, Word.SET_OUT, Word.TIME_CONTROL);

  private static final Set<Occasion> FOR_HOLDING =
      EnumSet.of(Occasion.REHEATING, Occasion.REHEATING_MICROWAVE, Occasion.REHEATING_COMMERCIAL);

  private ReheatDoubt() {}

  /** The question, judged with the entry itself; empty where there is none. */
  static Optional<Question> of(Row row, LotId lot, Desk desk, Visitor visitor) {
    if (!ASKED.contains(row.word())) {
      return Optional.empty();
    }
    Instant now = desk.kitchen().now();
    Optional<Finding> running =
        desk.kitchen().lots().lot(lot).flatMap(LotView::judged).stream()
            .flatMap(judged -> judged.findings().stream())
            .filter(finding -> isUnreached(finding, now))
            .findFirst();
    boolean isShown =
        running.isPresent()
            && row.word() == Word.HOT_HOLDING
            && desk.kitchen().lots().findingsWith(lot, row).stream()
                .noneMatch(finding -> isUnreached(finding, now));
    return running
        .filter(finding -> !isShown)
        .map(finding -> question(finding, lot, desk, visitor));
  }

  private static boolean isUnreached(Finding finding, Instant now) {
    return finding.at(now) == Verdict.PENDING
        && finding.has(Remark.READING_OVERDUE)
        && finding.rule().shape() instanceof Reach
        && finding.rule().occasions().stream().anyMatch(FOR_HOLDING::contains);
  }

  private static Question question(Finding finding, LotId lot, Desk desk, Visitor visitor) {
    String hot = ((Reach) finding.rule().shape()).to().text(visitor.scale());
    Instant last = finding.deadline().orElse(finding.settlesAt());
    String says =
        visitor.say("entry.doubt.not-reheated", lot.text(), hot, desk.clock(last, visitor));
    return Question.of("reheat", lot.text() + ":" + finding.rule().id(), says);
  }
}
