package chillwright.core.keeping;

import chillwright.core.keeping.LotState.Standing;
import chillwright.core.log.Category;
import chillwright.core.log.Phase;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Whether a lot still has life on a day. Where it is kept until then, what holds in its freezer
 * holds. Where it is posted on that day and must be good for some more, it has left the freezer: of
 * food that needs the cold its days once thawed count from then on, the day itself included; of
 * food that needs none the days at room temperature that its kitchen states.
 *
 * @param day on which it is wanted, or posted
 * @param after so many days more; empty where it is kept as it is until the day
 */
public record StillGood(LocalDate day, OptionalInt after) {
  /** Why a lot is left out. */
  public enum Why {
    /** Its last day is before the day that is needed. */
    ENDS,
    /** The same of food whose days in a refrigerator tell of quality only. */
    BEST_CHILLED,
    /** It is out of the freezer, and the days its kitchen states end before. */
    BEST_AT_ROOM,
    /** In the freezer it is at its best until a day before. */
    PAST_BEST,
    /** It was past its best before it was frozen, or before it left its freezer. */
    OVER,
    /** Once thawed it has fewer days. */
    DAYS_THAWED,
    /** At room temperature it has fewer days, as its kitchen states. */
    DAYS_AT_ROOM,
    /** It needs no cold, and nobody has stated its days outside the freezer. */
    NOTHING_STATED,
    /** No date applies to it. */
    NO_DATE;

    public String key() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  /**
   * The reason with its figure.
   *
   * @param last the day on which it ends, where one is known
   * @param days that it has
   */
  public record Against(Why why, Optional<LocalDate> last, int days) {
    private static Against of(Why why) {
      return new Against(why, Optional.empty(), 0);
    }

    private static Against until(Why why, LocalDate last) {
      return new Against(why, Optional.of(last), 0);
    }
  }

  /**
   * What its kitchen states of food that needs no cold.
   *
   * @param days at room temperature
   * @param begun the day from which they count; empty while it is frozen, and where it is not known
   * @param over its last day at its best, where freezing or thawing came after it
   */
  public record AtRoom(OptionalInt days, Optional<LocalDate> begun, Optional<LocalDate> over) {
    private Optional<LocalDate> last() {
      return days.isPresent()
          ? begun.map(from -> from.plusDays(days.getAsInt()))
          : Optional.empty();
    }
  }

  public StillGood {
    Objects.requireNonNull(day, "day");
  }

  /** The day until which it must be good. */
  public LocalDate until() {
    return day.plusDays(after.orElse(0));
  }

  /** Why that lot is left out; empty where it is not. Nothing is told of what its record owes. */
  public Optional<Against> against(Standing standing, Category category, AtRoom room) {
    if (room.over().isPresent()) {
      return room.over().map(ends -> Against.until(Why.OVER, ends));
    }
    boolean leavesCold = after.isPresent() && !category.tcs();
    Optional<LocalDate> last = leavesCold ? Optional.empty() : standing.lastDay();
    if (last.isPresent()) {
      boolean isQuality = category.daysAreQuality() && isChilled(standing.keeping(), last.get());
      Why why = isQuality ? Why.BEST_CHILLED : Why.ENDS;
      return last.filter(this::isTooEarly).map(ends -> Against.until(why, ends));
    }
    if (standing.phase() == Phase.FROZEN && room.begun().isEmpty()) {
      return frozen(standing.keeping(), category, room);
    }
    Optional<LocalDate> roomLast = category.tcs() ? Optional.empty() : room.last();
    if (roomLast.isPresent()) {
      return roomLast.filter(this::isTooEarly).map(ends -> Against.until(Why.BEST_AT_ROOM, ends));
    }
    boolean isUnstated = !category.tcs() && room.days().isEmpty();
    return Optional.of(Against.of(isUnstated ? Why.NOTHING_STATED : Why.NO_DATE));
  }

  private Optional<Against> frozen(Keeping keeping, Category category, AtRoom room) {
    Optional<LocalDate> best = keeping.bestQualityBy();
    if (best.filter(day::isAfter).isPresent()) {
      return best.map(ends -> Against.until(Why.PAST_BEST, ends));
    }
    if (after.isEmpty()) {
      return best.isPresent() ? Optional.empty() : Optional.of(Against.of(Why.NO_DATE));
    }
    OptionalInt days = category.tcs() ? keeping.daysLeftWhenThawed() : room.days();
    if (days.isEmpty()) {
      return Optional.of(Against.of(category.tcs() ? Why.NO_DATE : Why.NOTHING_STATED));
    }
    // Of the days of safety the day of thawing is one; those of quality count from the next.
    int enough = category.tcs() ? after.getAsInt() + 1 : after.getAsInt();
    return days.getAsInt() >= enough
        ? Optional.empty()
        : Optional.of(
            new Against(
                category.tcs() ? Why.DAYS_THAWED : Why.DAYS_AT_ROOM,
                Optional.empty(),
                days.getAsInt()));
  }

  private static boolean isChilled(Keeping keeping, LocalDate last) {
    return Optional.of(last).equals(keeping.chilledLastDay());
  }

  private boolean isTooEarly(LocalDate last) {
    return last.isBefore(until());
  }
}
