package chillwright.cli;

import chillwright.core.plan.Menu;
import chillwright.core.plan.Plan;
import chillwright.core.plan.Planner;
import chillwright.print.PlanText;
import chillwright.rulebook.BrokenRules;
import chillwright.rulebook.PlanFile;
import chillwright.rulebook.RuleBook;
import chillwright.rulebook.RuleLibrary;
import chillwright.web.answers.Json;
import chillwright.web.answers.PlanAnswers;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Plans make-ahead work backwards from a serving time. */
@Command(
    name = "plan",
    mixinStandardHelpOptions = true,
    description = {
      "Plans what is made, frozen, thawed and reheated when, so that all is on the table at one",
      "time and nothing the kitchen has is overrun. Says so where there is no plan, and what",
      "would help. Nothing is stored."
    },
    footer = {
      "",
      "The file is YAML or JSON; sample-logs/plans holds two; `plan --schema` prints its form.",
      "Amounts of refrigerator, freezer and warm are litres, of freezing the kilograms that freeze",
      "within 24 hours, of hands people; oven, hob and the like are yours to name.",
      "",
      "Examples:",
      "  chillwright plan sample-logs/plans/harvest-supper.yaml --at 2026-11-26T08:00:00-07:00",
      "  chillwright plan supper.yaml --format json",
      "",
      "Exit codes: 0 there is a plan, 1 there is none, 2 the input is at fault."
    })
final class PlanCommand implements Callable<Integer> {
  private static final int NO_PLAN = 1;

  /** A plan file longer than this is something else. */
  private static final long LARGEST = 1_000_000;

  @Parameters(arity = "0..1", paramLabel = "FILE", description = "What is to be planned.")
  private Optional<Path> file = Optional.empty();

  @Option(names = "--schema", description = "Print the JSON schema of such a file.")
  private boolean isSchemaWanted;

  @Option(
      names = "--at",
      paramLabel = "TIME",
      description = "Work begins no earlier, where the file does not say (default: now).")
  private Optional<String> at = Optional.empty();

  @Mixin private ZoneOption zoneOption;
  @Mixin private RuleOptions ruleOptions;
  @Mixin private Format format;

  private final Clock clock;
  private final Console console;

  PlanCommand(Clock clock, Console console) {
    this.clock = clock;
    this.console = console;
  }

  @Override
  public Integer call() {
    if (isSchemaWanted) {
      console.result(PlanFile.schema().strip());
      return 0;
    }
    RuleLibrary library = ruleOptions.library();
    RuleBook book = ruleOptions.book(library);
    Menu menu = menu(library);
    LocalDate served = menu.serving().atZone(menu.zone()).toLocalDate();
    Plan plan = Planner.plan(menu, book.on(served));
    if (format.isJson()) {
      console.result(Json.text(new PlanAnswers(book).answer(menu, plan)));
    } else {
      print(menu, plan, book);
    }
    return plan.isFound() ? 0 : NO_PLAN;
  }

  private Menu menu(RuleLibrary library) {
    Path path =
        file.orElseThrow(
            () -> new UsageFault("Name the file to be planned, or ask for --schema.", List.of()));
    CheckCommand.requireReadable(List.of(path));
    Instant now =
        at.map(text -> ZoneOption.moment(text, zoneOption.zone())).orElseGet(clock::instant);
    try {
      return PlanFile.read(
          path.toString(), text(path), library.keepingList(), zoneOption.zone(), now);
    } catch (BrokenRules broken) {
      throw new UsageFault(
          "There is nothing to plan by; nothing was done. Faults: " + broken.problems().size(),
          broken.problems());
    }
  }

  private static String text(Path path) {
    try {
      if (Files.size(path) > LARGEST) {
        throw new UsageFault(path + " is larger than 1 MB: that is no plan file.", List.of());
      }
      return Files.readString(path);
    } catch (CharacterCodingException broken) {
      throw new UsageFault(path + " is not UTF-8 text. Save it as UTF-8.", List.of());
    } catch (IOException broken) {
      throw new UsageFault("The file could not be read: " + broken.getMessage(), List.of());
    }
  }

  private void print(Menu menu, Plan plan, RuleBook book) {
    PlanText text = new PlanText(menu);
    console.result(text.serving(menu));
    text.lines(menu, plan).forEach(console::result);
    console.result("");
    console.result(text.caution());
    console.result(book.defers().strip());
  }
}
