package chillwright.cli;

import chillwright.core.learning.MethodRecord;
import chillwright.core.measure.Temperature.Scale;
import chillwright.print.CoolingMethodText;
import chillwright.print.Language;
import chillwright.service.CoolingMethods.Asked;
import chillwright.service.CoolingMethods.Shown;
import chillwright.service.Kitchen;
import chillwright.web.answers.CoolingMethodAnswers;
import chillwright.web.answers.CoolingMethodCsv;
import chillwright.web.answers.Json;
import java.nio.file.Files;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Tells what the coolings in a kitchen's own log show. */
@Command(
    name = "cooling-methods",
    mixinStandardHelpOptions = true,
    description = {
      "Tells what a kitchen's own coolings show, by food, container, depth and place: how often",
      "each way made its limits, with its worst margin, and how often it missed. It validates",
      "nothing.",
      "",
      "While `serve` runs it holds the database for itself: use its page /cooling-methods instead."
    },
    footer = {
      "",
      "Examples:",
      "  chillwright cooling-methods",
      "  chillwright cooling-methods --food \"Bone stock\" --from 2026-11-01 --format csv",
      "",
      "Exit codes: 0 told, 2 the input or the database is at fault."
    })
final class CoolingMethodsCommand implements Callable<Integer> {
  @Option(names = "--food", paramLabel = "NAME", description = "Only this food.")
  private Optional<String> food = Optional.empty();

  @Option(names = "--container", paramLabel = "NAME", description = "Only in this container.")
  private Optional<String> container = Optional.empty();

  @Option(
      names = "--from",
      paramLabel = "DATE",
      description = "First day (default: 12 weeks before the last).")
  private Optional<LocalDate> from = Optional.empty();

  @Option(names = "--to", paramLabel = "DATE", description = "Last day (default: today).")
  private Optional<LocalDate> to = Optional.empty();

  @Option(
      names = "--format",
      paramLabel = "text|json|csv",
      description = "Words (default), JSON or CSV.")
  private KitchenCommand.Form format = KitchenCommand.Form.text;

  @Mixin private KitchenOptions options;

  private final Clock clock;
  private final Console console;

  CoolingMethodsCommand(Clock clock, Console console) {
    this.clock = clock;
    this.console = console;
  }

  @Override
  public Integer call() {
    if (!Files.exists(options.file())) {
      throw new UsageFault(
          "There is no database %s. Name another with --db.".formatted(options.file()), List.of());
    }
    try (Kitchen kitchen = options.openCurrent(clock, console)) {
      ZoneId zone = kitchen.zone();
      Shown shown =
          kitchen
              .coolingMethods()
              .find(
                  new Asked(
                      food,
                      container,
                      from.map(day -> day.atStartOfDay(zone).toInstant()),
                      to.map(day -> day.plusDays(1).atStartOfDay(zone).toInstant())));
      tell(kitchen, shown);
    }
    return 0;
  }

  private void tell(Kitchen kitchen, Shown shown) {
    CoolingMethodAnswers answers = new CoolingMethodAnswers(kitchen.judge().book(), kitchen.zone());
    switch (format) {
      case json -> console.result(Json.text(answers.answer(shown)));
      case csv -> console.result(CoolingMethodCsv.text(answers.answer(shown)).stripTrailing());
      case text -> text(kitchen, shown);
    }
  }

  private void text(Kitchen kitchen, Shown shown) {
    CoolingMethodText text = new CoolingMethodText(Scale.FAHRENHEIT, Language.ENGLISH);
    if (shown.methods().isEmpty()) {
      console.result("No cooling that is over in this period.");
    }
    for (MethodRecord found : shown.methods()) {
      console.result(text.method(found.method()));
      text.says(found).forEach(line -> console.result("  " + line));
    }
    if (shown.isCut()) {
      console.word("Only the newest coolings of the period were looked at.");
    }
    console.result("");
    console.result(text.caution());
    console.result(kitchen.judge().book().defers().strip());
  }
}
