package chillwright.service;

import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.LotLog;
import chillwright.service.Judge.Judged;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The lots that were written last, as they were found once that was on the disk. Rows of a log are
 * only ever added, so what is kept here stays right about the beginning of each log; whether it is
 * still all of it, whoever uses it asks the database. So nothing has to be taken out when others
 * write, and nothing is kept of a write before its commit.
 */
final class LastJudged {
  /** Entries of all kept lots together, those of their sources included: some ten megabytes. */
  private static final int MOST_ENTRIES = 40_000;

  private final Map<LotId, Kept> lots = new LinkedHashMap<>(16, 0.75f, true);
  private final int most;
  private int entries;

  private record Kept(Judged judged, int entries) {}

  LastJudged() {
    this(MOST_ENTRIES);
  }

  /**
   * @param most how many entries all kept lots have together
   */
  LastJudged(int most) {
    this.most = most;
  }

  /** Keeps lots whose write has been committed. */
  synchronized void keep(Collection<Judged> committed) {
    for (Judged judged : committed) {
      forget(judged.log().lot());
      Kept kept = new Kept(judged, size(judged.log()));
      if (kept.entries() <= most) {
        lots.put(judged.log().lot(), kept);
        entries += kept.entries();
      }
    }
    while (entries > most) {
      forget(lots.keySet().iterator().next());
    }
  }

  private void forget(LotId lot) {
    Kept old = lots.remove(lot);
    entries -= old == null ? 0 : old.entries();
  }

  private static int size(LotLog log) {
    int size = log.entries().size();
    for (LotLog source : log.sources()) {
      size += size(source);
    }
    return size;
  }

  /** After a disk has failed nothing that was remembered is trusted. */
  synchronized void clear() {
    lots.clear();
    entries = 0;
  }

  synchronized boolean has(LotId lot) {
    return lots.containsKey(lot);
  }

  /** What the log of a lot begins with; empty if that is not kept. */
  synchronized List<LogEntry> beginning(LotId lot) {
    Kept kept = lots.get(lot);
    return kept == null ? List.of() : kept.judged().log().entries();
  }

  /** What was found of just that log, if it is kept. */
  synchronized Optional<Judged> of(LotLog log) {
    return Optional.ofNullable(lots.get(log.lot()))
        .map(Kept::judged)
        .filter(judged -> isSame(judged.log(), log));
  }

  /** The same list of entries, not one that looks like it: compared often, and long. */
  @SuppressWarnings("ReferenceEquality")
  private static boolean isSame(LotLog kept, LotLog log) {
    boolean isSame =
        kept.entries() == log.entries() && kept.sources().size() == log.sources().size();
    for (int i = 0; isSame && i < log.sources().size(); i++) {
      isSame = isSame(kept.sources().get(i), log.sources().get(i));
    }
    return isSame;
  }
}
