package chillwright.print;

import chillwright.core.log.Phase;
import chillwright.core.log.Timeline;
import chillwright.core.rules.Acts;
import chillwright.core.rules.Finding;
import chillwright.core.rules.OpenReheat;
import chillwright.core.rules.Remark;
import chillwright.core.rules.RuleSet;
import java.time.Instant;
import java.util.EnumSet;
import java.util.Set;

/** What is said of a reheat that waits for the leave of an authority, and of one just done. */
public final class LeaveText {
  /** Of those the sentence about the finding tells it. */
  private static final Set<Remark> TOLD = EnumSet.of(Remark.REHEAT_BEGUN, Remark.REHEAT_TOO_LATE);

  private LeaveText() {}

  /** How the leave for a reheat is logged, where one is still to be asked for; else blank. */
  public static String says(
      Finding finding, Timeline timeline, RuleSet rules, Instant now, Language language) {
    boolean isOffered =
        Acts.isMissed(finding, now)
            && !Acts.isAllowed(finding, timeline)
            && Acts.reheatedSince(finding, timeline, rules).isEmpty()
            && TOLD.stream().noneMatch(finding::has)
            && OpenReheat.during(finding, timeline, rules, now).isEmpty()
            && finding.offered(now).stream().anyMatch(a -> a.isReheat() && !a.isReheatByItself());
    return isOffered ? " " + language.say("act.leave") : "";
  }

  /** Food just reheated is held hot or cooled; what is held hot already cools by its record. */
  static String hotKey(Timeline timeline) {
    return timeline.phase() == Phase.REHEATING ? "pending.reheated" : "pending.hot";
  }
}
