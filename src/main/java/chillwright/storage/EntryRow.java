package chillwright.storage;

import static chillwright.storage.schema.Tables.LOG_ENTRY;

import chillwright.core.log.Details;
import chillwright.core.log.EntryId;
import chillwright.core.log.LogEntry;
import chillwright.storage.schema.tables.records.LogEntryRecord;
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
  }

  static LogEntry entry(LogEntryRecord row) {
    return new LogEntry(
        new EntryId(row.getEntry()),
        Codes.WORDS.word(row.getWord()),
        row.getHappenedAt(),
        row.getWrittenAt(),
        Optional.ofNullable(row.getPerson()),
        Optional.ofNullable(row.getNote()),
        Optional.ofNullable(row.getCorrects()).map(EntryId::new),
        details(row));
  }

  private static Details details(LogEntryRecord row) {
    return new Details(
        Optional.ofNullable(row.getFood()),
        Optional.ofNullable(row.getCategory()),
        Values.temperature(row.getTemperature(), row.getTemperatureScale()),
        Codes.HOWS.wordOrEmpty(row.getHow()),
        Optional.ofNullable(row.getPlace()),
        Values.temperature(row.getAir(), row.getAirScale()),
        Values.count(row.getPortions()),
        Values.lotIds(row.getSources()),
        Optional.ofNullable(row.getRecipient()),
        Values.mark(row.getUntilAt(), row.getUntilDay()),
        Optional.ofNullable(row.getProbe()));
  }
}
