package chillwright.service;

import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.kitchen.BoxLabels;
import chillwright.core.kitchen.BoxLabels.Way;
import chillwright.core.kitchen.LabelsMade;
import chillwright.core.log.HandOut;
import chillwright.core.log.LotId;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Which labels boxes of lots may bear, by where they come from; each lot is followed once. */
final class LabelledBoxes {
  private final Function<LotId, List<LotState>> from;
  private final Function<LotId, List<LabelsMade>> made;
  private final Back back;
  private final Map<LotId, BoxLabels> found = new HashMap<>();

  /**
   * @param from the lots that a lot came from
   * @param made the labels made of a lot, the earliest first
   * @param back the parts that were put back into a lot, and when
   */
  LabelledBoxes(
      Function<LotId, List<LotState>> from, Function<LotId, List<LabelsMade>> made, Back back) {
    this.from = from;
    this.made = made;
    this.back = back;
  }

  /** Parts that were put back, and when, by the lot they went back to. */
  static final class Back {
    private final Map<LotId, Map<LotId, Instant>> parts = new HashMap<>();

    /** Notes a lot by what left it, where that went back to the one lot it came from. */
    void note(LotId part, List<LotId> sources, List<HandOut> outs) {
      if (sources.size() == 1) {
        outs.stream()
            .filter(out -> out.kind() == HandOut.Kind.PUT_BACK)
            .findFirst()
            .ifPresent(
                out ->
                    parts
                        .computeIfAbsent(sources.get(0), whole -> new LinkedHashMap<>())
                        .put(part, out.entry().happenedAt()));
      }
    }

    Map<LotId, Instant> to(LotId whole) {
      return parts.getOrDefault(whole, Map.of());
    }
  }

  /**
   * Its own, and of a part also what was made of the whole before the part was divided off. Where
   * nothing was made of a part by then or since, what was made of the whole while the part was
   * there may be on it. Lots of one food that were put together may stand there in their boxes.
   */
  BoxLabels of(LotState lot) {
    BoxLabels known = found.get(lot.lot());
    if (known == null) {
      known = follow(lot);
      found.put(lot.lot(), known);
    }
    return known;
  }

  private BoxLabels follow(LotState lot) {
    List<LotState> sources = from.apply(lot.lot());
    Optional<Instant> began = lot.standing().map(Standing::beganAt);
    boolean isSame = sources.stream().allMatch(source -> source.food().equals(lot.food()));
    if (sources.isEmpty() || !isSame || began.isEmpty()) {
      return withBack(lot.lot(), BoxLabels.NONE);
    }
    BoxLabels before =
        new BoxLabels(
            sources.stream().flatMap(source -> of(source).until(began).ways().stream()).toList());
    BoxLabels all = withBack(lot.lot(), before);
    return all.isNothing() && sources.size() == 1
        ? of(sources.get(0)).until(lot.portions().closedAt())
        : all;
  }

  /** With what was made of the lot itself, and of the parts that came back to it. */
  private BoxLabels withBack(LotId lot, BoxLabels before) {
    List<LabelsMade> own = made.apply(lot);
    List<Way> ways = new ArrayList<>(before.then(own).ways());
    back.to(lot)
        .forEach(
            (part, at) -> {
              BoxLabels ofPart = withBack(part, BoxLabels.NONE).until(Optional.of(at));
              if (!ofPart.isNothing()) {
                List<LabelsMade> since = own.stream().filter(one -> one.at().isAfter(at)).toList();
                ofPart
                    .then(since)
                    .ways()
                    .forEach(way -> ways.add(new Way(Optional.of(at), way.made())));
              }
            });
    return new BoxLabels(ways);
  }
}
