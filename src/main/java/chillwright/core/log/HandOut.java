package chillwright.core.log;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;

/**
 * Portions that left a lot, and for where.
 *
 * @param entry as it stands, corrections applied
 */
public record HandOut(LogEntry entry, Kind kind) {
  /** What became of them. */
  public enum Kind {
    /** Handed out or taken, to whoever the row names. */
    TAKEN,
    SERVED,
    DISCARDED,
    /** Divided or put into another lot. */
    OTHER_LOT,
    /** Put back into the lot that this one was divided from. */
    PUT_BACK,
    /** Found missing when somebody counted: nobody got them. */
    COUNTED;

    /** As answers and tables have it. */
    public String key() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  /** Whether it left the kitchen, or was thrown away; else it is still there or nobody got it. */
  public boolean isGiven() {
    return kind == Kind.TAKEN || kind == Kind.SERVED || kind == Kind.DISCARDED;
  }

  /**
   * All that left a lot, in order of time.
   *
   * @param entries of the lot, corrections included
   * @param isSource whether the lot came from that one
   * @param isMade whether that lot came from this one
   */
  public static List<HandOut> of(
      List<LogEntry> entries, Predicate<LotId> isSource, Predicate<LotId> isMade) {
    List<HandOut> out = new ArrayList<>();
    for (LogEntry entry : Corrections.applied(entries)) {
      if (Portions.isOutgoing(entry.word())) {
        out.add(new HandOut(entry, kind(entry, isSource, isMade)));
      }
    }
    out.sort(Comparator.comparing(one -> one.entry().happenedAt()));
    return out;
  }

  private static Kind kind(LogEntry entry, Predicate<LotId> isSource, Predicate<LotId> isMade) {
    if (entry.word() != Word.PORTIONS) {
      return entry.word() == Word.SERVED ? Kind.SERVED : Kind.DISCARDED;
    }
    if (entry.is(How.COUNTED)) {
      return Kind.COUNTED;
    }
    boolean isLot = entry.details().to().filter(LotId::isCode).isPresent();
    if (isLot && isSource.test(new LotId(entry.details().to().get()))) {
      return Kind.PUT_BACK;
    }
    return isLot && isMade.test(new LotId(entry.details().to().get()))
        ? Kind.OTHER_LOT
        : Kind.TAKEN;
  }
}
