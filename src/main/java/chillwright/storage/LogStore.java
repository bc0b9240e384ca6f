package chillwright.storage;

import static chillwright.storage.schema.Tables.LOG_ENTRY;
import static chillwright.storage.schema.Tables.LOT;
import static chillwright.storage.schema.Tables.LOT_SOURCE;

import chillwright.core.log.EntryId;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.LotLog;
import chillwright.storage.schema.tables.Lot;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Function;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.SelectSelectStep;
import org.jooq.impl.DSL;

/** What happened to lots, and what each lot came from. Rows are only ever added. */
public final class LogStore {
  private static final Lot SOURCE = LOT.as("source");
  private static final Lot MADE = LOT.as("made");

  private final Session session;

  LogStore(Session session) {
    this.session = session;
  }

  /** An entry and the lot it belongs to. */
  public record OfLot(LotId lot, LogEntry entry) {}

  /** The log of one lot with its sources; empty if it has no entry. */
  public Optional<LotLog> log(LotId lot) {
    return Optional.ofNullable(logs(List.of(lot)).get(lot));
  }

  /**
   * The logs of these lots with their sources, and theirs, each lot read once. Lots without an
   * entry are not among them.
   */
  public Map<LotId, LotLog> logs(Collection<LotId> lots) {
    return logs(lots, lot -> List.of());
  }

  /**
   * The same; a log that has not grown beyond its known beginning is not read.
   *
   * @param known the committed entries that a log begins with, as far as they are at hand
   */
  public Map<LotId, LotLog> logs(Collection<LotId> lots, Function<LotId, List<LogEntry>> known) {
    Map<LotId, List<LotId>> sources = lineage(lots);
    Map<LotId, List<LogEntry>> entries = whole(sources.keySet(), known);
    Set<LotId> unread = new LinkedHashSet<>(sources.keySet());
    unread.removeAll(entries.keySet());
    if (!unread.isEmpty()) {
      entries.putAll(entries(unread));
    }
    Map<LotId, LotLog> built = new HashMap<>();
    Map<LotId, LotLog> logs = new LinkedHashMap<>();
    for (LotId lot : lots) {
      if (entries.containsKey(lot)) {
        logs.put(lot, build(lot, sources, entries, built));
      }
    }
    return logs;
  }

  /** Those of the logs of which the beginning that is known is all. */
  private Map<LotId, List<LogEntry>> whole(
      Collection<LotId> lots, Function<LotId, List<LogEntry>> known) {
    Map<LotId, List<LogEntry>> beginnings = new HashMap<>();
    for (LotId lot : lots) {
      List<LogEntry> beginning = known.apply(lot);
      if (!beginning.isEmpty()) {
        beginnings.put(lot, beginning);
      }
    }
    if (!beginnings.isEmpty()) {
      Map<LotId, Integer> sizes = sizes(beginnings.keySet());
      beginnings
          .entrySet()
          .removeIf(
              beginning ->
                  beginning.getValue().size() != sizes.getOrDefault(beginning.getKey(), 0));
    }
    return beginnings;
  }

  private static LotLog build(
      LotId lot,
      Map<LotId, List<LotId>> sources,
      Map<LotId, List<LogEntry>> entries,
      Map<LotId, LotLog> built) {
    LotLog known = built.get(lot);
    if (known != null) {
      return known;
    }
    List<LotLog> from =
        sources.get(lot).stream().map(source -> build(source, sources, entries, built)).toList();
    LotLog log = new LotLog(lot, entries.get(lot), from);
    built.put(lot, log);
    return log;
  }

  /**
   * Each of these lots that came from others, and each of those that did, with the lots it came
   * from itself; quick where no lot of the kitchen came from another.
   */
  public Map<LotId, List<LotId>> ancestry(Collection<LotId> lots) {
    boolean hasNone = !session.sql().fetchExists(LOT_SOURCE, LOT_SOURCE.LOT_ID.gt(0L));
    return hasNone ? Map.of() : lineage(lots);
  }

  /** Each of these lots, and each that they came from, with the lots it came from itself. */
  private Map<LotId, List<LotId>> lineage(Collection<LotId> lots) {
    Map<LotId, List<LotId>> sources = new LinkedHashMap<>();
    Set<LotId> next = new LinkedHashSet<>(lots);
    while (!next.isEmpty()) {
      next.forEach(lot -> sources.put(lot, new ArrayList<>()));
      Set<LotId> found = new LinkedHashSet<>();
      sources(
          next,
          (lot, from) -> {
            sources.get(lot).add(from);
            found.add(from);
          });
      found.removeAll(sources.keySet());
      next = found;
    }
    return sources;
  }

  /** Tells of each of these lots and each lot it came from, in the order these were named. */
  void sources(Collection<LotId> lots, BiConsumer<LotId, LotId> taker) {
    session
        .select(
            "sources of lots",
            keys ->
                DSL.select(LOT.CODE, SOURCE.CODE)
                    .from(LOT)
                    .join(LOT_SOURCE)
                    .on(LOT_SOURCE.LOT_ID.eq(LOT.ID))
                    .join(SOURCE)
                    .on(SOURCE.ID.eq(LOT_SOURCE.SOURCE_ID))
                    .where(LOT.CODE.in(keys))
                    .orderBy(LOT_SOURCE.LOT_ID, LOT_SOURCE.POSITION))
        .forEach(
            texts(lots),
            row -> taker.accept(new LotId(row.getString(1)), new LotId(row.getString(2))));
  }

