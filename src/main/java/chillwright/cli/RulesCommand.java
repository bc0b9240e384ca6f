package chillwright.cli;

import chillwright.core.rules.Rule;
import chillwright.core.rules.RuleSet;
import chillwright.print.Figures;
import chillwright.rulebook.Choice;
import chillwright.rulebook.RuleBook;
import chillwright.rulebook.RuleLibrary;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Lists the rule sets, or shows one with every figure and its citation. */
@Command(
    name = "rules",
    mixinStandardHelpOptions = true,
    description = {
      "Lists the rule sets, or shows one of them with every limit and its citation.",
      "Limits are shown as printed and in force today; of a local set it shows, too, what that set",
      "changes against the one it extends."
    },
    footer = {
      "",
      "Examples:",
      "  chillwright rules us-food-code-2022",
      "  chillwright rules example-county --rules sample-logs/rules",
      "",
      "Exit codes: 0 shown, 2 no such rule set, or a rule file is at fault."
    })
final class RulesCommand implements Callable<Integer> {
  @Parameters(arity = "0..1", paramLabel = "ID", description = "Rule set to show.")
  private Optional<String> id = Optional.empty();

  @Option(
      names = "--rules",
      paramLabel = "DIR",
      description = "Folder with your own rule sets and storage categories.")
  private Optional<Path> folder = Optional.empty();

  private final Clock clock;
  private final Console console;

  RulesCommand(Clock clock, Console console) {
    this.clock = clock;
    this.console = console;
  }

  @Override
  public Integer call() {
    RuleLibrary library = RuleOptions.load(folder);
    if (id.isEmpty()) {
      library.ruleBooks().forEach(book -> console.result(heading(book)));
      console.result("");
      console.result("`chillwright rules ID` shows one with every figure and its citation.");
      return 0;
    }
    RuleBook book = RuleOptions.book(library, id.get());
    LocalDate today = LocalDate.ofInstant(clock.instant(), ZoneId.systemDefault());
    console.result(shown(book, book.on(today)));
    return 0;
  }

  private static String heading(RuleBook book) {
    String base = book.extendsId().map(extended -> ", extends " + extended).orElse("");
    return String.format("%-20s %s (version %s%s)", book.id(), book.title(), book.version(), base);
  }

  private static String shown(RuleBook book, RuleSet rules) {
    List<String> lines = new ArrayList<>();
    lines.add(heading(book));
    lines.add("Last checked against its sources: " + book.lastChecked() + ".");
    lines.add(book.defers().strip());
    for (Rule rule : rules.rules()) {
      lines.add("");
      lines.add(rule.id() + (book.isChanged(rule.id()) ? "  (changed here)" : ""));
      lines.add("  " + rule.says().strip());
      lines.add("  Limit:  " + Figures.limitInBoth(rule));
      lines.add("  Source: " + cited(rule));
      if (!rule.actions().isEmpty()) {
        lines.add("  If missed:");
        rule.actions()
            .forEach(act -> lines.add("    - " + act.says() + " [" + act.citation().text() + "]"));
      }
    }
    lines.add("");
    lines.add("Settings");
    book.choices().forEach(choice -> lines.add("  " + setting(choice)));
    return String.join(System.lineSeparator(), lines);
  }

  private static String cited(Rule rule) {
    return rule.citation().text()
        + ", "
        + rule.status()
        + (rule.status().equals(rule.citation().state()) ? "" : ", " + rule.citation().state())
        + rule.citation().copy().map(copy -> " in " + copy).orElse("");
  }

  private static String setting(Choice choice) {
    return choice.key()
        + ": "
        + choice.value()
        + " ("
        + choice.status()
        + "; "
        + choice.citation().text().strip()
        + ")";
  }
}
