package chillwright.service;

import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Phase;
import chillwright.core.log.Timeline;
import chillwright.core.plan.Progress;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/** The lots that the dishes of a plan became, and how far these have come. */
final class PlanLots {
  private final Kitchen kitchen;

  PlanLots(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /** By dish; a lot that was discarded is none, since its dish is to be made again. */
  Map<String, LotId> of(String plan) {
    Map<String, LotId> lots = new HashMap<>();
    kitchen
        .database()
        .read(session -> session.plans().lots(plan))
        .forEach(
            (dish, lot) -> {
              if (!isDiscarded(lot)) {
                lots.put(dish, lot);
              }
            });
    return lots;
  }

  private boolean isDiscarded(LotId lot) {
    return kitchen
        .lots()
        .state(lot)
        .flatMap(state -> state.standing())
        .filter(standing -> standing.phase() == Phase.DISCARDED)
        .isPresent();
  }

  /**
   * How far a lot has come, with the parts it was divided into; empty until something is written of
   * it.
   */
  Optional<Progress> progress(LotId lot) {
    Optional<LotView> whole = kitchen.lots().lot(lot);
    Optional<Timeline> own = whole.flatMap(LotView::judged).map(LotView.Judged::timeline);
    if (own.isEmpty()) {
      return Optional.empty();
    }
    List<Progress> all = new ArrayList<>(List.of(of(own.get())));
    for (LotId part : whole.get().descendants()) {
      kitchen
          .lots()
          .lot(part)
          .flatMap(LotView::judged)
          .map(LotView.Judged::timeline)
          .filter(of -> of.food().equals(own.get().food()))
          .ifPresent(of -> all.add(of(of)));
    }
    return Optional.of(
        new Progress(
            own.get().beganAt(),
            all.stream().flatMap(one -> one.frozen().stream()).min(Comparator.naturalOrder()),
            all.stream().flatMap(one -> one.takenOut().stream()).min(Comparator.naturalOrder())));
  }

  /** Portions left of a lot and of its parts; empty where they are not counted. */
  OptionalInt left(LotId lot) {
    Optional<LotView> whole = kitchen.lots().lot(lot);
    OptionalInt own = whole.map(view -> view.state().portions().left()).orElse(OptionalInt.empty());
    if (own.isEmpty()) {
      return own;
    }
    int parts =
        whole.get().descendants().stream()
            .flatMap(part -> kitchen.lots().state(part).stream())
            .filter(part -> part.food().equals(whole.get().state().food()))
            .mapToInt(part -> part.portions().left().orElse(0))
            .sum();
    return OptionalInt.of(own.getAsInt() + parts);
  }

  static Progress of(Timeline timeline) {
    Optional<Instant> frozen = first(timeline, Phase.FROZEN);
    Optional<Instant> thawing =
        first(timeline, Phase.THAWING).or(() -> first(timeline, Phase.REHEATING));
    return new Progress(timeline.beganAt(), frozen, thawing.filter(out -> frozen.isPresent()));
  }

  private static Optional<Instant> first(Timeline timeline, Phase phase) {
    return timeline.entries().stream()
        .filter(entry -> entry.word().phase().filter(phase::equals).isPresent())
        .map(LogEntry::happenedAt)
        .findFirst();
  }
}
