package chillwright.core.log;

import java.util.List;
import java.util.Objects;

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
}
