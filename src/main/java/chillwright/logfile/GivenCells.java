package chillwright.logfile;

import chillwright.core.log.Problem;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** The cells of one row as they were given, trimmed, and what was found wrong with them so far. */
final class GivenCells {
  private final Map<Column, String> cells = new EnumMap<>(Column.class);
  private final Place place;
  private final List<Problem> problems = new ArrayList<>(0);

  GivenCells(Place place) {
    this.place = place;
  }

  void put(Column column, String text) {
    cells.put(column, Texts.trimmed(text));
  }

  Problem.Where row() {
    return place.row();
  }

  List<Problem> problems() {
    return problems;
  }

  String given(Column column) {
    return cells.getOrDefault(column, "");
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
        new Problem(code, place.cell(column.title()), Texts.shown(given(column)), allowed, says));
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
