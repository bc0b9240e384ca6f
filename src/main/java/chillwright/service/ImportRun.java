package chillwright.service;

import chillwright.core.log.Admission;
import chillwright.core.log.Incoming;
import chillwright.core.log.LotId;
import chillwright.logfile.LogIndex.Block;
import chillwright.storage.Assessed;
import chillwright.storage.ClashException;
import chillwright.storage.Session;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicLong;

/**
 * One import on its way. Blocks are prepared beside the writer, on what was stored when they were
 * read; where somebody else wrote meanwhile, a block is admitted again inside its transaction.
 */
final class ImportRun {
  /** Threads that prepare blocks: one core is left to the writer. */
  private static final int PREPARING =
      Math.max(1, Math.min(4, Runtime.getRuntime().availableProcessors() - 1));

  /** What an admitted row takes of the heap, generously. */
  private static final int ROW_BYTES = 1500;

  private final Kitchen kitchen;
  private final ImportFiles files;
  private final Progress progress;
  private final Instant now;

  /** What was admitted when the files were checked, as far as there is room. */
  private final Map<Block, Checked> kept = new ConcurrentHashMap<>();

  private final AtomicLong room = new AtomicLong(Runtime.getRuntime().maxMemory() / 4 / ROW_BYTES);
  private long ownWrites;

  ImportRun(Kitchen kitchen, ImportFiles files, Progress progress) {
    this.kitchen = kitchen;
    this.files = files;
    this.progress = progress;
    this.now = kitchen.now();
  }

  /**
   * A block ready to be stored.
   *
   * @param foreignWrites how many writes of others had been made when it was prepared
   */
  private record Prepared(
      Block block, Admission admission, List<Assessed> assessed, long foreignWrites) {}

  /** What was admitted of a block, on what was stored then. */
  private record Checked(Admission admission, long foreignWrites) {}

  /** Checks every block against what is stored; nothing is written. */
  ImportTally check() throws IOException {
    ImportTally tally = new ImportTally();
    AtomicLong done = new AtomicLong();
    inParallel(
        PREPARING + 1,
        block -> {
          Checked checked = checked(block);
          tally.add(checked.admission());
          if (room.addAndGet(-block.size()) > 0) {
            kept.put(block, checked);
          }
          progress.done("rows checked", done.addAndGet(block.size()));
          return checked;
        },
        checked -> {});
    return tally;
  }

  /** Stores every block, each in a transaction of its own. */
  ImportTally store() throws IOException {
    ImportTally tally = new ImportTally();
    AtomicLong done = new AtomicLong();
    inParallel(
        PREPARING,
        this::prepared,
        block -> {
          tally.add(store(block));
          progress.done("rows stored", done.addAndGet(block.block().size()));
        });
    return tally;
  }

  /** Work for a block, done beside others. */
  private interface Work<T> {
    T of(Block block);
  }

  /** What comes of it, taken in the order of the blocks. */
  private interface Taker<T> {
    void take(T done);
  }

  private <T> void inParallel(int threads, Work<T> work, Taker<T> taker) throws IOException {
    ExecutorService pool = Executors.newFixedThreadPool(threads, ImportRun::thread);
    Deque<CompletableFuture<T>> running = new ArrayDeque<>();
    try {
      for (Block block : files.blocks()) {
        if (running.size() > threads) {
          taker.take(running.remove().join());
        }
        running.add(CompletableFuture.supplyAsync(() -> work.of(block), pool));
      }
      while (!running.isEmpty()) {
        taker.take(running.remove().join());
      }
    } catch (CompletionException e) {
      throw thrown(e.getCause());
    } finally {
      pool.shutdownNow();
    }
  }

  private static Thread thread(Runnable work) {
    Thread thread = new Thread(work, "import");
    thread.setDaemon(true);
    return thread;
  }

  private static RuntimeException thrown(Throwable cause) throws IOException {
    if (cause instanceof UncheckedIOException file) {
      throw file.getCause();
    }
    if (cause instanceof Error error) {
      throw error;
    }
    return cause instanceof RuntimeException fault ? fault : new IllegalStateException(cause);
  }

  private List<Incoming> read(Block block) {
    try {
      return files.rows(block);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Admission admission(Session session, List<Incoming> rows) {
    return Intaking.of(session, kitchen.judge(), rows, now).admission();
  }

  private Prepared prepared(Block block) {
    Checked before = kept.remove(block);
    Checked checked = before == null ? checked(block) : before;
    Admission admission = checked.admission();
    return new Prepared(block, admission, assessed(admission), checked.foreignWrites());
  }

  private Checked checked(Block block) {
    List<Incoming> rows = read(block);
    long foreign = foreignWrites();
    return new Checked(kitchen.database().read(session -> admission(session, rows)), foreign);
  }

  private List<Assessed> assessed(Admission admission) {
    return admission.lots().stream()
        .map(lot -> kitchen.judge().judge(lot.log()))
        .map(Recorder::assessed)
        .toList();
  }

  private synchronized long foreignWrites() {
    return kitchen.database().writes() - ownWrites;
  }

  /** Counted before the write begins: a block that is prepared meanwhile is at worst looked at. */
  private synchronized void countOwn() {
    ownWrites++;
  }

  private Admission store(Prepared block) {
    try {
      countOwn();
      return kitchen.database().write(session -> store(session, block, false));
    } catch (ClashException e) {
      countOwn();
      return kitchen.database().write(session -> store(session, block, true));
    }
  }

  /**
   * Whether what others wrote meanwhile may bear on a block: it has readings of places, its lots
   * grew or were announced, lead back to others or on to others, or one of its ids was given away.
   */
  private static boolean isStale(Session session, Admission admission) {
    List<LotId> lots = admission.lots().stream().map(lot -> lot.log().lot()).toList();
    boolean isEntangled =
        !admission.ofPlaces().isEmpty() || !session.log().madeFrom(lots).isEmpty();
    return isEntangled || haveGrown(session, admission, lots) || isAnyIdTaken(session, admission);
  }

  private static boolean isAnyIdTaken(Session session, Admission admission) {
    return admission.lots().stream()
        .flatMap(lot -> lot.added().stream())
        .anyMatch(entry -> session.isTaken(entry.id()));
  }

  private static boolean haveGrown(Session session, Admission admission, List<LotId> lots) {
    Map<LotId, Integer> sizes = session.log().sizes(lots);
    return admission.lots().stream()
        .anyMatch(
            lot -> {
              int stored = lot.log().entries().size() - lot.added().size();
              Integer size = sizes.get(lot.log().lot());
              boolean isSame = size == null ? stored == 0 : size > 0 && size == stored;
              return !isSame || !lot.log().sources().isEmpty();
            });
  }

  private Admission store(Session session, Prepared block, boolean anew) {
    boolean isStale =
        anew || (foreignWrites() != block.foreignWrites() && isStale(session, block.admission()));
    Admission admission = isStale ? admission(session, read(block.block())) : block.admission();
    List<Assessed> assessed = isStale ? assessed(admission) : block.assessed();
    new Recorder(session, kitchen.judge(), now).write(admission, assessed);
    return admission;
  }
}
