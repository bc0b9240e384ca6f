package chillwright.core.log;

import chillwright.core.log.IntakeFaults.Fault;
import chillwright.core.log.Problem.Where.InFile;
import chillwright.core.measure.Depth;
import chillwright.core.measure.Temperature;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Finds rows of a file in which a cell was changed after they were stored. Such a row says another
 * thing of the same moment than the stored entry, which no row of the input repeats any more; taken
 * in as new, it would stand beside the old one. A row with an id of its own is a second entry, and
 * so is what a person sends in a request.
 */
final class ChangedRows {
  private final IntakeFaults faults;

  ChangedRows(IntakeFaults faults) {
    this.faults = faults;
  }

  /** A cell that is not what it was; blank where it is not filled in. */
  private record Difference(String column, String stored, String given) {}

  /** Two entries of one moment, and what tells them apart. */
  private record Changed(LogEntry stored, List<Difference> differences) {}

  void check(LotDraft draft) {
    if (!draft.isStored()) {
      return;
    }
    for (NewRow row : List.copyOf(draft.rows())) {
      if (isUnnamed(row)) {
        changed(row, draft.notRepeated(row.row()))
            .ifPresent(
                changed -> {
                  draft.drop(row);
                  refuse(row, changed);
                });
      }
    }
  }

  void check(PlaceDraft places) {
    for (NewRow row : places.rows()) {
      if (isUnnamed(row)) {
        changed(row, places.notRepeated(row.row()))
            .ifPresent(
                changed -> {
                  places.drop(row);
                  refuse(row, changed);
                });
      }
    }
  }

  private static boolean isUnnamed(NewRow row) {
    return row.row().id().isEmpty() && row.row().where() instanceof InFile;
  }

  private static Optional<Changed> changed(NewRow row, Collection<LogEntry> stored) {
    return stored.stream()
        .map(entry -> new Changed(entry, differences(entry, row.laterEntry(entry.writtenAt()))))
        .filter(changed -> !changed.differences().isEmpty())
        .min(Comparator.comparingInt(changed -> changed.differences().size()));
  }

  private static List<Difference> differences(LogEntry stored, LogEntry given) {
    Details was = stored.details();
    Details is = given.details();
    List<Difference> all = new ArrayList<>();
    add(
        all,
        "temperature",
        was.temperature().map(Temperature::text),
        is.temperature().map(Temperature::text));
    add(all, "how", was.how().map(How::text), is.how().map(How::text));
    if (!was.place().map(PlaceName::key).equals(is.place().map(PlaceName::key))) {
      add(all, "place", was.place(), is.place());
    }
    add(all, "air", was.air().map(Temperature::text), is.air().map(Temperature::text));
    add(all, "portions", count(was), count(is));
    add(all, "to", was.to(), is.to());
    add(all, "until", was.until().map(ChangedRows::text), is.until().map(ChangedRows::text));
    add(all, "probe", was.probe(), is.probe());
    add(all, "container", was.container(), is.container());
    add(all, "depth", was.depth().map(Depth::cell), is.depth().map(Depth::cell));
    add(all, "by", stored.by(), given.by());
    add(all, "note", stored.note(), given.note());
    return all;
  }

  private static String text(Mark mark) {
    return mark instanceof Mark.Day day
        ? day.date().toString()
        : ((Mark.Time) mark).at().toString();
  }

  private static Optional<String> count(Details details) {
    return details.portions().stream().mapToObj(Integer::toString).findFirst();
  }

  private static void add(
      List<Difference> all, String column, Optional<String> stored, Optional<String> given) {
    if (!stored.equals(given)) {
      all.add(new Difference(column, stored.orElse(""), given.orElse("")));
    }
  }

  private void refuse(NewRow row, Changed changed) {
    Difference first = changed.differences().get(0);
    EntryId id = changed.stored().id();
    String told =
        changed.differences().stream()
            .map(d -> "%s %s, not %s".formatted(d.column(), shown(d.stored()), shown(d.given())))
            .collect(Collectors.joining("; "));
    faults.add(
        row,
        first.column(),
        new Fault(
            "differs-from-stored",
            first.given(),
            shown(first.stored()) + ", as stored",
            ("The entry %s of this moment is stored with %s. What is stored stays: put the row back"
                    + " as it was, and write a \"correction\" with corrects %s, the right cells and"
                    + " the reason in the note. If this is a second entry of the same moment, give"
                    + " the row an id of its own.")
                .formatted(id, told, id)));
  }

  private static String shown(String cell) {
    return cell.isEmpty() ? "blank" : cell;
  }
}
