package chillwright.core.rules;

import chillwright.core.log.Timeline;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Lays the rules of a set over a timeline. Pure and total: it knows no clock and no storage, and
 * gives the same findings for the same record. This is the place to start reading: cooling in two
 * stages is {@link CoolingJudge}, where its clock starts is {@link Course}.
 */
public final class Assessment {
  private final Timeline timeline;
  private final RuleSet rules;
  private final List<Finding> findings = new ArrayList<>();

  private Assessment(Timeline timeline, RuleSet rules) {
    this.timeline = timeline;
    this.rules = rules;
  }

  /**
   * What the rules say of a lot, in order of time.
   *
   * @param timeline the lot's record as of the moment it is judged
   * @param rules the set in force on the local day of its first entry
   */
  public static List<Finding> of(Timeline timeline, RuleSet rules) {
    Assessment assessment = new Assessment(timeline, rules);
    if (timeline.food().category().tcs()) {
      assessment.judgeTcsFood();
    } else {
      assessment.judgeOtherFood();
    }
    assessment.findings.addAll(FromSources.findings(timeline, rules));
    assessment.findings.sort(Comparator.comparing(Finding::opensAt));
    return List.copyOf(assessment.findings);
  }

  /** The worst verdict of some findings at a moment; empty for a lot without findings. */
  public static Optional<Verdict> verdict(List<Finding> findings, Instant now) {
    return findings.stream().map(finding -> finding.at(now)).min(Comparator.naturalOrder());
  }

  private void judgeTcsFood() {
    Course course = Course.of(timeline, rules);
    findings.addAll(ReceivingJudge.findings(timeline, rules));
    for (Cycle cycle : course.coolings) {
      List<Rule> bearing = rules.rules(cycle.occasion);
      findings.addAll(
          new CoolingJudge(cycle, bearing, timeline.lot(), timeline.closedAt()).findings());
    }
    findings.addAll(Holdings.findings(timeline, rules, course));
    course.reheats.forEach(this::judgeReheat);
    findings.addAll(FrozenJudge.findings(timeline, rules));
    findings.addAll(TimeControlJudge.findings(timeline, rules));
    SetOutJudge.finding(timeline, rules).ifPresent(findings::add);
    DateMarkJudge.finding(timeline, rules).ifPresent(findings::add);
  }

  private void judgeReheat(Reheat reheat) {
    ReheatingJudge judge = new ReheatingJudge(reheat, timeline.lot(), timeline.closedAt());
    rules.rule(reheat.occasion()).flatMap(judge::judge).ifPresent(findings::add);
  }

  private void judgeOtherFood() {
    rules
        .rule(Occasion.NO_TEMPERATURE_LIMIT)
        .map(rule -> new Draft(rule, timeline.lot(), timeline.beganAt()))
        .ifPresent(draft -> findings.add(draft.settled(Verdict.NO_RULE, timeline.beganAt())));
  }
}
