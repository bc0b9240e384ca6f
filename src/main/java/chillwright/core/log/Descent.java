package chillwright.core.log;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A lot with what it comes from, as it will be after the admission.
 *
 * @param entries in the order of writing; may be empty where a lot has only unreadable rows
 * @param firsts what its first row says, as written and as corrected
 * @param used when the food of its sources went into it
 * @param sources the lots named in its first row, as corrected
 */
record Descent(
    LotId lot,
    List<LogEntry> entries,
    Set<Details> firsts,
    Optional<Instant> used,
    List<LotId> sources) {
  static Descent of(LotId lot, List<LogEntry> entries, Optional<EntryId> first) {
    Optional<LogEntry> written = first.flatMap(id -> find(id, entries));
    if (written.isEmpty()) {
      return new Descent(lot, entries, Set.of(), Optional.empty(), List.of());
    }
    LogEntry corrected =
        find(written.get().id(), Corrections.applied(entries)).orElse(written.get());
    Set<Details> firsts =
        corrected.details().equals(written.get().details())
            ? Set.of(corrected.details())
            : Set.of(written.get().details(), corrected.details());
    return new Descent(
        lot, entries, firsts, Optional.of(corrected.happenedAt()), corrected.details().from());
  }

  private static Optional<LogEntry> find(EntryId id, List<LogEntry> entries) {
    for (LogEntry entry : entries) {
      if (entry.id().equals(id)) {
        return Optional.of(entry);
      }
    }
    return Optional.empty();
  }

  static Descent of(LotLog log) {
    Descent read = of(log.lot(), log.entries(), Optional.of(log.entries().get(0).id()));
    List<LotId> sources = log.sources().stream().map(LotLog::lot).toList();
    return new Descent(read.lot, read.entries, read.firsts, read.used, sources);
  }

  /** When its first standing entry happened. */
  Optional<Instant> began() {
    return Corrections.applied(entries).stream().map(LogEntry::happenedAt).min(Instant::compareTo);
  }

  /**
   * When what was left of it was thrown away, if no portion can have gone into that lot before:
   * none whose row names that lot, or nobody. What was missing at a count went into none.
   */
  Optional<Instant> thrownAway(Optional<LotId> into) {
    List<LogEntry> standing =
        Corrections.applied(entries).stream()
            .sorted(Comparator.comparing(LogEntry::happenedAt))
            .toList();
    if (standing.isEmpty() || standing.stream().anyMatch(e -> mayBeFor(e, into))) {
      return Optional.empty();
    }
    return Portions.of(standing)
        .closedAt()
        .filter(
            end ->
                standing.stream()
                    .anyMatch(e -> e.word() == Word.DISCARDED && e.happenedAt().equals(end)));
  }

  private static boolean mayBeFor(LogEntry row, Optional<LotId> into) {
    boolean isCounted = row.details().how().filter(How.COUNTED::equals).isPresent();
    return row.word() == Word.PORTIONS
        && !isCounted
        && row.details()
            .to()
            .filter(to -> into.filter(l -> l.text().equals(to)).isEmpty())
            .isEmpty();
  }
}
