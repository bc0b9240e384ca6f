package chillwright.service;

import chillwright.core.kitchen.KnownPlace;
import chillwright.core.kitchen.PlaceLimit;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Word;
import chillwright.core.measure.Temperature;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A time in which a place was beyond its limit. It tells of the place and is no finding of a lot.
 *
 * @param limit what its readings are held against; empty for a freezer held against none
 * @param readings those beyond it, in order of time
 * @param ended the reading that was within it again; empty where none is known
 * @param acts what was done about them, in order of time
 */
public record PlaceTrouble(
    KnownPlace place,
    Optional<PlaceLimit> limit,
    List<LogEntry> readings,
    Optional<LogEntry> ended,
    List<LogEntry> acts) {
  public PlaceTrouble {
    readings = List.copyOf(readings);
    acts = List.copyOf(acts);
  }

  static PlaceTrouble none(KnownPlace place, Optional<PlaceLimit> limit) {
    return new PlaceTrouble(place, limit, List.of(), Optional.empty(), List.of());
  }

  /** Whether a reading is beyond what its place is held against, for safety. */
  static boolean isBeyond(KnownPlace place, Optional<PlaceLimit> limit, LogEntry reading) {
    Temperature read = reading.temperature().orElseThrow();
    boolean isThawing = place.kind() == KnownPlace.Kind.FREEZER && !PlaceLimit.isFreezing(read);
    return isThawing
        || limit
            .filter(bound -> bound.source() != PlaceLimit.Source.QUALITY)
            .filter(bound -> !bound.isMet(read))
            .isPresent();
  }

  /** The same with one more reading, or with something that was done. */
  PlaceTrouble with(LogEntry entry) {
    boolean isAct = entry.word() == Word.ACTION;
    return new PlaceTrouble(
        place,
        limit,
        isAct ? readings : plus(readings, entry),
        ended,
        isAct ? plus(acts, entry) : acts);
  }

  PlaceTrouble endedBy(LogEntry reading) {
    return new PlaceTrouble(place, limit, readings, Optional.of(reading), acts);
  }

  private static List<LogEntry> plus(List<LogEntry> entries, LogEntry more) {
    List<LogEntry> all = new ArrayList<>(entries);
    all.add(more);
    return all;
  }

  public Instant began() {
    return readings.get(0).happenedAt();
  }
}
