package chillwright.cli;

import chillwright.rulebook.BrokenRules;
import chillwright.rulebook.RuleBook;
import chillwright.rulebook.RuleLibrary;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import picocli.CommandLine.Option;

/** The options that name the rules, the same for every command that judges. */
final class RuleOptions {
  /** The rule set used where none is named. */
  static final String DEFAULT = "us-food-code-2022";

  @Option(
      names = "--rule-set",
      paramLabel = "ID",
      description = "Rule set to judge by; `rules` lists them. Default: " + DEFAULT + ".")
  private Optional<String> id = Optional.empty();

  @Option(
      names = "--rules",
      paramLabel = "DIR",
      description =
          "Folder with your own rule sets and storage categories, added to those shipped.")
  private Optional<Path> folder = Optional.empty();

  /** The rule set named, if one was. */
  Optional<String> id() {
    return id;
  }

  /**
   * Reads all rules.
   *
   * @throws UsageFault with every fault of the rule files
   */
  RuleLibrary library() {
    return load(folder);
  }

  static RuleLibrary load(Optional<Path> folder) {
    try {
      return RuleLibrary.load(folder);
    } catch (BrokenRules broken) {
      throw new UsageFault(
          "The rules cannot be used; nothing was done. Faults: " + broken.problems().size(),
          broken.problems());
    }
  }

  /** The named rule set of a library, or the default one. */
  RuleBook book(RuleLibrary library) {
    return book(library, id.orElse(DEFAULT));
  }

  static RuleBook book(RuleLibrary library, String wanted) {
    return library.ruleBook(wanted).orElseThrow(() -> unknown(library, wanted));
  }

  private static UsageFault unknown(RuleLibrary library, String wanted) {
    String known = library.ruleBooks().stream().map(RuleBook::id).collect(Collectors.joining(", "));
    return new UsageFault(
        "There is no rule set \"" + wanted + "\". Known: " + known + ".", List.of());
  }
}
