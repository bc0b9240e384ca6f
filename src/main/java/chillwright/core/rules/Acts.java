package chillwright.core.rules;

import chillwright.core.log.How;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Timeline;
import chillwright.core.log.Word;
import chillwright.core.rules.Shape.DayCount;
import chillwright.core.rules.Shape.Reach;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * What a kitchen did about its findings, and what it still owes: whatever went out of compliance,
 * every cooling or reheating that the record cannot show, and every thaw in a freezer that nobody
 * knows the length of, calls for a hand until a corrective action is logged. A forgotten pot must
 * not vanish from sight because somebody read it too late.
 */
public final class Acts {
  private static final Set<Occasion> HELD_HOT =
      EnumSet.of(Occasion.HOT_HOLDING, Occasion.HOT_HOLDING_ROAST);

  private Acts() {}

  /** Whether a finding, once settled, calls for a hand. */
  public static boolean calls(Finding finding) {
    return switch (finding.settled()) {
      case OUT -> true;
      case NOT_SHOWN ->
          finding.has(Remark.READING_OVERDUE)
              || finding.has(Remark.FOUND_SOFT)
              || finding.rule().shape() instanceof Reach
              || finding.rule().occasions().contains(Occasion.FROZEN);
      case PENDING, IN, NO_RULE -> false;
    };
  }

  /**
   * What was done about a finding since it settled. Reheating is an answer to food that was held
   * too cool; to food that cooled too slowly it is none by itself.
   */
  public static List<LogEntry> taken(Finding finding, Timeline timeline) {
    boolean isHeldHot = finding.rule().occasions().stream().anyMatch(HELD_HOT::contains);
    List<LogEntry> taken = new ArrayList<>();
    for (LogEntry entry : timeline.own()) {
      boolean isAct = isAct(entry.word(), isHeldHot);
      if (isAct
          && !entry.happenedAt().isBefore(finding.settlesAt())
          && !finding.evidence().contains(entry.id())) {
        taken.add(entry);
      }
    }
    return taken;
  }

  /**
   * What was handed on of a lot after a limit was missed and before anything mended it, in order of
   * time. Portions that were counted away, or that went into a lot of its own, are not among it.
   */
  public static List<LogEntry> handedOn(
      Finding missed, Timeline timeline, RuleSet rules, Predicate<LotId> isMade) {
    if (!isMissed(missed, missed.settlesAt())) {
      return List.of();
    }
    Optional<Instant> mended = mendedAt(missed, timeline, rules);
    return timeline.own().stream()
        .filter(entry -> entry.word() == Word.SERVED || isTaken(entry, isMade))
        .filter(entry -> !entry.happenedAt().isBefore(missed.settlesAt()))
        .filter(entry -> mended.filter(at -> !entry.happenedAt().isBefore(at)).isEmpty())
        .toList();
  }

  private static boolean isTaken(LogEntry entry, Predicate<LotId> isMade) {
    return entry.word() == Word.PORTIONS
        && !entry.is(How.COUNTED)
        && entry.details().to().filter(LotId::isCode).map(LotId::new).filter(isMade).isEmpty();
  }

  private static Optional<Instant> mendedAt(Finding missed, Timeline timeline, RuleSet rules) {
    if (!isMended(missed, timeline, rules)) {
      return Optional.empty();
    }
    Optional<LogEntry> hot = reheatedSince(missed, timeline, rules);
    boolean isOffered = hot.filter(reading -> isOffered(missed, reading)).isPresent();
    Optional<LogEntry> act =
        taken(missed, timeline).stream()
            .filter(entry -> isOffered || entry.is(How.ALLOWED))
            .findFirst();
    return Stream.concat(hot.stream(), act.stream())
        .map(LogEntry::happenedAt)
        .max(Comparator.naturalOrder());
  }

  /** The corrective actions logged of a lot itself, in order of time. */
  static List<LogEntry> actions(Timeline timeline) {
    return timeline.own().stream().filter(entry -> entry.word() == Word.ACTION).toList();
  }

  private static boolean isAct(Word word, boolean isHeldHot) {
    return word == Word.ACTION || word == Word.DISCARDED || (word == Word.REHEATING && isHeldHot);
  }

  /** Whether a finding calls for a hand and nothing was done about it yet. */
  public static boolean isOwed(Finding finding, Timeline timeline) {
    return timeline.closedAt().isEmpty() && calls(finding) && taken(finding, timeline).isEmpty();
  }

  /**
   * Whether food on hand is not for use as its record stands: a limit was missed, or counts as
   * missed, and nothing that mends it was shown since. Words alone mend nothing, nor does a reheat
   * alone, unless the rule set offers it by itself, as it does of hot holding.
   */
  public static boolean isUnfit(Finding finding, Timeline timeline, RuleSet rules, Instant now) {
    return timeline.closedAt().isEmpty() && isUnmended(finding, timeline, rules, now);
  }

  /** Whether a limit was missed at a moment, or counts as missed, and nothing mended it since. */
  static boolean isUnmended(Finding finding, Timeline timeline, RuleSet rules, Instant now) {
    return isMissed(finding, now) && !isMended(finding, timeline, rules);
  }

  /**
   * Whether a limit is treated as missed: it was, or a cooling or reheating cannot be shown to have
   * met it.
   */
  public static boolean isMissed(Finding finding, Instant now) {
    return switch (finding.at(now)) {
      case OUT -> true;
      case NOT_SHOWN -> calls(finding) && finding.rule().shape() instanceof Reach;
      case PENDING, IN, NO_RULE -> false;
    };
  }

