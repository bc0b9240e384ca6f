package chillwright.logfile;

import chillwright.core.log.Incoming;
import chillwright.core.log.Misread;
import chillwright.core.log.Problem;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;

/**
 * Reads log files: comma-separated values as in RFC 4180, in UTF-8 with or without a byte-order
 * mark, with a header row. Lines may end in CR LF, LF or CR; blank lines are skipped. Rows are
 * handed on one by one, so a file may be larger than memory. Faults are handed on in place of their
 * row; they never stop the reading unless the rest cannot be told apart.
 */
public final class CsvLog {
  /** A longer cell is taken for a quotation mark that is never closed. */
  private static final int LONGEST_CELL = 65_536;

  /** Half a pair, which no UTF-8 text decodes to: it marks bytes that were no UTF-8. */
  private static final String BROKEN_BYTES = "\ud800";

  private static final int BOM_LENGTH = 3;

  private final Cells cells;

  public CsvLog(Cells cells) {
    this.cells = cells;
  }

  /** Reads all rows of several files, which together are one log. */
  public List<Incoming> readAll(List<LogFile> files) throws IOException {
    List<Incoming> rows = new ArrayList<>();
    for (LogFile file : files) {
      read(file, rows::add);
    }
    return rows;
  }

  /** Hands each row of the file to the taker, in order. */
  public void read(LogFile file, Consumer<? super Incoming> taker) throws IOException {
    try (InputStream bytes = Files.newInputStream(file.path())) {
      read(file.name(), bytes, taker);
    }
  }

  /**
   * Hands each row to the taker, in order.
   *
   * @param name of the file, as faults will show it
   * @param bytes read to the end, and closed
   */
  public void read(String name, InputStream bytes, Consumer<? super Incoming> taker)
      throws IOException {
    try (BufferedInputStream buffered = new BufferedInputStream(bytes)) {
      if (skipByteOrderMark(buffered)) {
        taker.accept(utf16(name));
        return;
      }
      readText(name, utf8(buffered), taker);
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  private void readText(String name, Reader text, Consumer<? super Incoming> taker)
      throws IOException {
    CsvLines lines = new CsvLines();
    CsvFile file = new CsvFile(name, cells, taker);
    try (CsvReader<CsvLines.Line> reader =
        CsvReader.builder()
            .allowUnclosedQuote(false)
            .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
            .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
            .maxBufferSize(LONGEST_CELL)
            .build(lines, text)) {
      for (CsvLines.Line line : reader) {
        file.take(line);
        if (file.isHopeless()) {
          return;
        }
      }
      file.end();
    } catch (CsvParseException e) {
      file.breakOff(lines.line(), lines.complete());
    }
  }

  static Reader utf8(InputStream bytes) {
    return new InputStreamReader(bytes, decoder());
  }

  static CharsetDecoder decoder() {
    return StandardCharsets.UTF_8
        .newDecoder()
        .onMalformedInput(CodingErrorAction.REPLACE)
        .onUnmappableCharacter(CodingErrorAction.REPLACE)
        .replaceWith(BROKEN_BYTES);
  }

  /** Skips the mark of UTF-8; tells whether the mark of UTF-16 stands there. */
  static boolean skipByteOrderMark(InputStream bytes) throws IOException {
    bytes.mark(BOM_LENGTH);
    byte[] first = bytes.readNBytes(BOM_LENGTH);
    boolean utf8 = startsWith(first, 0xEF, 0xBB, 0xBF);
    if (!utf8) {
      bytes.reset();
    }
    return startsWith(first, 0xFF, 0xFE) || startsWith(first, 0xFE, 0xFF);
  }

  /** Where the text of a file begins: after its byte-order mark; -1 where that is not of UTF-8. */
  static long startOfText(FileWindow window) throws IOException {
    int at = window.at(0);
    byte[] first = Arrays.copyOfRange(window.bytes(), at, Math.min(window.length(), BOM_LENGTH));
    boolean isUtf16 = startsWith(first, 0xFF, 0xFE) || startsWith(first, 0xFE, 0xFF);
    if (isUtf16) {
      return -1;
    }
    return startsWith(first, 0xEF, 0xBB, 0xBF) ? BOM_LENGTH : 0;
  }

  private static boolean startsWith(byte[] bytes, int... start) {
    for (int i = 0; i < start.length; i++) {
      if (i >= bytes.length || (bytes[i] & 0xFF) != start[i]) {
        return false;
      }
    }
    return true;
  }

  private static Misread utf16(String name) {
    Problem.Where where = Place.line(name, 1).row();
    return CsvFile.whole(
        where,
        new Problem(
            "not-utf-8",
            where,
            "UTF-16",
            "text in UTF-8",
            "This file is in UTF-16. Save it as \"CSV UTF-8\"."));
  }
}
