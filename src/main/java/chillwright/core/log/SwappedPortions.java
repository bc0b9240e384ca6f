package chillwright.core.log;

import chillwright.core.log.CountedPart.Count;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Corrections of counts where a lot has portions that were written for a part beside it, or for a
 * part of its own. What the part began with, and what left the whole for it, is lowered; what was
 * missing there at a count was never there. The sum of the whole and its parts stays.
 */
public final class SwappedPortions {
  private SwappedPortions() {}

  /**
   * A part that portions were written for.
   *
   * @param left how many it has by its log
   * @param missing how many of it were missing at a count
   * @param most so many can have been written for it by mistake
   */
  public record Giver(LotId part, int left, int missing, int most) {}

  /**
   * What a part can have been given by mistake; empty where the counts do not tell, or it stands
   * otherwise than the lot that has them, since portions bring their days along.
   */
  public static Optional<Giver> giver(LotLog taker, LotLog part, ZoneId zone) {
    if (!isBeside(taker, part) || rows(part).size() != 1 || !isAlike(taker, part, zone)) {
      return Optional.empty();
    }
    List<LogEntry> own = Corrections.applied(part.entries());
    OptionalInt began = own.isEmpty() ? OptionalInt.empty() : own.get(0).details().portions();
    OptionalInt left = own.isEmpty() ? OptionalInt.empty() : Portions.of(own).left();
    if (began.isEmpty() || left.isEmpty()) {
      return Optional.empty();
    }
    int missing = missing(own).stream().mapToInt(row -> row.details().portions().orElse(0)).sum();
    int most = Math.min(left.getAsInt() + missing, began.getAsInt() - 1);
    return Optional.of(new Giver(part.lot(), left.getAsInt(), missing, most))
        .filter(giver -> giver.most() > 0);
  }

  /** Corrections that lower a part by so many; those of the other lot are its own. */
  public static List<Count> lowered(LotLog part, int fewer) {
    List<Count> counts = new ArrayList<>();
    List<LogEntry> own = Corrections.applied(part.entries());
    int back = fewer;
    for (LogEntry row : missing(own)) {
      int counted = row.details().portions().orElse(0);
      int taken = Math.min(back, counted);
      if (taken > 0) {
        counts.add(new Count(part.lot(), row.id(), false, counted - taken));
        back -= taken;
      }
    }
    LotLog whole = part.sources().get(0);
    int gone = Math.toIntExact(new HandedOn(whole.entries()).portionsFor(part.lot()));
    counts.add(new Count(whole.lot(), rows(part).get(0), false, gone - fewer));
    int began = own.get(0).details().portions().orElseThrow();
    counts.add(new Count(part.lot(), own.get(0).id(), true, began - fewer));
    return List.copyOf(counts);
  }

  /** Corrections that raise a part by so many; of a whole what left it for its parts does. */
  public static List<Count> raised(LotLog taker, int more) {
    if (!taker.isDivided() || rows(taker).size() != 1) {
      return List.of();
    }
    LotLog whole = taker.sources().get(0);
    int gone = Math.toIntExact(new HandedOn(whole.entries()).portionsFor(taker.lot()));
    LogEntry first = Corrections.applied(taker.entries()).get(0);
    int began = first.details().portions().orElse(0);
    return List.of(
        new Count(whole.lot(), rows(taker).get(0), false, gone + more),
        new Count(taker.lot(), first.id(), true, began + more));
  }

  /** A part of the same lot, or of the lot itself. */
  private static boolean isBeside(LotLog taker, LotLog part) {
    if (!part.isDivided() || part.lot().equals(taker.lot())) {
      return false;
    }
    LotId whole = part.sources().get(0).lot();
    boolean isSibling =
        taker.isDivided()
            && taker.sources().get(0).lot().equals(whole)
            && rows(taker).size() == 1
            && !Corrections.applied(taker.entries()).isEmpty();
    return whole.equals(taker.lot()) || isSibling;
  }

  /** The rows of the whole that tell of a part. */
  private static List<EntryId> rows(LotLog part) {
    return new HandedOn(part.sources().get(0).entries()).standingFor(part.lot());
  }

  /** The same became of both, on the same days. */
  private static boolean isAlike(LotLog taker, LotLog part, ZoneId zone) {
    List<LogEntry> own = Corrections.applied(part.entries());
    List<LogEntry> others = Corrections.applied(taker.entries());
    boolean isWhole = part.sources().get(0).lot().equals(taker.lot());
    return isWhole
        ? phases(own, zone).size() <= 1 && PutBack.state(own).equals(PutBack.state(others))
        : phases(own, zone).equals(phases(others, zone));
  }

  private record OnDay(Word word, Optional<How> how, LocalDate day) {}

  private static List<OnDay> phases(List<LogEntry> rows, ZoneId zone) {
    return rows.stream()
        .filter(row -> PutBack.tellsPhase(row.word()))
        .map(
            row ->
                new OnDay(
                    row.word(), row.details().how(), LocalDate.ofInstant(row.happenedAt(), zone)))
        .toList();
  }

  /** What was missing at counts, the last first. */
  private static List<LogEntry> missing(List<LogEntry> own) {
    List<LogEntry> counted = new ArrayList<>();
    own.stream()
        .filter(row -> row.word() == Word.PORTIONS)
        .filter(row -> row.details().how().filter(How.COUNTED::equals).isPresent())
        .forEach(row -> counted.add(0, row));
    return counted;
  }
}
