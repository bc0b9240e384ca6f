package chillwright.logfile;

import chillwright.core.log.EntryId;
import chillwright.core.log.Incoming;
import chillwright.core.log.LotId;
import chillwright.core.log.Misread;
import chillwright.core.log.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The header row of a log file: which column stands where.
 *
 * @param columns in the order of the file; empty for one that is unknown or stands there twice
 * @param problems what is wrong with the header
 */
record CsvHeader(List<Optional<Column>> columns, List<Problem> problems) {
  private static final List<Column> NEEDED = List.of(Column.LOT, Column.WHEN, Column.ENTRY);

  CsvHeader {
    columns = List.copyOf(columns);
    problems = List.copyOf(problems);
  }

  static CsvHeader of(List<String> titles, Place place) {
    if (titles.size() == 1 && (titles.get(0).contains(";") || titles.get(0).contains("\t"))) {
      return new CsvHeader(List.of(Optional.empty()), List.of(wrongSeparator(titles, place)));
    }
    Optional<Problem> other = OtherList.fault(titles.stream().map(Texts::trimmed).toList(), place);
    if (other.isPresent()) {
      return new CsvHeader(List.of(Optional.empty()), List.of(other.get()));
    }
    List<Optional<Column>> columns = new ArrayList<>();
    List<Problem> problems = new ArrayList<>();
    for (String cell : titles) {
      String title = Texts.trimmed(cell);
      Optional<Column> column = Column.ofTitle(title);
      if (column.isEmpty()) {
        problems.add(unknown(title, columns.size() + 1, place));
      } else if (columns.contains(column)) {
        problems.add(twice(title, place));
        column = Optional.empty();
      }
      columns.add(column);
    }
    for (Column needed : NEEDED) {
      if (!columns.contains(Optional.of(needed))) {
        problems.add(missing(needed, place));
      }
    }
    return new CsvHeader(columns, problems);
  }

  int size() {
    return columns.size();
  }

  /** Whether every column is there that every row needs. */
  boolean isComplete() {
    return NEEDED.stream().allMatch(needed -> columns.contains(Optional.of(needed)));
  }

  /** The title of the column at that index; empty for an unknown one. */
  String title(int index) {
    return index < columns.size() ? columns.get(index).map(Column::title).orElse("") : "";
  }

  /** Where that column stands; -1 if it does not. */
  int index(Column column) {
    return columns.indexOf(Optional.of(column));
  }

  /** The cell of that column in a row that may be too short; empty if it is not there. */
  String cell(Column column, List<String> row) {
    int index = index(column);
    return index >= 0 && index < row.size() ? row.get(index) : "";
  }

  /** The cells of a row by column, those of unknown columns left out. */
  private GivenCells given(List<String> row, Place place) {
    GivenCells known = new GivenCells(place);
    for (int i = 0; i < columns.size(); i++) {
      Optional<Column> column = columns.get(i);
      if (column.isPresent()) {
        known.put(column.get(), row.get(i));
      }
    }
    return known;
  }

  /** Reads a row by these columns. */
  Incoming row(List<String> row, Place place, Cells cells) {
    return row.size() == columns.size() ? cells.read(given(row, place)) : wrongCount(row, place);
  }

  private Misread wrongCount(List<String> given, Place place) {
    Problem problem =
        new Problem(
            "cell-count",
            place.row(),
            given.size() + " cells",
            columns.size() + " cells",
            "This row has %d cells, but the header has %d columns. %s"
                .formatted(given.size(), columns.size(), remedy(given.size() > columns.size())));
    return new Misread(
        place.row(),
        code(cell(Column.LOT, given)).map(LotId::new),
        code(cell(Column.ID, given)).map(EntryId::new),
        false,
        List.of(problem));
  }

  private static String remedy(boolean tooMany) {
    return tooMany
        ? "A cell that holds a comma goes between double quotes."
        : "A blank cell still needs its comma.";
  }

  private static Optional<String> code(String cell) {
    return Optional.of(Texts.trimmed(cell)).filter(LotId::isCode);
  }

  private static Problem wrongSeparator(List<String> titles, Place place) {
    return new Problem(
        "wrong-separator",
        place.row(),
        Texts.shown(titles.get(0)),
        "columns separated by commas",
        "The columns of this file are not separated by commas. Save it again with commas.");
  }

  private static Problem unknown(String title, int number, Place place) {
    if (title.isEmpty()) {
      return new Problem(
          "unnamed-column",
          place.row(),
          "column " + number,
          String.join(", ", Column.titles()),
          "Column %d has no title. Give it one, or delete the column.".formatted(number));
    }
    return Cells.unknownColumn(title, place.cell(Texts.shown(title)));
  }

  private static Problem twice(String title, Place place) {
    return new Problem(
        "column-twice",
        place.cell(title),
        title,
        "each column once",
        "The column \"%s\" is there twice. Delete one of them.".formatted(title));
  }

  private static Problem missing(Column needed, Place place) {
    return new Problem(
        "missing-column",
        place.cell(needed.title()),
        "",
        "columns lot, when and entry at least",
        "The column \"%s\" is missing from the header.".formatted(needed.title()));
  }
}
