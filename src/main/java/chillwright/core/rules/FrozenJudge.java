package chillwright.core.rules;

import chillwright.core.log.How;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Phase;
import chillwright.core.log.Portions;
import chillwright.core.log.Timeline;
import chillwright.core.log.Word;
import chillwright.core.measure.Limit;
import chillwright.core.rules.Shape.Hold;
import chillwright.core.rules.Shape.StaysFrozen;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Judges frozen food from its first proof of being frozen: found hard, or read at or below
 * freezing. Soft, or read above freezing (or above the figure an authority prints), is out from
 * then on. Crystals are neither thawed nor out. Before the proof there is no finding, with two
 * exceptions. Where an authority says how long thawed food may be warm, food found thawed on a
 * later day than it came to the freezer is judged by that. And food found soft with no temperature,
 * on a later day or where its record begins, is not shown: nothing tells that it was cold.
 */
final class FrozenJudge {
  /** Water freezes at 0 °C, 32 °F: the state, where an authority prints no number. */
  private static final Limit FREEZING = Limit.of(0, 32);

  private FrozenJudge() {}

  static List<Finding> findings(Timeline timeline, RuleSet rules) {
    List<Finding> findings = new ArrayList<>();
    for (Rule rule : rules.rules(Occasion.FROZEN)) {
      for (List<LogEntry> rows : stretches(timeline)) {
        findings.addAll(judge(rule, timeline, rows));
      }
    }
    return findings;
  }

  private static List<List<LogEntry>> stretches(Timeline timeline) {
    List<List<LogEntry>> stretches = new ArrayList<>();
    boolean wasFrozen = false;
    for (Span span : Span.of(timeline)) {
      boolean isFrozen = span.is(Phase.FROZEN);
      if (isFrozen && wasFrozen) {
        stretches.get(stretches.size() - 1).addAll(span.rows());
      } else if (isFrozen) {
        stretches.add(new ArrayList<>(span.rows()));
      }
      wasFrozen = isFrozen;
    }
    return stretches;
  }

  private static List<Finding> judge(Rule rule, Timeline timeline, List<LogEntry> rows) {
    Optional<LogEntry> proof = rows.stream().filter(FrozenJudge::provesFrozen).findFirst();
    if (rule.shape() instanceof Hold hold) {
      return judgeOutage(rule, hold, timeline, rows, proof).stream().toList();
    }
    List<Finding> found = new ArrayList<>();
    foundSoft(timeline, rows, proof)
        .ifPresent(soft -> found.add(softUnread(rule, timeline.lot(), rows.get(0), soft)));
    Limit limit = ((StaysFrozen) rule.shape()).atMost().orElse(FREEZING);
    List<LogEntry> since =
        proof.map(row -> rows.subList(rows.indexOf(row), rows.size())).orElse(List.of());
    while (!since.isEmpty()) {
      found.add(judgeState(rule, timeline.lot(), limit, since));
      since = thawedAgain(limit, since);
    }
    return found;
  }

  /**
   * Thawed food that nothing shows to have been frozen before was warm for nobody knows how long: a
   * later proof speaks of what came after, so such food is never in.
   */
  private static Optional<Finding> judgeOutage(
      Rule rule, Hold hold, Timeline timeline, List<LogEntry> rows, Optional<LogEntry> proof) {
    Optional<LogEntry> thawed =
        thawedLater(timeline, rows)
            .filter(row -> proof.isEmpty() || rows.indexOf(row) < rows.indexOf(proof.get()));
    Optional<LogEntry> soft = foundSoft(timeline, rows, proof);
    return thawed
        .or(() -> proof)
        .map(row -> rows.subList(rows.indexOf(row), rows.size()))
        .map(since -> judgeAllowance(rule, hold, timeline, since))
        .map(
            finding ->
                finding.settled() == Verdict.IN
                        && thawed.filter(row -> !HoldingJudge.isWithin(hold, row)).isPresent()
                    ? notShown(finding)
                    : finding)
        .map(
            finding ->
                finding.settled() == Verdict.IN && soft.isPresent()
                    ? softUnread(rule, timeline.lot(), rows.get(0), soft.get())
                    : finding);
  }

  /** The row that found it soft, with no temperature, before it was shown to be frozen. */
  private static Optional<LogEntry> foundSoft(
      Timeline timeline, List<LogEntry> rows, Optional<LogEntry> proof) {
    LocalDate came = timeline.day(rows.get(0).happenedAt());
    Optional<LogEntry> later =
        beforeProof(rows).stream()
            .filter(FrozenJudge::isSoftUnread)
            .filter(row -> timeline.day(row.happenedAt()).isAfter(came))
            .findFirst();
    return later.or(() -> proof.flatMap(row -> softAtFirst(timeline, rows.get(0))));
  }

  /** Where nothing but looks stands before the freezer, food that was soft then. */
  private static Optional<LogEntry> softAtFirst(Timeline timeline, LogEntry opening) {
    List<LogEntry> entries = timeline.entries();
    List<LogEntry> first = entries.subList(0, entries.indexOf(opening) + 1);
    boolean isUntold = first.stream().limit(first.size() - 1L).allMatch(FrozenJudge::showsNothing);
    return first.stream().filter(FrozenJudge::isSoftUnread).filter(row -> isUntold).findFirst();
  }

