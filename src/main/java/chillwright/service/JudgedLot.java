package chillwright.service;

import chillwright.core.keeping.Keeper;
import chillwright.core.keeping.Keeping;
import chillwright.core.log.KeepingList;
import chillwright.core.log.LotLog;
import chillwright.core.log.Timeline;
import chillwright.core.rules.Assessment;
import chillwright.core.rules.Finding;
import chillwright.core.rules.RuleSet;
import chillwright.core.rules.Verdict;
import chillwright.rulebook.RuleBook;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/** A lot's record as of a moment, judged by the figures in force on the day of its first entry. */
public record JudgedLot(Timeline timeline, RuleSet rules, List<Finding> findings, Keeping keeping) {
  public JudgedLot {
    findings = List.copyOf(findings);
  }

  /** Empty if nothing of the lot had happened by then. */
  public static Optional<JudgedLot> of(
      LotLog log, RuleBook book, KeepingList keeping, ZoneId zone, Instant asOf) {
    return Timeline.of(log, keeping, zone, asOf).map(timeline -> judged(timeline, book));
  }

  private static JudgedLot judged(Timeline timeline, RuleBook book) {
    RuleSet rules = book.on(timeline.day(timeline.entries().get(0).happenedAt()));
    List<Finding> findings = Assessment.of(timeline, rules);
    return new JudgedLot(timeline, rules, findings, Keeper.keep(timeline, findings, rules));
  }

  /** The worst verdict at a moment; empty for a lot without findings. */
  public Optional<Verdict> verdict(Instant now) {
    return Assessment.verdict(findings, now);
  }
}
