package chillwright.core.log;

import chillwright.core.log.IntakeFaults.Fault;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Finds the first row of a lot, which names food, category and sources, and checks it. */
final class FirstRows {
  /** Words that tell of food already there: no lot begins with one. */
  private static final Set<Word> NEVER_FIRST = EnumSet.of(Word.PORTIONS, Word.ACTION, Word.MOVED);

  private final KeepingList keeping;
  private final IntakeFaults faults;

  FirstRows(KeepingList keeping, IntakeFaults faults) {
    this.keeping = keeping;
    this.faults = faults;
  }

  /** Chooses the first row of a lot that is new, and notes what is wrong with it. */
  void check(LotDraft draft) {
    if (draft.isStored()) {
      return;
    }
    List<NewRow> rows = new ArrayList<>(draft.rows());
    rows.removeIf(NewRow::isCorrection);
    if (rows.isEmpty()) {
      draft.blame();
      return;
    }
    NewRow first = firstOf(rows);
    draft.beginWith(first);
    checkCategory(draft, first);
    if (draft.isComplete()) {
      checkWord(draft, first);
      checkNamed(draft, first);
    }
  }

  /**
   * The earliest row, where that one says what the lot is; else the one written first. So a file
   * may be in any order, and a late entry may tell of something earlier.
   */
  private static NewRow firstOf(List<NewRow> rows) {
    NewRow written = rows.get(0);
    NewRow earliest = written;
    for (NewRow row : rows) {
      if (row.row().when().isBefore(earliest.row().when())) {
        earliest = row;
      }
    }
    return saysWhatItIs(earliest.details()) ? earliest : written;
  }

  private static boolean saysWhatItIs(Details details) {
    return details.from().size() == 1
        || (details.food().isPresent() && details.category().isPresent());
  }

  private void checkWord(LotDraft draft, NewRow first) {
    Word word = first.row().word();
    if (NEVER_FIRST.contains(word)) {
      draft.blame();
      faults.add(
          first,
          "entry",
          new Fault(
              "not-a-first-row",
              word.text(),
              "cooked, prepared, received, opened or another word that tells where the food is",
              "Lot %s cannot begin with \"%s\". Write first how it came to be."
                  .formatted(draft.id(), word.text())));
    }
  }

  private void checkNamed(LotDraft draft, NewRow first) {
    if (first.details().from().size() == 1) {
      return;
    }
    String unlessFrom = "; or one lot in \"from\", to take it over";
    if (first.details().food().isEmpty()) {
      draft.blame();
      faults.add(
          first,
          "food",
          new Fault(
              "missing",
              "",
              "the name of the food" + unlessFrom,
              "This is the first row of lot %s: name the food.".formatted(draft.id())));
    }
    if (first.details().category().isEmpty()) {
      draft.blame();
      faults.add(
          first,
          "category",
          new Fault(
              "missing",
              "",
              "a key of the keeping list" + unlessFrom,
              "This is the first row of lot %s: give the category of the food."
                  .formatted(draft.id())));
    }
  }

  /** Notes a category that is not in the keeping list, with those that may have been meant. */
  void checkCategory(LotDraft draft, NewRow row) {
    Optional<String> key = row.details().category();
    if (key.isEmpty() || keeping.category(key.get()).isPresent()) {
      return;
    }
    String question = keeping.question(key.get());
    draft.blame();
    faults.add(
        row,
        "category",
        new Fault(
            "unknown-category",
            key.get(),
            "a key of the keeping list",
            "\"%s\" is not in the keeping list.%s"
                .formatted(
                    key.get(), question.isEmpty() ? " Look the keys up in that list." : question)));
  }
}
