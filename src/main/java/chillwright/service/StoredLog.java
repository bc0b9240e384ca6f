package chillwright.service;

import chillwright.core.log.EntryId;
import chillwright.core.log.Incoming;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.LotLog;
import chillwright.core.log.Row;
import chillwright.core.log.Stored;
import chillwright.storage.Session;
import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What is stored, as far as the rows at hand need it, read within one transaction. */
final class StoredLog implements Stored {
  private final Session session;
  private final LastJudged last;
  private final Map<LotId, Optional<LotLog>> lots = new HashMap<>();

  private StoredLog(Session session, LastJudged last) {
    this.session = session;
    this.last = last;
  }

  /** Reads the lots that the rows name, all at once. */
  static StoredLog of(Session session, LastJudged last, List<? extends Incoming> rows) {
    Set<LotId> named = new LinkedHashSet<>();
    for (Incoming incoming : rows) {
      if (incoming instanceof Row row) {
        row.lot().ifPresent(named::add);
        named.addAll(row.details().from());
        row.details().to().filter(LotId::isCode).map(LotId::new).ifPresent(named::add);
      }
    }
    StoredLog stored = new StoredLog(session, last);
    named.forEach(lot -> stored.lots.put(lot, Optional.empty()));
    session
        .log()
        .logs(named, last::beginning)
        .forEach((lot, log) -> stored.lots.put(lot, Optional.of(log)));
    return stored;
  }

  private Map<LotId, LotLog> logs(Collection<LotId> named) {
    return session.log().logs(named, last::beginning);
  }

  @Override
  public Optional<LotLog> lot(LotId lot) {
    return lots.computeIfAbsent(lot, l -> Optional.ofNullable(logs(List.of(l)).get(l)));
  }

  @Override
  public List<LotLog> madeOf(LotId lot) {
    return List.copyOf(session.log().logs(session.log().madeFrom(List.of(lot))).values());
  }

  @Override
  public Optional<Found> entry(EntryId id) {
    if (!session.isTaken(id)) {
      return Optional.empty();
    }
    return session
        .log()
        .entry(id)
        .map(found -> new Found(Optional.of(found.lot()), found.entry()))
        .or(() -> session.places().entry(id).map(entry -> new Found(Optional.empty(), entry)));
  }

  @Override
  public boolean hasIdBeginning(String start) {
    return session.isAnyTaken(start);
  }

  @Override
  public List<LogEntry> ofPlaces(Instant happenedAt) {
    return session.places().at(happenedAt);
  }
}
