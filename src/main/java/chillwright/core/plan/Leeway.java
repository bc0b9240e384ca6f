package chillwright.core.plan;

import chillwright.core.plan.Job.Use;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How far each part of a found plan may move: whatever moments are chosen within all of these
 * windows, for all dishes at once, every limit, every last day and every amount still holds. One
 * part is given room after the other, so what one takes the next no longer has.
 */
final class Leeway {
  private static final int MAKE = 0;
  private static final int FREEZE = 1;
  private static final int TAKE_OUT = 2;
  private static final int FINISH = 3;

  /** Farther from its planned moment than this no part is moved. */
  private static final int FARTHEST = Grid.length(Duration.ofDays(14));

  private final Grid grid;
  private final Menu menu;
  private final Timetable table;
  private final List<Room> rooms = new ArrayList<>();
  private final Map<String, EarlyThaw.Out> early;

  /** One dish: its placing, the first and the last slot of each part, and what keeps it. */
  private static final class Room {
    private final Placed placed;
    private final Window window;
    private final int[] from;
    private final int[] to;
    private final MovedDays days;

    Room(Placed placed, Window window, MovedDays days) {
      this.placed = placed;
      this.window = window;
      this.days = days;
      this.from = new int[] {placed.make(), placed.freeze(), placed.takeOut(), placed.finish()};
      this.to = from.clone();
    }

    Placed placed() {
      return placed;
    }

    Window window() {
      return window;
    }

    int[] from() {
      return from;
    }

    int[] to() {
      return to;
    }

    MovedDays days() {
      return days;
    }

    Job job() {
      return placed.job();
    }

    boolean isBegun() {
      return window.progress().isPresent();
    }
  }

  private Leeway(List<Placed> plan, List<Window> windows, Grid grid, Menu menu, MovedDays.Of days) {
    this.grid = grid;
    this.menu = menu;
    this.table = new Timetable(grid);
    this.early = EarlyThaw.of(plan, grid, menu);
    early.values().forEach(out -> table.take(out.uses()));
    for (Window window : windows) {
      for (Placed placed : plan) {
        if (placed.job().dish().equals(window.dish())) {
          rooms.add(new Room(placed, window, days.of(window)));
        }
      }
    }
  }

  /** The bounds of a plan, cut to what holds together. */
  static List<Bound> of(
      List<Placed> plan, List<Window> windows, Grid grid, Menu menu, MovedDays.Of days) {
    Leeway leeway = new Leeway(plan, windows, grid, menu, days);
    leeway.rooms.forEach(room -> leeway.table.take(leeway.uses(room)));
    leeway.rooms.forEach(leeway::widen);
    return leeway.rooms.stream().flatMap(room -> leeway.bounds(room).stream()).toList();
  }

  /** Later steps first, since what comes before is counted from them. */
  private void widen(Room room) {
    Job job = room.job();
    table.giveBack(uses(room));
    if (isSound(room)) {
      boolean isFinished = job.isFresh() || job.finishLength() > 0;
      if (isFinished && !(job.isFresh() && thawsAlone(job))) {
        grow(room.to(), FINISH, job.finishTo(), 1, room);
        grow(room.from(), FINISH, job.finishFrom(), -1, room);
      }
      if (job.isFrozen() && !job.isInFreezer()) {
        grow(room.to(), FREEZE, lastFreezing(room), 1, room);
      }
      if (job.isFrozen() && !job.isOut()) {
        grow(room.from(), TAKE_OUT, job.takeOutFrom(), -1, room);
        grow(room.to(), TAKE_OUT, job.takeOutTo(), 1, room);
      }
      if (!job.isFresh() && !room.isBegun() && !thawsAlone(job)) {
        grow(room.from(), MAKE, job.makeFrom(), -1, room);
        grow(room.to(), MAKE, job.makeTo(), 1, room);
      }
    }
    table.take(uses(room));
  }