  /** A refrigerator without a reading tells no more of the food than a look at it. */
  private static boolean showsNothing(LogEntry row) {
    return row.word().phase().isEmpty()
        || Portions.isOutgoing(row.word())
        || (row.word() == Word.CHILLED && row.temperature().isEmpty());
  }

  private static boolean isSoftUnread(LogEntry row) {
    return row.is(How.SOFT) && row.temperature().isEmpty();
  }

  private static Finding softUnread(Rule rule, LotId lot, LogEntry opening, LogEntry soft) {
    Instant from =
        soft.happenedAt().isBefore(opening.happenedAt()) ? soft.happenedAt() : opening.happenedAt();
    return new Draft(rule, lot, from)
        .remark(Remark.FOUND_SOFT, true)
        .decisive(Optional.of(soft))
        .settled(Verdict.NOT_SHOWN, soft.happenedAt());
  }

  private static Finding notShown(Finding finding) {
    return new Finding(
        finding.rule(),
        finding.lot(),
        finding.opensAt(),
        finding.settlesAt(),
        Verdict.NOT_SHOWN,
        finding.deadline(),
        finding.elapsed(),
        finding.decisive(),
        finding.evidence(),
        finding.remarks());
  }

  private static Finding judgeState(Rule rule, LotId lot, Limit limit, List<LogEntry> since) {
    LogEntry first = since.get(0);
    Optional<LogEntry> thawed = since.stream().filter(row -> isThawed(row, limit)).findFirst();
    Draft draft =
        new Draft(rule, lot, first.happenedAt())
            .evidence(Optional.of(first))
            .remark(Remark.FOUND_SOFT, thawed.filter(row -> row.is(How.SOFT)).isPresent());
    return thawed.isPresent()
        ? draft.decisive(thawed).settled(Verdict.OUT, thawed.get().happenedAt())
        : draft.decisive(Optional.of(first)).settled(Verdict.IN, first.happenedAt());
  }

  /**
   * Food found thawed again, after it was shown to be frozen or after the action that answered it,
   * is a finding of its own: the rows from that proof or action on.
   */
  private static List<LogEntry> thawedAgain(Limit limit, List<LogEntry> since) {
    List<LogEntry> answered =
        since.stream()
            .dropWhile(row -> !isThawed(row, limit))
            .skip(1)
            .dropWhile(row -> !provesFrozen(row) && row.word() != Word.ACTION)
            .dropWhile(row -> row.word() == Word.ACTION)
            .toList();
    return answered.stream().anyMatch(row -> isThawed(row, limit)) ? answered : List.of();
  }

  private static Optional<LogEntry> thawedLater(Timeline timeline, List<LogEntry> rows) {
    LocalDate came = timeline.day(rows.get(0).happenedAt());
    return rows.stream()
        .filter(FrozenJudge::provesThawed)
        .filter(row -> timeline.day(row.happenedAt()).isAfter(came))
        .findFirst();
  }

  /** Thawed food may be kept or frozen again while it is not above the limit for too long. */
  private static Finding judgeAllowance(
      Rule rule, Hold hold, Timeline timeline, List<LogEntry> since) {
    LotId lot = timeline.lot();
    Optional<LogEntry> softened = since.stream().filter(FrozenJudge::provesThawed).findFirst();
    if (softened.isPresent() && timeline.food().category().discardWhenSoft()) {
      return new Draft(rule, lot, since.get(0).happenedAt())
          .remark(Remark.FOUND_SOFT, softened.get().is(How.SOFT))
          .decisive(softened)
          .settled(Verdict.OUT, softened.get().happenedAt());
    }
    List<LogEntry> looks =
        since.stream().filter(row -> row.temperature().isPresent() || row.is(How.HARD)).toList();
    Finding byReadings =
        new HoldingJudge(lot)
            .judge(
                rule,
                since.get(0).happenedAt(),
                HoldingJudge.untilBack(hold, looks, Readings.warmest(timeline.entries())),
                false);
    Optional<LogEntry> unread = since.stream().filter(FrozenJudge::isSoftUnread).findFirst();
    boolean isUnclear = byReadings.settled() == Verdict.IN && unread.isPresent();
    if (!isUnclear) {
      return byReadings;
    }
    return new Draft(rule, lot, since.get(0).happenedAt())
        .remark(Remark.FOUND_SOFT, true)
        .decisive(unread)
        .settled(Verdict.NOT_SHOWN, unread.get().happenedAt());
  }

  /** Hard, or read at or below freezing. */
  static boolean provesFrozen(LogEntry row) {
    return row.is(How.HARD)
        || (!row.is(How.SOFT) && row.temperature().filter(FREEZING::isColdEnough).isPresent());
  }

  /** Soft, or read above the limit; crystals are not yet thawed. */
  private static boolean isThawed(LogEntry row, Limit limit) {
    boolean isRead = row.temperature().filter(t -> !limit.isColdEnough(t)).isPresent();
    return row.is(How.SOFT) || (isRead && !row.is(How.CRYSTALS) && !row.is(How.HARD));
  }

  /** Shows that food which was frozen has thawed. */
  static boolean provesThawed(LogEntry row) {
    return isThawed(row, FREEZING);
  }

  /** The rows of a freezer stretch before the food is shown to be frozen. */
  static List<LogEntry> beforeProof(List<LogEntry> rows) {
    List<LogEntry> before = new ArrayList<>();
    for (LogEntry row : rows) {
      if (provesFrozen(row)) {
        break;
      }
      before.add(row);
    }
    return before;
  }
}