  /** Those that still tell something: a day count that runs mends nothing missed or owed. */
  public static List<Finding> telling(
      Timeline timeline, List<Finding> findings, RuleSet rules, Instant now) {
    boolean isLost =
        findings.stream().anyMatch(finding -> isUnmended(finding, timeline, rules, now))
            || !against(timeline, findings, rules, now).isEmpty();
    return isLost
        ? findings.stream()
            .filter(
                finding ->
                    finding.at(now) != Verdict.PENDING
                        || !(finding.rule().shape() instanceof DayCount))
            .toList()
        : findings;
  }

  /**
   * What makes a lot on hand unfit for use, the one that settled first; empty where nothing does.
   */
  public static Optional<Finding> unfit(
      Timeline timeline, List<Finding> findings, RuleSet rules, Instant now) {
    return findings.stream()
        .filter(finding -> isUnfit(finding, timeline, rules, now))
        .min(Comparator.comparing(Finding::settlesAt));
  }

  /**
   * What a lot on hand is owed, or is not for use by, at a moment. While there is any of it no date
   * of the lot holds, and no day count falls due: the one place that decides so.
   */
  public static List<Finding> against(
      Timeline timeline, List<Finding> findings, RuleSet rules, Instant now) {
    return findings.stream()
        .filter(finding -> !now.isBefore(finding.settlesAt()))
        .filter(finding -> isOwed(finding, timeline) || isUnfit(finding, timeline, rules, now))
        .toList();
  }

  /** Whether a full reheat was shown that the rule set offers, or that the authority allowed. */
  private static boolean isMended(Finding missed, Timeline timeline, RuleSet rules) {
    List<LogEntry> taken = taken(missed, timeline);
    return reheatedSince(missed, timeline, rules)
        .filter(hot -> !taken.isEmpty())
        .filter(hot -> isOffered(missed, hot) || isAllowed(missed, timeline))
        .isPresent();
  }

  /** Whether the leave of the authority was logged since a limit was missed. */
  public static boolean isAllowed(Finding missed, Timeline timeline) {
    return taken(missed, timeline).stream().anyMatch(act -> act.is(How.ALLOWED));
  }

  /** Whether the rule set offers a reheat by itself, and this one was made in time. */
  private static boolean isOffered(Finding missed, LogEntry hot) {
    return missed.offered(hot.happenedAt()).stream().anyMatch(Rule.Action::isReheatByItself);
  }

  /** The first reading of a full reheat, done in its time, that was logged since a miss. */
  public static Optional<LogEntry> reheatedSince(Finding missed, Timeline timeline, RuleSet rules) {
    Optional<Reach> reach = Thresholds.reach(rules, Occasion.REHEATING);
    Optional<LogEntry> row = Optional.empty();
    for (LogEntry entry : timeline.own()) {
      if (entry.happenedAt().isBefore(missed.settlesAt())) {
        continue;
      }
      if (entry.word() == Word.REHEATING) {
        row = Optional.of(entry);
      }
      if (row.isPresent() && isFull(reach, row.get(), entry)) {
        return Optional.of(entry);
      }
    }
    return Optional.empty();
  }

  private static boolean isFull(Optional<Reach> reach, LogEntry row, LogEntry reading) {
    return reading.temperature().isPresent()
        && reach
            .filter(full -> Reheat.isHotEnough(full.to(), reading))
            .filter(full -> Reheat.isInTime(full, row, reading))
            .isPresent();
  }

  /** From when on something is owed to a lot on hand; empty if nothing is, or ever will be. */
  public static Optional<Instant> owedFrom(Timeline timeline, List<Finding> findings) {
    return findings.stream()
        .filter(finding -> isOwed(finding, timeline))
        .map(Finding::settlesAt)
        .min(Comparator.naturalOrder());
  }

  /** What is owed to a lot on hand at a moment, the worst first. */
  public static Optional<Finding> owed(Timeline timeline, List<Finding> findings, Instant now) {
    return findings.stream()
        .filter(finding -> !now.isBefore(finding.settlesAt()))
        .filter(finding -> isOwed(finding, timeline))
        .min(Comparator.comparing(Finding::settled).thenComparing(Finding::settlesAt));
  }

  /** What a cook must do next: what is owed, or else what falls due. */
  public static Optional<Finding> next(
      Timeline timeline, List<Finding> findings, RuleSet rules, Instant now) {
    return owed(timeline, findings, now).or(() -> due(timeline, findings, rules, now));
  }

  /**
   * The finding of a lot on hand that settles badly next unless something is done. While something
   * else is owed, or the lot is not for use, no day count is among them, since no date mends that;
   * a temperature still being waited for is.
   */
  public static Optional<Finding> due(
      Timeline timeline, List<Finding> findings, RuleSet rules, Instant now) {
    boolean isLost = !against(timeline, findings, rules, now).isEmpty();
    return findings.stream()
        .filter(finding -> !(isLost && finding.rule().shape() instanceof DayCount))
        .filter(finding -> finding.deadline().isPresent())
        .filter(finding -> finding.at(now) == Verdict.PENDING)
        .filter(Acts::calls)
        .min(Comparator.comparing(Finding::settlesAt));
  }
}
