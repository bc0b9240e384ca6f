package chillwright.web.pages;

import chillwright.core.kitchen.ProbeCheck;
import chillwright.core.log.LogEntry;
import chillwright.core.measure.Temperature;
import chillwright.service.Probes.Checked;
import chillwright.service.Probes.Vouched;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/** Thermometers and their checks in words. */
final class ProbeWords {
  private final Visitor visitor;
  private final Function<Instant, String> moment;

  /**
   * @param moment how a moment is written
   */
  ProbeWords(Visitor visitor, Function<Instant, String> moment) {
    this.visitor = visitor;
    this.moment = moment;
  }

  /** What a probe is, and how it was checked last. */
  String says(Checked checked) {
    List<String> says = new ArrayList<>();
    says.add(visitor.say("scales." + checked.probe().scales().key()));
    checked.probe().note().ifPresent(says::add);
    says.add(checked.last().map(this::says).orElse(visitor.say("probe.unchecked")));
    return String.join(", ", says);
  }

  private String says(ProbeCheck check) {
    List<String> how = new ArrayList<>();
    how.add(visitor.say("check." + check.method().key()));
    check.shown().map(Temperature::text).ifPresent(how::add);
    how.add(check.by());
    check.note().ifPresent(how::add);
    String key = check.passed() ? "probe.passed" : "probe.failed";
    return visitor.say(key, moment.apply(check.at()), String.join(", ", how));
  }

  /** What vouches for the readings of a lot, a line for each of its probes. */
  List<String> vouched(Desk desk, List<LogEntry> entries) {
    List<String> lines = new ArrayList<>();
    for (Vouched probe : desk.kitchen().probes().vouched(entries)) {
      lines.add(
          visitor.say(
              "probe.line",
              probe.probe(),
              probe.last().map(this::says).orElse(visitor.say("probe.none"))));
      probe
          .next()
          .map(check -> visitor.say("probe.later", probe.probe(), moment.apply(check.at())))
          .ifPresent(lines::add);
    }
    return lines;
  }
}
