package chillwright.service;

import chillwright.core.log.Admission;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.LotLog;
import chillwright.service.Judge.Judged;
import chillwright.storage.Assessed;
import chillwright.storage.LogStore;
import chillwright.storage.Session;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;

/**
 * Writes what was admitted: the entries, and in the same transaction what they change, of the lots
 * they belong to and of every lot that came from those.
 */
final class Recorder {
  /** How many lots are judged and written together; only their logs are in memory at once. */
  private static final int TOGETHER = 500;

  private final Session session;
  private final Judge judge;
  private final Instant now;

  Recorder(Session session, Judge judge, Instant now) {
    this.session = session;
    this.judge = judge;
    this.now = now;
  }

  /**
   * Writes the lots that grew and the readings of places.
   *
   * @param watcher is told of each lot as it is judged
   * @return the lots that came from those, which were judged again
   */
  Set<LotId> record(List<Admission.Lot> lots, List<LogEntry> ofPlaces, Consumer<Judged> watcher) {
    List<Judged> judged = lots.stream().map(lot -> judge.judge(lot.log())).toList();
    judged.forEach(watcher);
    return write(lots, judged.stream().map(Recorder::assessed).toList(), ofPlaces);
  }

  /** Writes what was admitted and has been assessed. */
  void write(Admission admission, List<Assessed> assessed) {
    write(admission.lots(), assessed, admission.ofPlaces());
  }

  private Set<LotId> write(
      List<Admission.Lot> lots, List<Assessed> assessed, List<LogEntry> ofPlaces) {
    append(lots, assessed);
    Set<LotId> descendants =
        session.log().descendants(lots.stream().map(lot -> lot.log().lot()).toList());
    rejudge(descendants);
    session.places().append(ofPlaces);
    return descendants;
  }

  private void append(List<Admission.Lot> lots, List<Assessed> assessed) {
    List<LogStore.Addition> added = new ArrayList<>();
    for (Admission.Lot lot : lots) {
      int stored = lot.log().entries().size() - lot.added().size();
      added.add(new LogStore.Addition(lot.log().lot(), stored, lot.added()));
    }
    session.lots().save(assessed, now);
    session.log().append(added);
  }

  /**
   * Judges stored lots again.
   *
   * @return how many rows changed
   */
  int rejudge(Collection<LotId> lots) {
    int changed = 0;
    List<LotId> all = List.copyOf(lots);
    for (int start = 0; start < all.size(); start += TOGETHER) {
      Set<LotId> some =
          new LinkedHashSet<>(all.subList(start, Math.min(all.size(), start + TOGETHER)));
      List<Assessed> assessed =
          session.log().logs(some).values().stream()
              .map(judge::judge)
              .map(Recorder::assessed)
              .toList();
      changed += session.lots().save(assessed, now);
    }
    return changed;
  }

  static Assessed assessed(Judged judged) {
    List<LotId> sources = judged.log().sources().stream().map(LotLog::lot).toList();
    return new Assessed(judged.state(), sources, judged.findings());
  }
}
