package chillwright.logfile;

import chillwright.core.log.Problem;
import java.util.ArrayList;
import java.util.List;

/** The cells of one row as they were given, trimmed, and what was found wrong with them so far. */
final class GivenCells {
  private final String[] cells;
  private final Place place;
  private final List<Problem> problems = new ArrayList<>(0);

  /**
   * @param cells in the order of {@link Column}; null for one left out
   */
  GivenCells(String[] cells, Place place) {
    this.cells = new String[cells.length];
    for (int i = 0; i < cells.length; i++) {
      this.cells[i] = cells[i] == null ? "" : Texts.trimmed(cells[i]);
    }
    this.place = place;
  }

  Problem.Where row() {
    return place.row();
  }

  List<Problem> problems() {
    return problems;
  }

  String given(Column column) {
    return cells[column.ordinal()];
  }

  boolean isBlank(Column column) {
    return given(column).isEmpty();
  }

  /** Notes what is wrong with a cell; a cell with broken bytes is wrong for that reason first. */
  void refuse(Column column, String code, String allowed, String says) {
    String given = given(column);
    if (Texts.hasBrokenBytes(given)) {
      refuseBrokenBytes(column);
      return;
    }
    add(column, code, allowed, says);
  }

  private void add(Column column, String code, String allowed, String says) {
    problems.add(
        new Problem(
            code, place.cell(column.title()), Texts.shown(given(column)), allowed, says));
  }

  void refuseBrokenBytes(Column column) {
    add(
        column,
        "not-utf-8",
        "text in UTF-8",
        "This cell holds bytes that are not UTF-8. Save the file as \"CSV UTF-8\", or write 41F"
            + " instead of a degree sign.");
  }
}
