package chillwright.core.rules;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/** The rules of one authority, with the figures in force on one day. */
public final class RuleSet {
  private final String id;
  private final String title;
  private final String version;
  private final Settings settings;
  private final List<Rule> rules;
  private final Map<Occasion, List<Rule>> byOccasion = new EnumMap<>(Occasion.class);

  /**
   * Choices between published conventions, cited in the rule set's own file.
   *
   * @param correctiveReheats how often food may be reheated to start its cooling again
   * @param freezingDayCounts whether the day food is frozen counts as a used day
   * @param thawingDayCounts whether the day food is thawed counts as a used day
   */
  public record Settings(
      int correctiveReheats, boolean freezingDayCounts, boolean thawingDayCounts) {}

  public RuleSet(String id, String title, String version, Settings settings, List<Rule> rules) {
    this.id = Objects.requireNonNull(id, "id");
    this.title = Objects.requireNonNull(title, "title");
    this.version = Objects.requireNonNull(version, "version");
    this.settings = Objects.requireNonNull(settings, "settings");
    this.rules = List.copyOf(rules);
    for (Rule rule : this.rules) {
      for (Occasion occasion : rule.occasions()) {
        byOccasion.computeIfAbsent(occasion, o -> new ArrayList<>()).add(rule);
      }
    }
    byOccasion.replaceAll((occasion, bearing) -> List.copyOf(bearing));
  }

  public String id() {
    return id;
  }

  public String title() {
    return title;
  }

  public String version() {
    return version;
  }

  public Settings settings() {
    return settings;
  }

  public List<Rule> rules() {
    return rules;
  }

  /** All rules of that occasion, in the order of the rule files. */
  public List<Rule> rules(Occasion occasion) {
    return byOccasion.getOrDefault(occasion, List.of());
  }

  /** The first rule of that occasion. */
  public Optional<Rule> rule(Occasion occasion) {
    List<Rule> bearing = rules(occasion);
    return bearing.isEmpty() ? Optional.empty() : Optional.of(bearing.get(0));
  }

  public Optional<Rule> rule(String ruleId) {
    return rules.stream().filter(rule -> rule.id().equals(ruleId)).findFirst();
  }

  /** The limit that food is held against which thawed in its freezer; empty where none is set. */
  public Optional<Rule> thawedLimit() {
    return rules(Occasion.FROZEN).stream()
        .filter(rule -> rule.shape() instanceof Shape.Hold)
        .findFirst();
  }
}
