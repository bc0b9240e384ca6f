package chillwright.web.pages;

import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.log.HandOut;
import java.util.ArrayList;
import java.util.List;

/** A lot in a line. */
final class LotLines {
  private LotLines() {}

  /** The same, where it is known what became of a lot of which nothing is left. */
  static String where(LotState lot, List<HandOut> outs, Visitor visitor) {
    if (lot.isOnHand() || outs.isEmpty()) {
      return where(lot, visitor);
    }
    HandOut last = outs.get(outs.size() - 1);
    String who = last.entry().details().to().orElse("");
    return switch (last.kind()) {
      case OTHER_LOT -> visitor.say("lot.ended.divided");
      case PUT_BACK -> visitor.say("lot.ended.put-back", who);
      case COUNTED -> visitor.say("lot.ended.counted");
      case TAKEN, SERVED, DISCARDED -> where(lot, visitor);
    };
  }

  /** Phase, place and portions left. */
  static String where(LotState lot, Visitor visitor) {
    List<String> parts = new ArrayList<>();
    if (lot.standing().isEmpty()) {
      parts.add(visitor.say("lots.nothing-logged"));
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
