package chillwright.service;

import chillwright.core.keeping.LotState;
import chillwright.core.kitchen.BoxLabels;
import chillwright.core.kitchen.LabelsMade;
import chillwright.core.log.HandOut;
import chillwright.core.log.LotId;
import chillwright.core.log.LotLog;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Labels that were made of lots, and what they named. */
public final class Labels {
  private static final int MOST_PARTS = 200;

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

  /** What boxes of a lot may bear. */
  public BoxLabels onBoxes(LotState lot) {
    return kitchen
        .database()
        .read(
            session -> {
              Map<LotId, List<LotId>> from = session.log().ancestry(List.of(lot.lot()));
              Set<LotId> all = new HashSet<>(from.keySet());
              from.values().forEach(all::addAll);
              all.add(lot.lot());
              List<LotId> parts =
                  session.log().descendants(all).stream().limit(MOST_PARTS).toList();
              LabelledBoxes.Back back = new LabelledBoxes.Back();
              session.log().logs(parts).values().forEach(part -> note(part, back));
              all.addAll(parts);
              Map<LotId, LotState> states = session.lots().find(all);
              Map<LotId, List<LabelsMade>> labels = session.labels().of(all);
              return new LabelledBoxes(
                      one -> from.getOrDefault(one, List.of()).stream().map(states::get).toList(),
                      one -> labels.getOrDefault(one, List.of()),
                      back)
                  .of(lot);
            });
  }

  private static void note(LotLog part, LabelledBoxes.Back back) {
    List<LotId> sources = part.sources().stream().map(LotLog::lot).toList();
    back.note(part.lot(), sources, HandOut.of(part.entries(), sources::contains, lot -> false));
  }
}
