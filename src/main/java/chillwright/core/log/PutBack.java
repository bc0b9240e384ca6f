package chillwright.core.log;

import java.util.List;
import java.util.Optional;

/**
 * How a part that was made by mistake goes back into the lot it was divided from: {@code portions}
 * of the part with its count and the lot in {@code to}, and corrections that void the lot's own
 * rows for it. Nothing of it is counted as served or discarded then.
 *
 * @param portions all that the part began with
 * @param rows of the whole, to be voided
 */
public record PutBack(LotId part, LotId whole, int portions, List<EntryId> rows) {
  public PutBack {
    rows = List.copyOf(rows);
  }

  /** Empty where anything but its first row was told of the part, or the counts do not tell. */
  public static Optional<PutBack> of(LotLog part) {
    List<LogEntry> own = Corrections.applied(part.entries());
    if (!part.isDivided() || own.size() != 1 || own.get(0).details().portions().isEmpty()) {
      return Optional.empty();
    }
    LotLog whole = part.sources().get(0);
    int portions = own.get(0).details().portions().getAsInt();
    HandedOn handedOn = new HandedOn(whole.entries());
    boolean isEnded = Corrections.applied(whole.entries()).stream().anyMatch(PutBack::takesAll);
    return isEnded || handedOn.portionsFor(part.lot()) != portions
        ? Optional.empty()
        : Optional.of(
            new PutBack(part.lot(), whole.lot(), portions, handedOn.standingFor(part.lot())));
  }

  private static boolean takesAll(LogEntry entry) {
    return (entry.word() == Word.SERVED || entry.word() == Word.DISCARDED)
        && entry.details().portions().isEmpty();
  }
}