  /** What is made already may wait as its days allow; else the making has half of the wait. */
  private static int lastFreezing(Room room) {
    Job job = room.job();
    int last = Math.min(job.takeOutTo(), job.freezeTo());
    return room.isBegun() ? last : Math.min(last, room.placed().freeze() + Job.WAITS / 2);
  }

  /** What thaws is shown as taken out before the kitchen closes, not at its own moment. */
  private static boolean thawsAlone(Job job) {
    return job.makeLength() > 0 && Thawing.isFirst(job.dish());
  }

  /** Moves one end as far as all still holds, halving what is left to try. */
  private void grow(int[] ends, int part, int limit, int sign, Room room) {
    int start = ends[part];
    int good = 0;
    int bad = Math.min(FARTHEST, Math.max(0, sign * (limit - start))) + 1;
    while (bad - good > 1) {
      int middle = (good + bad) / 2;
      ends[part] = start + sign * middle;
      if (isSound(room)) {
        good = middle;
      } else {
        bad = middle;
      }
    }
    ends[part] = start + sign * good;
  }

  private boolean isSound(Room room) {
    return isInOrder(room) && keeps(room) && table.fitTogether(uses(room));
  }

  /** Each part at its latest before the next at its earliest. */
  private static boolean isInOrder(Room room) {
    Job job = room.job();
    int[] from = room.from();
    int[] to = room.to();
    if (job.isFresh()) {
      return true;
    }
    int cold = to[MAKE] + job.makeLength() + job.cool();
    if (!job.isFrozen()) {
      return cold <= from[FINISH];
    }
    int waits = from[MAKE] + job.makeLength() + job.cool() + Job.WAITS;
    return cold <= from[FREEZE]
        && (room.isBegun() || to[FREEZE] <= waits)
        && to[FREEZE] + job.freezes() <= from[TAKE_OUT]
        && to[TAKE_OUT] + job.thaw() <= from[FINISH];
  }

  private boolean keeps(Room room) {
    Job job = room.job();
    if (job.isFresh()) {
      return true;
    }
    for (int make : new int[] {room.from()[MAKE], room.to()[MAKE]}) {
      for (int freeze : new int[] {room.from()[FREEZE], room.to()[FREEZE]}) {
        for (int out : new int[] {room.from()[TAKE_OUT], room.to()[TAKE_OUT]}) {
          if (!room.days().keeps(day(make), day(freeze), day(out))) {
            return false;
          }
        }
      }
    }
    return true;
  }

  private LocalDate day(int slot) {
    return grid.moment(slot).atZone(menu.zone()).toLocalDate();
  }

  /** All that a dish may hold, whichever moments are chosen: the most in each slot. */
  private List<Use> uses(Room room) {
    Job job = room.job();
    int[] from = room.from();
    int[] to = room.to();
    List<Use> uses = new ArrayList<>();
    if (job.isFresh()) {
      List<Use> all = new ArrayList<>(job.make());
      job.finish().forEach(use -> all.add(moved(use, job.makeLength())));
      spread(all, from[FINISH] - job.makeLength(), to[FINISH] - job.makeLength(), uses);
    } else {
      spread(job.make(), from[MAKE], to[MAKE], uses);
      spread(job.finish(), from[FINISH], to[FINISH], uses);
    }
    int made = from[MAKE] + job.makeLength();
    if (job.isFrozen()) {
      hold(job, Menu.REFRIGERATOR, made, to[FREEZE], uses);
      hold(job, Menu.FREEZER, from[FREEZE], to[TAKE_OUT], uses);
      if (!job.isInFreezer()) {
        int through = Math.min(to[FREEZE] + job.freezes(), to[TAKE_OUT]);
        hold(job, Menu.FREEZING, from[FREEZE], through, uses);
        uses.add(new Use(Menu.HANDS, from[FREEZE], to[FREEZE] + 1, 10));
      }
      hold(job, Menu.REFRIGERATOR, from[TAKE_OUT], to[FINISH], uses);
      if (!job.isOut()) {
        uses.add(new Use(Menu.HANDS, from[TAKE_OUT], to[TAKE_OUT] + 1, 10));
      }
    } else if (!job.isFresh()) {
      hold(job, Menu.REFRIGERATOR, made, to[FINISH], uses);
    }
    hold(job, Menu.WARM, from[FINISH] + job.finishLength(), job.due(), uses);
    return uses;
  }

