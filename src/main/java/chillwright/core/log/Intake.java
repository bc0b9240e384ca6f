package chillwright.core.log;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;

/**
 * Takes rows into the log, if they fit what is stored: every id once, a first row that says what
 * the lot is, sources that are known and do not lead back to the lot, corrections of entries that
 * are there, nothing after the end of a lot, no more portions than were left and none counted
 * twice. Every fault is found at once, and each lot stands or falls by itself with the lots it came
 * from.
 *
 * <p>A row that says the same as a stored entry, or as an earlier row of the same input, is a
 * repeat: skipped and counted, so a file that grew can be taken in again. A row without an id is
 * compared with entries of any id; one of a file that says another thing of a moment than the
 * stored entry does is a fault ({@link ChangedRows}). Rows may come in any order of time, lots may
 * be interleaved, and a source may stand after the lot made of it. A row that happened long before
 * it is written is late, and no fault.
 */
public final class Intake {
  private final Stored stored;
  private final KeepingList keeping;
  private final ZoneId zone;
  private final Instant writtenAt;

  /**
   * @param zone of the kitchen; faults tell times in it
   * @param writtenAt the moment that new entries were written down
   */
  public Intake(Stored stored, KeepingList keeping, ZoneId zone, Instant writtenAt) {
    this.stored = stored;
    this.keeping = keeping;
    this.zone = zone;
    this.writtenAt = writtenAt;
  }

  /** Admits the rows of one request, or of all files that are taken in together, in order. */
  public Admission admit(List<? extends Incoming> incoming) {
    IntakeFaults faults = new IntakeFaults(zone);
    Sorting sorting = new Sorting(stored, faults);
    sorting.take(incoming);
    Map<LotId, LotDraft> lots = sorting.lots();
    ChangedRows changedRows = new ChangedRows(faults);
    lots.values().forEach(changedRows::check);
    changedRows.check(sorting.places());
    FirstRows firstRows = new FirstRows(keeping, faults);
    lots.values().forEach(firstRows::check);
    CorrectionRows corrections = new CorrectionRows(stored, sorting, faults, firstRows);
    lots.values().forEach(corrections::check);
    corrections.check(sorting.places());
    Lineage lineage = new Lineage(stored, lots, writtenAt, faults);
    LaterRows laterRows = new LaterRows(lineage.descents(), faults);
    lots.values().forEach(laterRows::check);
    lots.values()
        .forEach(lot -> EndOfLot.check(lot, lineage.descents().get(lot.id()).entries(), faults));
    lineage.check();
    DividedLots divided = new DividedLots(stored, lots, lineage.descents(), faults);
    lots.values().forEach(divided::check);
    TopUps topUps = new TopUps(stored, lots, lineage.descents(), faults);
    lots.values().forEach(topUps::check);
    LateDiscards lateDiscards = new LateDiscards(stored, lineage.descents(), faults);
    lots.values().forEach(lateDiscards::check);
    return new Admission(
        lineage.grown(),
        sorting.places().added(writtenAt),
        sorting.ids(),
        sorting.repeats(),
        faults.inOrder());
  }
}
