package chillwright.service;

import chillwright.core.log.Corrections;
import chillwright.core.log.EntryId;
import chillwright.core.log.LogEntry;
import chillwright.storage.PlaceStore;
import chillwright.storage.Session;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Readings of refrigerators, freezers, hot-holding units and counters. */
public final class Places {
  private static final String READINGS = "readings";

  private final Kitchen kitchen;

  Places(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /**
   * A reading of a place.
   *
   * @param written as it was written
   * @param corrections of it, in the order of writing
   * @param standing with the corrections applied; empty if one of them voids it
   */
  public record PlaceReading(
      LogEntry written, List<LogEntry> corrections, Optional<LogEntry> standing) {
    public PlaceReading {
      corrections = List.copyOf(corrections);
    }
  }

  /** Readings between two moments, both included, the newest first. */
  public Page<PlaceReading> readings(
      Optional<String> place, Optional<Instant> from, Optional<Instant> to, Page.Wanted wanted) {
    PlaceStore.Filter filter =
        new PlaceStore.Filter(
            place, from.orElse(Instant.EPOCH), to.orElse(Instant.ofEpochMilli(Long.MAX_VALUE)));
    return kitchen
        .database()
        .read(
            session ->
                Cursors.page(
                    READINGS,
                    session
                        .places()
                        .readings(filter, wanted.limit(), Cursors.position(READINGS, wanted)),
                    written -> corrected(session, written)));
  }

  static List<PlaceReading> corrected(Session session, List<LogEntry> written) {
    return corrected(session, written, Instant.MAX);
  }

  /** The same with what had been corrected at a moment. */
  static List<PlaceReading> corrected(Session session, List<LogEntry> written, Instant asOf) {
    List<LogEntry> corrections =
        session.places().corrections(written.stream().map(LogEntry::id).toList()).stream()
            .filter(correction -> !correction.writtenAt().isAfter(asOf))
            .toList();
    return written.stream().map(reading -> corrected(reading, corrections)).toList();
  }

  private static PlaceReading corrected(LogEntry reading, List<LogEntry> corrections) {
    Set<EntryId> chain = new HashSet<>(Set.of(reading.id()));
    List<LogEntry> own = new ArrayList<>();
    for (LogEntry correction : corrections) {
      if (chain.contains(correction.corrects().orElseThrow())) {
        chain.add(correction.id());
        own.add(correction);
      }
    }
    List<LogEntry> all = new ArrayList<>(own);
    all.add(0, reading);
    return new PlaceReading(reading, own, Corrections.applied(all).stream().findFirst());
  }
}
