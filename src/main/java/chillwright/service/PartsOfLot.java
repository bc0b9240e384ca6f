package chillwright.service;

import chillwright.core.keeping.LotState;
import chillwright.core.kitchen.Contents;
import chillwright.core.kitchen.Contents.Part;
import chillwright.core.kitchen.KnownFood;
import chillwright.core.log.LotId;
import chillwright.core.log.LotLog;
import chillwright.storage.Session;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
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

  private List<Part> parts() {
    Map<String, Boolean> dividedByFood = new LinkedHashMap<>();
    Map<LotId, LotState> states = session.lots().find(divided.keySet());
    divided.forEach(
        (lot, isDivided) ->
            dividedByFood.merge(states.get(lot).food(), isDivided, Boolean::logicalAnd));
    List<Part> parts = new ArrayList<>();
    dividedByFood.forEach(
        (food, isDivided) -> {
          Optional<KnownFood> known = session.setUp().food(food);
          if (known.isPresent() || !isDivided) {
            parts.add(new Part(food, known));
          }
        });
    return parts;
  }
}