  private static void hold(Job job, String resource, int from, int to, List<Use> uses) {
    int amount = job.keeps(resource);
    if (amount > 0 && to > from) {
      uses.add(new Use(resource, from, to, amount));
    }
  }

  private static Use moved(Use use, int by) {
    return new Use(use.resource(), use.from() + by, use.to() + by, use.amount());
  }

  /** Steps that follow one another hold a thing one after the other, wherever they begin. */
  private static void spread(List<Use> steps, int first, int last, List<Use> uses) {
    Map<String, List<Use>> things = new HashMap<>();
    steps.forEach(
        use -> things.computeIfAbsent(use.resource(), name -> new ArrayList<>()).add(use));
    things.forEach((resource, all) -> spread(resource, all, first, last, uses));
  }

  private static void spread(
      String resource, List<Use> steps, int first, int last, List<Use> uses) {
    int begins = steps.stream().mapToInt(Use::from).min().orElse(0);
    int ends = steps.stream().mapToInt(Use::to).max().orElse(0);
    int[] once = new int[ends - begins];
    for (Use use : steps) {
      for (int slot = use.from(); slot < use.to(); slot++) {
        once[slot - begins] += use.amount();
      }
    }
    int[] most = new int[once.length + last - first];
    for (int slot = 0; slot < once.length; slot++) {
      if (once[slot] > 0) {
        for (int at = slot; at <= slot + last - first; at++) {
          most[at] = Math.max(most[at], once[slot]);
        }
      }
    }
    for (int at = 0; at < most.length; at++) {
      int end = at + 1;
      while (end < most.length && most[end] == most[at]) {
        end++;
      }
      if (most[at] > 0) {
        uses.add(new Use(resource, first + begins + at, first + begins + end, most[at]));
      }
      at = end - 1;
    }
  }

  private List<Bound> bounds(Room room) {
    return room.window().bounds().stream().map(bound -> bound(bound, room)).toList();
  }

  private Bound bound(Bound bound, Room room) {
    Job job = room.job();
    int ready = job.isFresh() ? job.makeLength() : 0;
    return switch (bound.kind()) {
      case MAKE ->
          thawsAlone(job) && !room.isBegun()
              ? takenOut(bound, room)
              : room.isBegun()
                  ? bound
                  : between(bound, room, job.isFresh() ? FINISH : MAKE, -ready);
      case FREEZE -> between(bound, room, FREEZE, 0);
      case TAKE_OUT -> job.isOut() ? bound : between(bound, room, TAKE_OUT, 0);
      case REHEAT -> between(bound, room, FINISH, 0);
      case HOLD -> {
        Instant from = grid.moment(room.from()[FINISH] + job.finishLength());
        yield within(bound, from, room.window().due());
      }
      case COOL, COLD, THAW, TABLE -> bound;
    };
  }

  private Bound takenOut(Bound bound, Room room) {
    EarlyThaw.Out out = early.get(room.job().dish().name());
    return within(bound, grid.moment(out.from()), grid.moment(out.to()));
  }

  private Bound between(Bound bound, Room room, int part, int by) {
    Instant from = grid.moment(room.from()[part] + by);
    Instant to = grid.moment(room.to()[part] + by);
    return within(bound, from, to);
  }

  private static Bound within(Bound bound, Instant from, Instant to) {
    return new Bound(
        bound.dish(),
        bound.kind(),
        Optional.of(from),
        Optional.of(to),
        bound.rule(),
        false,
        bound.source(),
        true);
  }
}
