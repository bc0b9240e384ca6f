package chillwright.cli;

import chillwright.core.log.Problem;
import chillwright.logfile.CardCells;
import chillwright.logfile.CardFile;
import chillwright.logfile.CsvWriter;
import chillwright.logfile.LogFile;
import chillwright.print.FaultText;
import chillwright.service.CardKind;
import chillwright.service.CardRows;
import chillwright.service.Kitchen;
import chillwright.service.Refused;
import chillwright.web.answers.Json;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Lists what a kitchen says of itself, or takes it from a file. */
@Command(
    name = "kitchen",
    mixinStandardHelpOptions = true,
    description = {
      "Lists the foods, places, people or probes of a kitchen; or takes them from a file, whole:",
      "with any fault nothing is stored. What the file names is described anew by its row; what it",
      "does not name stays as it is.",
      "",
      "While `serve` runs it holds the database for itself: use its page /kitchen instead."
    },
    footer = {
      "",
      "Columns of a file, in any order; the first of each is needed:",
      "  foods   name,category,portions,container,place,reheating,thawing,roomDays,allergens,",
      "          otherAllergens,ingredients - allergens with a space between: milk wheat;",
      "          roomDays: your own days at room temperature, of food that needs no cold",
      "  places  name,kind,ownLimit,rounds - kind: refrigerator, freezer, hot-holding, counter,",
      "          other",
      "  people  initials,name",
      "  probes  name,scales,note - scales: celsius, fahrenheit, both",
      "",
      "Examples:",
      "  chillwright kitchen foods sample-logs/kitchen/foods.csv",
      "  chillwright kitchen places --format csv",
      "",
      "Exit codes: 0 listed or stored, 2 the input or the database is at fault."
    })
final class KitchenCommand implements Callable<Integer> {
  /** The forms of output. */
  enum Form {
    text,
    json,
    csv
  }

  @Parameters(
      index = "0",
      paramLabel = "foods|places|people|probes",
      description = "What to list or take.")
  private CardKind kind = CardKind.FOODS;

  @Parameters(index = "1", arity = "0..1", paramLabel = "FILE", description = "CSV in UTF-8.")
  private Optional<Path> file = Optional.empty();

  @Option(
      names = "--format",
      paramLabel = "text|json|csv",
      description = "Of a list: words (default), JSON, or CSV that can be taken again.")
  private Form format = Form.text;

  @Mixin private KitchenOptions options;

  private final Clock clock;
  private final Console console;

  KitchenCommand(Clock clock, Console console) {
    this.clock = clock;
    this.console = console;
  }

  @Override
  public Integer call() {
    if (file.isEmpty() && !Files.exists(options.file())) {
      throw new UsageFault(
          "There is no database %s. Name another with --db, or take a file to make it."
              .formatted(options.file()),
          List.of());
    }
    file.ifPresent(path -> CheckCommand.requireReadable(List.of(path)));
    try (Kitchen kitchen = options.openCurrent(clock, console)) {
      return file.isPresent() ? take(kitchen, file.get()) : list(kitchen);
    }
  }

  private int take(Kitchen kitchen, Path path) {
    CardFile cards = read(path);
    List<Problem> problems = new ArrayList<>(cards.problems());
    List<CardCells> all = cards.cards();
    if (problems.isEmpty()) {
      try {
        kitchen.setUp().all(kind, all);
        console.result("Stored in %s: %s %d.".formatted(options.file(), name(), all.size()));
        return 0;
      } catch (Refused refused) {
        problems.addAll(refused.problems());
      }
    }
    problems.forEach(problem -> console.word(FaultText.line(problem)));
    console.word("Faults: " + problems.size() + ". Nothing was stored.");
    return Faults.WRONG;
  }

  private CardFile read(Path path) {
    try {
      return CardFile.read(LogFile.of(path), kind.cells());
    } catch (IOException broken) {
      throw new UsageFault("A file could not be read: " + broken.getMessage(), List.of());
    }
  }

  private String name() {
    return kind.name().toLowerCase(Locale.ROOT);
  }

  private int list(Kitchen kitchen) {
    switch (format) {
      case json -> console.result(Json.text(new KitchenCards(kitchen).answers(kind)));
      case csv -> console.result(csv(CardRows.of(kitchen.setUp(), kind)));
      case text -> text(CardRows.of(kitchen.setUp(), kind));
    }
    return 0;
  }

  private void text(List<Map<String, String>> rows) {
    if (rows.isEmpty()) {
      console.result("No " + name() + " are described in " + options.file() + ".");
    }
    for (Map<String, String> row : rows) {
      List<String> says = new ArrayList<>();
      for (String cell : kind.cells().subList(1, kind.cells().size())) {
        String text = row.getOrDefault(cell, "").replaceAll("\\s+", " ");
        if (!text.isEmpty()) {
          says.add(cell + " " + text);
        }
      }
      console.result(row.get(kind.cells().get(0)) + ": " + String.join("; ", says));
    }
  }

  private String csv(List<Map<String, String>> rows) {
    StringBuilder text = new StringBuilder();
    CsvWriter writer = CsvWriter.exact(text);
    try {
      writer.write(kind.cells());
      for (Map<String, String> row : rows) {
        writer.write(kind.cells().stream().map(cell -> row.getOrDefault(cell, "")).toList());
      }
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    return text.toString().stripTrailing();
  }
}
