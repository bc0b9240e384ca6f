package chillwright.rulebook;

import chillwright.core.rules.RuleSet;
import java.time.LocalDate;
import java.util.List;
import java.util.NavigableMap;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * The rules of one authority with all their dated figures. A log is judged by those in force on the
 * local day of its first entry: {@link #on}. Immutable.
 */
public final class RuleBook {
  private final About about;
  private final List<Choice> choices;
  private final Set<String> changed;
  private final NavigableMap<LocalDate, RuleSet> byDay = new TreeMap<>();

  /** What a rule set says of itself; see the methods of {@link RuleBook}. */
  record About(
      String id,
      String title,
      String version,
      String status,
      String defers,
      Optional<String> extendsId,
      LocalDate lastChecked) {}

  RuleBook(
      About about,
      RuleSet.Settings settings,
      List<Choice> choices,
      List<DatedRule> rules,
      Set<String> changed) {
    this.about = Objects.requireNonNull(about, "about");
    this.choices = List.copyOf(choices);
    this.changed = Set.copyOf(changed);
    byDay.put(LocalDate.MIN, inForce(rules, settings, LocalDate.MIN));
    for (DatedRule rule : rules) {
      for (LocalDate day : rule.byDay().keySet()) {
        byDay.computeIfAbsent(day, from -> inForce(rules, settings, from));
      }
    }
  }

  private RuleSet inForce(List<DatedRule> rules, RuleSet.Settings settings, LocalDate day) {
    return new RuleSet(
        about.id(),
        about.title(),
        about.version(),
        settings,
        rules.stream().map(rule -> rule.on(day)).flatMap(Optional::stream).toList());
  }

  /** The name of its folder, such as "us-food-code-2022". */
  public String id() {
    return about.id();
  }

  public String title() {
    return about.title();
  }

  /**
   * The version of the data, stored with what it judged: as its file declares it, then a mark that
   * changes with any figure of this set or of the one it extends.
   */
  public String version() {
    return about.version();
  }

  /** What binds: law, model-code, guidance, practice or house. */
  public String status() {
    return about.status();
  }

  /** Who decides in the end; shown wherever a verdict is. */
  public String defers() {
    return about.defers();
  }

  /** The rule set this one changes; empty for one that stands alone. */
  public Optional<String> extendsId() {
    return about.extendsId();
  }

  /** When someone last held the data against its sources. */
  public LocalDate lastChecked() {
    return about.lastChecked();
  }

  /** The settings with who publishes each, in the order of the file. */
  public List<Choice> choices() {
    return choices;
  }

  /**
   * The rules with the figures in force on a day. The earliest figures of a rule serve all days
   * before them too; a rule that had ended by then is left out.
   */
  public RuleSet on(LocalDate day) {
    return byDay.floorEntry(day).getValue();
  }

  /** Whether this set's own files change or add the rule; never so where it extends no other. */
  public boolean isChanged(String ruleId) {
    return changed.contains(ruleId);
  }
}
