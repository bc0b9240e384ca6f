package chillwright.core.log;

import chillwright.core.log.Problem.Where;
import chillwright.core.log.Problem.Where.InField;
import chillwright.core.log.Problem.Where.InFile;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** The faults found so far, with the rows they stand in. */
final class IntakeFaults {
  private record Found(int index, Problem problem) {}

  private final List<Found> found = new ArrayList<>();
  private final DateTimeFormatter moments;

  /**
   * @param zone of the kitchen; faults tell times in it
   */
  IntakeFaults(ZoneId zone) {
    this.moments = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT).withZone(zone);
  }

  /** What is wrong and how to put it right; where it stands is told by the row and its column. */
  record Fault(String code, String given, String allowed, String says) {}

  void add(NewRow row, String column, Fault fault) {
    add(row.index(), row.row().where().at(column), fault);
  }

  void add(int index, Where where, Fault fault) {
    Problem problem =
        new Problem(fault.code(), where, fault.given(), fault.allowed(), fault.says());
    found.add(new Found(index, problem));
  }

  void addAll(int index, List<Problem> problems) {
    problems.forEach(problem -> found.add(new Found(index, problem)));
  }

  /** All faults in the order of the rows; those of one row in the order they were found. */
  List<Problem> inOrder() {
    return found.stream()
        .sorted(Comparator.comparingInt(Found::index))
        .map(Found::problem)
        .toList();
  }

  /** A moment in words, in the kitchen's zone. */
  String text(Instant moment) {
    return moments.format(moment);
  }

  /** A place in words, such as "line 3 of soup.csv". */
  static String text(Where where) {
    if (where instanceof InFile file) {
      return "line " + file.line() + " of " + file.file();
    }
    return ((InField) where).pointer();
  }
}
