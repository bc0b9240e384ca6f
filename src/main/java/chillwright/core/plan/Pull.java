package chillwright.core.plan;

import chillwright.core.keeping.LotState;
import chillwright.core.log.LotId;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * A lot to take out of the freezer, or to use, within the days that are asked about.
 *
 * @param at when it comes out of the freezer; empty where no plan says the hour
 * @param day on which it is to be taken out or used at the latest
 * @param portions how many of it; empty where they are not counted
 * @param lastDay its last day of safety, once thawed where it is frozen; empty where none counts
 * @param need the dish it is taken out for; empty where its own days call for it
 */
public record Pull(
    LotState lot,
    Why why,
    Optional<Instant> at,
    LocalDate day,
    OptionalInt portions,
    Optional<LocalDate> lastDay,
    Optional<Need> need) {
  /** What calls for it. */
  public enum Why {
    /** A dish of a plan. */
    PLAN("plan"),
    /** It is frozen, and at its best no longer than that day; that is quality, not safety. */
    QUALITY("best-quality"),
    /** It is out of the freezer, needs no cold, and its kitchen calls it good until that day. */
    ROOM("best-at-room"),
    /** It is not frozen, and that day is its last. */
    LAST_DAY("last-day");

    private final String key;

    Why(String key) {
      this.key = key;
    }

    /** As it stands in an answer. */
    public String key() {
      return key;
    }
  }

  /**
   * A dish of a plan that comes out of the freezer, and that no list of lots can tell of.
   *
   * @param plan the code of its plan, and {@code event} what that is called
   * @param thaws whether it is food that was got frozen, which the first step thaws
   * @param isBegun whether the log has some of it, which is not in the freezer yet
   * @param at when it is to come out
   */
  public record Unlogged(
      String plan,
      String event,
      String dish,
      int portions,
      boolean thaws,
      boolean isBegun,
      Instant at) {
    /** What calls for it, as it stands in an answer. */
    public String why() {
      return thaws ? "plan-thaws" : "plan-not-frozen-yet";
    }
  }

  /**
   * A dish that waits in the freezer.
   *
   * @param plan the code of its plan, and {@code event} what that is called
   * @param at when it is to come out
   * @param served the day it is eaten
   * @param lots those that the plan follows, whatever their food is called; none where any lot of
   *     that food may serve
   */
  public record Need(
      String plan,
      String event,
      String dish,
      int portions,
      Instant at,
      LocalDate served,
      Set<LotId> lots) {
    public Need {
      lots = Set.copyOf(lots);
    }

    /** Whether a lot may serve it. */
    public boolean isFor(LotState lot) {
      return lots.isEmpty() ? lot.food().equals(dish) : lots.contains(lot.lot());
    }
  }
}
