package chillwright.core.keeping;

import chillwright.core.log.LogEntry;
import chillwright.core.log.Phase;
import chillwright.core.log.Timeline;
import chillwright.core.log.Word;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Days at room temperature of food that needs no cold for safety, as its kitchen states them. They
 * are about quality and a figure of the kitchen's own; what a freezer adds ends as the food leaves
 * it.
 */
public final class RoomLife {
  private RoomLife() {}

  /**
   * The day from which its days at room temperature count: that of its thawing, or of its making
   * where it never was frozen; of what is put together without baking the earliest of its parts.
   * Empty while it is frozen, and where the record tells neither.
   */
  public static Optional<LocalDate> begins(Timeline timeline) {
    if (timeline.phase() == Phase.FROZEN) {
      return Optional.empty();
    }
    boolean wasFrozen = Quality.firstFrozen(timeline).isPresent();
    Optional<LocalDate> own =
        timeline.entries().stream()
            .filter(entry -> wasFrozen ? entry.word() == Word.THAWING : isMaking(entry))
            .reduce((first, later) -> wasFrozen ? later : first)
            .map(entry -> timeline.day(entry.happenedAt()));
    boolean isAnew = wasFrozen || timeline.entries().get(0).word() == Word.COOKED;
    Stream<LocalDate> before =
        isAnew
            ? Stream.empty()
            : timeline.sources().stream().flatMap(source -> begins(source).stream());
    return Stream.concat(own.stream(), before).min(Comparator.naturalOrder());
  }

  private static boolean isMaking(LogEntry entry) {
    return entry.word() == Word.COOKED || entry.word() == Word.PREPARED;
  }
}
