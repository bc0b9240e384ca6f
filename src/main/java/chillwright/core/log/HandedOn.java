package chillwright.core.log;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What a lot handed on, read from its {@code portions} rows that name who got them. A row that
 * named somebody once is remembered, though it was corrected or voided since.
 */
final class HandedOn {
  private final List<LogEntry> entries;
  private final Map<EntryId, LogEntry> byId = new HashMap<>();
  private final Map<EntryId, LogEntry> standing = new HashMap<>();
  private final Map<String, Set<EntryId>> rowsByTaker = new LinkedHashMap<>();

  /**
   * @param entries of one lot in the order of writing, corrections included
   */
  HandedOn(List<LogEntry> entries) {
    this.entries = List.copyOf(entries);
    entries.forEach(entry -> byId.put(entry.id(), entry));
    Corrections.applied(entries).forEach(entry -> standing.put(entry.id(), entry));
    for (LogEntry entry : entries) {
      Optional<String> taker = entry.details().to();
      Optional<LogEntry> row = taker.flatMap(to -> corrected(entry));
      row.filter(found -> found.word() == Word.PORTIONS)
          .ifPresent(
              found ->
                  rowsByTaker
                      .computeIfAbsent(taker.get(), to -> new LinkedHashSet<>())
                      .add(found.id()));
    }
  }

  /** The lot's first row as it stands; empty where nothing was written yet. */
  Optional<LogEntry> first() {
    return entries.stream().findFirst().map(LogEntry::id).map(standing::get);
  }

  /** The row that a correction changes in the end, or the row itself. */
  Optional<LogEntry> corrected(LogEntry entry) {
    LogEntry row = entry;
    for (int i = 0; row != null && row.corrects().isPresent(); i++) {
      row = i == CorrectionRows.LONGEST_CHAIN ? null : byId.get(row.corrects().get());
    }
    return Optional.ofNullable(row);
  }

  /** Everybody that a row names or named, as written or as corrected. */
  Set<String> takers(EntryId row) {
    Set<String> takers = new LinkedHashSet<>();
    rowsByTaker.forEach(
        (taker, rows) -> {
          if (rows.contains(row)) {
            takers.add(taker);
          }
        });
    return takers;
  }

  /** The rows that name or named a lot, in the order of writing; maybe none. */
  Set<EntryId> rowsFor(LotId taker) {
    return rowsByTaker.getOrDefault(taker.text(), Set.of());
  }

  /** The rows that still name a lot. */
  List<EntryId> standingFor(LotId taker) {
    return rowsFor(taker).stream().filter(row -> isFor(standing.get(row), taker)).toList();
  }

  private static boolean isFor(LogEntry row, LotId taker) {
    return row != null && row.details().to().filter(taker.text()::equals).isPresent();
  }

  /** The portions that went there by the rows as they stand. */
  long portionsFor(LotId taker) {
    return standingFor(taker).stream()
        .mapToLong(row -> standing.get(row).details().portions().orElse(0))
        .sum();
  }
}
