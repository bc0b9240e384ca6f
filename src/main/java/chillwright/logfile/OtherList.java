package chillwright.logfile;

import chillwright.core.log.Problem;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Lists that this program gives out and that are no logs, told by columns that no log has. Such a
 * file has one fault, not one for each of its columns.
 */
enum OtherList {
  TRACE("trace", "portions_made", "what", "row"),
  LOTS("lots, on hand or all", "portions_left", "ended", "governs"),
  OUT("out of compliance", "out_since", "corrective_action"),
  PULL("what comes out of the freezer", "why", "last_day", "dish"),
  ROUND("the round of the day", "limit_source", "rounds_read"),
  UNFINISHED("what is unfinished today", "owed_since", "taken_over_by"),
  METHODS("ways of cooling", "standing", "not_shown", "coldest_air"),
  PLANS("plans", "plan", "serving"),
  TASKS("tasks of a plan", "task", "step", "uses"),
  FOODS("foods of the kitchen", "roomDays", "ingredients"),
  PLACES("places of the kitchen", "ownLimit", "rounds"),
  PEOPLE("people of the kitchen", "initials", "name"),
  PROBES("probes of the kitchen", "name", "scales");

  private final String title;
  private final List<String> columns;

  OtherList(String title, String... columns) {
    this.title = title;
    this.columns = List.of(columns);
  }

  /** The one that has all of its columns there; none where the file has a log's own column. */
  private static Optional<OtherList> of(List<String> titles) {
    boolean isLog = titles.contains(Column.ENTRY.title());
    return Arrays.stream(values())
        .filter(list -> !isLog && titles.containsAll(list.columns))
        .findFirst();
  }

  /** The fault of a file that is such a list. */
  static Optional<Problem> fault(List<String> titles, Place place) {
    return of(titles)
        .map(
            list ->
                new Problem(
                    "not-a-log",
                    place.row(),
                    list.title,
                    "a log, with columns lot, when and entry at least",
                    ("This is a list (%s), not a log: it holds no entries. Take the log of a lot"
                            + " from its page, under all entries (/lots/CODE/log.csv), and the"
                            + " readings of places from the page Record (/record/readings.csv).")
                        .formatted(list.title)));
  }
}
