package chillwright.web;

import chillwright.web.answers.Answers.Cells;
import chillwright.web.answers.Answers.Correction;
import chillwright.web.answers.Answers.Entry;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What was corrected, by whom, when and why, in one cell of a table. */
final class CorrectionText {
  private CorrectionText() {}

  /** Of those entries that do not stand as they were written; empty if all do. */
  static String of(List<Entry> entries) {
    return entries.stream()
        .flatMap(entry -> entry.corrected().map(now -> text(entry, now)).stream())
        .collect(Collectors.joining("; "));
  }

  private static String text(Entry entry, Cells now) {
    String reasons =
        entry.corrections().stream()
            .filter(Correction::stands)
            .map(CorrectionText::reason)
            .collect(Collectors.joining(", then "));
    return entry.id() + ": " + String.join(", ", changes(entry.written(), now)) + " " + reasons;
  }

  private static String reason(Correction correction) {
    return "(%s by %s on %s: %s)"
        .formatted(
            correction.id(),
            correction.by().orElse("-"),
            correction.when(),
            correction.reason().orElse("-"));
  }

  private static List<String> changes(Cells was, Cells now) {
    List<String> changes = new ArrayList<>();
    add(changes, "temperature", was.temperature(), now.temperature());
    add(changes, "how", was.how(), now.how());
    add(changes, "place", was.place(), now.place());
    add(changes, "air", was.air(), now.air());
    add(changes, "portions", was.portions(), now.portions());
    add(changes, "until", was.until(), now.until());
    add(changes, "probe", was.probe(), now.probe());
    add(changes, "container", was.container(), now.container());
    add(changes, "depth", was.depth(), now.depth());
    add(changes, "to", was.to(), now.to());
    add(changes, "food", was.food(), now.food());
    add(changes, "category", was.category(), now.category());
    add(changes, "from", text(was.from()), text(now.from()));
    return changes;
  }

  private static Optional<String> text(List<String> lots) {
    return lots.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", lots));
  }

  private static void add(List<String> changes, String column, Optional<?> was, Optional<?> now) {
    if (!was.equals(now)) {
      changes.add("%s %s, was %s".formatted(column, shown(now), shown(was)));
    }
  }

  private static String shown(Optional<?> cell) {
    return cell.map(Object::toString).orElse("blank");
  }
}
