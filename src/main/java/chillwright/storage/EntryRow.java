package chillwright.storage;

import static chillwright.storage.schema.Tables.LOG_ENTRY;

import chillwright.core.log.Details;
import chillwright.core.log.EntryId;
import chillwright.core.log.LogEntry;
import chillwright.core.measure.Depth;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;

/** An entry of a lot as a row, and back. */
final class EntryRow {
  private static final Cell<Long> LOT_ID = Cell.of(LOG_ENTRY, LOG_ENTRY.LOT_ID);
  private static final Cell<Long> SEQ = Cell.of(LOG_ENTRY, LOG_ENTRY.SEQ);
  private static final Cell<String> ENTRY = Cell.of(LOG_ENTRY, LOG_ENTRY.ENTRY);
  private static final Cell<Integer> WORD = Cell.of(LOG_ENTRY, LOG_ENTRY.WORD);
  private static final Cell<Instant> HAPPENED_AT = Cell.of(LOG_ENTRY, LOG_ENTRY.HAPPENED_AT);
  private static final Cell<Instant> WRITTEN_AT = Cell.of(LOG_ENTRY, LOG_ENTRY.WRITTEN_AT);
  private static final Cell<String> PERSON = Cell.of(LOG_ENTRY, LOG_ENTRY.PERSON);
  private static final Cell<String> NOTE = Cell.of(LOG_ENTRY, LOG_ENTRY.NOTE);
  private static final Cell<String> CORRECTS = Cell.of(LOG_ENTRY, LOG_ENTRY.CORRECTS);
  private static final Cell<Integer> TEMPERATURE = Cell.of(LOG_ENTRY, LOG_ENTRY.TEMPERATURE);
  private static final Cell<Integer> TEMPERATURE_SCALE =
      Cell.of(LOG_ENTRY, LOG_ENTRY.TEMPERATURE_SCALE);
  private static final Cell<Integer> HOW = Cell.of(LOG_ENTRY, LOG_ENTRY.HOW);
  private static final Cell<String> PLACE = Cell.of(LOG_ENTRY, LOG_ENTRY.PLACE);
  private static final Cell<Integer> AIR = Cell.of(LOG_ENTRY, LOG_ENTRY.AIR);
  private static final Cell<Integer> AIR_SCALE = Cell.of(LOG_ENTRY, LOG_ENTRY.AIR_SCALE);
  private static final Cell<Integer> PORTIONS = Cell.of(LOG_ENTRY, LOG_ENTRY.PORTIONS);
  private static final Cell<String> FOOD = Cell.of(LOG_ENTRY, LOG_ENTRY.FOOD);
  private static final Cell<String> CATEGORY = Cell.of(LOG_ENTRY, LOG_ENTRY.CATEGORY);
  private static final Cell<String> SOURCES = Cell.of(LOG_ENTRY, LOG_ENTRY.SOURCES);
  private static final Cell<String> RECIPIENT = Cell.of(LOG_ENTRY, LOG_ENTRY.RECIPIENT);
  private static final Cell<Instant> UNTIL_AT = Cell.of(LOG_ENTRY, LOG_ENTRY.UNTIL_AT);
  private static final Cell<LocalDate> UNTIL_DAY = Cell.of(LOG_ENTRY, LOG_ENTRY.UNTIL_DAY);
  private static final Cell<String> PROBE = Cell.of(LOG_ENTRY, LOG_ENTRY.PROBE);
  private static final Cell<String> CONTAINER = Cell.of(LOG_ENTRY, LOG_ENTRY.CONTAINER);
  private static final Cell<String> DEPTH = Cell.of(LOG_ENTRY, LOG_ENTRY.DEPTH);

  private EntryRow() {}

  /** The cells of an entry, to be inserted. */
  static Object[] cells(long lotId, long seq, LogEntry entry) {
    Object[] row = new Object[LOG_ENTRY.fields().length];
    LOT_ID.set(row, lotId);
    SEQ.set(row, seq);
    ENTRY.set(row, entry.id().text());
    WORD.set(row, Codes.WORDS.of(entry.word()));
    HAPPENED_AT.set(row, entry.happenedAt());
    WRITTEN_AT.set(row, entry.writtenAt());
    PERSON.set(row, entry.by().orElse(null));
    NOTE.set(row, entry.note().orElse(null));
    CORRECTS.set(row, entry.corrects().map(EntryId::text).orElse(null));
    describe(row, entry.details());
    return row;
  }

  private static void describe(Object[] row, Details details) {
    TEMPERATURE.set(row, Values.hundredths(details.temperature()));
    TEMPERATURE_SCALE.set(row, Values.scale(details.temperature()));
    HOW.set(row, Codes.HOWS.orNull(details.how()));
    PLACE.set(row, details.place().orElse(null));
    AIR.set(row, Values.hundredths(details.air()));
    AIR_SCALE.set(row, Values.scale(details.air()));
    PORTIONS.set(row, Values.count(details.portions()));
    FOOD.set(row, details.food().orElse(null));
    CATEGORY.set(row, details.category().orElse(null));
    SOURCES.set(row, details.from().isEmpty() ? null : Values.joined(details.from()));
    RECIPIENT.set(row, details.to().orElse(null));
    UNTIL_AT.set(row, Values.markedAt(details.until()));
    UNTIL_DAY.set(row, Values.markedDay(details.until()));
    PROBE.set(row, details.probe().orElse(null));
    CONTAINER.set(row, details.container().orElse(null));
    DEPTH.set(row, details.depth().map(Depth::cell).orElse(null));
  }

  /**
   * The entry of a row that lists all columns of the table.
   *
   * @param before how many columns stand before those
   */
  static LogEntry entry(ResultSet row, int before) throws SQLException {
    return new LogEntry(
        new EntryId(ENTRY.get(row, before)),
        Codes.WORDS.word(WORD.get(row, before)),
        HAPPENED_AT.get(row, before),
        WRITTEN_AT.get(row, before),
        Optional.ofNullable(PERSON.get(row, before)),
        Optional.ofNullable(NOTE.get(row, before)),
        Optional.ofNullable(CORRECTS.get(row, before)).map(EntryId::new),
        details(row, before));
  }

  private static Details details(ResultSet row, int before) throws SQLException {
    return new Details(
        Optional.ofNullable(FOOD.get(row, before)),
        Optional.ofNullable(CATEGORY.get(row, before)),
        Values.temperature(TEMPERATURE.get(row, before), TEMPERATURE_SCALE.get(row, before)),
        Codes.HOWS.wordOrEmpty(HOW.get(row, before)),
        Optional.ofNullable(PLACE.get(row, before)),
        Values.temperature(AIR.get(row, before), AIR_SCALE.get(row, before)),
        Values.count(PORTIONS.get(row, before)),
        Values.lotIds(SOURCES.get(row, before)),
        Optional.ofNullable(RECIPIENT.get(row, before)),
        Values.mark(UNTIL_AT.get(row, before), UNTIL_DAY.get(row, before)),
        Optional.ofNullable(PROBE.get(row, before)),
        Optional.ofNullable(CONTAINER.get(row, before)),
        Optional.ofNullable(DEPTH.get(row, before)).flatMap(Depth::read));
  }
}
