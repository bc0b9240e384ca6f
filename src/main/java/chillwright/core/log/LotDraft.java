package chillwright.core.log;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** One lot while rows are taken in: what is stored of it, and what is new. */
final class LotDraft implements Page {
  private final LotId lot;
  private final Optional<LotLog> stored;
  private final Map<EntryId, LogEntry> storedById = new LinkedHashMap<>();
  private final Map<Content, EntryId> contents = new HashMap<>();
  private final Map<EntryId, NewRow> rows = new LinkedHashMap<>();
  private final List<NewRow> repeats = new ArrayList<>();
  private Optional<NewRow> newFirst = Optional.empty();
  private boolean complete = true;
  private boolean faulty;

  LotDraft(LotId lot, Optional<LotLog> stored) {
    this.lot = lot;
    this.stored = stored;
    for (LogEntry entry : stored.map(LotLog::entries).orElse(List.of())) {
      storedById.put(entry.id(), entry);
      contents.putIfAbsent(Content.of(entry), entry.id());
    }
    stored.map(log -> log.entries().get(0)).ifPresent(this::knowUncounted);
  }

  /**
   * Portions told when a lot was made known stand on its first row, though the row that came had
   * none; so it has to be known again without them too.
   */
  private void knowUncounted(LogEntry first) {
    if (!Portions.isOutgoing(first.word())) {
      contents.putIfAbsent(Content.of(first.with(first.details().uncounted())), first.id());
    }
  }

  @Override
  public Optional<LotId> lot() {
    return Optional.of(lot);
  }

  LotId id() {
    return lot;
  }

  @Override
  public Optional<LogEntry> storedEntry(EntryId id) {
    return Optional.ofNullable(storedById.get(id));
  }

  @Override
  public Optional<EntryId> same(Content content) {
    return Optional.ofNullable(contents.get(content));
  }

  @Override
  public void add(NewRow row, Content content) {
    rows.put(row.id(), row);
    contents.putIfAbsent(content, row.id());
  }

  @Override
  public void repeat(NewRow row) {
    repeats.add(row);
  }

  @Override
  public void lose() {
    complete = false;
    faulty = true;
  }

  @Override
  public String idStart(Row row) {
    return lot.text();
  }

  @Override
  public int nextNumber() {
    return storedById.size() + rows.size() + 1;
  }

  /**
   * The stored entries of a row's word and moment that still stand and that no row of this input
   * says again.
   */
  List<LogEntry> notRepeated(Row row) {
    Set<EntryId> repeated = new HashSet<>();
    repeats.forEach(repeat -> repeated.add(repeat.id()));
    List<LogEntry> alike =
        stored.map(LotLog::entries).orElse(List.of()).stream()
            .filter(entry -> entry.word() == row.word() && entry.happenedAt().equals(row.when()))
            .filter(entry -> entry.corrects().equals(row.corrects()))
            .filter(entry -> !repeated.contains(entry.id()))
            .toList();
    return alike.isEmpty() ? alike : standing(alike);
  }

  private List<LogEntry> standing(List<LogEntry> some) {
    List<LogEntry> all = new ArrayList<>(storedById.values());
    rows.values().stream()
        .filter(NewRow::isCorrection)
        .forEach(row -> all.add(row.entry(row.row().when())));
    return some.stream().filter(entry -> Corrections.standing(entry, all).isPresent()).toList();
  }

  /** Whether every row of the lot could be read and has its own id, so that its story is whole. */
  boolean isComplete() {
    return complete;
  }

  boolean isFaulty() {
    return faulty;
  }

  void blame() {
    faulty = true;
  }

  boolean isStored() {
    return stored.isPresent();
  }

  /** Rows that are new, in order. */
  Collection<NewRow> rows() {
    return Collections.unmodifiableCollection(rows.values());
  }

  /** Rows that say again what is known. */
  List<NewRow> repeats() {
    return repeats;
  }

  /** The new row with that id; empty for a stored entry. */
  Optional<NewRow> row(EntryId id) {
    return Optional.ofNullable(rows.get(id));
  }

  /** Takes a row with a fault out again, so that it does not make others look wrong. */
  void drop(NewRow row) {
    rows.remove(row.id());
    faulty = true;
  }

  /** Which of the new rows is the lot's first, where nothing is stored of the lot. */
  void beginWith(NewRow first) {
    newFirst = Optional.of(first);
  }

  /** The new row that is the lot's first; empty where that is stored, or none fits. */
  Optional<NewRow> newFirst() {
    return newFirst;
  }

  boolean isNewFirst(NewRow row) {
    return newFirst.filter(first -> first.index() == row.index()).isPresent();
  }

  Optional<EntryId> firstId() {
    return stored.map(log -> log.entries().get(0).id()).or(() -> newFirst.map(NewRow::id));
  }

  /** The new entries in the order of writing, the lot's first row before the others. */
  private List<LogEntry> added(Instant writtenAt) {
    List<LogEntry> added = new ArrayList<>();
    newFirst.ifPresent(first -> added.add(first.entry(writtenAt)));
    for (NewRow row : rows.values()) {
      if (!isNewFirst(row)) {
        added.add(row.laterEntry(writtenAt));
      }
    }
    return added;
  }

  /** The new ones of all entries of the lot. */
  List<LogEntry> addedOf(List<LogEntry> entries) {
    return entries.subList(storedById.size(), entries.size());
  }

  /** All entries, stored and new, in the order of writing. */
  List<LogEntry> entries(Instant writtenAt) {
    List<LogEntry> entries = new ArrayList<>();
    stored.ifPresent(log -> entries.addAll(log.entries()));
    entries.addAll(added(writtenAt));
    return entries;
  }
}
