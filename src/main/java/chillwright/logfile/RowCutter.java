package chillwright.logfile;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.StandardCharsets;

/**
 * Cuts one row of a log file into its cells, in place, where the row is plain: quotation marks only
 * around whole cells and doubled inside. A row that is not is left to the reader that can say what
 * is wrong with it.
 */
final class RowCutter {
  /** A row with more cells, or a longer cell, is not plain. */
  private static final int MOST_CELLS = 64;

  private static final int LONGEST_CELL = 16_384;

  private enum Cut {
    WHOLE,
    MORE_NEEDED,
    NOT_PLAIN
  }

  private final int[] from = new int[MOST_CELLS];
  private final int[] to = new int[MOST_CELLS];
  private final boolean[] hasDoubled = new boolean[MOST_CELLS];
  private final CharsetDecoder decoder = CsvLog.decoder();
  private FileWindow file;
  private int cells;
  private int breaks;
  private int end;

  /**
   * Cuts the row that begins at that place.
   *
   * @return whether it is plain
   */
  boolean cut(FileWindow window, long position) throws IOException {
    file = window;
    Cut cut = cut(window.at(position));
    while (cut == Cut.MORE_NEEDED && window.more(position)) {
      cut = cut(window.at(position));
    }
    return cut == Cut.WHOLE;
  }

  int cells() {
    return cells;
  }

  /** How many line breaks the row has, its own end among them. */
  int breaks() {
    return breaks;
  }

  /** How many bytes the row has from there on, its end included. */
  int length(int begin) {
    return end - begin;
  }

  /** The text of a cell. */
  String cell(int index) {
    byte[] bytes = file.bytes();
    int length = to[index] - from[index];
    if (length == 0) {
      return "";
    }
    for (int i = from[index]; i < to[index]; i++) {
      if (bytes[i] < 0) {
        return undoubled(decoded(bytes, from[index], length), index);
      }
    }
    return undoubled(new String(bytes, from[index], length, StandardCharsets.ISO_8859_1), index);
  }

  private String undoubled(String text, int index) {
    return CsvWriter.unguarded(hasDoubled[index] ? text.replace("\"\"", "\"") : text);
  }

  private String decoded(byte[] bytes, int offset, int length) {
    try {
      CharBuffer text = decoder.decode(ByteBuffer.wrap(bytes, offset, length));
      return text.toString();
    } catch (CharacterCodingException replaced) {
      throw new IllegalStateException("what is malformed is replaced", replaced);
    }
  }

  private Cut cut(int begin) {
    byte[] bytes = file.bytes();
    int length = file.length();
    boolean isLast = file.isLast();
    int i = begin;
    cells = 0;
    breaks = 0;
    while (cells < MOST_CELLS) {
      boolean isQuoted = i < length && bytes[i] == '"';
      i = isQuoted ? quoted(bytes, i + 1, length, isLast) : bare(bytes, i, length);
      if (i < 0) {
        return i == -1 ? Cut.NOT_PLAIN : Cut.MORE_NEEDED;
      }
      if (i >= length) {
        end = i;
        return isLast ? Cut.WHOLE : Cut.MORE_NEEDED;
      }
      if (bytes[i] == ',') {
        i++;
        continue;
      }
      return endOfRow(bytes, i, length, isLast);
    }
    return Cut.NOT_PLAIN;
  }

  private Cut endOfRow(byte[] bytes, int at, int length, boolean isLast) {
    breaks++;
    if (bytes[at] == '\n') {
      end = at + 1;
      return Cut.WHOLE;
    }
    if (at + 1 >= length && !isLast) {
      return Cut.MORE_NEEDED;
    }
    end = at + 1 < length && bytes[at + 1] == '\n' ? at + 2 : at + 1;
    return Cut.WHOLE;
  }

  /** Index of what follows the cell; -1 if it is not plain. */
  private int bare(byte[] bytes, int start, int length) {
    int i = start;
    while (i < length) {
      byte b = bytes[i];
      if (b == ',' || b == '\n' || b == '\r') {
        break;
      }
      if (b == '"') {
        return -1;
      }
      i++;
    }
    return keep(start, i, false) ? i : -1;
  }

  /** Index of what follows the closing mark; -1 if it is not plain, -2 if more is needed. */
  private int quoted(byte[] bytes, int start, int length, boolean isLast) {
    boolean doubled = false;
    int i = start;
    while (i < length) {
      byte b = bytes[i];
      boolean hasNext = i + 1 < length;
      if (!hasNext && !isLast) {
        return -2;
      }
      if (b == '"' && hasNext && bytes[i + 1] == '"') {
        doubled = true;
        i += 2;
        continue;
      }
      if (b == '"') {
        boolean isClosed =
            !hasNext || bytes[i + 1] == ',' || bytes[i + 1] == '\n' || bytes[i + 1] == '\r';
        return isClosed && keep(start, i, doubled) ? i + 1 : -1;
      }
      if (b == '\n' || (b == '\r' && !(hasNext && bytes[i + 1] == '\n'))) {
        breaks++;
      }
      i++;
    }
    return isLast ? -1 : -2;
  }

  private boolean keep(int start, int stop, boolean doubled) {
    if (stop - start > LONGEST_CELL) {
      return false;
    }
    from[cells] = start;
    to[cells] = stop;
    hasDoubled[cells] = doubled;
    cells++;
    return true;
  }
}
