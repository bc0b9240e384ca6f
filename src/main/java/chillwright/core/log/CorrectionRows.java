package chillwright.core.log;

import chillwright.core.log.IntakeFaults.Fault;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Checks that corrections name an entry of their own lot, and change what can be changed. */
final class CorrectionRows {
  /** How often a correction may itself be corrected. */
  static final int LONGEST_CHAIN = 100;

  private final Stored stored;
  private final Sorting sorting;
  private final IntakeFaults faults;
  private final FirstRows firstRows;

  CorrectionRows(Stored stored, Sorting sorting, IntakeFaults faults, FirstRows firstRows) {
    this.stored = stored;
    this.sorting = sorting;
    this.faults = faults;
    this.firstRows = firstRows;
  }

  /** An entry that may be corrected: its word, and what it corrects itself. */
  private record Target(Word word, Optional<EntryId> corrects) {
    static Target of(LogEntry entry) {
      return new Target(entry.word(), entry.corrects());
    }

    static Target of(NewRow row) {
      return new Target(row.row().word(), row.row().corrects());
    }
  }

  /** Checks the new corrections of a lot; those with a fault are taken out of it. */
  void check(LotDraft draft) {
    List<NewRow> corrections = new ArrayList<>(draft.rows());
    corrections.removeIf(row -> !row.isCorrection());
    if (corrections.isEmpty()) {
      return;
    }
    Map<EntryId, Target> targets = new HashMap<>();
    draft.rows().forEach(row -> targets.put(row.id(), Target.of(row)));
    for (NewRow row : corrections) {
      EntryId root = rootOf(row, id -> known(id, targets, draft)).orElse(null);
      boolean good = root != null && changesWhatItMay(draft, row, root, targets);
      if (root == null) {
        refuseTarget(row, draft.lot());
      }
      if (!good) {
        draft.drop(row);
      }
    }
  }

  /** Checks the new corrections of readings of places. */
  void check(PlaceDraft places) {
    Map<EntryId, Target> targets = new HashMap<>();
    places.rows().forEach(row -> targets.put(row.id(), Target.of(row)));
    for (NewRow row : places.rows()) {
      if (row.isCorrection() && rootOf(row, id -> known(id, targets, places)).isEmpty()) {
        refuseTarget(row, Optional.empty());
        places.drop(row);
      }
    }
  }

  private static Optional<Target> known(EntryId id, Map<EntryId, Target> targets, Page page) {
    return Optional.ofNullable(targets.get(id)).or(() -> page.storedEntry(id).map(Target::of));
  }

  private interface Targets {
    Optional<Target> of(EntryId id);
  }

  /** The entry that is corrected in the end; empty if there is none, or the chain is endless. */
  private static Optional<EntryId> rootOf(NewRow correction, Targets targets) {
    Set<EntryId> seen = new HashSet<>();
    Optional<EntryId> next = correction.row().corrects();
    while (seen.size() < LONGEST_CHAIN && seen.add(next.orElseThrow())) {
      Optional<Target> target = targets.of(next.get());
      if (target.isEmpty()) {
        return Optional.empty();
      }
      if (target.get().corrects().isEmpty()) {
        return next;
      }
      next = target.get().corrects();
    }
    return Optional.empty();
  }

  /** Whose entry it is; a place's where there is no lot. */
  private record Home(Optional<LotId> lot) {}

  private void refuseTarget(NewRow row, Optional<LotId> lot) {
    EntryId target = row.row().corrects().orElseThrow();
    if (sorting.isMisread(target)) {
      return;
    }
    Optional<Home> home =
        sorting
            .row(target)
            .map(other -> new Home(other.row().lot()))
            .or(() -> stored.entry(target).map(found -> new Home(found.lot())));
    if (home.isEmpty()) {
      refuse(
          row,
          "unknown-entry-corrected",
          "the id of an entry",
          "There is no entry with the id %s.".formatted(target));
    } else if (!home.get().lot().equals(lot)) {
      String where = home.get().lot().map(other -> "lot " + other).orElse("a place, not of a lot");
      refuse(
          row,
          "other-lot-corrected",
          "an entry of the same lot",
          "The entry %s is one of %s. Write the correction there.".formatted(target, where));
    } else {
      refuse(
          row,
          "endless-correction",
          "an entry that is not this correction",
          "These corrections correct each other, or lead to no entry. Name the wrong entry"
              + " itself.");
    }
  }

  private void refuse(NewRow row, String code, String allowed, String says) {
    String given = row.row().corrects().orElseThrow().text();
    faults.add(row, "corrects", new Fault(code, given, allowed, says));
  }

  private boolean changesWhatItMay(
      LotDraft draft, NewRow row, EntryId root, Map<EntryId, Target> targets) {
    boolean ofFirst = draft.firstId().filter(root::equals).isPresent();
    boolean named = row.row().corrects().filter(root::equals).isPresent();
    if (ofFirst && named && row.details().isBlank()) {
      refuse(
          row,
          "first-row-voided",
          "a correction with at least one cell filled in",
          "This would void the first row of lot %s. Correct its cells, or discard the lot and"
                  .formatted(draft.id())
              + " write a new one.");
      return false;
    }
    firstRows.checkCategory(draft, row);
    boolean goodHow = checkHow(row, known(root, targets, draft).orElseThrow().word());
    return (ofFirst || checkNotFirst(draft, row)) && goodHow;
  }

  private boolean checkHow(NewRow row, Word word) {
    Optional<How> how = row.details().how();
    if (how.isEmpty() || how.get().goesWith(word)) {
      return true;
    }
    String allowed = How.allowedFor(word).stream().map(How::text).collect(Collectors.joining(", "));
    faults.add(
        row,
        "how",
        new Fault(
            "how-not-for-entry",
            how.get().text(),
            allowed.isEmpty() ? "blank" : allowed + ", or blank",
            "The entry that is corrected is \"%s\"; \"%s\" does not go with it."
                .formatted(word.text(), how.get().text())));
    return false;
  }

  /** Food, category and sources stand on a lot's first row, so only there they are corrected. */
  private boolean checkNotFirst(LotDraft draft, NewRow row) {
    Details cells = row.details();
    List<String> columns =
        List.of(
            cells.food().isPresent() ? "food" : "",
            cells.category().isPresent() ? "category" : "",
            cells.from().isEmpty() ? "" : "from");
    List<String> filled = columns.stream().filter(column -> !column.isEmpty()).toList();
    for (String column : filled) {
      faults.add(
          row,
          column,
          new Fault(
              "not-the-first-row",
              given(cells, column),
              "blank, or a correction of the lot's first row",
              "The %s of lot %s stands on its first row%s. Correct that one."
                  .formatted(
                      column.equals("from") ? "origin" : column,
                      draft.id(),
                      draft.firstId().map(id -> ", " + id).orElse(""))));
    }
    return filled.isEmpty();
  }

  private static String given(Details cells, String column) {
    return switch (column) {
      case "food" -> cells.food().orElse("");
      case "category" -> cells.category().orElse("");
      default -> cells.from().stream().map(LotId::text).collect(Collectors.joining(" "));
    };
  }
}
