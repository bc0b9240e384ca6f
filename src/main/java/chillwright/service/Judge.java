package chillwright.service;

import chillwright.core.keeping.Keeper;
import chillwright.core.keeping.Keeping;
import chillwright.core.keeping.LotState;
import chillwright.core.log.KeepingList;
import chillwright.core.log.LotLog;
import chillwright.core.log.Timeline;
import chillwright.core.rules.Acts;
import chillwright.core.rules.Assessment;
import chillwright.core.rules.Finding;
import chillwright.core.rules.RuleSet;
import chillwright.rulebook.RuleBook;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/**
 * Judges a log by one rule set, with the figures in force on the local day of its first entry. The
 * one way from a log to findings and dates, for what is stored and for what is only checked.
 */
public record Judge(RuleBook book, KeepingList keepingList, ZoneId zone) {
  /**
   * A log with all that was found of it.
   *
   * @param state where the lot stands, without words given when it was made known
   */
  public record Judged(
      LotLog log,
      Timeline timeline,
      RuleSet ruleSet,
      List<Finding> findings,
      Keeping keeping,
      LotState state) {
    public Judged {
      findings = List.copyOf(findings);
    }

    /** The dates that hold at a moment: none of what left, is owed something or is unfit. */
    public Keeping held(Instant now) {
      boolean isFit =
          timeline.closedAt().isEmpty() && Acts.against(timeline, findings, ruleSet, now).isEmpty();
      return isFit ? keeping : Keeping.NONE;
    }
  }

  /** The log as of a moment; empty if nothing of it had happened by then. */
  public Optional<Judged> judge(LotLog log, Instant asOf) {
    return Timeline.of(log, keepingList, zone, asOf).map(timeline -> judged(log, timeline));
  }

  /** The whole log, whenever it happened. */
  Judged judge(LotLog log) {
    return judged(log, timeline(log));
  }

  /** The timeline of the whole log. */
  Timeline timeline(LotLog log) {
    // A log has a first row that no correction voids, so something of it always stands.
    return Timeline.of(log, keepingList, zone, Instant.MAX).orElseThrow();
  }

  private Judged judged(LotLog log, Timeline timeline) {
    RuleSet ruleSet = ruleSet(timeline);
    List<Finding> findings = Assessment.of(timeline, ruleSet);
    Keeping keeping = Keeper.keep(timeline, findings, ruleSet);
    LotState state = LotState.of(timeline, ruleSet, findings, keeping);
    return new Judged(log, timeline, ruleSet, findings, keeping, state);
  }

  /** The figures in force on the day of a lot's first entry, one it inherited included. */
  RuleSet ruleSet(Timeline timeline) {
    return book.on(timeline.day(timeline.entries().get(0).happenedAt()));
  }
}
