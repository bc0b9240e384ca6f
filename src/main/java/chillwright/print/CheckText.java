package chillwright.print;

import chillwright.core.forecast.Forecast;
import chillwright.core.keeping.Keeping;
import chillwright.core.log.Phase;
import chillwright.core.log.Timeline;
import chillwright.core.rules.Acts;
import chillwright.core.rules.Assessment;
import chillwright.core.rules.Finding;
import chillwright.core.rules.Rule;
import chillwright.core.rules.RuleSet;
import chillwright.core.rules.Verdict;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a cook reads of a checked log: a paragraph a lot, worst first, with what to do and by when.
 *
 * @param zone the kitchen's zone
 * @param at the moment of the check
 */
public record CheckText(ZoneId zone, Instant at) {
  private static final String NEW_LINE = System.lineSeparator();

  /** One lot as a paragraph. */
  public String paragraph(
      Timeline timeline,
      RuleSet rules,
      List<Finding> findings,
      List<Forecast> forecasts,
      Keeping keeping) {
    List<String> lines = new ArrayList<>();
    Optional<Verdict> verdict = Assessment.verdict(findings, at);
    lines.add(
        verdict.map(Sentences::heading).orElse("NO FINDING YET")
            + ": "
            + timeline.food().name()
            + " (lot "
            + timeline.lot()
            + (timeline.closedAt().isPresent() ? ", closed" : "")
            + ")");
    Sentences sentences = new Sentences(zone, Figures.scale(timeline), at);
    Acts.telling(timeline, findings, rules, at).stream()
        .sorted(Sentences.worstFirst(at))
        .forEach(finding -> lines.add(line(finding, sentences)));
    ForecastText ahead = new ForecastText(zone, Figures.scale(timeline), at);
    for (Forecast forecast : forecasts) {
      lines.add("  > Forecast: " + ahead.says(forecast));
      lines.add("      " + ahead.basis(forecast));
    }
    lines.addAll(sooner(timeline, forecasts));
    if (timeline.closedAt().isEmpty() && !isToDiscard(findings)) {
      lines.addAll(dates(timeline, rules, findings, keeping));
    }
    return String.join(NEW_LINE, lines);
  }

  /** Until when it keeps; of what is owed something, or is not for use, that no date holds. */
  private List<String> dates(
      Timeline timeline, RuleSet rules, List<Finding> findings, Keeping keeping) {
    List<Finding> against = Acts.against(timeline, findings, rules, at);
    if (Acts.owed(timeline, findings, at).isPresent()) {
      return List.of("  > Act first: no date holds until that is done and logged.");
    } else if (against.stream().anyMatch(one -> one.at(at) == Verdict.OUT)) {
      return List.of(
          "  > Out of compliance: no date holds, unless your authority lets you keep it.");
    } else if (!against.isEmpty()) {
      return List.of(
          "  > To be treated as missed: no date holds, unless your authority lets you keep it.");
    }
    Keeping held = timeline.phase() == Phase.FROZEN ? keeping : keeping.outOfFreezer();
    List<String> lines =
        new ArrayList<>(new KeepText(timeline.food().category(), held, zone, at).marked());
    Times times = Times.at(at, zone, Language.ENGLISH);
    held.because().forEach(reason -> lines.add("        " + times.retold(reason)));
    return lines;
  }

  private List<String> sooner(Timeline timeline, List<Forecast> forecasts) {
    List<String> lines = new ArrayList<>();
    SpeedupText text = new SpeedupText(zone, Figures.scale(timeline), at, Language.ENGLISH);
    for (SpeedupText.Line line : text.lines(forecasts)) {
      lines.add("      - " + line.says());
      lines.add("        " + line.basis());
    }
    if (!lines.isEmpty()) {
      lines.add(0, "  > " + text.head());
    }
    return lines;
  }

  /** Whether a limit was missed after which only discarding is left: then no later date holds. */
  private boolean isToDiscard(List<Finding> findings) {
    return findings.stream()
        .filter(finding -> finding.at(at) == Verdict.OUT)
        .map(finding -> finding.rule().actions())
        .anyMatch(
            acts ->
                !acts.isEmpty() && acts.stream().allMatch(act -> act.says().startsWith("discard")));
  }

  private String line(Finding finding, Sentences sentences) {
    Rule rule = finding.rule();
    return "  "
        + String.format("%-9s", finding.at(at).text())
        + " "
        + rule.id()
        + ": "
        + sentences.says(finding)
        + " ["
        + rule.citation().text()
        + "]";
  }

  /** The closing lines of every answer: which rules judged, and who decides. */
  public static String closing(String ruleSet, String title, String version, String defers) {
    return "Judged by "
        + ruleSet
        + ", version "
        + version
        + " ("
        + title
        + ")."
        + NEW_LINE
        + defers.strip();
  }
}
