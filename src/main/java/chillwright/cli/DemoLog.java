package chillwright.cli;

import chillwright.core.log.Details;
import chillwright.core.log.Incoming;
import chillwright.core.log.Mark;
import chillwright.core.log.Row;
import chillwright.logfile.Cells;
import chillwright.logfile.CsvLog;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The sample logs, moved in time as a whole so that the moment they were written for is now: what
 * was running then is running now.
 */
final class DemoLog {
  /** The moment the sample logs were written for. */
  static final Instant WRITTEN_FOR = Instant.parse("2026-11-24T21:00:00Z");

  private static final List<String> FILES =
      List.of("week-1.csv", "week-2.csv", "week-3.csv", "places.csv");

  private DemoLog() {}

  static List<Incoming> until(Instant now) {
    Duration shift = Duration.between(WRITTEN_FOR, now);
    List<Incoming> rows = new ArrayList<>();
    CsvLog log = new CsvLog(new Cells(WRITTEN_FOR));
    for (String file : FILES) {
      read(log, file, rows);
    }
    return rows.stream().map(row -> moved(row, shift)).toList();
  }

  private static void read(CsvLog log, String file, List<Incoming> rows) {
    try (InputStream bytes = DemoLog.class.getResourceAsStream("/sample-logs/" + file)) {
      log.read(file, bytes, rows::add);
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    }
  }

  private static Incoming moved(Incoming incoming, Duration shift) {
    if (!(incoming instanceof Row row)) {
      return incoming;
    }
    return new Row(
        row.where(),
        row.lot(),
        row.word(),
        row.when().plus(shift),
        row.id(),
        row.by(),
        row.note(),
        row.corrects(),
        moved(row.details(), shift));
  }

  private static Details moved(Details details, Duration shift) {
    Optional<Mark> until = details.until().map(mark -> moved(mark, shift));
    return details.markedUntil(until);
  }

  private static Mark moved(Mark mark, Duration shift) {
    if (mark instanceof Mark.Time time) {
      return new Mark.Time(time.at().plus(shift));
    }
    return new Mark.Day(((Mark.Day) mark).date().plusDays(Math.round(shift.toHours() / 24.0)));
  }
}
