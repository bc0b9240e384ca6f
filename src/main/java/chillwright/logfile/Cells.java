package chillwright.logfile;

import chillwright.core.log.Incoming;
import chillwright.core.log.Misread;
import chillwright.core.log.Nearest;
import chillwright.core.log.Problem;
import chillwright.core.log.Row;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Turns the cells of one row into a row of the log, or into all that is wrong with them. A blank
 * cell is one that was left out. Texts are kept as given, trimmed and in Unicode's normal form C.
 */
public final class Cells {
  /** Nothing in a log may have happened before this moment. */
  public static final Instant EARLIEST = Instant.parse("2000-01-01T00:00:00Z");

  /** How far a clock in the kitchen may be ahead of ours. */
  public static final Duration AHEAD = Duration.ofMinutes(5);

  /** The most characters in a cell of text, and in a note. */
  public static final int LONGEST_TEXT = 500;

  public static final int LONGEST_CONTAINER = 60;

  public static final int LONGEST_NOTE = 2000;

  private final long earliest = EARLIEST.toEpochMilli();
  private final long latest;
  private final TimeExample example;

  /** For a log of no certain kitchen: times are shown with some offset from UTC. */
  public Cells(Instant now) {
    this(now, ZoneOffset.ofHours(-5));
  }

  /**
   * @param now the moment of reading: what happened more than five minutes later is refused
   * @param zone of the kitchen, for the times that faults show
   */
  public Cells(Instant now, ZoneId zone) {
    this.latest = now.plus(AHEAD).toEpochMilli();
    this.example = new TimeExample(zone);
  }

  /**
   * Reads one row.
   *
   * @param cells text by column title; a title that is no column is a fault
   */
  public Incoming read(Map<String, String> cells, Place place) {
    GivenCells given = new GivenCells(place);
    List<Problem> unknown = new ArrayList<>();
    cells.forEach(
        (title, text) -> {
          Optional<Column> column = Column.ofTitle(title);
          if (column.isPresent()) {
            given.put(column.get(), text);
          } else {
            unknown.add(unknownColumn(title, place.cell(title)));
          }
        });
    Incoming read = read(given);
    return unknown.isEmpty() ? read : refused(read, unknown);
  }

  /** Reads one row whose columns are known. */
  Incoming read(GivenCells given) {
    return new CellReader(given, earliest, latest, example).read();
  }

  private static Misread refused(Incoming read, List<Problem> unknown) {
    List<Problem> all = new ArrayList<>(unknown);
    if (read instanceof Misread misread) {
      all.addAll(misread.problems());
      return new Misread(misread.where(), misread.lot(), misread.id(), false, all);
    }
    Row row = (Row) read;
    return new Misread(row.where(), row.lot(), row.id(), false, all);
  }

  static Problem unknownColumn(String title, Problem.Where where) {
    return new Problem(
        "unknown-column",
        where,
        Texts.shown(title),
        String.join(", ", Column.titles()),
        "\"%s\" is no column of a log.%s"
            .formatted(Texts.shown(title), Nearest.question(title, Column.titles())));
  }
}
