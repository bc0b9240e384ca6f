package chillwright.core.log;

import chillwright.core.log.Problem.Where.InFile;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The readings of places while rows are taken in. */
final class PlaceDraft implements Page {
  private static final DateTimeFormatter MOMENT =
      DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'").withZone(ZoneOffset.UTC);

  private final Stored stored;
  private final Map<Content, EntryId> contents = new HashMap<>();
  private final Map<Instant, List<LogEntry>> loaded = new HashMap<>();
  private final Set<EntryId> repeated = new HashSet<>();
  private final Map<EntryId, NewRow> rows = new LinkedHashMap<>();

  PlaceDraft(Stored stored) {
    this.stored = stored;
  }

  @Override
  public Optional<LotId> lot() {
    return Optional.empty();
  }

  @Override
  public Optional<LogEntry> storedEntry(EntryId id) {
    return stored.entry(id).filter(found -> found.lot().isEmpty()).map(Stored.Found::entry);
  }

  @Override
  public Optional<EntryId> same(Content content) {
    storedAt(content.when());
    return Optional.ofNullable(contents.get(content));
  }

  /** The stored entries of that moment, asked for once. */
  private List<LogEntry> storedAt(Instant moment) {
    List<LogEntry> known = loaded.get(moment);
    if (known != null) {
      return known;
    }
    List<LogEntry> found = stored.ofPlaces(moment);
    found.forEach(entry -> contents.putIfAbsent(Content.of(entry), entry.id()));
    loaded.put(moment, found);
    return found;
  }

  @Override
  public void add(NewRow row, Content content) {
    rows.put(row.id(), row);
    contents.putIfAbsent(content, row.id());
  }

  @Override
  public void repeat(NewRow row) {
    repeated.add(row.id());
  }

  @Override
  public void lose() {
    // One reading of a place does not depend on another.
  }

  @Override
  public String idStart(Row row) {
    return "place-" + MOMENT.format(row.when());
  }

  @Override
  public int nextNumber() {
    return 1;
  }

  /** The stored entries of a row's place, word and moment that no row of this input says again. */
  List<LogEntry> notRepeated(Row row) {
    return storedAt(row.when()).stream()
        .filter(entry -> entry.word() == row.word())
        .filter(entry -> entry.corrects().equals(row.corrects()))
        .filter(entry -> entry.details().place().equals(row.details().place()))
        .filter(entry -> !repeated.contains(entry.id()))
        .toList();
  }

  List<NewRow> rows() {
    return List.copyOf(rows.values());
  }

  Optional<NewRow> row(EntryId id) {
    return Optional.ofNullable(rows.get(id));
  }

  /** Takes the rows of those files out again. */
  void dropFrom(Set<String> files) {
    rows.values()
        .removeIf(row -> row.row().where() instanceof InFile file && files.contains(file.file()));
  }

  void drop(NewRow row) {
    rows.remove(row.id());
  }

  List<LogEntry> added(Instant writtenAt) {
    List<LogEntry> added = new ArrayList<>();
    rows.values().forEach(row -> added.add(row.entry(writtenAt)));
    return added;
  }
}
