package chillwright.storage;

import chillwright.core.log.Details;
import chillwright.core.log.EntryId;
import chillwright.core.log.LogEntry;
import chillwright.storage.schema.tables.records.LogEntryRecord;
import java.util.Optional;

/** An entry of a lot as a row, and back. */
final class EntryRow {
  private EntryRow() {}

  static LogEntryRecord record(long lotId, long seq, LogEntry entry) {
    LogEntryRecord row = new LogEntryRecord();
    row.setLotId(lotId);
    row.setSeq(seq);
    row.setEntry(entry.id().text());
    row.setWord(Codes.WORDS.of(entry.word()));
    row.setHappenedAt(entry.happenedAt());
    row.setWrittenAt(entry.writtenAt());
    row.setPerson(entry.by().orElse(null));
    row.setNote(entry.note().orElse(null));
    row.setCorrects(entry.corrects().map(EntryId::text).orElse(null));
    describe(row, entry.details());
    return row;
  }

  private static void describe(LogEntryRecord row, Details details) {
    row.setTemperature(Values.hundredths(details.temperature()));
    row.setTemperatureScale(Values.scale(details.temperature()));
    row.setHow(Codes.HOWS.orNull(details.how()));
    row.setPlace(details.place().orElse(null));
    row.setAir(Values.hundredths(details.air()));
    row.setAirScale(Values.scale(details.air()));
    row.setPortions(Values.count(details.portions()));
    row.setFood(details.food().orElse(null));
    row.setCategory(details.category().orElse(null));
    row.setSources(details.from().isEmpty() ? null : Values.joined(details.from()));
    row.setRecipient(details.to().orElse(null));
    row.setUntilAt(Values.markedAt(details.until()));
    row.setUntilDay(Values.markedDay(details.until()));
    row.setProbe(details.probe().orElse(null));
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
