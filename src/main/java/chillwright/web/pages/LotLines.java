package chillwright.web.pages;

import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.log.Ending;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A lot in a line. */
final class LotLines {
  private LotLines() {}

  /** The same, where it is known what became of a lot of which nothing is left. */
  static String where(LotState lot, Optional<Ending> ending, Visitor visitor) {
    if (lot.isOnHand() || ending.isEmpty()) {
      return where(lot, visitor);
    }
    return switch (ending.get().how()) {
      case DIVIDED -> visitor.say("lot.ended.divided");
      case COMBINED -> visitor.say("lot.ended.combined", ending.get().to());
      case PUT_BACK -> visitor.say("lot.ended.put-back", ending.get().to());
      case COUNTED_OUT -> visitor.say("lot.ended.counted");
      case TAKEN -> visitor.say("lot.ended.taken");
      case SERVED, DISCARDED -> where(lot, visitor);
    };
  }

  /** Phase, place and portions left; those it is to have while nothing of it is made. */
  static String where(LotState lot, Visitor visitor) {
    List<String> parts = new ArrayList<>();
    if (lot.standing().isEmpty()) {
      parts.add(visitor.say("lots.nothing-logged"));
      lot.portions().left().ifPresent(meant -> parts.add(visitor.say("lots.meant", meant)));
      return String.join(", ", parts);
    }
    lot.standing()
        .map(standing -> visitor.say("word." + standing.phase().word()))
        .ifPresent(parts::add);
    lot.standing().flatMap(Standing::place).ifPresent(parts::add);
    lot.portions()
        .left()
        .ifPresent(
            left -> parts.add(visitor.say(left == 1 ? "lot.portions.one" : "lot.portions", left)));
    return String.join(", ", parts);
  }
}
