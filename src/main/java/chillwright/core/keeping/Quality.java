package chillwright.core.keeping;

import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Phase;
import chillwright.core.log.Timeline;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The dates of quality of food that was frozen, by the months of its category from its first
 * freezing. What is made of lots that were frozen before keeps its quality no longer than they: our
 * own convention, as FDA Food Code 2022 3-501.17(D) has it for the days of safety.
 *
 * @param best its earliest own or inherited day of best quality
 * @param limit likewise of its quality limit
 * @param sources those that bring the dates nearer
 */
record Quality(Optional<LocalDate> best, Optional<LocalDate> limit, List<Source> sources) {
  static final Quality NONE = new Quality(Optional.empty(), Optional.empty(), List.of());

  /** A lot that went into it, and what its own dates were. */
  record Source(LotId lot, Optional<LocalDate> best, Optional<LocalDate> limit) {}

  /** Of a lot that was frozen on that day. */
  static Quality of(Timeline timeline, LocalDate frozen) {
    return of(timeline, Optional.of(frozen));
  }

  private static Quality of(Timeline timeline, Optional<LocalDate> frozen) {
    var months = timeline.food().category().freezer();
    Optional<LocalDate> best = frozen.flatMap(day -> plusMonths(day, months.min()));
    Optional<LocalDate> limit = frozen.flatMap(day -> plusMonths(day, months.max()));
    List<Source> nearer = new ArrayList<>();
    for (Timeline source : timeline.sources()) {
      Quality own = of(source, firstFrozen(source));
      if (isNearer(own.best(), best) || isNearer(own.limit(), limit)) {
        nearer.add(new Source(source.lot(), own.best(), own.limit()));
      }
      best = earlier(best, own.best());
      limit = earlier(limit, own.limit());
    }
    return new Quality(best, limit, List.copyOf(nearer));
  }

  private static boolean isNearer(Optional<LocalDate> source, Optional<LocalDate> own) {
    return source.filter(day -> own.isEmpty() || day.isBefore(own.get())).isPresent();
  }

  private static Optional<LocalDate> earlier(Optional<LocalDate> one, Optional<LocalDate> other) {
    return one.isPresent() && other.isPresent()
        ? Optional.of(one.get().isBefore(other.get()) ? one.get() : other.get())
        : one.or(() -> other);
  }

  /** The day on which it was frozen first; empty where it never was. */
  static Optional<LocalDate> firstFrozen(Timeline timeline) {
    return timeline.entries().stream()
        .filter(entry -> entry.word().phase().filter(Phase.FROZEN::equals).isPresent())
        .map(LogEntry::happenedAt)
        .min(Comparator.naturalOrder())
        .map(timeline::day);
  }

  /** Calendar months, as freezer charts count them: 30 November and 3 months is 28 February. */
  static Optional<LocalDate> plusMonths(LocalDate day, OptionalInt months) {
    return months.isPresent() ? Optional.of(day.plusMonths(months.getAsInt())) : Optional.empty();
  }
}