  private Map<LotId, List<LogEntry>> entries(Collection<LotId> lots) {
    Map<LotId, List<LogEntry>> entries = new HashMap<>();
    session
        .select(
            "entries of lots",
            keys ->
                withLot()
                    .from(LOT)
                    .join(LOG_ENTRY)
                    .on(LOG_ENTRY.LOT_ID.eq(LOT.ID))
                    .where(LOT.CODE.in(keys))
                    .orderBy(LOG_ENTRY.LOT_ID, LOG_ENTRY.SEQ))
        .forEach(
            texts(lots),
            row ->
                entries
                    .computeIfAbsent(new LotId(row.getString(1)), lot -> new ArrayList<>())
                    .add(EntryRow.entry(row, 1)));
    return entries;
  }

  /** The code of a lot, and all columns of an entry. */
  private static SelectSelectStep<Record> withLot() {
    List<Field<?>> columns = new ArrayList<>(List.of(LOT.CODE));
    columns.addAll(List.of(LOG_ENTRY.fields()));
    return DSL.select(columns);
  }

  /** How many entries each of these lots has that are known; 0 for one that was only announced. */
  public Map<LotId, Integer> sizes(Collection<LotId> lots) {
    Map<LotId, Integer> sizes = new HashMap<>();
    session
        .select(
            "sizes of lots",
            keys ->
                DSL.select(
                        LOT.CODE,
                        DSL.select(DSL.max(LOG_ENTRY.SEQ))
                            .from(LOG_ENTRY)
                            .where(LOG_ENTRY.LOT_ID.eq(LOT.ID))
                            .asField())
                    .from(LOT)
                    .where(LOT.CODE.in(keys)))
        .forEach(texts(lots), row -> sizes.put(new LotId(row.getString(1)), row.getInt(2)));
    return sizes;
  }

  /** The entry of a lot with that id. */
  public Optional<OfLot> entry(EntryId id) {
    return entries(List.of(id)).stream().findFirst();
  }

  /** Those of these entries that are of lots, in no certain order. */
  public List<OfLot> entries(List<EntryId> ids) {
    List<OfLot> found = new ArrayList<>();
    session
        .select(
            "entries",
            keys ->
                withLot()
                    .from(LOG_ENTRY)
                    .join(LOT)
                    .on(LOT.ID.eq(LOG_ENTRY.LOT_ID))
                    .where(LOG_ENTRY.ENTRY.in(keys)))
        .forEach(
            ids.stream().map(EntryId::text).toList(),
            row -> found.add(new OfLot(new LotId(row.getString(1)), EntryRow.entry(row, 1))));
    return found;
  }

  /** Of the newest lots those of which a row names who got portions, with all such names. */
  public Map<LotId, Set<String>> recipients(int most) {
    Map<LotId, Set<String>> recipients = new LinkedHashMap<>();
    session
        .sql()
        .select(LOT.CODE, LOG_ENTRY.RECIPIENT)
        .from(LOT)
        .join(LOG_ENTRY)
        .on(LOG_ENTRY.LOT_ID.eq(LOT.ID))
        .where(LOT.ID.gt(DSL.select(DSL.max(LOT.ID).minus(most)).from(LOT).asField()))
        .and(LOG_ENTRY.RECIPIENT.isNotNull())
        .forEach(
            row ->
                recipients
                    .computeIfAbsent(new LotId(row.value1()), lot -> new HashSet<>())
                    .add(row.value2()));
    return recipients;
  }

  /** The lots that came from these, and those that came from them in turn, without these. */
  public Set<LotId> descendants(Collection<LotId> lots) {
    Set<LotId> seen = new HashSet<>(lots);
    Set<LotId> descendants = new LinkedHashSet<>();
    Set<LotId> next = new LinkedHashSet<>(lots);
    while (!next.isEmpty()) {
      Set<LotId> found = new LinkedHashSet<>(madeFrom(next));
      found.removeIf(lot -> !seen.add(lot));
      descendants.addAll(found);
      next = found;
    }
    return descendants;
  }

  /** The lots that name one of these as their source. */
  public List<LotId> madeFrom(Collection<LotId> lots) {
    List<LotId> found = new ArrayList<>();
    session
        .select(
            "lots made from lots",
            keys ->
                DSL.select(MADE.CODE)
                    .from(LOT)
                    .join(LOT_SOURCE)
                    .on(LOT_SOURCE.SOURCE_ID.eq(LOT.ID))
                    .join(MADE)
                    .on(MADE.ID.eq(LOT_SOURCE.LOT_ID))
                    .where(LOT.CODE.in(keys)))
        .forEach(texts(lots), row -> found.add(new LotId(row.getString(1))));
    return found;
  }

  /**
   * Entries to be added at the end of a lot's log.
   *
   * @param stored how many entries the log has
   */
  public record Addition(LotId lot, int stored, List<LogEntry> entries) {
    public Addition {
      entries = List.copyOf(entries);
    }
  }

  /** Adds entries to the logs of lots, which must be known. */
  public void append(List<Addition> additions) {
    Map<LotId, Long> keys = session.lots().keys(additions.stream().map(Addition::lot).toList());
    List<Object[]> rows = new ArrayList<>();
    for (Addition addition : additions) {
      long lotId = keys.get(addition.lot());
      long seq = addition.stored();
      for (LogEntry entry : addition.entries()) {
        seq++;
        rows.add(EntryRow.cells(lotId, seq, entry));
      }
    }
    session.insertInto(LOG_ENTRY).addKept(rows);
  }

  static List<String> texts(Collection<LotId> lots) {
    return lots.stream().map(LotId::text).toList();
  }
}
