package chillwright.core.log;

import java.time.Instant;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * All that was written of one lot, in the order of writing, corrections included, with the logs of
 * the lots it came from. The first entry names the food, its category and the sources.
 *
 * @param entries at least one, the first of them no correction
 * @param sources one for each lot named in {@code from} of the first entry, in that order; they
 *     never lead back to this lot
 */
public record LotLog(LotId lot, List<LogEntry> entries, List<LotLog> sources) {
  public LotLog {
    Objects.requireNonNull(lot, "lot");
    entries = List.copyOf(entries);
    sources = List.copyOf(sources);
    if (entries.isEmpty() || entries.get(0).word() == Word.CORRECTION) {
      throw new IllegalArgumentException(
          "a lot begins with an entry that is no correction: " + lot);
    }
  }

  /** Whether it is a part of one other lot, and nothing was made of that. */
  public boolean isDivided() {
    return sources.size() == 1 && !Timeline.MADE.contains(entries.get(0).word());
  }

  /** Its entries and those of all lots it came from, as they were written. */
  public List<LogEntry> withSources() {
    Set<LotLog> logs = new LinkedHashSet<>();
    collect(logs);
    return logs.stream().flatMap(log -> log.entries.stream()).toList();
  }

  private void collect(Set<LotLog> logs) {
    if (logs.add(this)) {
      sources.forEach(source -> source.collect(logs));
    }
  }

  /**
   * When all of it was thrown away: nothing can be made of it after that. Empty also where portions
   * were taken out before that may have gone into that lot.
   *
   * @param into the lot that is to be made of it; empty for one that has no code yet
   */
  public Optional<Instant> thrownAway(Optional<LotId> into) {
    return Descent.of(this).thrownAway(into);
  }
}
