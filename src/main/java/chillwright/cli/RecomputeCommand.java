package chillwright.cli;

import chillwright.service.Kitchen;
import chillwright.service.Logbook.Recomputed;
import java.time.Clock;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Judges every lot of a kitchen again. */
@Command(
    name = "recompute",
    mixinStandardHelpOptions = true,
    description = {
      "Judges every lot again by the rules as they are now and stores what came out.",
      "\"serve\" and \"import\" do so by themselves after rules, categories or the program changed."
    },
    footer = {"", "Exit codes: 0 done, 2 the database or the rules are at fault."})
final class RecomputeCommand implements Callable<Integer> {
  @Mixin private KitchenOptions options;

  private final Clock clock;
  private final Console console;

  RecomputeCommand(Clock clock, Console console) {
    this.clock = clock;
    this.console = console;
  }

  @Override
  public Integer call() {
    try (Kitchen kitchen = options.open(clock)) {
      Recomputed done = kitchen.logbook().recompute(console.progress());
      console.result(told(done));
    }
    return 0;
  }

  static String told(Recomputed done) {
    return "Lots judged again: " + done.lots() + "; rows changed: " + done.changedRows() + ".";
  }
}
