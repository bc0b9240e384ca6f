package chillwright.storage;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.jooq.exception.DataAccessException;
import org.sqlite.SQLiteErrorCode;

/**
 * The one thread that writes. Writes that wait at the same time share one commit, each in a
 * savepoint of its own: the disk is waited for once for all of them. Every caller is answered only
 * after that commit, those whose work was refused too, since a refusal may rest on a neighbour's
 * work.
 */
final class Writer {
  /** The most writes in one commit: the first of them is not to wait for a crowd. */
  private static final int SHARING = 256;

  /** The part of SQLite's error codes that tells the kind. */
  private static final int PRIMARY_CODE = 0xff;

  private final Path file;
  private final Readers readers;
  private final BooleanSupplier isOurs;
  private final LinkedBlockingQueue<Write<?>> waiting = new LinkedBlockingQueue<>();
  private final AtomicLong commits = new AtomicLong();
  private final AtomicLong writes = new AtomicLong();
  private final WriteAhead writeAhead;
  private final Thread thread;
  private boolean finishing;
  private Session session;

  /**
   * @param isOurs whether the file is still the one that was opened, and held by us
   */
  Writer(Path file, Readers readers, BooleanSupplier isOurs) throws SQLException {
    this.file = file;
    this.isOurs = isOurs;
    this.readers = readers;
    this.writeAhead = new WriteAhead(file);
    this.session = new Session(Connections.writer(file));
    this.thread = new Thread(this::run, "database writer");
    this.thread.setDaemon(true);
    this.thread.start();
  }

  /** One caller's work, and what came of it. */
  private static final class Write<T> {
    private final Function<Session, T> work;
    private final CompletableFuture<T> answer = new CompletableFuture<>();
    private T result;
    private Throwable trouble;

    Write(Function<Session, T> work) {
      this.work = work;
    }

    void run(Session session) {
      result = work.apply(session);
    }

    void answer() {
      if (trouble == null) {
        answer.complete(result);
      } else {
        answer.completeExceptionally(trouble);
      }
    }
  }

  <T> T write(Function<Session, T> work) {
    if (Thread.currentThread() == thread) {
      throw new IllegalStateException("a write inside a write would wait for itself");
    }
    Write<T> write = new Write<>(work);
    enqueue(write);
    try {
      return write.answer.join();
    } catch (CompletionException e) {
      throw rethrown(e.getCause());
    }
  }

  private static RuntimeException rethrown(Throwable trouble) {
    if (trouble instanceof Error error) {
      throw error;
    }
    return trouble instanceof RuntimeException exception
        ? exception
        : new IllegalStateException(trouble);
  }

  private synchronized void enqueue(Write<?> write) {
    if (finishing) {
      throw new IllegalStateException("the database is closed");
    }
    waiting.add(write);
  }

  private void run() {
    List<Write<?>> shared = new ArrayList<>();
    boolean last = false;
    while (!last) {
      shared.clear();
      try {
        shared.add(waiting.take());
      } catch (InterruptedException e) {
        // Nobody has this thread to interrupt it; whoever did is not to stop writes half way.
        continue;
      }
      waiting.drainTo(shared, SHARING - 1);
      last = shared.removeIf(write -> write.work == null);
      commitTogether(shared);
    }
  }

  private void commitTogether(List<Write<?>> shared) {
    if (!isOurs.getAsBoolean()) {
      StorageException gone =
          new StorageException(
              "The database or the lock file beside it was moved, replaced or deleted while it was"
                  + " in use. Nothing was written. Stop this program and put the file back.",
              null);
      shared.forEach(write -> write.answer.completeExceptionally(gone));
      return;
    }
    try {
      reopenIfFailed();
      session.execute("BEGIN IMMEDIATE");
      for (Write<?> write : shared) {
        runInSavepoint(write);
      }
      session.execute("COMMIT");
      commits.incrementAndGet();
      shared.forEach(Write::answer);
      writeAhead.shorten(session);
    } catch (SQLException | DataAccessException fault) {
      abandon();
      StorageException told =
          new StorageException(
              "The database could not be written. It is opened and checked again before the next"
                  + " write; send this one again with the same key.",
              fault);
      shared.forEach(write -> write.answer.completeExceptionally(told));
    }
  }

  private void runInSavepoint(Write<?> write) throws SQLException {
    session.execute("SAVEPOINT one");
    writes.incrementAndGet();
    try {
      write.run(session);
    } catch (RuntimeException | Error e) {
      if (e instanceof DataAccessException fault && !isOfThisWriteAlone(fault)) {
        throw fault;
      }
      write.trouble = e instanceof DataAccessException fault ? new ClashException(fault) : e;
      session.execute("ROLLBACK TO one");
    }
    session.execute("RELEASE one");
  }

  /** Whether it broke a rule of the schema; else the disk or the file may be at fault. */
  private static boolean isOfThisWriteAlone(DataAccessException fault) {
    SQLException cause = fault.getCause(SQLException.class);
    int code = cause == null ? 0 : cause.getErrorCode() & PRIMARY_CODE;
    return code == SQLiteErrorCode.SQLITE_CONSTRAINT.code;
  }

  /** After a failed commit neither memory nor connection can be trusted: both are let go. */
  private void abandon() {
    closeConnection();
    readers.renew();
  }

  private void reopenIfFailed() throws SQLException {
    if (session != null) {
      return;
    }
    Connection connection = Connections.writer(file);
    String found = Connections.text(connection, "PRAGMA quick_check(1)");
    if (!found.equals("ok")) {
      connection.close();
      throw new SQLException("The database is damaged: " + found);
    }
    session = new Session(connection);
  }

  /** Lets the waiting writes end; none is taken after this. */
  void finish() {
    synchronized (this) {
      if (!finishing) {
        finishing = true;
        waiting.add(new Write<Void>(null));
      }
    }
    boolean interrupted = false;
    while (thread.isAlive()) {
      try {
        thread.join();
      } catch (InterruptedException e) {
        interrupted = true;
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }

  /** Closing the last connection copies the write-ahead log into the file and removes it. */
  void closeConnection() {
    if (session != null) {
      session.close();
      session = null;
    }
  }

  long writes() {
    return writes.get();
  }

  long commits() {
    return commits.get();
  }
}
