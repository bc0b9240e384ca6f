package chillwright.web.pages;

import java.util.List;

/** The rule set with every limit. */
public record RulesView(String zone, String title, String version, List<Rule> rules) {
  /**
   * A rule.
   *
   * @param base what the set that this one extends says instead; blank where it says the same
   */
  public record Rule(
      String id, String says, String limit, String citation, String status, String base) {}
}
