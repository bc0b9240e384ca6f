package chillwright.cli;

import chillwright.print.CheckText;
import chillwright.print.ReportText;
import chillwright.rulebook.RuleBook;
import chillwright.rulebook.RuleLibrary;
import chillwright.service.Kitchen;
import chillwright.service.Opening;
import chillwright.service.Page;
import chillwright.service.Reports;
import chillwright.service.Settings;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicReference;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Serves an invented kitchen with the sample logs in it, and prints its report. */
@Command(
    name = "demo",
    mixinStandardHelpOptions = true,
    description = {
      "Serves an invented kitchen, with something always running now; nothing of it is kept.",
      "It loads the sample logs, with the plan of an evening two weeks ahead, into a scratch",
      "database, moved in time to end now, and prints the report and the address."
    },
    footer = {
      "",
      "Example:",
      "  chillwright demo --port 8421",
      "",
      "Exit codes: 130 stopped with Ctrl-C, 143 by a signal to end, 2 it could not start."
    })
final class DemoCommand implements Callable<Integer> {
  private static final int SHOWN = 8;

  @Option(
      names = "--port",
      paramLabel = "N",
      description =
          "Port to serve on; 0 takes a free one (default: " + ServerOptions.DEFAULT_PORT + ").")
  private int port = ServerOptions.DEFAULT_PORT;

  private final Clock clock;
  private final Console console;

  DemoCommand(Clock clock, Console console) {
    this.clock = clock;
    this.console = console;
  }

  @Override
  public Integer call() {
    Path folder = ScratchFolder.make("chillwright-demo");
    AtomicReference<Runnable> stop = new AtomicReference<>(() -> {});
    // At once, so that a demo that is stopped while it still loads leaves nothing behind either.
    Runtime.getRuntime().addShutdownHook(new Thread(() -> end(stop.get(), folder), "stop"));
    Kitchen kitchen = KitchenOptions.open(opening(folder.resolve("demo.db")));
    stop.set(kitchen::close);
    DemoKitchen.describe(kitchen);
    kitchen.logbook().log(DemoLog.until(clock.instant()), Optional.empty());
    DemoPlan.load(kitchen);
    Serving serving = Serving.startHere(kitchen, port);
    stop.set(serving::stop);
    printReport(kitchen);
    console.result("");
    console.result("The demo kitchen is served at " + serving.address());
    console.result("Stop it with Ctrl-C; nothing of it is kept.");
    return 0;
  }

  private Opening opening(Path file) {
    RuleLibrary library = RuleOptions.load(Optional.empty());
    return new Opening(
        file, Optional.empty(), Optional.empty(), ZoneId.systemDefault(), library, clock);
  }

  private void printReport(Kitchen kitchen) {
    Settings settings = kitchen.settings();
    Instant now = clock.instant();
    ReportText text = new ReportText(settings.zone(), settings.scale(), now);
    Reports reports = kitchen.reports();
    console.result("Out of compliance, or a reading overdue, on hand or closed in these weeks:");
    reports
        .outOfCompliance(Optional.empty(), Optional.empty(), Page.Wanted.first(Page.MOST))
        .items()
        .forEach(
            t ->
                console.result(
                    text.trouble(
                        t.lot().lot(), t.lot().food(), t.finding(), t.taken(), t.isOwed())));
    console.result("");
    console.result("What falls due next:");
    reports
        .dueNext(Page.Wanted.first(SHOWN))
        .items()
        .forEach(due -> console.result(text.due(due.lot().lot(), due.lot().food(), due.finding())));
    console.result("");
    RuleBook book = settings.ruleBook();
    console.result(CheckText.closing(book.id(), book.title(), book.version(), book.defers()));
  }

  private static void end(Runnable stop, Path folder) {
    try {
      stop.run();
    } finally {
      ScratchFolder.delete(folder);
    }
  }
}
