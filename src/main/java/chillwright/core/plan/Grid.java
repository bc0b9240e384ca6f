package chillwright.core.plan;

import chillwright.core.plan.Menu.Hours;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Time in slots of five minutes that end at the serving time, and amounts in tenths: whole numbers,
 * as a solver wants them. Durations are rounded up, amounts up and what there is down.
 */
final class Grid {
  static final Duration SLOT = Duration.ofMinutes(5);

  private final Menu menu;
  private final Instant origin;
  private final int slots;
  private final Map<String, Integer> capacity = new TreeMap<>();
  private final List<int[]> closed;

  Grid(Menu menu, Instant first) {
    this.menu = menu;
    long back = Duration.between(first, menu.serving()).dividedBy(SLOT);
    this.slots = Math.toIntExact(Math.max(1, back));
    this.origin = menu.serving().minus(SLOT.multipliedBy(slots));
    Set<String> used = menu.used();
    menu.has().entrySet().stream()
        .filter(there -> used.contains(there.getKey()))
        .forEach(
            there -> capacity.put(there.getKey(), (int) Math.floor(there.getValue() * 10 + 1e-6)));
    this.closed = closedTimes();
  }

  /** The slot at whose beginning food is served. */
  int slots() {
    return slots;
  }

  /** What there is of each thing that some dish holds and the menu names. */
  Map<String, Integer> capacity() {
    return capacity;
  }

  /** Stretches without hands: from, to; the second not included. */
  List<int[]> closed() {
    return closed;
  }

  /** Stretches too long after closing for food to be taken out before it, in the same way. */
  List<int[]> untaken() {
    return closed.stream()
        .map(stretch -> new int[] {stretch[0] + Job.EARLIER, stretch[1]})
        .filter(stretch -> stretch[0] < stretch[1])
        .toList();
  }

  Instant moment(int slot) {
    return origin.plus(SLOT.multipliedBy(slot));
  }

  /** The first slot that begins at a moment or after it, within the grid. */
  int from(Instant moment) {
    long after = Duration.between(origin, moment).plus(SLOT).minusNanos(1).dividedBy(SLOT);
    return (int) Math.max(0, Math.min(slots, after));
  }

  /** The last slot that begins at a moment or before it; negative before the grid. */
  int to(Instant moment) {
    return (int) Math.max(-1, Math.floorDiv(Duration.between(origin, moment).toSeconds(), 300));
  }

  static int length(Duration time) {
    return Math.toIntExact(time.plus(SLOT).minusNanos(1).dividedBy(SLOT));
  }

  static int amount(double amount) {
    return (int) Math.ceil(amount * 10 - 1e-6);
  }

  private List<int[]> closedTimes() {
    List<int[]> found = new ArrayList<>();
    if (menu.open().isEmpty()) {
      return found;
    }
    boolean[] isOpen = new boolean[slots];
    LocalDate last = menu.serving().atZone(menu.zone()).toLocalDate();
    LocalDate day = origin.atZone(menu.zone()).toLocalDate().minusDays(1);
    for (; !day.isAfter(last); day = day.plusDays(1)) {
      for (Hours hours : menu.open()) {
        if (hours.days().contains(day.getDayOfWeek())) {
          mark(isOpen, day, hours);
        }
      }
    }
    for (int slot = 0; slot < slots; slot++) {
      if (!isOpen[slot]) {
        int end = slot;
        while (end < slots && !isOpen[end]) {
          end++;
        }
        found.add(new int[] {slot, end});
        slot = end;
      }
    }
    return found;
  }

  private void mark(boolean[] isOpen, LocalDate day, Hours hours) {
    ZonedDateTime opens = day.atTime(hours.from()).atZone(menu.zone());
    boolean isNextDay = !hours.to().isAfter(hours.from());
    LocalDate until = isNextDay ? day.plusDays(1) : day;
    ZonedDateTime closes = until.atTime(hours.to()).atZone(menu.zone());
    int end = Math.min(slots, to(closes.toInstant()));
    for (int slot = from(opens.toInstant()); slot < end; slot++) {
      isOpen[slot] = true;
    }
  }
}
