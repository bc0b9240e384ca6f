package chillwright.core.log;

import java.util.List;
import java.util.Optional;

/**
 * What {@link Intake} made of the rows of one or more files, or of one request. Only lots without
 * any fault are in it; whether they may be stored while others have faults is the caller's to say.
 *
 * @param lots the good lots that have something new, each after the lots it came from
 * @param ofPlaces new entries of places: readings without a lot, and corrections of such
 * @param ids for each incoming row, in order, the id of its entry, new or repeated; empty for a row
 *     that could not be read or whose id belongs to another entry
 * @param repeats rows skipped because they are stored already, or stood earlier in the same input
 * @param problems all faults, in the order of the rows
 */
public record Admission(
    List<Lot> lots,
    List<LogEntry> ofPlaces,
    List<Optional<EntryId>> ids,
    int repeats,
    List<Problem> problems) {
  /**
   * A lot that grew.
   *
   * @param log stored and new entries, with its sources as they are after this admission
   * @param added the new entries, in the order of writing; at least one
   */
  public record Lot(LotLog log, List<LogEntry> added) {
    public Lot {
      added = List.copyOf(added);
    }
  }

  public Admission {
    lots = List.copyOf(lots);
    ofPlaces = List.copyOf(ofPlaces);
    ids = List.copyOf(ids);
    problems = List.copyOf(problems);
  }

  public boolean isFaultless() {
    return problems.isEmpty();
  }
}
