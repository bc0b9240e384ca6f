package chillwright.storage;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicLong;
import org.sqlite.ProgressHandler;
import org.sqlite.SQLiteCommitListener;
import org.sqlite.SQLiteConnection;

/** Reaches the connections of an open database, for the bench alone. */
public final class Watching {
  /** As many as {@link Readers} lends at most. */
  private static final int READERS = 4;

  private Watching() {}

  /** Has every commit of the one writer wait that long. */
  public static void slowCommits(Database database, long millis) {
    database.write(
        session -> {
          session.sql().connection(connection -> slowCommits(connection, millis));
          return null;
        });
  }

  /** Has every commit of that connection wait that long, within the commit itself. */
  public static void slowCommits(Connection connection, long millis) throws SQLException {
    connection
        .unwrap(SQLiteConnection.class)
        .addCommitListener(
            new SQLiteCommitListener() {
              @Override
              public void onCommit() {
                pause(millis);
              }

              @Override
              public void onRollback() {}
            });
  }

  private static void pause(long millis) {
    try {
      Thread.sleep(millis);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Counts the steps of SQLite's machine on every connection: while it stands, no SQL has run. */
  public static AtomicLong steps(Database database)
      throws InterruptedException, ExecutionException {
    AtomicLong steps = new AtomicLong();
    database.write(session -> watch(session, steps));
    CyclicBarrier allLent = new CyclicBarrier(READERS);
    ExecutorService readers = Executors.newFixedThreadPool(READERS);
    try {
      List<Future<?>> watched = new ArrayList<>();
      for (int reader = 0; reader < READERS; reader++) {
        watched.add(
            readers.submit(() -> database.read(session -> watchTogether(session, steps, allLent))));
      }
      for (Future<?> one : watched) {
        one.get();
      }
    } finally {
      readers.shutdownNow();
    }
    return steps;
  }

  /** Held until every connection is lent, so that each is another one. */
  private static Void watchTogether(Session session, AtomicLong steps, CyclicBarrier allLent) {
    try {
      allLent.await();
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
    return watch(session, steps);
  }

  private static Void watch(Session session, AtomicLong steps) {
    session.sql().connection(connection -> ProgressHandler.setHandler(connection, 1, count(steps)));
    return null;
  }

  private static ProgressHandler count(AtomicLong steps) {
    return new ProgressHandler() {
      @Override
      protected int progress() {
        steps.incrementAndGet();
        return 0;
      }
    };
  }
}
