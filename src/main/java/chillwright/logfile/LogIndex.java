package chillwright.logfile;

import static java.util.stream.Collectors.toSet;

import chillwright.core.log.Incoming;
import chillwright.core.log.LotId;
import java.io.Closeable;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * Log files as one log that is too large to hold: where each row begins, and which rows have to be
 * looked at together, since they are of one lot or of lots that come from one another. The rows are
 * read again, a group at a time, as often as they are needed.
 */
public final class LogIndex {
  /**
   * A file whose header is known.
   *
   * @param firstRow number of its first row among the rows of all files
   */
  private record Sheet(LogFile file, CsvHeader header, int firstRow) {}

  private final List<Sheet> sheets;
  private final RowList rows;
  private final RowGroups groups;
  private final Cells cells;

  private LogIndex(List<Sheet> sheets, RowList rows, RowGroups groups, Cells cells) {
    this.sheets = List.copyOf(sheets);
    this.rows = rows;
    this.groups = groups;
    this.cells = cells;
  }

  /**
   * Looks through the files.
   *
   * @param related tells of lots which others they came from, as far as the files do not say
   * @return empty if one of them is not plain: then {@link CsvLog} tells what is wrong with it
   */
  public static Optional<LogIndex> of(
      List<LogFile> files,
      Cells cells,
      Function<Set<LotId>, ? extends Map<LotId, ? extends List<LotId>>> related)
      throws IOException {
    List<Sheet> sheets = new ArrayList<>();
    RowList rows = new RowList();
    RowGroups.Builder groups = new RowGroups.Builder();
    for (LogFile file : files) {
      Optional<Sheet> sheet = read(file, rows, groups);
      if (sheet.isEmpty()) {
        return Optional.empty();
      }
      sheets.add(sheet.get());
    }
    Set<LotId> lots =
        groups.codes().stream().filter(LotId::isCode).map(LotId::new).collect(toSet());
    related
        .apply(lots)
        .forEach((lot, sources) -> sources.forEach(from -> groups.join(lot.text(), from.text())));
    return Optional.of(new LogIndex(sheets, rows, groups.build(), cells));
  }

  private static Optional<Sheet> read(LogFile file, RowList rows, RowGroups.Builder groups)
      throws IOException {
    Optional<Sheet> sheet = Optional.empty();
    Optional<RowGroups.Named> named = Optional.empty();
    RowCutter row = new RowCutter();
    int firstRow = rows.size();
    try (FileWindow window = new FileWindow(file.path())) {
      long position = CsvLog.startOfText(window);
      int line = 1;
      while (position >= 0 && hasMore(window, position)) {
        if (!row.cut(window, position)) {
          return Optional.empty();
        }
        if (named.isPresent() && !isBlank(row)) {
          groups.add(rows.size(), named.get());
          rows.add(position, line);
        } else if (!isBlank(row)) {
          CsvHeader header = CsvHeader.of(texts(row), Place.line(file.name(), line));
          if (!header.problems().isEmpty()) {
            return Optional.empty();
          }
          sheet = Optional.of(new Sheet(file, header, firstRow));
          named = Optional.of(new RowGroups.Named(header, row));
        }
        line += row.breaks();
        position += row.length(window.at(position));
      }
    }
    return sheet;
  }

  private static boolean hasMore(FileWindow window, long position) throws IOException {
    return window.at(position) < window.length();
  }

  private static boolean isBlank(RowCutter row) {
    for (int i = 0; i < row.cells(); i++) {
      if (!Texts.trimmed(row.cell(i)).isEmpty()) {
        return false;
      }
    }
    return true;
  }

  private static List<String> texts(RowCutter row) {
    List<String> texts = new ArrayList<>(row.cells());
    for (int i = 0; i < row.cells(); i++) {
      texts.add(row.cell(i));
    }
    return texts;
  }

  /** How many rows the files have. */
  public int rows() {
    return rows.size();
  }

  /**
   * The rows in blocks, no group torn apart.
   *
   * @param least rows in a block, if there are so many
   */
  public List<Block> blocks(int least) {
    List<Block> blocks = new ArrayList<>();
    int start = 0;
    while (start < rows.size()) {
      int end = groups.end(Math.min(rows.size() - 1, start + least - 1));
      blocks.add(new Block(start, end));
      start = end;
    }
    return blocks;
  }

  /** Some groups of rows: those from one place of the grouped order up to another. */
  public record Block(int start, int end) {
    public int size() {
      return end - start;
    }
  }

  /** Opens the files to read rows; each thread needs a reader of its own. */
  public Reader reader() throws IOException {
    return new Reader();
  }

  /** Reads rows of the files again. */
  public final class Reader implements Closeable {
    private final List<FileWindow> windows = new ArrayList<>();
    private final RowCutter cutter = new RowCutter();

    private Reader() throws IOException {
      try {
        for (Sheet sheet : sheets) {
          windows.add(new FileWindow(sheet.file().path()));
        }
      } catch (IOException e) {
        close();
        throw e;
      }
    }

    /**
     * The rows of a block, in their order in the files.
     *
     * @throws IOException if a file was changed meanwhile
     */
    public List<Incoming> rows(Block block) throws IOException {
      List<Incoming> read = new ArrayList<>(block.size());
      for (int row : groups.rows(block.start(), block.end())) {
        read.add(row(row));
      }
      return read;
    }

    private Incoming row(int row) throws IOException {
      int at = sheets.size() - 1;
      while (sheets.get(at).firstRow() > row) {
        at--;
      }
      Sheet sheet = sheets.get(at);
      if (!cutter.cut(windows.get(at), rows.position(row))) {
        throw new IOException(sheet.file().name() + " was changed while it was read.");
      }
      return sheet
          .header()
          .row(texts(cutter), Place.line(sheet.file().name(), rows.line(row)), cells);
    }

    @Override
    public void close() throws IOException {
      for (FileWindow window : windows) {
        window.close();
      }
    }
  }
}
