package chillwright.cli;

import chillwright.service.Kitchen;
import java.time.Clock;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Serves a kitchen until it is stopped. */
@Command(
    name = "serve",
    mixinStandardHelpOptions = true,
    description = {
      "Serves the kitchen: the API under /api/v1 and a page for a browser.",
      "Bound to this machine alone, unless --host says otherwise; then an access key is needed,",
      "which is made at the first start and printed once."
    },
    footer = {
      "",
      "Examples:",
      "  chillwright serve --db kitchen.db --zone America/Denver",
      "  chillwright serve --host 0.0.0.0 --name kitchen.local",
      "",
      "Exit codes: 130 stopped with Ctrl-C, 143 by a signal to end, 2 it could not start."
    })
final class ServeCommand implements Callable<Integer> {
  @Mixin private KitchenOptions options;
  @Mixin private ServerOptions serverOptions;

  private final Clock clock;
  private final Console console;

  ServeCommand(Clock clock, Console console) {
    this.clock = clock;
    this.console = console;
  }

  @Override
  public Integer call() {
    Kitchen kitchen = options.openCurrent(clock, console);
    Serving serving = Serving.start(kitchen, serverOptions, console);
    console.result("Kitchen " + options.file() + " is served at " + serving.address());
    console.result("Days and hours there are those of " + kitchen.zone() + " (--zone).");
    console.result("Stop it with Ctrl-C.");
    serving.untilStopped();
    return 0;
  }
}
