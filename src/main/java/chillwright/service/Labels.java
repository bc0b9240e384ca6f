package chillwright.service;

import chillwright.core.kitchen.LabelsMade;
import chillwright.core.log.LotId;
import java.util.List;
import java.util.Map;

/** Labels that were made of lots, and what they named. */
public final class Labels {
  private final Kitchen kitchen;

  Labels(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /** Keeps what one document holds of each lot on it. */
  public void note(Map<LotId, LabelsMade> made) {
    kitchen
        .database()
        .write(
            session -> {
              made.forEach(session.labels()::add);
              return null;
            });
  }

  /** What was made of a lot, the earliest first; of many the newest. */
  public List<LabelsMade> of(LotId lot) {
    return kitchen
        .database()
        .read(session -> session.labels().of(List.of(lot)).getOrDefault(lot, List.of()));
  }
}
