package chillwright.web.pages;

import chillwright.core.keeping.LotState.Standing;
import chillwright.core.log.How;
import chillwright.core.log.Phase;
import chillwright.core.log.Row;
import chillwright.core.log.Word;
import chillwright.core.measure.Limit;
import chillwright.core.measure.Temperature;
import chillwright.core.rules.OpenCooling;
import chillwright.service.LotView;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

/**
 * A reading far too warm for food that is frozen. Water freezes at 0 °C; how far above that a
 * thermometer may read beside frozen food is common practice, no source, and never more than a
 * question.
 */
final class FrozenDoubt {
  /** Food that is hard to the touch reads no more. */
  private static final Limit HARD = Limit.of(5, 41);

  /** Food that still has ice in it, or that nobody found thawed, reads no more. */
  private static final Limit FROZEN = Limit.of(7, 45);

  /** An entry of these words leaves the food as frozen as it was. */
  private static final Set<Word> STAYS_FROZEN = EnumSet.of(Word.FROZEN, Word.READING, Word.MOVED);

  private FrozenDoubt() {}

  /** The question; empty where nothing is odd, as of food found soft or still cooling down. */
  static Optional<Question> of(Row row, LotView view, Visitor visitor) {
    Optional<How> how = row.details().how();
    boolean isFrozen =
        how.filter(How.CRYSTALS::equals).isPresent()
            || (how.isEmpty() && STAYS_FROZEN.contains(row.word()) && isFrozen(view));
    return of(row, isFrozen, visitor);
  }

  /** The same of the first entry of a lot: what comes into the kitchen frozen is frozen. */
  static Optional<Question> ofNew(Row row, Visitor visitor) {
    return of(row, row.word() == Word.FROZEN, visitor);
  }

  private static Optional<Question> of(Row row, boolean isFrozen, Visitor visitor) {
    boolean isHard = row.details().how().filter(How.HARD::equals).isPresent();
    return row.details()
        .temperature()
        .filter(given -> (isHard && isAbove(HARD, given)) || (isFrozen && isAbove(FROZEN, given)))
        .map(Temperature::text)
        .map(
            given ->
                Question.of("not-frozen", given, visitor.say("entry.doubt.not-frozen", given)));
  }

  private static boolean isAbove(Limit limit, Temperature given) {
    return !limit.isColdEnough(given);
  }

  private static boolean isFrozen(LotView view) {
    boolean isCalledSo =
        view.state().standing().map(Standing::phase).filter(Phase.FROZEN::equals).isPresent();
    boolean stillCools =
        view.judged()
            .flatMap(judged -> OpenCooling.of(judged.timeline(), judged.ruleSet()))
            .isPresent();
    return isCalledSo && !stillCools;
  }
}
