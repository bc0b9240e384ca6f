package chillwright.bench;

import chillwright.storage.Watching;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;

/**
 * Many clients at once on a slow disk: every commit is made to wait 5 ms more in SQLite's commit
 * hook, as no shipped program does. Service and clients share this JVM.
 */
final class CrowdRows implements Ground.Group {
  private static final int SLOW_MILLIS = 5;
  private static final int MOST_COMMITS = 8;
  private int phones;

  /** What some clients did in a while. */
  private record Crowd(double writesPerSecond, Times times) {}

  @Override
  public List<Line> lines(Ground ground) throws Exception {
    long commit = commit(ground);
    Path database = ground.file("crowd.db");
    ground.remove(database);
    try (InProcess served = new InProcess(database)) {
      write(served.port(), 16, 2 * ground.size().millis());
      Watching.slowCommits(served.database(), SLOW_MILLIS);
      write(served.port(), 1, ground.size().millis());
      Crowd one = write(served.port(), 1, 3 * ground.size().millis());
      List<Line> lines = new ArrayList<>();
      lines.add(line(16, 8, one, crowd(ground, served, 16), commit));
      lines.add(line(64, 20, one, crowd(ground, served, 64), commit));
      return lines;
    } finally {
      ground.remove(database);
    }
  }

  private Crowd crowd(Ground ground, InProcess served, int clients) throws Exception {
    write(served.port(), clients, ground.size().millis());
    return write(served.port(), clients, 3 * ground.size().millis());
  }

  /** A bare commit that is slowed in the same way. */
  private static long commit(Ground ground) throws SQLException, IOException {
    Path file = ground.file("bare.db");
    ground.remove(file);
    Times times = new Times();
    try (BareTable table = new BareTable(file)) {
      table.slowCommits(SLOW_MILLIS);
      for (int round = 0; round < 50; round++) {
        times.add(table.write());
      }
    }
    ground.remove(file);
    return times.median();
  }

  private static Line line(int clients, int least, Crowd one, Crowd many, long commit) {
    double inCommits = (double) many.times().at(0.99) / commit;
    return Line.what(clients + " clients, commits slowed by " + SLOW_MILLIS + " ms")
        .measured(
            String.format(
                Locale.ROOT,
                "%,.0f writes/s, 99 %% within %s (%.1f commits)",
                many.writesPerSecond(),
                Times.text(many.times().at(0.99)),
                inCommits))
        .against(
            String.format(
                Locale.ROOT,
                "one client %,.0f writes/s; a commit %s",
                one.writesPerSecond(),
                Times.text(commit)))
        .atLeast(many.writesPerSecond() / one.writesPerSecond(), least)
        .and("99 % within " + MOST_COMMITS + " commits", inCommits <= MOST_COMMITS);
  }

  private Crowd write(int port, int clients, long millis) throws Exception {
    Times times = new Times();
    ExecutorService crowd = Executors.newFixedThreadPool(clients);
    long start = System.nanoTime();
    long end = start + TimeUnit.MILLISECONDS.toNanos(millis);
    try {
      List<Future<?>> all = new ArrayList<>();
      for (int client = 0; client < clients; client++) {
        String name = "PH" + phones++;
        all.add(crowd.submit(() -> writeUntil(port, name, end, times)));
      }
      for (Future<?> one : all) {
        one.get();
      }
    } finally {
      crowd.shutdownNow();
    }
    return new Crowd(times.count() * 1e9 / (System.nanoTime() - start), times);
  }

  private static Void writeUntil(int port, String name, long end, Times times) throws IOException {
    try (HttpLine line = new HttpLine(port)) {
      Phone phone = new Phone(line, name);
      while (System.nanoTime() - end < 0) {
        times.add(phone.write());
      }
    }
    return null;
  }
}
