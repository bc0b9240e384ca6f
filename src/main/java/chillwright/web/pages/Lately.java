package chillwright.web.pages;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HashSet;
import java.util.Set;

/**
 * What was asked for within this minute of the clock: a viewer of documents fetches an address more
 * than once. A restart forgets it.
 */
final class Lately {
  private final Set<String> asked = new HashSet<>();
  private Instant minute = Instant.MIN;

  /** Whether that was not asked for in this minute before. */
  synchronized boolean isFirst(String address, Instant now) {
    Instant current = now.truncatedTo(ChronoUnit.MINUTES);
    if (!current.equals(minute)) {
      minute = current;
      asked.clear();
    }
    return asked.add(address);
  }
}
