package chillwright.cli;

import chillwright.service.Kitchen;
import chillwright.service.NotOpened;
import chillwright.service.Opening;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The options that name a kitchen's database and what it is opened with. */
final class KitchenOptions {
  @Option(
      names = "--db",
      paramLabel = "FILE",
      description = "The kitchen's database (default: kitchen.db in this folder).")
  private Path file = Path.of("kitchen.db");

  @Mixin private ZoneOption zone;
  @Mixin private RuleOptions rules;

  Path file() {
    return file;
  }

  /** Opens the kitchen, or makes it. */
  Kitchen open(Clock clock) {
    return open(
        new Opening(
            file, zone.named(), rules.id(), ZoneId.systemDefault(), rules.library(), clock));
  }

  /** Opens it, and judges its lots again where rules, categories or the program have changed. */
  Kitchen openCurrent(Clock clock, Console console) {
    Kitchen kitchen = open(clock);
    Optional<String> older = kitchen.settings().olderVersion();
    older.ifPresent(
        version ->
            console.word(
                ("The rules, the storage categories or this program have changed since lots were"
                        + " judged (version %s). All lots are judged again now.")
                    .formatted(version)));
    kitchen
        .logbook()
        .catchUp(console.progress())
        .ifPresent(done -> console.word(RecomputeCommand.told(done)));
    return kitchen;
  }

  static Kitchen open(Opening opening) {
    try {
      return Kitchen.open(opening);
    } catch (NotOpened refused) {
      throw new UsageFault(refused.getMessage(), List.of());
    }
  }
}
