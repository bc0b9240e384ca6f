package chillwright.core.plan;

import chillwright.core.keeping.Keeping;
import chillwright.core.rules.RuleSet;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Until when the lot that a dish became may be eaten, by its own figures: a lot may be older, or
 * frozen later, than any plan would have it. Where it was divided the part that ends first counts.
 */
record OwnDays(Progress progress, RuleSet.Settings settings, ZoneId zone) {
  private static final Comparator<LocalDate> EARLIEST = Comparator.naturalOrder();

  /** Whether the lot tells anything; else the days of its category count. */
  boolean isKnown() {
    return !progress.keeping().isEmpty();
  }

  /** The last day as it is kept now, in the refrigerator; empty where none counts. */
  Optional<LocalDate> lastDay() {
    return each(OwnDays::cold);
  }

  /** The last day if it comes out of the freezer, where it is now, on a day. */
  Optional<LocalDate> lastDayThawed(LocalDate out) {
    return each(keeping -> inFreezer(keeping, out).or(() -> cold(keeping)));
  }

  /** The last day if what is not frozen yet is frozen on one day, and all comes out on another. */
  Optional<LocalDate> lastDay(LocalDate frozen, LocalDate out) {
    return each(
        keeping ->
            inFreezer(keeping, out)
                .or(
                    () ->
                        cold(keeping)
                            .map(
                                last ->
                                    frozen.isAfter(last)
                                        ? last
                                        : thawed(left(last, frozen), out))));
  }

  private Optional<LocalDate> inFreezer(Keeping keeping, LocalDate out) {
    return keeping.daysLeftWhenThawed().stream().mapToObj(days -> thawed(days, out)).findFirst();
  }

  /** Until when it is at its best in the freezer, which is quality and no more. */
  Optional<LocalDate> bestBy() {
    return progress.keeping().stream().flatMap(k -> k.bestQualityBy().stream()).min(EARLIEST);
  }

  private int left(LocalDate last, LocalDate frozen) {
    boolean isMadeThen = frozen.equals(progress.made().atZone(zone).toLocalDate());
    LocalDate used = isMadeThen || settings.freezingDayCounts() ? frozen : frozen.minusDays(1);
    return (int) ChronoUnit.DAYS.between(used, last);
  }

  private LocalDate thawed(int left, LocalDate out) {
    return out.plusDays(left > 0 && settings.thawingDayCounts() ? left - 1L : left);
  }

  static Optional<LocalDate> cold(Keeping keeping) {
    return keeping.dateMarkLastDay().or(keeping::chilledLastDay);
  }

  /** A last day that was missed stays the last, whatever is done. */
  private Optional<LocalDate> each(Function<Keeping, Optional<LocalDate>> last) {
    List<Keeping> all = progress.keeping();
    return all.stream()
        .flatMap(keeping -> keeping.lastDayMissed().or(() -> last.apply(keeping)).stream())
        .min(EARLIEST);
  }
}
