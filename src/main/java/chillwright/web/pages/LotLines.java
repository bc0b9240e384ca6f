package chillwright.web.pages;

import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import java.util.ArrayList;
import java.util.List;

/** A lot in a line. */
final class LotLines {
  private LotLines() {}

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
    lot.portions().left().ifPresent(left -> parts.add(visitor.say("lot.portions", left)));
    return String.join(", ", parts);
  }
}
