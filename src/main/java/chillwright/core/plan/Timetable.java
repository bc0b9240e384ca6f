package chillwright.core.plan;

import chillwright.core.plan.Job.Use;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** How much of each thing is held in each slot. */
final class Timetable {
  private final Map<String, int[]> free = new HashMap<>();
  private final int slots;

  Timetable(Grid grid) {
    this.slots = grid.slots();
    grid.capacity().forEach((name, amount) -> free.put(name, filled(amount)));
    if (!grid.closed().isEmpty()) {
      for (String resource : List.of(Menu.HANDS, Menu.SOMEBODY)) {
        int[] there = free.computeIfAbsent(resource, name -> filled(Integer.MAX_VALUE / 2));
        grid.closed().forEach(closed -> Arrays.fill(there, closed[0], closed[1], 0));
      }
      int[] taken = free.computeIfAbsent(Menu.TAKER, name -> filled(Integer.MAX_VALUE / 2));
      grid.untaken().forEach(closed -> Arrays.fill(taken, closed[0], closed[1], 0));
    }
  }

  private int[] filled(int amount) {
    int[] all = new int[slots];
    Arrays.fill(all, amount);
    return all;
  }

  /** Whether a use fits in; nothing before the grid or after it does. */
  boolean fits(Use use, int from) {
    int start = use.from() + from;
    int end = use.to() + from;
    if (start < 0 || end > slots) {
      return false;
    }
    int[] left = free.get(use.resource());
    if (left == null) {
      return true;
    }
    for (int slot = start; slot < end; slot++) {
      if (left[slot] < use.amount()) {
        return false;
      }
    }
    return true;
  }

  /** The first slot from which on so much of a thing is free until another slot. */
  int freeSince(String resource, int amount, int to) {
    int[] left = free.get(resource);
    int slot = Math.min(to, slots);
    while (slot > 0 && (left == null || left[slot - 1] >= amount)) {
      slot = left == null ? 0 : slot - 1;
    }
    return slot;
  }

  boolean fit(List<Use> uses, int from) {
    return uses.stream().allMatch(use -> fits(use, from));
  }

  void take(List<Use> uses) {
    change(uses, -1);
  }

  void giveBack(List<Use> uses) {
    change(uses, 1);
  }

  private void change(List<Use> uses, int sign) {
    for (Use use : uses) {
      int[] left = free.get(use.resource());
      if (left != null) {
        for (int slot = use.from(); slot < use.to(); slot++) {
          left[slot] += sign * use.amount();
        }
      }
    }
  }

  /** Whether all of some uses fit together; they may be of one dish and overlap. */
  boolean fitTogether(List<Use> uses) {
    if (uses.stream().anyMatch(use -> use.from() < 0 || use.to() > slots)) {
      return false;
    }
    for (Use use : uses) {
      if (!fits(use, 0)) {
        return false;
      }
    }
    take(uses);
    boolean isRoom = true;
    for (Use use : uses) {
      isRoom &= isWithin(use);
    }
    giveBack(uses);
    return isRoom;
  }

  private boolean isWithin(Use use) {
    int[] left = free.get(use.resource());
    for (int slot = use.from(); left != null && slot < use.to(); slot++) {
      if (left[slot] < 0) {
        return false;
      }
    }
    return true;
  }
}
