package chillwright.core.log;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** What a kitchen has stored so far, as far as {@link Intake} needs to know it. */
public interface Stored {
  /** Nothing is stored yet. */
  Stored NOTHING =
      new Stored() {
        @Override
        public Optional<LotLog> lot(LotId lot) {
          return Optional.empty();
        }

        @Override
        public List<LotLog> madeOf(LotId lot) {
          return List.of();
        }

        @Override
        public Optional<Found> entry(EntryId id) {
          return Optional.empty();
        }

        @Override
        public boolean hasIdBeginning(String start) {
          return false;
        }

        @Override
        public List<LogEntry> ofPlaces(Instant happenedAt) {
          return List.of();
        }
      };

  /** The whole log of a lot with its sources; empty if the lot has no entry. */
  Optional<LotLog> lot(LotId lot);

  /** The logs of the lots that name this one as their source. */
  List<LotLog> madeOf(LotId lot);

  /** The entry with that id, of a lot or of a place. */
  Optional<Found> entry(EntryId id);

  /** Whether any entry, of a lot or of a place, has an id that begins so. */
  boolean hasIdBeginning(String start);

  /** The entries of places (readings and their corrections) that happened at that moment. */
  List<LogEntry> ofPlaces(Instant happenedAt);

  /**
   * A stored entry.
   *
   * @param lot empty for an entry of a place
   */
  record Found(Optional<LotId> lot, LogEntry entry) {}
}
