package chillwright.rulebook;

import java.util.List;

/**
 * The files of one rule set.
 *
 * @param id the folder's name, which is the rule set's id
 * @param name as a reader can find it, such as "rules/us-home"
 */
record RuleFolder(String id, String name, List<TextFile> files) {
  RuleFolder {
    files = List.copyOf(files);
  }
}
