package chillwright.storage;

import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.concurrent.Semaphore;
import java.util.function.Function;
import org.jooq.exception.DataAccessException;

/** A few connections that only read, lent to one caller at a time. */
final class Readers {
  private static final int MOST = 4;

  private final Path file;
  private final Semaphore free = new Semaphore(MOST, true);
  private final Deque<Lent> idle = new ArrayDeque<>();
  private int generation;
  private boolean closed;

  Readers(Path file) {
    this.file = file;
  }

  private record Lent(Session session, int generation) {}

  <T> T read(Function<Session, T> work) {
    free.acquireUninterruptibly();
    try {
      Lent lent = take();
      boolean sound = false;
      try {
        // Several queries of one reader see one state of the database.
        lent.session.execute("BEGIN");
        T answer = work.apply(lent.session);
        lent.session.execute("COMMIT");
        sound = true;
        return answer;
      } finally {
        giveBack(lent, sound);
      }
    } catch (SQLException | DataAccessException e) {
      throw new StorageException("The database could not be read.", e);
    } finally {
      free.release();
    }
  }

  private Lent take() throws SQLException {
    int now;
    synchronized (this) {
      if (closed) {
        throw new IllegalStateException("the database is closed");
      }
      if (!idle.isEmpty()) {
        return idle.pop();
      }
      now = generation;
    }
    return new Lent(new Session(Connections.reader(file)), now);
  }

  private void giveBack(Lent lent, boolean sound) {
    synchronized (this) {
      if (sound && lent.generation == generation && !closed) {
        idle.push(lent);
        return;
      }
    }
    lent.session.close();
  }

  /** Has every connection opened anew, those in use when they come back. */
  synchronized void renew() {
    generation++;
    closeIdle();
  }

  void close() {
    synchronized (this) {
      closed = true;
      closeIdle();
    }
    // Those in use are closed as they come back: wait for all of them.
    free.acquireUninterruptibly(MOST);
    free.release(MOST);
  }

  private void closeIdle() {
    while (!idle.isEmpty()) {
      idle.pop().session.close();
    }
  }
}
