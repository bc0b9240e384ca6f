package chillwright.bench;

import java.util.Arrays;
import java.util.Locale;

/** Lengths of time in nanoseconds, and what they come to. Several threads may add to it. */
final class Times {
  private long[] nanos = new long[64];
  private int count;

  synchronized void add(long measured) {
    if (count == nanos.length) {
      nanos = Arrays.copyOf(nanos, 2 * count);
    }
    nanos[count++] = measured;
  }

  synchronized int count() {
    return count;
  }

  long median() {
    return at(0.5);
  }

  long best() {
    return at(0);
  }

  /** The smallest length that this part of them does not exceed. */
  synchronized long at(double part) {
    if (count == 0) {
      throw new IllegalStateException("nothing was measured");
    }
    long[] sorted = Arrays.copyOf(nanos, count);
    Arrays.sort(sorted);
    return sorted[Math.max(0, (int) Math.ceil(part * count) - 1)];
  }

  static String text(long nanos) {
    if (nanos >= 1e9) {
      return String.format(Locale.ROOT, "%.2f s", nanos / 1e9);
    }
    return nanos >= 1e6
        ? String.format(Locale.ROOT, "%.1f ms", nanos / 1e6)
        : String.format(Locale.ROOT, "%.0f us", nanos / 1e3);
  }
}
