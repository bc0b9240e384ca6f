package chillwright.core.plan;

import chillwright.core.keeping.Keeping;
import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.log.LotId;
import chillwright.core.plan.Pull.Need;
import chillwright.core.plan.Pull.Unlogged;
import chillwright.core.plan.Pull.Why;
import chillwright.core.rules.Verdict;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What to take out of the freezer in the next days, and what to use: for plans the oldest lot
 * first, never one past its life on the day it is eaten; then what its own days call for.
 *
 * @param pulls by day and hour
 * @param missing dishes for which the freezer holds too few portions, with how many it lacks
 * @param unlogged dishes that come out by a plan, of which the log has nothing in the freezer
 */
public record PullList(List<Pull> pulls, Map<Need, Integer> missing, List<Unlogged> unlogged) {
  public PullList {
    pulls = List.copyOf(pulls);
    missing = Map.copyOf(missing);
    unlogged = List.copyOf(unlogged);
  }

  /** The same, with the dishes of plans that no lot stands for yet. */
  public PullList with(List<Unlogged> dishes) {
    return new PullList(pulls, missing, dishes);
  }

  /**
   * The list of some days.
   *
   * @param needs of plans, by their hour
   * @param frozen lots in the freezer, the oldest first
   * @param ending lots on hand that are not frozen, whose last day comes within the days
   * @param room lots out of the freezer, or soft in it, that need no cold, with the day until which
   *     they are at their best by what their kitchen states
   * @param end the day after the last
   */
  public static PullList of(
      List<Need> needs,
      List<LotState> frozen,
      List<LotState> ending,
      Map<LotState, LocalDate> room,
      ZoneId zone,
      Instant now,
      LocalDate end) {
    return new Making(zone, now, end).list(needs, frozen, ending, room);
  }

  private record Making(
      ZoneId zone,
      Instant now,
      LocalDate end,
      List<Pull> pulls,
      Map<Need, Integer> missing,
      Map<LotId, Integer> taken) {
    Making(ZoneId zone, Instant now, LocalDate end) {
      this(zone, now, end, new ArrayList<>(), new HashMap<>(), new HashMap<>());
    }

    PullList list(
        List<Need> needs,
        List<LotState> frozen,
        List<LotState> ending,
        Map<LotState, LocalDate> room) {
      List<LotState> good = frozen.stream().filter(this::isGood).toList();
      needs.forEach(need -> take(need, good));
      good.forEach(this::quality);
      ending.stream().filter(this::isGood).forEach(this::lastDay);
      room.forEach(this::room);
      pulls.sort(
          Comparator.comparing(Pull::day)
              .thenComparing(pull -> pull.at().orElse(Instant.MIN))
              .thenComparing(pull -> pull.lot().standing().orElseThrow().beganAt()));
      return new PullList(pulls, missing, List.of());
    }

    private LocalDate today() {
      return now.atZone(zone).toLocalDate();
    }

    /** Nobody is sent to a lot that is out, to which an action is owed, or whose days are over. */
    private boolean isGood(LotState lot) {
      Optional<Standing> standing = lot.standing();
      return standing.flatMap(s -> s.verdicts().at(now)).filter(Verdict.OUT::equals).isEmpty()
          && standing.flatMap(Standing::owedFrom).filter(from -> !now.isBefore(from)).isEmpty()
          && standing.flatMap(s -> s.keeping().lastDayMissed()).isEmpty()
          && standing.flatMap(Standing::lastDay).filter(today()::isAfter).isEmpty();
    }

    private void take(Need need, List<LotState> frozen) {
      int wanted = need.portions();
      LocalDate out = need.at().atZone(zone).toLocalDate();
      for (LotState lot : frozen) {
        boolean isIt = need.isFor(lot);
        Optional<LocalDate> lastDay = lastDayThawed(lot, out);
        boolean isKept = lastDay.filter(need.served()::isAfter).isEmpty();
        OptionalInt left = left(lot);
        if (wanted > 0 && isIt && isKept && left.orElse(1) > 0) {
          int some = Math.min(wanted, left.orElse(wanted));
          wanted -= some;
          taken.merge(lot.lot(), some, Integer::sum);
          OptionalInt portions = left.isPresent() ? OptionalInt.of(some) : left;
          pulls.add(
              new Pull(
                  lot,
                  Why.PLAN,
                  Optional.of(need.at()),
                  out,
                  portions,
                  lastDay,
                  Optional.of(need)));
        }
      }
      if (wanted > 0) {
        missing.put(need, wanted);
      }
    }

    /** What no plan takes; where portions are not counted, none is left beside a plan. */
    private OptionalInt left(LotState lot) {
      int gone = taken.getOrDefault(lot.lot(), 0);
      OptionalInt left = lot.portions().left();
      if (left.isPresent()) {
        return OptionalInt.of(Math.max(0, left.getAsInt() - gone));
      }
      return gone > 0 ? OptionalInt.of(0) : left;
    }

    /** The day of thawing counts as the first of the days that are left. */
    private static Optional<LocalDate> lastDayThawed(LotState lot, LocalDate out) {
      OptionalInt days = keeping(lot).daysLeftWhenThawed();
      return days.isPresent()
          ? Optional.of(out.plusDays(Math.max(0, days.getAsInt() - 1)))
          : Optional.empty();
    }

    private void quality(LotState lot) {
      keeping(lot)
          .bestQualityBy()
          .filter(day -> day.isBefore(end) && left(lot).orElse(1) > 0)
          .ifPresent(day -> pulls.add(own(lot, Why.QUALITY, day, lastDayThawed(lot, today()))));
    }

    private void room(LotState lot, LocalDate until) {
      if (isGood(lot) && until.isBefore(end) && left(lot).orElse(1) > 0) {
        pulls.add(own(lot, Why.ROOM, until, Optional.empty()));
      }
    }

    private void lastDay(LotState lot) {
      // Time control ends at an hour, which "falls due next" tells.
      lot.standing()
          .filter(standing -> standing.keeping().discardAt().isEmpty())
          .flatMap(Standing::lastDay)
          .filter(day -> day.isBefore(end))
          .ifPresent(day -> pulls.add(own(lot, Why.LAST_DAY, day, Optional.of(day))));
    }

    private Pull own(LotState lot, Why why, LocalDate day, Optional<LocalDate> lastDay) {
      return new Pull(lot, why, Optional.empty(), day, left(lot), lastDay, Optional.empty());
    }

    private static Keeping keeping(LotState lot) {
      return lot.standing().orElseThrow().keeping();
    }
  }
}
