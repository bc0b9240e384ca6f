package chillwright.cli;

import chillwright.logfile.TimeExample;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The option that names the kitchen's time zone. */
final class ZoneOption {
  @Option(
      names = "--zone",
      paramLabel = "ZONE",
      description = "Time zone of the kitchen, such as America/Denver (default: this computer's).")
  private Optional<String> name = Optional.empty();

  /** The zone named, if one was. */
  Optional<ZoneId> named() {
    return name.map(ZoneOption::parse);
  }

  ZoneId zone() {
    return named().orElseGet(ZoneId::systemDefault);
  }

  private static ZoneId parse(String name) {
    try {
      return ZoneId.of(name);
    } catch (DateTimeException unknown) {
      throw new UsageFault(
          "--zone " + name + " is no time zone. Write one such as America/Denver or UTC.",
          List.of());
    }
  }

  /** A moment given with its offset; a fault shows the offset of that zone. */
  static Instant moment(String text, ZoneId zone) {
    try {
      return OffsetDateTime.parse(text).toInstant();
    } catch (DateTimeException unreadable) {
      throw new UsageFault(
          "--at %s is no time. Write it with its offset: %s."
              .formatted(text, new TimeExample(zone).text()),
          List.of());
    }
  }
}
