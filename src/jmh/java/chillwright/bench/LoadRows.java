package chillwright.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicLong;

/**
 * A service under load for a long while: does it grow? Phones write and others read lists, each as
 * fast as it is answered, so that there is hardly a moment without a read in the database.
 */
final class LoadRows implements Ground.Group {
  private static final int WRITERS = 2;
  private static final int READERS = 4;
  private static final int LOOK_EVERY_MILLIS = 20;

  /** After which a phone begins anew, before the times it writes down reach the present. */
  private static final int WRITES_OF_A_PHONE = 10_000;

  private static final long MOST_WRITE_AHEAD = 64L * 1024 * 1024;
  private static final List<String> READ =
      List.of(
          "/api/v1/lots?limit=50",
          "/api/v1/lots?verdict=out&limit=50",
          "/api/v1/due?limit=50",
          "/api/v1/lots/" + KitchenLog.ON_HAND);

  private final AtomicLong writes = new AtomicLong();
  private final AtomicLong reads = new AtomicLong();

  /** What was seen of a service: sizes in bytes, of its memory where the system tells. */
  private record Seen(OptionalLong early, OptionalLong late, long longestWriteAhead) {}

  @Override
  public List<Line> lines(Ground ground) throws Exception {
    Path database = ground.file("load.db");
    ground.remove(database);
    Path log = KitchenLog.write(ground.file("load.csv"), Size.STARTED_LOTS, Instant.now());
    Run.of(ground.importOf(log, database), ground.folder()).requireCode(0);
    Files.delete(log);
    Duration length = ground.size().isFull() ? Duration.ofMinutes(10) : Duration.ofSeconds(20);
    try (Serve serve = Serve.start(ground, database)) {
      Seen seen = load(serve, database, length);
      return List.of(memory(length, seen), writeAhead(length, seen));
    } finally {
      ground.remove(database);
    }
  }

  private Seen load(Serve serve, Path database, Duration length) throws Exception {
    long end = System.nanoTime() + length.toNanos();
    ExecutorService clients = Executors.newFixedThreadPool(WRITERS + READERS);
    try {
      List<Future<?>> all = new ArrayList<>();
      for (int writer = 0; writer < WRITERS; writer++) {
        String name = "W" + writer;
        all.add(clients.submit(() -> writeUntil(serve, name, end)));
      }
      for (int reader = 0; reader < READERS; reader++) {
        all.add(clients.submit(() -> readUntil(serve, end)));
      }
      Seen seen = look(serve, database, end - length.toNanos() / 10 * 9, end);
      for (Future<?> one : all) {
        one.get();
      }
      return seen;
    } finally {
      clients.shutdownNow();
    }
  }

  private static Seen look(Serve serve, Path database, long early, long end)
      throws IOException, InterruptedException {
    Path writeAhead = database.resolveSibling(database.getFileName() + "-wal");
    OptionalLong first = OptionalLong.empty();
    long longest = 0;
    while (System.nanoTime() - end < 0) {
      if (first.isEmpty() && System.nanoTime() - early >= 0) {
        first = serve.residentBytes();
      }
      longest = Math.max(longest, Files.exists(writeAhead) ? Files.size(writeAhead) : 0);
      Thread.sleep(LOOK_EVERY_MILLIS);
    }
    return new Seen(first, serve.residentBytes(), longest);
  }

  private Void writeUntil(Serve serve, String name, long end) throws IOException {
    try (HttpLine line = serve.line()) {
      Phone phone = new Phone(line, name + "A0");
      for (int sent = 1; System.nanoTime() - end < 0; sent++) {
        phone.write();
        writes.incrementAndGet();
        if (sent % WRITES_OF_A_PHONE == 0) {
          phone = new Phone(line, name + "A" + sent / WRITES_OF_A_PHONE);
        }
      }
    }
    return null;
  }

  private Void readUntil(Serve serve, long end) throws IOException {
    try (HttpLine line = serve.line()) {
      for (int sent = 0; System.nanoTime() - end < 0; sent++) {
        line.get(READ.get(sent % READ.size())).require(200);
        reads.incrementAndGet();
      }
    }
    return null;
  }

  private Line memory(Duration length, Seen seen) {
    Line line = Line.what("serve, resident memory after " + words(length) + " of load");
    if (seen.early().isEmpty() || seen.late().isEmpty()) {
      return line.skipped("this system does not tell");
    }
    double ratio = (double) seen.late().getAsLong() / seen.early().getAsLong();
    return line.measured(
            "%s (%,d writes, %,d reads)"
                .formatted(megabytes(seen.late().getAsLong()), writes.get(), reads.get()))
        .against("after a tenth of it " + megabytes(seen.early().getAsLong()))
        .atMost(ratio, 1.2);
  }

  private static Line writeAhead(Duration length, Seen seen) {
    return Line.what("the write-ahead file in " + words(length) + " of load, at its longest")
        .measured(megabytes(seen.longestWriteAhead()))
        .judged("at most 64 MB", seen.longestWriteAhead() <= MOST_WRITE_AHEAD);
  }

  private static String words(Duration length) {
    return length.toMinutes() > 0 ? length.toMinutes() + " min" : length.toSeconds() + " s";
  }

  private static String megabytes(long bytes) {
    return String.format(Locale.ROOT, "%.1f MB", bytes / 1e6);
  }
}
