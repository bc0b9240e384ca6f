package chillwright.rulebook;

import java.util.List;

/** One place that rule sets and storage categories come from: this jar, or a folder beside it. */
record Shelf(List<RuleFolder> folders, List<TextFile> keeping) {
  Shelf {
    folders = List.copyOf(folders);
    keeping = List.copyOf(keeping);
  }
}
