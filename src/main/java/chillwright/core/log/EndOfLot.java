package chillwright.core.log;

import chillwright.core.log.IntakeFaults.Fault;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * Follows the portions of one lot through its corrected entries, and notes rows that take more than
 * is left or come after the lot was closed. What is stored already is not judged again, except
 * where a new row makes it wrong.
 */
final class EndOfLot {
  /** At one moment, the row that takes all that is left counts last. */
  private static final Comparator<LogEntry> IN_TIME =
      Comparator.comparing(LogEntry::happenedAt).thenComparing(EndOfLot::takesAll);

  private final LotDraft draft;
  private final IntakeFaults faults;
  private final Set<EntryId> causes = new HashSet<>();
  private OptionalInt left = OptionalInt.empty();
  private Optional<LogEntry> closing = Optional.empty();

  private EndOfLot(LotDraft draft, IntakeFaults faults) {
    this.draft = draft;
    this.faults = faults;
  }

  /**
   * @param entries of the lot, stored and new, in the order of writing
   */
  static void check(LotDraft draft, List<LogEntry> entries, IntakeFaults faults) {
    if (!draft.isComplete() || draft.rows().isEmpty() || draft.firstId().isEmpty()) {
      return;
    }
    EntryId first = draft.firstId().get();
    List<LogEntry> standing = Corrections.applied(entries);
    EndOfLot end = new EndOfLot(draft, faults);
    for (LogEntry entry : standing) {
      if (entry.id().equals(first) && !Portions.isOutgoing(entry.word())) {
        end.left = entry.details().portions();
      }
    }
    List<LogEntry> inTime = new ArrayList<>(standing);
    inTime.sort(IN_TIME);
    inTime.forEach(end::follow);
  }

  private static boolean takesAll(LogEntry entry) {
    return (entry.word() == Word.SERVED || entry.word() == Word.DISCARDED)
        && entry.details().portions().isEmpty();
  }

  private void follow(LogEntry entry) {
    if (closing.isPresent() && entry.happenedAt().isAfter(closing.get().happenedAt())) {
      followAfterEnd(entry, closing.get());
      return;
    }
    if (!Portions.isOutgoing(entry.word())) {
      return;
    }
    OptionalInt taken = entry.details().portions();
    if (taken.isPresent() && left.isPresent() && taken.getAsInt() > left.getAsInt()) {
      refuseTooMany(entry, taken.getAsInt());
      return;
    }
    if (taken.isPresent() && left.isPresent()) {
      left = OptionalInt.of(left.getAsInt() - taken.getAsInt());
    }
    if (takesAll(entry) || (left.isPresent() && left.getAsInt() == 0)) {
      left = OptionalInt.of(0);
      closing = Optional.of(entry);
    }
  }

  /** To say that a lot is finished whose last portions were counted out is no fault. */
  private void followAfterEnd(LogEntry entry, LogEntry closedBy) {
    if (entry.word() == Word.ACTION) {
      return;
    }
    if (takesAll(entry) && !takesAll(closedBy)) {
      closing = Optional.of(entry);
      return;
    }
    refuse(
        entry,
        "entry",
        new Fault(
            "lot-closed",
            entry.word().text(),
            "rows up to the end of the lot, and after it actions and corrections",
            "Nothing was left of lot %s after \"%s\" on %s, but \"%s\" on %s is later. If one of"
                    .formatted(
                        draft.id(),
                        closedBy.word().text(),
                        faults.text(closedBy.happenedAt()),
                        entry.word().text(),
                        faults.text(entry.happenedAt()))
                + " them is wrong, correct it; if this is other food, give it a lot of its own."));
  }

  private void refuseTooMany(LogEntry entry, int taken) {
    refuse(
        entry,
        "portions",
        new Fault(
            "too-many-portions",
            Integer.toString(taken),
            left.getAsInt() == 0 ? "none are left" : "at most " + left.getAsInt(),
            "Lot %s had %d portions left on %s, so %d cannot be taken. Check the counts."
                .formatted(draft.id(), left.getAsInt(), faults.text(entry.happenedAt()), taken)));
  }

  /**
   * Notes the fault in the entry's own row, or where that is stored, in the new row that made it
   * wrong; there once, however many entries it makes wrong.
   */
  private void refuse(LogEntry entry, String column, Fault fault) {
    Optional<NewRow> own = draft.row(entry.id());
    if (own.isPresent()) {
      draft.blame();
      faults.add(own.get(), column, fault);
      return;
    }
    Optional<NewRow> cause = closing.flatMap(closed -> draft.row(closed.id())).or(this::lastChange);
    if (cause.isPresent() && causes.add(cause.get().id())) {
      draft.blame();
      faults.add(cause.get(), "", fault);
    }
  }

  /** The last new row that can change what is left of a lot. */
  private Optional<NewRow> lastChange() {
    return draft.rows().stream()
        .filter(row -> row.isCorrection() || Portions.isOutgoing(row.row().word()))
        .reduce((earlier, later) -> later);
  }
}
