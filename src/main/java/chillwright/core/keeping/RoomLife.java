package chillwright.core.keeping;

import chillwright.core.log.How;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Phase;
import chillwright.core.log.Timeline;
import chillwright.core.log.Word;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Days at room temperature of food that needs no cold for safety, as its kitchen states them. They
 * are about quality and a figure of the kitchen's own; what a freezer adds ends as the food leaves
 * it.
 */
public final class RoomLife {
  /**
   * How long food has been out of a freezer.
   *
   * @param used days out of it before it last went in, since it was made
   * @param since when it is out; empty while it is frozen, and where the record does not tell
   */
  private record Out(int used, Optional<LocalDate> since) {}

  /** As far as measured lives of frozen food go, °C (23 °F); warmer it thaws. */
  static final double WARMEST = -5;

  private RoomLife() {}

  /**
   * The day from which its days at room temperature count: that of its making, or of its thawing
   * less the days that it was out before it was frozen; of what is put together without baking the
   * earliest of its parts; of a lot that was found soft in its freezer that day. Empty while it is
   * frozen, and where the record tells neither.
   */
  public static Optional<LocalDate> begins(Timeline timeline) {
    Out out = out(timeline);
    return out.since().map(day -> day.minusDays(out.used()));
  }

  /** What is left, once thawed, of so many days that a frozen lot had when it was made. */
  public static int left(Timeline timeline, int days) {
    return Math.max(0, days - out(timeline).used());
  }

  /** Freezing stops the days and gives none back, as for days of safety (3-501.17). */
  private static Out out(Timeline timeline) {
    int used = 0;
    Optional<LocalDate> since = Optional.empty();
    Optional<LocalDate> frozen = Optional.empty();
    for (LogEntry entry : timeline.entries()) {
      LocalDate day = timeline.day(entry.happenedAt());
      if (entry.word() == Word.FROZEN) {
        used += since.map(from -> Math.toIntExact(ChronoUnit.DAYS.between(from, day))).orElse(0);
        since = Optional.empty();
        frozen = Optional.of(day);
      } else if (frozen.filter(day::isAfter).isPresent() && since.isEmpty() && isSoft(entry)) {
        since = Optional.of(day);
      } else if (since.isEmpty() && (isMaking(entry) || entry.word() == Word.THAWING)) {
        since = isMaking(entry) ? earliest(timeline, day) : Optional.of(day);
      }
    }
    return new Out(used, since);
  }

  /** Whether what a freezer adds has ended while a lot stands in it, as it was found thawed. */
  static boolean hasThawedInFreezer(Timeline timeline) {
    return !timeline.food().category().tcs()
        && timeline.phase() == Phase.FROZEN
        && begins(timeline).isPresent();
  }

  /** Found soft, or read too warm and not found hard, on a later day than it went in. */
  private static boolean isSoft(LogEntry entry) {
    boolean isWarm = entry.temperature().filter(t -> t.celsiusDegrees() > WARMEST).isPresent();
    return entry.is(How.SOFT) || (isWarm && !entry.is(How.HARD));
  }

  /** A source that is frozen thaws on the day it is used, less the days it was out before. */
  private static Optional<LocalDate> earliest(Timeline timeline, LocalDate made) {
    boolean isAnew = timeline.entries().get(0).word() == Word.COOKED;
    Stream<LocalDate> before =
        isAnew
            ? Stream.empty()
            : timeline.sources().stream()
                .map(RoomLife::out)
                .map(out -> out.since().orElse(made).minusDays(out.used()));
    return Stream.concat(Stream.of(made), before).min(Comparator.naturalOrder());
  }

  private static boolean isMaking(LogEntry entry) {
    return entry.word() == Word.COOKED || entry.word() == Word.PREPARED;
  }
}
