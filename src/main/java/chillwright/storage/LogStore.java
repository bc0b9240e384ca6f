package chillwright.storage;

import static chillwright.storage.schema.Tables.LOG_ENTRY;
import static chillwright.storage.schema.Tables.LOT;
import static chillwright.storage.schema.Tables.LOT_SOURCE;

import chillwright.core.log.EntryId;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.LotLog;
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

/** What happened to lots, and what each lot came from. Rows are only ever added. */
public final class LogStore {
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
    Map<LotId, List<LotId>> sources = lineage(lots);
    Map<LotId, List<LogEntry>> entries = entries(sources.keySet());
    Map<LotId, LotLog> built = new HashMap<>();
    Map<LotId, LotLog> logs = new LinkedHashMap<>();
    for (LotId lot : lots) {
      if (entries.containsKey(lot)) {
        logs.put(lot, build(lot, sources, entries, built));
      }
    }
    return logs;
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
    boolean hasNone = !session.sql().fetchExists(LOT_SOURCE);
    return hasNone ? Map.of() : lineage(lots);
  }

  /** Each of these lots, and each that they came from, with the lots it came from itself. */
  private Map<LotId, List<LotId>> lineage(Collection<LotId> lots) {
    Map<LotId, List<LotId>> sources = new LinkedHashMap<>();
    Set<LotId> next = new LinkedHashSet<>(lots);
    while (!next.isEmpty()) {
      next.forEach(lot -> sources.put(lot, new ArrayList<>()));
      Set<LotId> found = new LinkedHashSet<>();
      for (List<LotId> some : Chunks.of(next)) {
        readSources(some, sources, found);
      }
      found.removeAll(sources.keySet());
      next = found;
    }
    return sources;
  }

  private void readSources(List<LotId> lots, Map<LotId, List<LotId>> sources, Set<LotId> found) {
    var source = LOT.as("source");
    session
        .sql()
        .select(LOT.CODE, source.CODE)
        .from(LOT)
        .join(LOT_SOURCE)
        .on(LOT_SOURCE.LOT_ID.eq(LOT.ID))
        .join(source)
        .on(source.ID.eq(LOT_SOURCE.SOURCE_ID))
        .where(LOT.CODE.in(texts(lots)))
        .orderBy(LOT_SOURCE.LOT_ID, LOT_SOURCE.POSITION)
        .forEach(
            row -> {
              LotId from = new LotId(row.value2());
              sources.get(new LotId(row.value1())).add(from);
              found.add(from);
            });
  }

  private Map<LotId, List<LogEntry>> entries(Collection<LotId> lots) {
    Map<LotId, List<LogEntry>> entries = new HashMap<>();
    for (List<LotId> some : Chunks.of(lots)) {
      session
          .sql()
          .select(LOT.CODE, LOG_ENTRY)
          .from(LOT)
          .join(LOG_ENTRY)
          .on(LOG_ENTRY.LOT_ID.eq(LOT.ID))
          .where(LOT.CODE.in(texts(some)))
          .orderBy(LOG_ENTRY.LOT_ID, LOG_ENTRY.SEQ)
          .forEach(
              row ->
                  entries
                      .computeIfAbsent(new LotId(row.value1()), lot -> new ArrayList<>())
                      .add(EntryRow.entry(row.value2())));
    }
    return entries;
  }

  /** The entry of a lot with that id. */
  public Optional<OfLot> entry(EntryId id) {
    return session
        .sql()
        .select(LOT.CODE, LOG_ENTRY)
        .from(LOG_ENTRY)
        .join(LOT)
        .on(LOT.ID.eq(LOG_ENTRY.LOT_ID))
        .where(LOG_ENTRY.ENTRY.eq(id.text()))
        .fetchOptional(row -> new OfLot(new LotId(row.value1()), EntryRow.entry(row.value2())));
  }

  /** Those of these entries that are of lots, in no certain order. */
  public List<OfLot> entries(List<EntryId> ids) {
    List<OfLot> found = new ArrayList<>();
    for (List<EntryId> some : Chunks.of(ids)) {
      session
          .sql()
          .select(LOT.CODE, LOG_ENTRY)
          .from(LOG_ENTRY)
          .join(LOT)
          .on(LOT.ID.eq(LOG_ENTRY.LOT_ID))
          .where(LOG_ENTRY.ENTRY.in(some.stream().map(EntryId::text).toList()))
          .forEach(
              row -> found.add(new OfLot(new LotId(row.value1()), EntryRow.entry(row.value2()))));
    }
    return found;
  }

  /** The lots that came from these, and those that came from them in turn, without these. */
  public Set<LotId> descendants(Collection<LotId> lots) {
    Set<LotId> seen = new HashSet<>(lots);
    Set<LotId> descendants = new LinkedHashSet<>();
    Set<LotId> next = new LinkedHashSet<>(lots);
    while (!next.isEmpty()) {
      Set<LotId> found = new LinkedHashSet<>();
      for (List<LotId> some : Chunks.of(next)) {
        found.addAll(madeFrom(some));
      }
      found.removeIf(lot -> !seen.add(lot));
      descendants.addAll(found);
      next = found;
    }
    return descendants;
  }

  /** The lots that name one of these as their source. */
  public List<LotId> madeFrom(List<LotId> lots) {
    var made = LOT.as("made");
    return session
        .sql()
        .select(made.CODE)
        .from(LOT)
        .join(LOT_SOURCE)
        .on(LOT_SOURCE.SOURCE_ID.eq(LOT.ID))
        .join(made)
        .on(made.ID.eq(LOT_SOURCE.LOT_ID))
        .where(LOT.CODE.in(texts(lots)))
        .fetch(row -> new LotId(row.value1()));
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
