package chillwright.core.log;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Applies corrections to the entries they name. A correction with filled cells replaces those
 * cells; one with none filled voids the entry. Corrections act in the order of writing, and may
 * themselves be corrected or voided.
 */
public final class Corrections {
  private final Map<EntryId, List<LogEntry>> byTarget = new HashMap<>();

  private Corrections(List<LogEntry> entries) {
    for (LogEntry entry : entries) {
      entry
          .corrects()
          .ifPresent(target -> byTarget.computeIfAbsent(target, t -> new ArrayList<>()).add(entry));
    }
  }

  /** The entries that stand, corrected, without the corrections; in the order given. */
  public static List<LogEntry> applied(List<LogEntry> entries) {
    Corrections corrections = new Corrections(entries);
    if (corrections.byTarget.isEmpty()) {
      return entries;
    }
    return entries.stream()
        .filter(entry -> entry.word() != Word.CORRECTION)
        .map(corrections::standing)
        .flatMap(Optional::stream)
        .toList();
  }

  /**
   * One entry, or one correction, with what corrects it among all entries applied; empty if it was
   * voided.
   */
  public static Optional<LogEntry> standing(LogEntry entry, List<LogEntry> all) {
    return new Corrections(all).standing(entry);
  }

  private Optional<LogEntry> standing(LogEntry entry) {
    if (byTarget.isEmpty()) {
      return Optional.of(entry);
    }
    LogEntry standing = entry;
    for (LogEntry correction : byTarget.getOrDefault(entry.id(), List.of())) {
      Optional<LogEntry> stands = standing(correction);
      if (stands.isEmpty()) {
        continue;
      }
      Details cells = stands.get().details();
      if (cells.isBlank()) {
        return Optional.empty();
      }
      standing = standing.with(standing.details().correctedBy(cells));
    }
    return Optional.of(standing);
  }
}
