package chillwright.logfile;

import chillwright.core.log.Mark;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalLong;

/** The cells of a row that hold a time or a date. */
final class TimeCells {
  private final GivenCells cells;
  private final long earliest;
  private final long latest;
  private final TimeExample example;

  TimeCells(GivenCells cells, long earliest, long latest, TimeExample example) {
    this.cells = cells;
    this.earliest = earliest;
    this.latest = latest;
    this.example = example;
  }

  /** When it happened, as epoch millisecond; empty with its fault noted if it cannot be told. */
  OptionalLong when() {
    if (cells.isBlank(Column.WHEN)) {
      cells.refuse(Column.WHEN, "missing", example.allowed(), "Say when it happened.");
      return OptionalLong.empty();
    }
    OptionalLong millis = time(Column.WHEN);
    if (millis.isPresent() && millis.getAsLong() > latest) {
      cells.refuse(
          Column.WHEN,
          "in-the-future",
          "at most five minutes ahead of now",
          "This is more than five minutes in the future. Check the date and the time of day.");
      return OptionalLong.empty();
    }
    return millis;
  }

  /** A time not too early; empty with its fault noted if the cell holds none. */
  private OptionalLong time(Column column) {
    OptionalLong millis = Times.millis(cells.given(column));
    if (millis.isEmpty()) {
      refuseTime(column);
    } else if (millis.getAsLong() < earliest) {
      refuseTooEarly(column);
      return OptionalLong.empty();
    }
    return millis;
  }

  private void refuseTooEarly(Column column) {
    cells.refuse(column, "too-early", "2000-01-01 or later", "This is before the year 2000.");
  }

  private void refuseTime(Column column) {
    String given = cells.given(column);
    switch (Times.flaw(given)) {
      case NO_OFFSET ->
          cells.refuse(
              column,
              "no-offset",
              example.allowed(),
              "The offset from UTC is missing. Add it at the end, such as %s, or Z for UTC."
                  .formatted(example.with(given)));
      case NO_SUCH_TIME ->
          cells.refuse(
              column,
              "no-such-time",
              example.allowed(),
              "There is no such moment. Check month, day, hour, minute and offset.");
      case UNREADABLE ->
          cells.refuse(
              column,
              "bad-time",
              example.allowed(),
              "Write date, time and offset from UTC like %s.".formatted(example.text()));
    }
  }

  /** What is marked on the food; empty if nothing is, or with its fault noted. */
  Optional<Mark> until() {
    if (cells.isBlank(Column.UNTIL)) {
      return Optional.empty();
    }
    Optional<LocalDate> date = Times.date(cells.given(Column.UNTIL));
    if (date.isPresent() && date.get().getYear() < 2000) {
      refuseTooEarly(Column.UNTIL);
      return Optional.empty();
    }
    if (date.isPresent()) {
      return date.map(Mark.Day::new);
    }
    OptionalLong millis = time(Column.UNTIL);
    return millis.isPresent()
        ? Optional.of(new Mark.Time(Instant.ofEpochMilli(millis.getAsLong())))
        : Optional.empty();
  }
}
