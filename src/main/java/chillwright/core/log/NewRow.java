package chillwright.core.log;

import java.time.Instant;

/**
 * A row on its way into the log, with its place in the input and the id its entry has or gets.
 *
 * @param index 0 for the first row of the input
 */
record NewRow(int index, Row row, EntryId id) {
  boolean isCorrection() {
    return row.word() == Word.CORRECTION;
  }

  Details details() {
    return row.details();
  }

  /** The entry that is made of it, with all its cells. */
  LogEntry entry(Instant writtenAt) {
    return new LogEntry(
        id, row.word(), row.when(), writtenAt, row.by(), row.note(), row.corrects(), row.details());
  }

  /** The entry of a later row: what it repeats of the lot's first row is left out. */
  LogEntry laterEntry(Instant writtenAt) {
    Details own = isCorrection() ? row.details() : row.details().withoutFirstRowCells();
    return new LogEntry(
        id, row.word(), row.when(), writtenAt, row.by(), row.note(), row.corrects(), own);
  }
}
