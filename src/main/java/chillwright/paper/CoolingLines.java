package chillwright.paper;

import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Shape.Reach;
import chillwright.core.rules.Verdict;
import chillwright.paper.LabelMaker.Judged;
import chillwright.print.Times;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What a label says of food that is still to reach a temperature.
 *
 * @param now the moment of printing
 */
record CoolingLines(Words words, Times times, Instant now, Scale scale) {
  /** The temperatures that food still has to reach, by clock time, while it cools or reheats. */
  List<String> limits(Judged judged) {
    return judged.findings().stream()
        .filter(finding -> finding.at(now) == Verdict.PENDING)
        .filter(finding -> finding.rule().shape() instanceof Reach)
        .filter(finding -> finding.deadline().isPresent())
        .sorted(Comparator.comparing(finding -> finding.deadline().orElseThrow()))
        .map(
            finding ->
                words.say(
                    "label.limit-by",
                    ((Reach) finding.rule().shape()).to().text(scale),
                    times.moment(finding.deadline().orElseThrow())))
        .toList();
  }

  /**
   * When the next limit is expected, with the moment it was told, since paper stays as it is. Left
   * out where nothing bounds it.
   */
  Optional<String> forecast(Judged judged) {
    return judged.forecasts().stream()
        .findFirst()
        .filter(next -> next.latest().isPresent())
        .filter(next -> next.expected().filter(now::isBefore).isPresent())
        .map(
            next ->
                words.say(
                    "label.forecast",
                    times.hour(now),
                    next.awaited().limit().text(scale),
                    times.hour(next.expected().orElseThrow()),
                    times.hour(next.earliest().orElseThrow()),
                    times.hour(next.latest().orElseThrow())));
  }
}
