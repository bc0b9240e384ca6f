package chillwright.core.log;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/**
 * Corrections of counts for a part in which more was found than the log says: its own first count,
 * the row of the lot it was divided from, and, where more were made than was written, what that lot
 * began with, up to the lot that is no part.
 */
public final class CountedPart {
  private CountedPart() {}

  /**
   * A count as it should have been written.
   *
   * @param isFirst whether it is what the lot began with
   * @param portions what it becomes
   */
  public record Count(LotId lot, EntryId entry, boolean isFirst, int portions) {}

  /**
   * What must be corrected so that the part has so many portions more.
   *
   * @param moreMade whether more were made; else they were divided off, and the lot it came from
   *     has as many less
   * @return empty where the counts of the lots do not tell, or that lot has not so many left
   */
  public static List<Count> of(LotLog part, int more, boolean moreMade) {
    List<Count> counts = new ArrayList<>();
    boolean isTold = part.isDivided() && add(part, more, moreMade, counts);
    return isTold ? List.copyOf(counts) : List.of();
  }

  private static boolean add(LotLog part, int more, boolean moreMade, List<Count> counts) {
    LotLog whole = part.sources().get(0);
    HandedOn handedOn = new HandedOn(whole.entries());
    List<EntryId> rows = handedOn.standingFor(part.lot());
    if (rows.size() != 1) {
      return false;
    }
    EntryId row = rows.get(0);
    int gone = Math.toIntExact(handedOn.portionsFor(part.lot()));
    if (moreMade) {
      boolean isTold =
          whole.isDivided() ? add(whole, more, true, counts) : addFirst(whole, more, counts);
      if (!isTold) {
        return false;
      }
    } else {
      OptionalInt left = Portions.of(Corrections.applied(whole.entries())).left();
      if (left.isEmpty() || left.getAsInt() < more) {
        return false;
      }
    }
    counts.add(new Count(whole.lot(), row, false, gone + more));
    return addFirst(part, more, counts);
  }

  private static boolean addFirst(LotLog lot, int more, List<Count> counts) {
    List<LogEntry> own = Corrections.applied(lot.entries());
    OptionalInt began = own.isEmpty() ? OptionalInt.empty() : own.get(0).details().portions();
    began.ifPresent(count -> counts.add(new Count(lot.lot(), own.get(0).id(), true, count + more)));
    return began.isPresent();
  }
}
