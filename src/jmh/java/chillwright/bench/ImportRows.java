package chillwright.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;

/** A whole file taken in, start of the JVM included, beside the bare import of SQLite's shell. */
final class ImportRows implements Ground.Group {
  /** Also the number of faults that a broken file has. */
  private static final int FAULTS = 1_000;

  private static final String TABLE =
      "create table log_entry(lot text,food text,category text,happened text,entry text,"
          + "temperature text,place text,portions text,probe text,who text,note text) strict;"
          + "create index lot_happened on log_entry(lot, happened);"
          + "create index happened on log_entry(happened);";

  private final AtomicLong importNanos;

  /**
   * @param importNanos is told the best length of time, for the lines that are measured against it
   */
  ImportRows(AtomicLong importNanos) {
    this.importNanos = importNanos;
  }

  @Override
  public List<Line> lines(Ground ground) throws IOException, InterruptedException {
    Path log = ground.log();
    Path database = ground.file("import.db");
    boolean hasShell = hasShell(ground);
    Times ours = new Times();
    Times bare = new Times();
    for (int round = 0; round < ground.size().rounds(); round++) {
      if (hasShell) {
        bare.add(bare(ground, log));
      }
      ground.remove(database);
      ours.add(Run.of(ground.importOf(log, database), ground.folder()).requireCode(0).nanos());
    }
    importNanos.set(ours.best());
    List<Line> lines = new ArrayList<>();
    lines.add(againstShell(ground, ours, bare));
    lines.add(again(ground, log, database, ours.best()));
    ground.remove(database);
    lines.add(faults(ground, ours.best()));
    return lines;
  }

  private static boolean hasShell(Ground ground) throws InterruptedException {
    try {
      return Run.of(List.of("sqlite3", "-version"), ground.folder()).code() == 0;
    } catch (IOException notThere) {
      return false;
    }
  }

  private static long bare(Ground ground, Path log) throws IOException, InterruptedException {
    Path database = ground.file("bare.db");
    ground.remove(database);
    Run.of(shell(database, "pragma journal_mode=wal;" + TABLE), ground.folder()).requireCode(0);
    Run run =
        Run.of(
            shell(
                database,
                "pragma synchronous=full",
                ".import --csv --skip 1 " + log.getFileName() + " log_entry"),
            ground.folder());
    ground.remove(database);
    return run.requireCode(0).nanos();
  }

  private static List<String> shell(Path database, String... words) {
    List<String> command = new ArrayList<>(List.of("sqlite3", database.toString()));
    command.addAll(List.of(words));
    return command;
  }

  private static Line againstShell(Ground ground, Times ours, Times bare) {
    Line line =
        Line.what("import of " + ground.size().importRows()).measured(Times.text(ours.best()));
    return bare.count() == 0
        ? line.against("skipped: sqlite3 is not installed")
        : line.against("sqlite3 .import " + Times.text(bare.best()))
            .atMost((double) ours.best() / bare.best(), 1.0);
  }

  private static Line again(Ground ground, Path log, Path database, long clean)
      throws IOException, InterruptedException {
    Times times = new Times();
    for (int round = 0; round < ground.size().rounds(); round++) {
      times.add(Run.of(ground.importOf(log, database), ground.folder()).requireCode(0).nanos());
    }
    return againstClean("the same file again", times, clean).atMost(ratio(times, clean), 0.5);
  }

  private static Line faults(Ground ground, long clean) throws IOException, InterruptedException {
    Path log = BenchLog.write(ground.file("faults.csv"), ground.size().importLots(), FAULTS);
    Path database = ground.file("faults.db");
    Times times = new Times();
    long listed = 0;
    boolean isNothingStored = true;
    for (int round = 0; round < ground.size().rounds(); round++) {
      ground.remove(database);
      Run run = Run.of(ground.importOf(log, database), ground.folder()).requireCode(2);
      times.add(run.nanos());
      listed =
          run.err().lines().filter(line -> line.contains(log.getFileName() + ", line ")).count();
      isNothingStored &= run.out().startsWith("Nothing was stored");
    }
    ground.remove(database);
    Files.delete(log);
    return againstClean(FAULTS + " spread faults, " + listed + " listed", times, clean)
        .atMost(ratio(times, clean), 1.2)
        .and("all listed", listed == FAULTS)
        .and("nothing stored", isNothingStored);
  }

  private static Line againstClean(String what, Times times, long clean) {
    return Line.what(what)
        .measured(Times.text(times.best()))
        .against("clean import " + Times.text(clean));
  }

  private static double ratio(Times times, long clean) {
    return (double) times.best() / clean;
  }
}
