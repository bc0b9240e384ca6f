package chillwright.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicLong;

/** Ten times the rows of the file that is imported otherwise, in a small heap. */
final class LargeRows implements Ground.Group {
  private static final int TIMES = 10;
  private static final Map<String, String> SMALL_HEAP = Map.of("JAVA_TOOL_OPTIONS", "-Xmx512m");

  private final AtomicLong importNanos;

  /**
   * @param importNanos the best length of time of the other file; below 1 if it was not measured
   */
  LargeRows(AtomicLong importNanos) {
    this.importNanos = importNanos;
  }

  @Override
  public List<Line> lines(Ground ground) throws IOException, InterruptedException {
    Line line = Line.what("ten times the rows in a heap of 512 MB");
    if (!ground.size().isFull()) {
      return List.of(line.skipped("in the full form only"));
    }
    if (importNanos.get() < 1) {
      importNanos.set(stored(ground, ground.log(), Map.of()).requireCode(0).nanos());
    }
    Path log = BenchLog.write(ground.file("large.csv"), ground.size().importLots() * TIMES, 0);
    Run run = stored(ground, log, SMALL_HEAP);
    Files.delete(log);
    if (run.code() != 0) {
      return List.of(line.measured("ended with " + run.code()).judged("at most 11", false));
    }
    return List.of(
        line.measured(Times.text(run.nanos()))
            .against(ground.size().importRows() + " " + Times.text(importNanos.get()))
            .atMost((double) run.nanos() / importNanos.get(), 11));
  }

  private static Run stored(Ground ground, Path log, Map<String, String> environment)
      throws IOException, InterruptedException {
    Path database = ground.file("large.db");
    ground.remove(database);
    try {
      return Run.of(ground.importOf(log, database), ground.folder(), environment);
    } finally {
      ground.remove(database);
    }
  }
}
