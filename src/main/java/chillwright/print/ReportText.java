package chillwright.print;

import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Finding;
import chillwright.core.rules.Verdict;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/**
 * The lines of the report on lots out of compliance, and of what falls due next.
 *
 * @param zone the kitchen's zone
 * @param scale the kitchen's preferred scale
 * @param now the moment of the report
 */
public record ReportText(ZoneId zone, Scale scale, Instant now) {
  private static final String NEW_LINE = System.lineSeparator();

  /** One missed limit, or one reading that was not taken in time, with what was done about it. */
  public String trouble(
      LotId lot, String food, Finding finding, List<LogEntry> taken, boolean isOwed) {
    Verdict verdict = finding.at(now);
    String kind = verdict == Verdict.OUT ? "out      " : "not-shown";
    String head =
        Times.at(now, zone, Language.ENGLISH).moment(finding.settlesAt())
            + "  "
            + kind
            + "  "
            + food
            + " (lot "
            + lot
            + "), "
            + finding.rule().id()
            + " ["
            + finding.rule().citation().text()
            + "]";
    return head
        + NEW_LINE
        + "    "
        + new Sentences(zone, scale, now).says(finding)
        + NEW_LINE
        + "    Action: "
        + action(taken, isOwed);
  }

  private String action(List<LogEntry> taken, boolean isOwed) {
    if (taken.isEmpty()) {
      return isOwed ? "owed, none is logged" : "none is logged; the lot is closed";
    }
    return done(taken);
  }

  /** What was done, in words; blank for nothing. */
  public String done(List<LogEntry> taken) {
    return done(taken, Language.ENGLISH);
  }

  public String done(List<LogEntry> taken, Language language) {
    return taken.stream().map(entry -> done(entry, language)).collect(Collectors.joining("; "));
  }

  /** What was done, or that nothing was, and what was handed on although a limit was missed. */
  public String done(String done, List<LogEntry> handedOn, Language language) {
    String handed =
        handedOn.stream().map(entry -> handed(entry, language)).collect(Collectors.joining("; "));
    return handed.isEmpty() ? done : language.say("done.handed", done, handed);
  }

  private String handed(LogEntry entry, Language language) {
    OptionalInt portions = entry.details().portions();
    String what =
        portions.isPresent()
            ? language.say("done.portions", portions.getAsInt())
            : language.said(entry.word().text()).orElse(entry.word().text());
    String when = Times.at(now, zone, language).said(entry.happenedAt());
    return entry
        .details()
        .to()
        .map(to -> language.say("done.to", what, when, to))
        .orElseGet(() -> language.say("done", what, when));
  }

  private String done(LogEntry entry, Language language) {
    String word = language.said(entry.word().text()).orElse(entry.word().text());
    String done =
        language.say("done", word, Times.at(now, zone, language).said(entry.happenedAt()));
    return entry.by().map(by -> language.say("done.by", done, by)).orElse(done)
        + entry.note().map(note -> ", " + note).orElse("");
  }

  /** One thing that falls due: "14:35 Barley and leek soup (lot BS-1124): 70 °F by …". */
  public String due(LotId lot, String food, Finding finding) {
    return Times.at(now, zone, Language.ENGLISH)
            .clock(finding.deadline().orElse(finding.settlesAt()))
        + "  "
        + food
        + " (lot "
        + lot
        + "): "
        + new Sentences(zone, scale, now).says(finding)
        + " ["
        + finding.rule().citation().text()
        + "]";
  }
}
