package chillwright.web.answers;

import chillwright.core.kitchen.ProbeCheck;
import chillwright.core.measure.Temperature;
import chillwright.service.Probes.Checked;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Optional;

/** Thermometers and their checks, as answered. */
public record ProbeAnswers(ZoneId zone) {
  /**
   * A thermometer.
   *
   * @param tolerance how far off it may be in ice water
   */
  public record Probe(
      String name,
      String scales,
      String tolerance,
      Optional<String> note,
      Optional<Check> lastCheck) {}

  /** A check. */
  public record Check(
      String method,
      Optional<String> reading,
      String result,
      String by,
      Optional<String> note,
      OffsetDateTime at) {}

  public Probe probe(Checked checked) {
    return new Probe(
        checked.probe().name(),
        checked.probe().scales().key(),
        checked.probe().scales().tolerance(),
        checked.probe().note(),
        checked.last().map(this::check));
  }

  public Check check(ProbeCheck check) {
    return new Check(
        check.method().key(),
        check.shown().map(Temperature::text),
        check.passed() ? "passed" : "failed",
        check.by(),
        check.note(),
        check.at().atZone(zone).toOffsetDateTime());
  }
}
