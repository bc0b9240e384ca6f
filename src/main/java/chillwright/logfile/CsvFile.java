package chillwright.logfile;

import chillwright.core.log.Incoming;
import chillwright.core.log.Misread;
import chillwright.core.log.Problem;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** One log file while it is read: its header once that has come, then its rows. */
final class CsvFile {
  private final String name;
  private final Cells cells;
  private final Consumer<? super Incoming> taker;
  private Optional<CsvHeader> header = Optional.empty();

  CsvFile(String name, Cells cells, Consumer<? super Incoming> taker) {
    this.name = name;
    this.cells = cells;
    this.taker = taker;
  }

  static Misread whole(Problem.Where where, Problem... problems) {
    return new Misread(where, Optional.empty(), Optional.empty(), true, List.of(problems));
  }

  /** Takes the next record, which is the header if it is the first. */
  void take(CsvLines.Line line) {
    if (line.isBlank()) {
      return;
    }
    Place place = Place.line(name, line.number());
    if (header.isEmpty()) {
      CsvHeader read = CsvHeader.of(line.cells(), place);
      header = Optional.of(read);
      if (!read.problems().isEmpty()) {
        taker.accept(whole(place.row(), read.problems().toArray(Problem[]::new)));
      }
    } else {
      taker.accept(header.get().row(line.cells(), place, cells));
    }
  }

  /** Whether the header lacks a column that every row needs, so that reading on tells nothing. */
  boolean isHopeless() {
    return header.filter(h -> !h.isComplete()).isPresent();
  }

  /** No more records follow. */
  void end() {
    if (header.isEmpty()) {
      Problem.Where where = Place.line(name, 1).row();
      taker.accept(
          whole(
              where,
              new Problem(
                  "empty-file",
                  where,
                  "",
                  "a header row: " + String.join(",", Column.titles()),
                  "This file is empty. Its first row names the columns.")));
    }
  }

  /** A quotation mark is wrong, so nothing after it can be told apart. */
  void breakOff(long line, int completeCells) {
    String column = header.map(h -> h.title(completeCells)).orElse("");
    Problem.Where where = Place.line(name, line).row();
    taker.accept(
        whole(
            where,
            new Problem(
                "broken-quotes",
                where.at(column),
                "",
                "a cell in double quotes, with each double quote inside it doubled",
                "The quotation mark that begins this cell is not closed, or something follows the"
                    + " one that closes it. The rows after this one were not read.")));
  }
}
