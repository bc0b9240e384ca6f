package chillwright.service;

import chillwright.core.keeping.LotState;
import chillwright.core.keeping.RoomLife;
import chillwright.core.kitchen.KnownFood;
import chillwright.core.log.LotId;
import chillwright.core.log.LotLog;
import chillwright.core.log.Phase;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Lots on hand, out of the freezer or found soft in it, of food that needs no cold for safety and
 * of which the kitchen has stated its own days at room temperature. No stored order knows that day,
 * since it changes with what the kitchen states; such lots are few.
 */
public final class RoomLots {
  /** Lots looked through in each phase, the newest first. */
  private static final int LOOKED_AT = 2_000;

  private final Kitchen kitchen;

  RoomLots(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /**
   * A lot with its day.
   *
   * @param until at its best at room temperature, by the figure of its kitchen; quality only
   */
  public record RoomLot(LotState lot, LocalDate until) {}

  /** All of them, the earliest day first. */
  public List<RoomLot> list() {
    Map<String, Integer> days = days();
    List<LotState> found = new ArrayList<>();
    if (!days.isEmpty()) {
      for (Phase phase : Phase.values()) {
        if (!phase.isEnd()) {
          add(phase, days, found);
        }
      }
    }
    Map<LotId, LotLog> logs =
        kitchen
            .database()
            .read(session -> session.log().logs(found.stream().map(LotState::lot).toList()));
    List<RoomLot> lots = new ArrayList<>();
    for (LotState lot : found) {
      Optional.ofNullable(logs.get(lot.lot()))
          .flatMap(log -> RoomLife.begins(kitchen.judge().timeline(log)))
          .map(begun -> new RoomLot(lot, begun.plusDays(days.get(lot.food()))))
          .ifPresent(lots::add);
    }
    lots.sort(Comparator.comparing(RoomLot::until).thenComparing(room -> room.lot().lot()));
    return lots;
  }

  /** By the name of the food, where the kitchen stated them. */
  private Map<String, Integer> days() {
    Map<String, Integer> days = new HashMap<>();
    for (KnownFood food : kitchen.setUp().everyFood()) {
      food.roomDays().ifPresent(count -> days.put(food.name(), count));
    }
    return days;
  }

  private void add(Phase phase, Map<String, Integer> days, List<LotState> found) {
    LotQuery query = LotQuery.ALL.in(phase);
    Optional<String> next = Optional.empty();
    int looked = 0;
    do {
      Page<LotState> page = kitchen.lots().list(query, new Page.Wanted(Page.MOST, next));
      page.items().stream()
          .filter(lot -> lot.isOnHand() && days.containsKey(lot.food()) && needsNoCold(lot))
          .forEach(found::add);
      looked += page.items().size();
      next = page.next();
    } while (next.isPresent() && looked < LOOKED_AT);
  }

  private boolean needsNoCold(LotState lot) {
    return kitchen
        .library()
        .keepingList()
        .category(lot.category())
        .filter(category -> !category.tcs())
        .isPresent();
  }
}
