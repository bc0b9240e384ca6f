package chillwright.core.keeping;

import chillwright.core.log.How;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Phase;
import chillwright.core.log.Timeline;
import chillwright.core.log.Word;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
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
   * @param stays those out of it that ended as it was frozen
   * @param left days on which it left a freezer, or was found soft in it
   */
  private record Out(int used, Optional<LocalDate> since, List<Stay> stays, List<LocalDate> left) {}

  /**
   * A stay out of a freezer.
   *
   * @param begun the day from which its days count, those used before taken off
   */
  private record Stay(LocalDate begun, LocalDate frozen) {}

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

  /**
   * The last day on which it was at its best, where that was over before it was frozen, or before
   * it left its freezer: neither gives food new days, and so it stays past its best. Empty where
   * that is not so, and of food that needs the cold.
   *
   * @param days at room temperature, where its kitchen has stated them
   */
  public static Optional<LocalDate> over(Timeline timeline, OptionalInt days) {
    if (timeline.food().category().tcs()) {
      return Optional.empty();
    }
    Out out = out(timeline);
    Optional<LocalDate> frozen = Quality.firstFrozen(timeline);
    Optional<LocalDate> best = frozen.flatMap(day -> Quality.of(timeline, day).best());
    Stream<LocalDate> inFreezer =
        best.stream().filter(last -> out.left().stream().anyMatch(last::isBefore));
    Stream<LocalDate> atRoom =
        out.stays().stream()
            .flatMap(stay -> last(stay.begun(), days).filter(stay.frozen()::isAfter).stream());
    return Stream.concat(Stream.concat(inFreezer, atRoom), ofSources(timeline, days))
        .min(Comparator.naturalOrder());
  }

  /** The last day at its best, out of a freezer or past it; empty where a freezer's holds. */
  public static Optional<LocalDate> last(Timeline timeline, OptionalInt days) {
    return over(timeline, days).or(() -> begins(timeline).flatMap(from -> last(from, days)));
  }

  private static Optional<LocalDate> last(LocalDate begun, OptionalInt days) {
    return days.isPresent() ? Optional.of(begun.plusDays(days.getAsInt())) : Optional.empty();
  }

  /** What is put together without baking, of what was past its best already. */
  private static Stream<LocalDate> ofSources(Timeline timeline, OptionalInt days) {
    return timeline.entries().get(0).word() == Word.COOKED
        ? Stream.empty()
        : timeline.sources().stream().flatMap(source -> over(source, days).stream());
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
    List<Stay> stays = new ArrayList<>();
    List<LocalDate> left = new ArrayList<>();
    for (LogEntry entry : timeline.entries()) {
      LocalDate day = timeline.day(entry.happenedAt());
      if (entry.word() == Word.FROZEN) {
        if (since.isPresent()) {
          stays.add(new Stay(since.get().minusDays(used), day));
          used += Math.toIntExact(ChronoUnit.DAYS.between(since.get(), day));
        }
        since = Optional.empty();
        frozen = Optional.of(day);
      } else if (frozen.filter(day::isAfter).isPresent() && since.isEmpty() && isSoft(entry)) {
        since = Optional.of(day);
        left.add(day);
      } else if (since.isEmpty() && (isMaking(entry) || entry.word() == Word.THAWING)) {
        since = isMaking(entry) ? earliest(timeline, day) : Optional.of(day);
      }
      if (frozen.isPresent() && isOutOfFreezer(entry)) {
        left.add(day);
      }
    }
    return new Out(used, since, List.copyOf(stays), List.copyOf(left));
  }

  private static boolean isOutOfFreezer(LogEntry entry) {
    return !isMaking(entry)
        && entry.word().phase().filter(p -> p != Phase.FROZEN && !p.isEnd()).isPresent();
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
