package chillwright.core.keeping;

import chillwright.core.log.LotId;
import chillwright.core.log.Phase;
import chillwright.core.log.Portions;
import chillwright.core.log.Timeline;
import chillwright.core.log.Whereabouts;
import chillwright.core.rules.Acts;
import chillwright.core.rules.Finding;
import chillwright.core.rules.RuleSet;
import chillwright.core.rules.Verdicts;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A lot as it stands after its last entry, with what was found of it: all that a list shows.
 *
 * @param category key of the keeping list
 * @param note words given when the lot was made known
 * @param portions made and left, and when it was closed
 * @param standing empty until the first entry of the lot is written
 */
public record LotState(
    LotId lot,
    String food,
    String category,
    Optional<String> note,
    Portions portions,
    Optional<Standing> standing) {
  /**
   * Where a lot with entries stands.
   *
   * @param beganAt when it came into being as a lot of its own
   * @param place where its entries left it; empty where that is not known
   * @param owedFrom from when on a corrective action is owed, while none was logged
   * @param lastDay the earliest of its last days of safety, however many count; quality never does
   */
  public record Standing(
      Instant beganAt,
      Phase phase,
      Optional<String> place,
      JudgedBy judgedBy,
      Verdicts verdicts,
      Optional<Instant> owedFrom,
      Keeping keeping,
      Optional<LocalDate> lastDay) {
    public Standing {
      Objects.requireNonNull(beganAt, "beganAt");
      Objects.requireNonNull(phase, "phase");
    }

    private Standing withoutDates() {
      return new Standing(
          beganAt, phase, place, judgedBy, verdicts, owedFrom, Keeping.NONE, Optional.empty());
    }
  }

  /** The rule set, and the version of its figures, that judged a lot last. */
  public record JudgedBy(String ruleSet, String version) {}

  public LotState {
    Objects.requireNonNull(lot, "lot");
    Objects.requireNonNull(food, "food");
    Objects.requireNonNull(category, "category");
  }

  /** The state that follows from a lot's timeline and what was found of it. */
  public static LotState of(
      Timeline timeline, RuleSet ruleSet, List<Finding> findings, Keeping keeping) {
    Standing standing =
        new Standing(
            timeline.beganAt(),
            timeline.phase(),
            Whereabouts.last(timeline.entries()),
            new JudgedBy(ruleSet.id(), ruleSet.version()),
            Verdicts.of(findings),
            Acts.owedFrom(timeline, findings),
            keeping,
            lastDay(keeping, timeline));
    return new LotState(
        timeline.lot(),
        timeline.food().name(),
        timeline.food().category().key(),
        Optional.empty(),
        timeline.portions(),
        Optional.of(standing));
  }

  private static Optional<LocalDate> lastDay(Keeping keeping, Timeline timeline) {
    return Stream.of(
            keeping.lastDayMissed(),
            keeping.dateMarkLastDay(),
            keeping.chilledLastDay(),
            keeping.discardAt().map(timeline::day))
        .flatMap(Optional::stream)
        .min(Comparator.naturalOrder());
  }

  /** The same with the words that were given when the lot was made known. */
  public LotState withNote(Optional<String> words) {
    return new LotState(lot, food, category, words, portions, standing);
  }

  /** The same with no date, as it is told of where none holds. */
  public LotState withoutDates() {
    return new LotState(lot, food, category, note, portions, standing.map(Standing::withoutDates));
  }

  /** Whether it is still in the kitchen's hands. */
  public boolean isOnHand() {
    return portions.closedAt().isEmpty();
  }
}
