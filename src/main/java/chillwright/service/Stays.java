package chillwright.service;

import chillwright.core.log.LogEntry;
import chillwright.core.log.Phase;
import chillwright.core.log.Timeline;
import chillwright.service.Places.PlaceReading;
import chillwright.storage.PlaceStore;
import chillwright.storage.Session;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Where a lot was, and what was read there meanwhile. Such a reading is evidence shown beside the
 * lot; it gives no finding, since nobody read the food.
 */
final class Stays {
  /** How many readings are shown of a lot. */
  static final int SHOWN = 50;

  /** A time that a lot spent in a place, both ends included. */
  private record Stay(String place, Instant from, Instant to) {
    boolean holds(LogEntry reading) {
      Instant at = reading.happenedAt();
      return reading.details().place().filter(place::equals).isPresent()
          && !at.isBefore(from)
          && !at.isAfter(to);
    }
  }

  private Stays() {}

  /** What was read around a lot, the newest first, as many as are shown. */
  static List<PlaceReading> readings(Session session, Timeline timeline, Instant now) {
    return readings(session, timeline, now, SHOWN);
  }

  static List<PlaceReading> readings(Session session, Timeline timeline, Instant now, int most) {
    List<Stay> stays = of(timeline, now);
    List<PlaceReading> found = new ArrayList<>();
    for (int i = stays.size() - 1; i >= 0 && found.size() < most; i--) {
      Stay stay = stays.get(i);
      PlaceStore.Filter filter =
          new PlaceStore.Filter(Optional.of(stay.place()), stay.from(), stay.to());
      List<LogEntry> written =
          session.places().readings(filter, most - found.size(), Optional.empty()).items();
      Places.corrected(session, written).stream()
          .filter(reading -> !found.contains(reading))
          .forEach(found::add);
    }
    return found;
  }

  /** Readings that were taken around a lot while it was where it was, the newest first. */
  static List<LogEntry> during(Timeline timeline, List<LogEntry> ofPlaces, Instant now) {
    List<Stay> stays = of(timeline, now);
    return ofPlaces.stream()
        .filter(reading -> stays.stream().anyMatch(stay -> stay.holds(reading)))
        .sorted(Comparator.comparing(LogEntry::happenedAt).reversed())
        .toList();
  }

  private static List<Stay> of(Timeline timeline, Instant now) {
    List<Stay> stays = new ArrayList<>();
    Optional<Stay> open = Optional.empty();
    Optional<Phase> phase = Optional.empty();
    for (LogEntry entry : timeline.entries()) {
      Optional<String> place = entry.details().place();
      Optional<Phase> entered = entry.word().phase();
      Optional<Phase> next = entered.isPresent() ? entered : phase;
      boolean leaves = place.isPresent() || isElsewhere(phase, next);
      if (leaves) {
        open.ifPresent(stay -> stays.add(until(stay, entry.happenedAt())));
        open = place.map(name -> new Stay(name, entry.happenedAt(), now));
      }
      phase = next;
    }
    Instant end = timeline.closedAt().orElse(now);
    open.ifPresent(stay -> stays.add(until(stay, end)));
    return stays;
  }

  /**
   * A new phase that names no place is somewhere else, but food often cools where it then stays.
   */
  private static boolean isElsewhere(Optional<Phase> phase, Optional<Phase> next) {
    boolean staysCold =
        phase.filter(Phase.COOLING::equals).isPresent()
            && next.filter(Phase.CHILLED::equals).isPresent();
    return !next.equals(phase) && !staysCold;
  }

  private static Stay until(Stay stay, Instant end) {
    return new Stay(stay.place(), stay.from(), end);
  }
}
