package chillwright.logfile;

import java.util.Arrays;

/** Where rows begin and in which line of their file, sixteen bytes a row at most. */
final class RowList {
  private static final int FIRST = 1024;

  private long[] positions = new long[FIRST];
  private int[] lines = new int[FIRST];
  private int size;

  void add(long position, int line) {
    if (size == positions.length) {
      int more = size + (size >> 1);
      positions = Arrays.copyOf(positions, more);
      lines = Arrays.copyOf(lines, more);
    }
    positions[size] = position;
    lines[size] = line;
    size++;
  }

  int size() {
    return size;
  }

  long position(int row) {
    return positions[row];
  }

  int line(int row) {
    return lines[row];
  }
}
