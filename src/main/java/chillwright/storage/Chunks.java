package chillwright.storage;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/** Cuts long lists of keys to what one statement takes well. */
final class Chunks {
  private static final int SIZE = 500;

  private Chunks() {}

  static <T> List<List<T>> of(Collection<T> all) {
    List<T> list = List.copyOf(all);
    List<List<T>> chunks = new ArrayList<>();
    for (int start = 0; start < list.size(); start += SIZE) {
      chunks.add(list.subList(start, Math.min(list.size(), start + SIZE)));
    }
    return chunks;
  }
}
