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
import java.util.OptionalInt;
import java.util.function.Predicate;

/**
 * Lots on hand, out of the freezer, found soft in it or past their best before they went in, of
 * food that needs no cold for safety and of which the kitchen has stated its own days at room
 * temperature; and of such food without days what left its freezer past its best. No stored order
 * knows that day, since it changes with what the kitchen states; such lots are few.
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
   * @param until its last day at its best, which no freezing or thawing moves once it has passed;
   *     quality only
   */
  public record RoomLot(LotState lot, LocalDate until) {}

  /** All of them, the earliest day first. */
  public List<RoomLot> list() {
    Map<String, OptionalInt> days = days();
    List<LotState> found = new ArrayList<>();
    if (!days.isEmpty()) {
      for (Phase phase : Phase.values()) {
        if (!phase.isEnd()) {
          add(LotQuery.ALL.in(phase), lot -> days.containsKey(lot.food()), found);
        }
      }
    }
    LotQuery past = LotQuery.ALL.bestQualityBefore(kitchen.days().today());
    add(past, lot -> !days.containsKey(lot.food()) && !isFrozen(lot), found);
    Map<LotId, LotLog> logs =
        kitchen
            .database()
            .read(session -> session.log().logs(found.stream().map(LotState::lot).toList()));
    List<RoomLot> lots = new ArrayList<>();
    for (LotState lot : found) {
      Optional.ofNullable(logs.get(lot.lot()))
          .flatMap(
              log ->
                  RoomLife.last(
                      kitchen.judge().timeline(log),
                      days.getOrDefault(lot.food(), OptionalInt.empty())))
          .map(last -> new RoomLot(lot, last))
          .ifPresent(lots::add);
    }
    lots.sort(Comparator.comparing(RoomLot::until).thenComparing(room -> room.lot().lot()));
    return lots;
  }

  /** By the name of the food, where the kitchen stated them. */
  private Map<String, OptionalInt> days() {
    Map<String, OptionalInt> days = new HashMap<>();
    for (KnownFood food : kitchen.setUp().everyFood()) {
      if (food.roomDays().isPresent()) {
        days.put(food.name(), food.roomDays());
      }
    }
    return days;
  }

  private static boolean isFrozen(LotState lot) {
    return lot.standing().filter(standing -> standing.phase() == Phase.FROZEN).isPresent();
  }

  private void add(LotQuery query, Predicate<LotState> isWanted, List<LotState> found) {
    Optional<String> next = Optional.empty();
    int looked = 0;
    do {
      Page<LotState> page = kitchen.lots().list(query, new Page.Wanted(Page.MOST, next));
      page.items().stream()
          .filter(lot -> lot.isOnHand() && isWanted.test(lot) && needsNoCold(lot))
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
