package chillwright.storage;

import static chillwright.storage.schema.Tables.PLACE_READING;
import static java.util.stream.Collectors.toList;

import chillwright.core.log.Corrections;
import chillwright.core.log.Details;
import chillwright.core.log.EntryId;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Word;
import chillwright.storage.Slice.Position;
import chillwright.storage.schema.tables.records.PlaceReadingRecord;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.impl.DSL;

/** Readings of places, and their corrections. Rows are only ever added. */
public final class PlaceStore {
  private final DSLContext sql;

  PlaceStore(DSLContext sql) {
    this.sql = sql;
  }

  /**
   * Which readings a list shows.
   *
   * @param from the earliest moment
   * @param to the latest moment
   */
  public record Filter(Optional<String> place, Instant from, Instant to) {}

  /**
   * Adds readings and corrections of such; a correction may stand before what it corrects. Then
   * every reading that was corrected is listed where it stands now.
   */
  public void append(List<LogEntry> entries) {
    entries.forEach(entry -> sql.insertInto(PLACE_READING).set(row(entry)).execute());
    Set<EntryId> corrected = new LinkedHashSet<>();
    entries.stream()
        .filter(entry -> entry.corrects().isPresent())
        .forEach(entry -> corrected.add(root(entry)));
    corrected.forEach(this::list);
  }

  /** The reading that is corrected in the end. */
  private EntryId root(LogEntry correction) {
    LogEntry entry = correction;
    while (entry.corrects().isPresent()) {
      EntryId target = entry.corrects().get();
      entry =
          entry(target)
              .orElseThrow(() -> new IllegalStateException("nothing has the id " + target));
    }
    return entry.id();
  }

  private void list(EntryId reading) {
    LogEntry written = entry(reading).orElseThrow();
    List<LogEntry> all = new ArrayList<>(corrections(List.of(reading)));
    List<String> ids = all.stream().map(entry -> entry.id().text()).collect(toList());
    ids.add(reading.text());
    all.add(0, written);
    String place =
        Corrections.standing(written, all).orElse(written).details().place().orElseThrow();
    sql.update(PLACE_READING)
        .set(PLACE_READING.PLACE, place)
        .where(PLACE_READING.ENTRY.in(ids))
        .execute();
  }

  private PlaceReadingRecord row(LogEntry entry) {
    Details details = entry.details();
    PlaceReadingRecord row = new PlaceReadingRecord();
    row.setEntry(entry.id().text());
    row.setPlace(details.place().orElse(""));
    row.setPlaceWritten(details.place().orElse(null));
    row.setWord(Codes.WORDS.of(entry.word()));
    row.setHappenedAt(entry.happenedAt());
    row.setWrittenAt(entry.writtenAt());
    row.setTemperature(Values.hundredths(details.temperature()));
    row.setTemperatureScale(Values.scale(details.temperature()));
    row.setHow(Codes.HOWS.orNull(details.how()));
    row.setAir(Values.hundredths(details.air()));
    row.setAirScale(Values.scale(details.air()));
    row.setProbe(details.probe().orElse(null));
    row.setPerson(entry.by().orElse(null));
    row.setNote(entry.note().orElse(null));
    row.setCorrects(entry.corrects().map(EntryId::text).orElse(null));
    return row;
  }

  public Optional<LogEntry> entry(EntryId id) {
    return sql.selectFrom(PLACE_READING)
        .where(PLACE_READING.ENTRY.eq(id.text()))
        .fetchOptional(PlaceStore::entry);
  }

  /** The entries of all places that happened at that moment. */
  public List<LogEntry> at(Instant moment) {
    return sql.selectFrom(PLACE_READING)
        .where(PLACE_READING.HAPPENED_AT.eq(moment))
        .orderBy(PLACE_READING.ID)
        .fetch(PlaceStore::entry);
  }

  /** Readings as they were written, the newest first. */
  public Slice<LogEntry> readings(Filter filter, int limit, Optional<Position> after) {
    List<PlaceReadingRecord> rows =
        sql.selectFrom(PLACE_READING)
            .where(filter.place().map(PLACE_READING.PLACE::eq).orElse(DSL.noCondition()))
            .and(PLACE_READING.HAPPENED_AT.between(filter.from(), filter.to()))
            .and(PLACE_READING.WORD.ne(Codes.WORDS.of(Word.CORRECTION)))
            .and(after.map(PlaceStore::isAfter).orElse(DSL.noCondition()))
            .orderBy(PLACE_READING.HAPPENED_AT.desc(), PLACE_READING.ID.desc())
            .limit(limit + 1)
            .fetch();
    return Slice.of(
        rows,
        limit,
        PlaceStore::entry,
        row -> new Position(row.getHappenedAt().toEpochMilli(), row.getId(), 0));
  }

  private static Condition isAfter(Position last) {
    Instant moment = Instant.ofEpochMilli(last.order());
    return PLACE_READING
        .HAPPENED_AT
        .le(moment)
        .and(PLACE_READING.HAPPENED_AT.lt(moment).or(PLACE_READING.ID.lt(last.row())));
  }

  /** The corrections of these entries, and the corrections of those, in the order of writing. */
  public List<LogEntry> corrections(List<EntryId> entries) {
    Map<Long, LogEntry> found = new LinkedHashMap<>();
    Set<EntryId> next = new HashSet<>(entries);
    while (!next.isEmpty()) {
      Set<EntryId> newer = new HashSet<>();
      for (List<EntryId> some : Chunks.of(next)) {
        sql.selectFrom(PLACE_READING)
            .where(PLACE_READING.CORRECTS.in(some.stream().map(EntryId::text).toList()))
            .forEach(
                row -> {
                  found.put(row.getId(), entry(row));
                  newer.add(new EntryId(row.getEntry()));
                });
      }
      next = newer;
    }
    return found.entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .map(Map.Entry::getValue)
        .toList();
  }

  private static LogEntry entry(PlaceReadingRecord row) {
    return new LogEntry(
        new EntryId(row.getEntry()),
        Codes.WORDS.word(row.getWord()),
        row.getHappenedAt(),
        row.getWrittenAt(),
        Optional.ofNullable(row.getPerson()),
        Optional.ofNullable(row.getNote()),
        Optional.ofNullable(row.getCorrects()).map(EntryId::new),
        new Details(
            Optional.empty(),
            Optional.empty(),
            Values.temperature(row.getTemperature(), row.getTemperatureScale()),
            Codes.HOWS.wordOrEmpty(row.getHow()),
            Optional.ofNullable(row.getPlaceWritten()),
            Values.temperature(row.getAir(), row.getAirScale()),
            OptionalInt.empty(),
            List.of(),
            Optional.empty(),
            Optional.empty(),
            Optional.ofNullable(row.getProbe()),
            Optional.empty(),
            Optional.empty()));
  }
}
