package chillwright.core.rules;

import chillwright.core.log.LogEntry;
import chillwright.core.log.Timeline;
import chillwright.core.log.Word;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * What the lots that a lot was made of hand on to it. A limit that a source had missed when it was
 * used shows on this lot too, cooked or not; so does one that calls for a hand because the record
 * does not show it, unless something was done that answers it. So does one that was still being
 * waited for, unless all was cooked anew: topping up must not forget a running clock. Time as a
 * public health control binds whatever is made of the food, cooked or not, to its end.
 */
final class FromSources {
  private final Timeline made;
  private final RuleSet rules;
  private final LogEntry first;
  private final Instant used;
  private final List<Finding> findings = new ArrayList<>();

  private FromSources(Timeline made, RuleSet rules) {
    this.made = made;
    this.rules = rules;
    this.first = made.entries().get(0);
    this.used = first.happenedAt();
  }

  static List<Finding> findings(Timeline made, RuleSet rules) {
    FromSources from = new FromSources(made, rules);
    made.sources().forEach(from::add);
    return from.findings;
  }

  private void add(Timeline source) {
    for (Finding finding : Assessment.of(source, rules)) {
      if (finding.at(used) == Verdict.OUT || isOpen(finding, source)) {
        findings.add(carried(finding, finding.settled(), Remark.FROM_SOURCE));
      } else if (TimeControlJudge.isDiscard(finding.rule())) {
        findings.add(TimeControlJudge.untilDiscarded(finding, made));
      } else if (first.word() != Word.COOKED && isStillCooling(finding, source)) {
        findings.add(carried(finding, Verdict.NOT_SHOWN, Remark.USED_COOLING));
      }
    }
  }

  /** Not shown, with nothing done before it was used that answers it. */
  private boolean isOpen(Finding finding, Timeline source) {
    if (finding.at(used) != Verdict.NOT_SHOWN) {
      return false;
    }
    boolean isAsked = Acts.calls(finding) || TimeControlJudge.isStart(finding.rule());
    return (isAsked && Acts.taken(finding, source).isEmpty())
        || Acts.isUnmended(finding, source, rules, used);
  }

  private boolean isStillCooling(Finding finding, Timeline source) {
    return finding.at(used) == Verdict.PENDING
        && finding.rule().occasions().stream().anyMatch(Occasion::isCooling)
        && Course.of(source, rules).hasCooledBelowHot();
  }

  private Finding carried(Finding missed, Verdict verdict, Remark why) {
    Set<Remark> remarks = EnumSet.of(Remark.FROM_SOURCE, why);
    remarks.addAll(missed.remarks());
    return new Finding(
        missed.rule(),
        missed.lot(),
        missed.opensAt(),
        used,
        verdict,
        missed.deadline(),
        missed.elapsed(),
        missed.decisive(),
        missed.evidence(),
        List.copyOf(remarks));
  }
}
