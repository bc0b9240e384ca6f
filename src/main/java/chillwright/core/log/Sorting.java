package chillwright.core.log;

import chillwright.core.log.IntakeFaults.Fault;
import chillwright.core.log.Problem.Where.InFile;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Sorts incoming rows by lot, sets repeats aside, and sees to it that every entry has an id. */
final class Sorting {
  /** Of the number at the end of a made id; a longer start is cut. */
  private static final int MOST_DIGITS = 10;

  private final Stored stored;
  private final IntakeFaults faults;
  private final Map<LotId, LotDraft> lots = new LinkedHashMap<>();
  private final PlaceDraft places;
  private final Map<EntryId, NewRow> byId = new HashMap<>();
  private final Set<EntryId> givenIds = new HashSet<>();
  private final Set<EntryId> misreadIds = new HashSet<>();
  private final Map<String, Boolean> startsStored = new HashMap<>();
  private final Map<LotId, Set<String>> files = new HashMap<>();
  private final Set<String> lostFiles = new HashSet<>();
  private final List<Optional<EntryId>> ids = new ArrayList<>();
  private int repeats;

  Sorting(Stored stored, IntakeFaults faults) {
    this.stored = stored;
    this.faults = faults;
    this.places = new PlaceDraft(stored);
  }

  void take(List<? extends Incoming> incoming) {
    for (Incoming one : incoming) {
      if (one instanceof Row row) {
        row.id().ifPresent(givenIds::add);
      } else if (one instanceof Misread misread) {
        misread.id().ifPresent(misreadIds::add);
      }
    }
    for (Incoming one : incoming) {
      if (one instanceof Row row) {
        take(row);
      } else if (one instanceof Misread misread) {
        take(misread);
      }
    }
    files.forEach(
        (lot, names) -> {
          if (names.stream().anyMatch(lostFiles::contains)) {
            draft(lot).lose();
          }
        });
    places.dropFrom(lostFiles);
  }

  private void take(Misread misread) {
    faults.addAll(ids.size(), misread.problems());
    misread.lot().ifPresent(lot -> draft(lot).lose());
    if (misread.wholeFile() && misread.where() instanceof InFile file) {
      lostFiles.add(file.file());
    }
    ids.add(Optional.empty());
  }

  private void take(Row row) {
    Page page = row.lot().<Page>map(this::draft).orElse(places);
    if (row.where() instanceof InFile file) {
      row.lot().ifPresent(lot -> filesOf(lot).add(file.file()));
    }
    Content content = Content.of(row);
    Optional<EntryId> known = row.id().isPresent() ? sameId(row, page) : page.same(content);
    EntryId id = row.id().or(() -> known).orElseGet(() -> madeId(row, page));
    NewRow arrived = new NewRow(ids.size(), row, id);
    if (known.isPresent()) {
      repeats++;
      page.repeat(arrived);
      ids.add(known);
    } else if (row.id().isPresent() && isTaken(arrived, page)) {
      page.lose();
      ids.add(Optional.empty());
    } else {
      byId.put(id, arrived);
      page.add(arrived, content);
      ids.add(Optional.of(id));
    }
  }

  private Set<String> filesOf(LotId lot) {
    return files.computeIfAbsent(lot, l -> new HashSet<>());
  }

  private LotDraft draft(LotId lot) {
    return lots.computeIfAbsent(lot, l -> new LotDraft(l, stored.lot(l)));
  }

  /** The row's own id, where an entry of that id on the same page says the same. */
  private Optional<EntryId> sameId(Row row, Page page) {
    EntryId id = row.id().orElseThrow();
    NewRow earlier = byId.get(id);
    boolean same =
        earlier != null
            ? earlier.row().lot().equals(row.lot())
                && Content.of(earlier.row()).equals(Content.of(row))
            : page.storedEntry(id).filter(e -> Content.of(e).equals(Content.of(row))).isPresent();
    return same ? row.id() : Optional.empty();
  }

  /** Whether the id belongs to another entry; that is a fault. */
  private boolean isTaken(NewRow row, Page page) {
    NewRow earlier = byId.get(row.id());
    if (earlier != null) {
      refuseId(row, "id-twice", "stands in " + IntakeFaults.text(earlier.row().where()) + " too");
      return true;
    }
    Optional<Stored.Found> other =
        page.storedEntry(row.id())
            .map(entry -> new Stored.Found(page.lot(), entry))
            .or(() -> stored.entry(row.id()));
    other.ifPresent(
        found ->
            refuseId(
                row,
                "id-taken",
                "belongs to a stored entry of "
                    + found.lot().map(lot -> "lot " + lot).orElse("a place")));
    return other.isPresent();
  }

  private void refuseId(NewRow row, String code, String why) {
    faults.add(
        row,
        "id",
        new Fault(
            code,
            row.id().text(),
            "an id that no other entry has",
            "The id %s %s, and says something else there. Give this row another id; to change an"
                    .formatted(row.id(), why)
                + " entry, write a correction."));
  }

  private EntryId madeId(Row row, Page page) {
    String start = page.idStart(row);
    boolean mayBeStored = startsStored.computeIfAbsent(start, this::isAnyStored);
    for (int number = page.nextNumber(); ; number++) {
      String end = "." + number;
      int room = LotId.LONGEST - end.length();
      EntryId id = new EntryId(start.substring(0, Math.min(start.length(), room)) + end);
      if (!isUsedHere(id) && !(mayBeStored && isStored(id, page))) {
        return id;
      }
    }
  }

  /** Asked once for a lot, so that its ids need not be looked up one by one where it is new. */
  private boolean isAnyStored(String start) {
    String dotted = start + ".";
    return stored.hasIdBeginning(
        dotted.substring(0, Math.min(dotted.length(), LotId.LONGEST - MOST_DIGITS - 1)));
  }

  private boolean isUsedHere(EntryId id) {
    return givenIds.contains(id) || misreadIds.contains(id) || byId.containsKey(id);
  }

  private boolean isStored(EntryId id, Page page) {
    return page.storedEntry(id).isPresent() || stored.entry(id).isPresent();
  }

  Map<LotId, LotDraft> lots() {
    return lots;
  }

  PlaceDraft places() {
    return places;
  }

  List<Optional<EntryId>> ids() {
    return ids;
  }

  int repeats() {
    return repeats;
  }

  /** The new row with that id, wherever it goes. */
  Optional<NewRow> row(EntryId id) {
    return Optional.ofNullable(byId.get(id));
  }

  boolean isMisread(EntryId id) {
    return misreadIds.contains(id);
  }
}
