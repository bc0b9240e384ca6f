package chillwright.service;

import chillwright.core.log.Incoming;
import chillwright.core.log.Problem;
import chillwright.core.log.Problem.Where.InFile;
import chillwright.logfile.Cells;
import chillwright.logfile.CsvLog;
import chillwright.logfile.LogFile;
import chillwright.logfile.LogIndex;
import java.io.Closeable;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/**
 * The files of an import as blocks of rows that can be looked at apart. Files that are not plain
 * CSV are one block, held in memory, with what is wrong with them.
 */
final class ImportFiles implements Closeable {
  /** Rows stored together: few enough that a write from elsewhere does not wait long for them. */
  private static final int TOGETHER = 1000;

  private final List<String> names;
  private final Optional<LogIndex> index;
  private final List<Incoming> whole;
  private final Deque<LogIndex.Reader> idle = new ArrayDeque<>();

  private ImportFiles(List<String> names, Optional<LogIndex> index, List<Incoming> whole) {
    this.names = names;
    this.index = index;
    this.whole = whole;
  }

  static ImportFiles of(Kitchen kitchen, List<LogFile> files, Cells cells) throws IOException {
    List<String> names = files.stream().map(LogFile::name).toList();
    Optional<LogIndex> index =
        LogIndex.of(
            files, cells, lots -> kitchen.database().read(session -> session.log().ancestry(lots)));
    List<Incoming> whole = index.isPresent() ? List.of() : new CsvLog(cells).readAll(files);
    return new ImportFiles(names, index, whole);
  }

  long rows() {
    return index.map(LogIndex::rows).orElse(whole.size());
  }

  List<LogIndex.Block> blocks() {
    return index
        .map(read -> read.blocks(TOGETHER))
        .orElse(List.of(new LogIndex.Block(0, whole.size())));
  }

  /** The rows of a block, read anew; several threads may ask. */
  List<Incoming> rows(LogIndex.Block block) throws IOException {
    if (index.isEmpty()) {
      return whole;
    }
    LogIndex.Reader reader = take();
    try {
      return reader.rows(block);
    } finally {
      giveBack(reader);
    }
  }

  private synchronized LogIndex.Reader take() throws IOException {
    return idle.isEmpty() ? index.orElseThrow().reader() : idle.pop();
  }

  private synchronized void giveBack(LogIndex.Reader reader) {
    idle.push(reader);
  }

  /** Faults in the order of the files and their lines. */
  Comparator<Problem> inOrder() {
    return Comparator.comparingInt((Problem problem) -> file(problem))
        .thenComparingLong(ImportFiles::line);
  }

  private int file(Problem problem) {
    return problem.where() instanceof InFile in ? names.indexOf(in.file()) : -1;
  }

  private static long line(Problem problem) {
    return problem.where() instanceof InFile in ? in.line() : 0;
  }

  @Override
  public synchronized void close() throws IOException {
    while (!idle.isEmpty()) {
      idle.pop().close();
    }
  }
}
