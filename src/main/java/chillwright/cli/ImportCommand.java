package chillwright.cli;

import chillwright.logfile.LogFile;
import chillwright.print.FaultText;
import chillwright.service.Imports.Imported;
import chillwright.service.Kitchen;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Takes log files into a kitchen's database, or sends them to a kitchen that is served. */
@Command(
    name = "import",
    mixinStandardHelpOptions = true,
    description = {
      "Takes log files into the kitchen's database, whole: with any fault nothing is stored.",
      "Rows that are stored already are skipped, so a file that grew can be imported again. A row",
      "that was changed since is a fault: write a correction row instead.",
      "",
      "While `serve` runs it holds the database for itself: send the files to it with --to.",
      "Sent so, each file is whole by itself: they go one after another, and the first with a",
      "fault ends it, while those before it stay stored."
    },
    footer = {
      "",
      "Examples:",
      "  chillwright import sample-logs/week-*.csv sample-logs/places.csv --zone America/Denver",
      "  chillwright import bars.csv --to http://127.0.0.1:8421",
      "",
      "Exit codes: 0 stored, 2 the input is at fault, or the kitchen could not be reached."
    })
final class ImportCommand implements Callable<Integer> {
  /** What a kitchen that is served has already. */
  private static final List<String> OF_THE_KITCHEN =
      List.of("--db", "--zone", "--rule-set", "--rules");

  @Parameters(arity = "1..*", paramLabel = "FILE", description = "Log files, CSV in UTF-8.")
  private List<Path> files = List.of();

  @Option(
      names = "--good-lots-only",
      description = "Store the lots without a fault, whatever the others have.")
  private boolean goodLotsOnly;

  @Option(
      names = "--to",
      paramLabel = "URL",
      description = "Send the files to the kitchen served there, such as http://127.0.0.1:8421.")
  private Optional<String> to = Optional.empty();

  @Option(
      names = "--key",
      paramLabel = "KEY",
      description = "The access key of that kitchen, where it asks for one.")
  private Optional<String> key = Optional.empty();

  @Mixin private KitchenOptions options;
  @Spec private CommandSpec spec;

  private final Clock clock;
  private final Console console;

  ImportCommand(Clock clock, Console console) {
    this.clock = clock;
    this.console = console;
  }

  @Override
  public Integer call() {
    requireOneKitchen();
    CheckCommand.requireReadable(files);
    return to.isPresent() ? send(ServedKitchen.at(to.get(), key)) : store();
  }

  private void requireOneKitchen() {
    String given =
        OF_THE_KITCHEN.stream()
            .filter(spec.commandLine().getParseResult()::hasMatchedOption)
            .collect(Collectors.joining(", "));
    if (to.isPresent() && !given.isEmpty()) {
      throw new UsageFault(
          "--to sends the files to a kitchen that has its own database, zone and rules. Leave out "
              + given
              + ".",
          List.of());
    }
    if (to.isEmpty() && key.isPresent()) {
      throw new UsageFault("--key goes with --to, the address of a served kitchen.", List.of());
    }
  }

  private int store() {
    try (Kitchen kitchen = options.openCurrent(clock, console)) {
      Imported imported =
          kitchen.imports().files(LogFile.of(files), goodLotsOnly, console.progress());
      return tell(imported, "", "in " + options.file());
    } catch (IOException broken) {
      throw unreadable(broken);
    }
  }

  private int send(ServedKitchen kitchen) {
    int code = 0;
    for (int i = 0; i < files.size(); i++) {
      Path file = files.get(i);
      Imported imported = taken(kitchen, file);
      String which = files.size() == 1 ? "" : file + ": ";
      code = Math.max(code, tell(imported, which, "at " + kitchen.address()));
      if (!imported.isStored()) {
        tellOfTheRest(files.subList(i + 1, files.size()));
        break;
      }
    }
    return code;
  }

  private Imported taken(ServedKitchen kitchen, Path file) {
    try {
      return kitchen.take(file, goodLotsOnly, console.progress());
    } catch (IOException broken) {
      throw unreadable(broken);
    }
  }

  private void tellOfTheRest(List<Path> rest) {
    if (!rest.isEmpty()) {
      console.word(
          rest.stream()
              .map(Path::toString)
              .collect(Collectors.joining(", ", "Not sent, since they come after it: ", ".")));
    }
  }

  private static UsageFault unreadable(IOException broken) {
    return new UsageFault("A file could not be read: " + broken.getMessage(), List.of());
  }

  private int tell(Imported imported, String which, String place) {
    imported.problems().forEach(problem -> console.word(FaultText.line(problem)));
    console.result(which + ImportText.told(imported, place));
    return imported.problems().isEmpty() ? 0 : Faults.WRONG;
  }
}
