package chillwright.cli;

import chillwright.print.FaultText;
import chillwright.service.Imports.Imported;
import chillwright.service.Kitchen;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Takes log files into a kitchen's database. */
@Command(
    name = "import",
    mixinStandardHelpOptions = true,
    description = {
      "Takes log files into the kitchen's database, whole: with any fault nothing is stored.",
      "Rows that are stored already are skipped, so a file that grew can be imported again. A row",
      "that was changed since is a fault: write a correction row instead."
    },
    footer = {
      "",
      "Example:",
      "  chillwright import sample-logs/week-*.csv sample-logs/places.csv --zone America/Denver",
      "",
      "Exit codes: 0 stored, 2 the input is at fault."
    })
final class ImportCommand implements Callable<Integer> {
  @Parameters(arity = "1..*", paramLabel = "FILE", description = "Log files, CSV in UTF-8.")
  private List<Path> files = List.of();

  @Option(
      names = "--good-lots-only",
      description = "Store the lots without a fault, whatever the others have.")
  private boolean goodLotsOnly;

  @Mixin private KitchenOptions options;

  private final Clock clock;
  private final Console console;

  ImportCommand(Clock clock, Console console) {
    this.clock = clock;
    this.console = console;
  }

  @Override
  public Integer call() {
    CheckCommand.requireReadable(files);
    try (Kitchen kitchen = options.openCurrent(clock, console)) {
      Imported imported = kitchen.imports().files(files, goodLotsOnly, console.progress());
      imported.problems().forEach(problem -> console.word(FaultText.line(problem)));
      console.result(told(imported));
      return imported.problems().isEmpty() ? 0 : Faults.WRONG;
    } catch (IOException broken) {
      throw new UsageFault("A file could not be read: " + broken.getMessage(), List.of());
    }
  }

  private String told(Imported imported) {
    if (!imported.isStored()) {
      return "Nothing was stored: the files have "
          + count(imported.problems().size(), "fault")
          + ". Mend them and import again, or store the good lots with --good-lots-only.";
    }
    String faults =
        imported.problems().isEmpty()
            ? ""
            : " Left out for their faults: rows of other lots, "
                + count(imported.problems().size(), "fault")
                + ".";
    return "Stored in "
        + options.file()
        + ": "
        + count(imported.entries(), "entry", "entries")
        + " of "
        + count(imported.lots(), "lot")
        + ", "
        + count(imported.readings(), "reading of places", "readings of places")
        + "; "
        + count(imported.repeats(), "row was", "rows were")
        + " known already."
        + faults;
  }

  private static String count(long number, String one) {
    return count(number, one, one + "s");
  }

  private static String count(long number, String one, String many) {
    return number + " " + (number == 1 ? one : many);
  }
}
