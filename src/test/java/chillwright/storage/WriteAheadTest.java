package chillwright.storage;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The write-ahead file stays within its bound although somebody always reads. Why readers that
 * overlap keep SQLite from beginning the file anew is told at sqlite.org/wal.html, "Avoiding
 * Excessively Large WAL Files".
 */
class WriteAheadTest {
  /** Our own bound, in bytes. */
  private static final long MOST = 64L * 1024 * 1024;

  private static final int READERS = 3;
  private static final Instant NOON = Instant.parse("2026-03-02T12:00:00Z");
  private static final String LARGE = "x".repeat(1_000_000);

  @TempDir private Path folder;

  @Test
  void it_stays_within_its_bound_while_readers_overlap() throws Exception {
    Path file = folder.resolve("kitchen.db");
    AtomicBoolean isDone = new AtomicBoolean();
    ExecutorService readers = Executors.newFixedThreadPool(READERS);
    try (Database database = Database.open(file)) {
      List<Future<?>> reading = new ArrayList<>();
      CountDownLatch begun = new CountDownLatch(READERS);
      for (int reader = 0; reader < READERS; reader++) {
        reading.add(readers.submit(() -> readUntil(isDone, database, begun)));
      }
      begun.await();
      assertThat(longestWhileWriting(database, file, 2 * MOST)).isLessThan(MOST);
      isDone.set(true);
      for (Future<?> one : reading) {
        one.get();
      }
    } finally {
      isDone.set(true);
      readers.shutdownNow();
    }
  }

  /** A reader that stays longer than anybody waits for: writes go on, and it is made up for. */
  @Test
  void one_long_reader_stops_no_write() throws Exception {
    Path file = folder.resolve("kitchen.db");
    CountDownLatch begun = new CountDownLatch(1);
    CountDownLatch isDone = new CountDownLatch(1);
    ExecutorService readers = Executors.newSingleThreadExecutor();
    try (Database database = Database.open(file)) {
      Future<Boolean> reading =
          readers.submit(
              () ->
                  database.read(
                      session -> {
                        boolean before = session.keys().isAccessKey("late");
                        begun.countDown();
                        await(isDone);
                        return before || session.keys().isAccessKey("late");
                      }));
      begun.await();
      longestWhileWriting(database, file, MOST / 2);
      write(database, "late");
      assertThat(Files.size(WriteAhead.of(file))).isGreaterThan(MOST / 2);
      isDone.countDown();
      assertThat(reading.get()).as("what was written after it began").isFalse();
      Thread.sleep(1_100);
      write(database, "later");
      // Whoever writes is answered before the file is emptied; the next waits for that.
      write(database, "last");
      assertThat(Files.size(WriteAhead.of(file))).isLessThan(1_000_000);
    } finally {
      isDone.countDown();
      readers.shutdownNow();
    }
  }

  private static long longestWhileWriting(Database database, Path file, long bytes)
      throws IOException {
    long longest = 0;
    for (long written = 0; written < bytes; written += LARGE.length()) {
      write(database, LARGE + written);
      longest = Math.max(longest, Files.size(WriteAhead.of(file)));
    }
    return longest;
  }

  private static void write(Database database, String key) {
    database.write(
        session -> {
          session.keys().addAccessKey(key, NOON);
          return null;
        });
  }

  private static void readUntil(AtomicBoolean isDone, Database database, CountDownLatch begun) {
    while (!isDone.get()) {
      database.read(
          session -> {
            session.keys().isAccessKey("none");
            begun.countDown();
            pause();
            return null;
          });
    }
  }

  private static void pause() {
    try {
      Thread.sleep(7);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private static void await(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
