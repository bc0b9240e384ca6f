package chillwright.core.rules;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** The rules of one authority, with the figures in force on one day. */
public record RuleSet(
    String id, String title, String version, Settings settings, List<Rule> rules) {
  /**
   * Choices between published conventions, cited in the rule set's own file.
   *
   * @param correctiveReheats how often food may be reheated to start its cooling again
   * @param freezingDayCounts whether the day food is frozen counts as a used day
   * @param thawingDayCounts whether the day food is thawed counts as a used day
   */
  public record Settings(
      int correctiveReheats, boolean freezingDayCounts, boolean thawingDayCounts) {}

  public RuleSet {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(version, "version");
    Objects.requireNonNull(settings, "settings");
    rules = List.copyOf(rules);
  }

  /** All rules of that occasion, in the order of the rule files. */
  public List<Rule> rules(Occasion occasion) {
    return rules.stream().filter(rule -> rule.occasions().contains(occasion)).toList();
  }

  /** The first rule of that occasion. */
  public Optional<Rule> rule(Occasion occasion) {
    return rules.stream().filter(rule -> rule.occasions().contains(occasion)).findFirst();
  }

  public Optional<Rule> rule(String id) {
    return rules.stream().filter(rule -> rule.id().equals(id)).findFirst();
  }
}
