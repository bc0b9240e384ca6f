package chillwright.print;

import chillwright.core.log.Timeline;
import chillwright.core.measure.Limit;
import chillwright.core.rules.Acts;
import chillwright.core.rules.Finding;
import chillwright.core.rules.OpenReheat.Running;
import chillwright.core.rules.Remark;
import chillwright.core.rules.Rule;
import java.time.Instant;
import java.util.Optional;

/** What is said of a limit while the food is being reheated: what to do now, by when. */
record ReheatText(Sentences by) {
  /** Of a cooling limit still ahead: the figure to reach first, by the same time. */
  String pending(Finding finding, Limit to, Instant last, String left) {
    String key = finding.has(Remark.REHEAT_BEGUN) ? "reheat.open" : "reheat.open.late";
    return say(key, to.text(by.scale()), by.time(last), left);
  }

  /**
   * Of a limit that was missed, after what was missed; empty where no reheat is offered any more.
   */
  Optional<String> missed(Finding finding, Timeline timeline, Running open) {
    boolean isAllowed = Acts.isAllowed(finding, timeline);
    Optional<Rule.Action> offered =
        finding.offered(by.now()).stream().filter(Rule.Action::isReheat).findFirst();
    boolean isOver = finding.rule().actions().stream().anyMatch(Rule.Action::isReheat);
    if (offered.isEmpty() && isOver && !isAllowed) {
      return Optional.empty();
    }
    String figure = open.to().text(by.scale());
    String now =
        offered
            .flatMap(finding::offeredUntil)
            .map(open::by)
            .or(open::last)
            .map(last -> say("by", figure, by.time(last)))
            .orElse(figure);
    boolean isByItself = offered.filter(Rule.Action::isReheatByItself).isPresent();
    String leave = isAllowed ? " " + say("reheat.now.allowed") : " " + say("reheat.now.leave");
    return Optional.of(say("reheat.now", now) + (isByItself ? "" : leave));
  }

  /** What came of a reheat that was logged while the food cooled; blank where nothing did. */
  String came(Finding finding) {
    if (finding.has(Remark.REHEATED_TOO_OFTEN)) {
      return say("reheat.too-often");
    }
    boolean isTooLate = finding.has(Remark.REHEAT_TOO_LATE) || finding.has(Remark.REHEAT_BEGUN);
    return isTooLate ? say("reheat.too-late") : "";
  }

  /** The same while its clock runs. */
  String begun(Finding finding, Instant last) {
    if (!finding.has(Remark.REHEAT_BEGUN)) {
      return finding.has(Remark.REHEATED_TOO_OFTEN) ? came(finding) : "";
    }
    return finding.rule().actions().stream()
        .map(Rule.Action::says)
        .filter(act -> act.startsWith("reheat to "))
        .map(act -> by.language().saidByRules(act.split(" and ", 2)[0]))
        .map(act -> say("reheat.begun", Figures.asPrinted(act, by.scale())))
        .findFirst()
        .orElseGet(() -> say("reheat.begun.by", by.time(last)));
  }

  private String say(String key, Object... filled) {
    return by.language().say(key, filled);
  }
}
