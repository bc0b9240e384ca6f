package chillwright.service;

import chillwright.core.keeping.LotState;
import chillwright.core.kitchen.Contents;
import chillwright.core.kitchen.FoodInLot;
import chillwright.core.kitchen.KnownFood;
import chillwright.core.log.LotId;
import chillwright.core.log.LotLog;
import chillwright.storage.Session;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Follows a lot to every lot it came from, and asks what the kitchen said of each food. A lot that
 * was made of others may hold more than they do, so its own food has to be on file too; one that
 * was only divided holds what its source holds.
 */
final class PartsOfLot {
  private final Session session;

  /** The lots in question, the nearest first; whether each only divides its source. */
  private final Map<LotId, Boolean> divided = new LinkedHashMap<>();

  private PartsOfLot(Session session) {
    this.session = session;
  }

  /**
   * What is in a lot.
   *
   * @param log empty where no entry of it was written
   */
  static Contents contents(Session session, LotState lot, Optional<LotLog> log) {
    PartsOfLot parts = new PartsOfLot(session);
    if (log.isPresent()) {
      parts.follow(List.of(log.get()));
    } else {
      parts.divided.put(lot.lot(), false);
      parts.follow(session.log().logs(session.lots().sources(lot.lot())).values());
    }
    return Contents.of(parts.parts());
  }

  private void follow(Collection<LotLog> from) {
    Deque<LotLog> open = new ArrayDeque<>(from);
    while (!open.isEmpty()) {
      LotLog log = open.remove();
      if (divided.putIfAbsent(log.lot(), log.isDivided()) == null) {
        open.addAll(log.sources());
      }
    }
  }

  private List<FoodInLot> parts() {
    Map<String, Boolean> dividedByFood = new LinkedHashMap<>();
    Map<String, Instant> beganByFood = new HashMap<>();
    Map<LotId, LotState> states = session.lots().find(divided.keySet());
    divided.forEach(
        (lot, isDivided) -> {
          LotState state = states.get(lot);
          dividedByFood.merge(state.food(), isDivided, Boolean::logicalAnd);
          state
              .standing()
              .ifPresent(s -> beganByFood.merge(state.food(), s.beganAt(), PartsOfLot::earlier));
        });
    List<FoodInLot> parts = new ArrayList<>();
    dividedByFood.forEach(
        (food, isDivided) -> {
          Optional<KnownFood> known = session.setUp().food(food);
          if (known.isPresent() || !isDivided) {
            Optional<Instant> began = Optional.ofNullable(beganByFood.get(food));
            parts.add(new FoodInLot(food, known, session.setUp().allergensSaidOf(food), began));
          }
        });
    return parts;
  }

  private static Instant earlier(Instant one, Instant other) {
    return one.isBefore(other) ? one : other;
  }
}
