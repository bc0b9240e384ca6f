package chillwright.rulebook;

import chillwright.core.log.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The files of one rule set, read but not yet checked.
 *
 * @param folder where they stand, as a reader can find it
 * @param ruleSet what {@code ruleset.yaml} says; empty where it could not be read
 * @param topics the topic files that could be read
 */
record RuleSetFiles(String id, String folder, Optional<Document> ruleSet, List<Document> topics) {
  private static final String RULE_SET = "ruleset";

  RuleSetFiles {
    topics = List.copyOf(topics);
  }

  static RuleSetFiles read(RuleFolder folder, Faults faults) {
    Optional<Document> ruleSet = Optional.empty();
    List<Document> topics = new ArrayList<>();
    for (TextFile file : folder.files()) {
      Optional<Document> document = YamlText.read(file, faults);
      if (file.stem().equals(RULE_SET)) {
        ruleSet = document;
      } else {
        document.ifPresent(topics::add);
      }
    }
    if (folder.files().stream().noneMatch(file -> file.stem().equals(RULE_SET))) {
      faults.add(noRuleSetFile(folder));
    }
    return new RuleSetFiles(folder.id(), folder.name(), ruleSet, topics);
  }

  private static Problem noRuleSetFile(RuleFolder folder) {
    String says =
        "ruleset.yaml is missing. Write one with title, version, status and last_checked, and"
            + " extends where this rule set changes another.";
    return Spot.whole(folder.name(), "").fault("missing-file", "ruleset.yaml", says);
  }

  /** Where it names the rule set it extends; empty for one that stands alone. */
  Optional<Spot> extendsAt() {
    return ruleSet
        .map(document -> Spot.whole(document).at("extends"))
        .filter(spot -> spot.node().isTextual());
  }
}
