package chillwright.core.log;

import java.util.Optional;

/** The part of the log that a row goes to: one lot's, or that of all places together. */
interface Page {
  /** The lot; empty for the page of places. */
  Optional<LotId> lot();

  /** The stored entry of this page with that id. */
  Optional<LogEntry> storedEntry(EntryId id);

  /** The entry that says the same, stored or earlier in this input. */
  Optional<EntryId> same(Content content);

  void add(NewRow row, Content content);

  /** Notes a row that says again what an entry says already. */
  void repeat(NewRow row);

  /** Notes that a row of this page has a fault and is not taken in. */
  void lose();

  /** What made ids of this page begin with, and the number that comes next. */
  String idStart(Row row);

  int nextNumber();
}
