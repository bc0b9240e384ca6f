package chillwright.service;

import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.kitchen.LabelsMade;
import chillwright.core.log.LotId;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

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

  /** What boxes of a lot may bear, the earliest first. */
  public List<LabelsMade> onBoxes(LotState lot) {
    return kitchen
        .database()
        .read(
            session -> {
              Map<LotId, List<LotId>> from = session.log().ancestry(List.of(lot.lot()));
              Set<LotId> all = new HashSet<>(from.keySet());
              from.values().forEach(all::addAll);
              all.add(lot.lot());
              Map<LotId, LotState> states = session.lots().find(all);
              Map<LotId, List<LabelsMade>> made = session.labels().of(all);
              return onBoxes(
                  lot,
                  one -> from.getOrDefault(one, List.of()).stream().map(states::get).toList(),
                  one -> made.getOrDefault(one, List.of()));
            });
  }

  /**
   * Its own, and of a part also what was made of the whole before the part was divided off. Where
   * nothing was made of a part by then or since, what was made of the whole while the part was
   * there may be on it.
   */
  static List<LabelsMade> onBoxes(
      LotState lot, Function<LotId, List<LotState>> from, Function<LotId, List<LabelsMade>> made) {
    List<LotState> sources = from.apply(lot.lot());
    Optional<Instant> began = lot.standing().map(Standing::beganAt);
    List<LabelsMade> own = made.apply(lot.lot());
    if (sources.size() != 1 || !sources.get(0).food().equals(lot.food()) || began.isEmpty()) {
      return own;
    }
    List<LabelsMade> ofWhole = onBoxes(sources.get(0), from, made);
    List<LabelsMade> found = new ArrayList<>(until(began, ofWhole));
    found.addAll(own);
    return found.isEmpty() ? until(lot.portions().closedAt(), ofWhole) : found;
  }

  private static List<LabelsMade> until(Optional<Instant> moment, List<LabelsMade> made) {
    return made.stream().filter(one -> moment.filter(one.at()::isAfter).isEmpty()).toList();
  }
}
