package chillwright.core.log;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * How a part that was made by mistake goes back into the lot it was divided from: {@code portions}
 * of the part with its count and the lot in {@code to}, and corrections that void the lot's own
 * rows for it. Nothing of it is counted as served or discarded then.
 *
 * @param portions all that the part began with
 * @param rows of the whole, to be voided
 */
public record PutBack(LotId part, LotId whole, int portions, List<EntryId> rows) {
  /** Words that leave food as it was, or tell of some of its portions. */
  private static final Set<Word> TELLS_NO_PHASE =
      EnumSet.of(Word.READING, Word.MOVED, Word.ACTION, Word.PORTIONS, Word.SERVED, Word.DISCARDED);

  public PutBack {
    rows = List.copyOf(rows);
  }

  /**
   * Empty where something was told of the part that the whole would not tell as well, or the counts
   * do not tell.
   */
  public static Optional<PutBack> of(LotLog part, ZoneId zone) {
    List<LogEntry> own = Corrections.applied(part.entries());
    if (!part.isDivided() || own.isEmpty() || own.get(0).details().portions().isEmpty()) {
      return Optional.empty();
    }
    LotLog whole = part.sources().get(0);
    int portions = own.get(0).details().portions().getAsInt();
    HandedOn handedOn = new HandedOn(whole.entries());
    List<LogEntry> all = Corrections.applied(whole.entries());
    boolean isEnded = all.stream().anyMatch(PutBack::takesAll);
    return isEnded || !isToldByWhole(own, all, zone) || handedOn.portionsFor(part.lot()) != portions
        ? Optional.empty()
        : Optional.of(
            new PutBack(part.lot(), whole.lot(), portions, handedOn.standingFor(part.lot())));
  }

  /**
   * Whether nothing happened to the part, or it was frozen as the whole was, no later by the day
   * and with nothing read of it: then the days of the whole are no more than its own.
   */
  private static boolean isToldByWhole(List<LogEntry> own, List<LogEntry> whole, ZoneId zone) {
    if (own.size() == 1) {
      return true;
    }
    boolean onlyFroze =
        own.stream().skip(1).allMatch(row -> row.word() == Word.MOVED || isFreezing(row));
    if (!onlyFroze || !isFrozen(own) || !isFrozen(whole)) {
      return false;
    }
    boolean beganFrozen = own.get(0).word() == Word.FROZEN;
    return beganFrozen || !day(own, zone).isAfter(day(whole, zone));
  }

  private static boolean isFreezing(LogEntry row) {
    return row.word() == Word.FROZEN
        && row.temperature().isEmpty()
        && row.details().how().filter(how -> how != How.HARD).isEmpty();
  }

  /** By the last row that tells what became of all of it. */
  private static boolean isFrozen(List<LogEntry> rows) {
    return rows.stream()
        .map(LogEntry::word)
        .filter(word -> !TELLS_NO_PHASE.contains(word))
        .reduce((before, last) -> last)
        .filter(Word.FROZEN::equals)
        .isPresent();
  }

  /** The day on which it was frozen first. */
  private static LocalDate day(List<LogEntry> rows, ZoneId zone) {
    return rows.stream()
        .filter(row -> row.word() == Word.FROZEN)
        .map(row -> LocalDate.ofInstant(row.happenedAt(), zone))
        .min(Comparator.naturalOrder())
        .orElseThrow();
  }

  private static boolean takesAll(LogEntry entry) {
    return (entry.word() == Word.SERVED || entry.word() == Word.DISCARDED)
        && entry.details().portions().isEmpty();
  }
}
