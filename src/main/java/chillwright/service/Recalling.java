package chillwright.service;

import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.kitchen.AllergenNaming;
import chillwright.core.kitchen.AllergenNaming.Why;
import chillwright.core.kitchen.AllergensSaid;
import chillwright.core.kitchen.BoxLabels;
import chillwright.core.kitchen.FoodInLot;
import chillwright.core.kitchen.KnownFood;
import chillwright.core.kitchen.LabelsMade;
import chillwright.core.log.LotId;
import chillwright.core.log.LotLog;
import chillwright.service.Recall.Made;
import chillwright.service.Recall.Recalled;
import chillwright.service.Tracing.Trace;
import chillwright.service.Tracing.Traced;
import chillwright.storage.Session;
import java.time.Instant;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * Finds what bears an allergen. A lot holds what its own food is said to hold and what every lot
 * before it does; of a lot that was only divided its own food need not be on file, as on its labels
 * ({@link PartsOfLot}).
 */
final class Recalling {
  private final Session session;
  private final AllergenAsked asked;
  private final Map<String, AllergenNaming> namings = new HashMap<>();
  private final Map<LotId, Set<String>> inLots = new HashMap<>();
  private final Map<LotId, List<LotId>> sources = new HashMap<>();

  /**
   * Foods in a lot that bear it though they do not name it any more, and since when the labels of
   * the lot did.
   */
  private final Map<LotId, Map<String, Instant>> still = new HashMap<>();

  private Recalling(Session session, AllergenAsked asked) {
    this.session = session;
    this.asked = asked;
  }

  static Recall of(Session session, AllergenAsked asked) {
    return new Recalling(session, asked).find();
  }

  private Recall find() {
    Map<LotId, String> newest = session.lots().newestFoods(Tracing.MOST_LOTS + 1);
    List<LotId> looked = newest.keySet().stream().limit(Tracing.MOST_LOTS).toList();
    sources.putAll(session.log().ancestry(looked));
    Map<LotId, String> foods = new LinkedHashMap<>(newest);
    Set<LotId> before = new LinkedHashSet<>(sources.keySet());
    before.removeAll(foods.keySet());
    session.lots().find(before).forEach((lot, state) -> foods.put(lot, state.food()));
    Map<String, List<AllergensSaid>> said = session.setUp().allergensSaid();
    Set<String> onFile = name(said);
    own(foods, onFile);
    still(foods, said);
    Set<LotId> bearing = new LinkedHashSet<>();
    Set<LotId> unsure = new LinkedHashSet<>();
    for (LotId lot : looked) {
      Set<String> found = in(lot);
      if (bears(lot, found)) {
        bearing.add(lot);
      } else if (!found.isEmpty()) {
        unsure.add(lot);
      }
    }
    return new Recall(
        asked,
        foods(bearing, unsure),
        recalled(bearing),
        recalled(unsure),
        newest.size() > Tracing.MOST_LOTS);
  }

  /**
   * Whether a food in it is named, or was when the lot was made: its labels name that one still.
   */
  private boolean bears(LotId lot, Set<String> found) {
    return !still.getOrDefault(lot, Map.of()).isEmpty()
        || found.stream().anyMatch(food -> namings.get(food).isNamed());
  }

  /** Notes each food on file that bears it or may. */
  private Set<String> name(Map<String, List<AllergensSaid>> said) {
    Set<String> onFile = new LinkedHashSet<>();
    for (KnownFood food : session.setUp().everyFood()) {
      onFile.add(food.name());
      AllergenNaming.of(
              food,
              said.getOrDefault(food.name(), List.of()),
              asked,
              food.ingredients().flatMap(asked::word))
          .ifPresent(naming -> namings.put(food.name(), naming));
    }
    return onFile;
  }

  /** Gives each lot its own food, where that bears it or may. */
  private void own(Map<LotId, String> foods, Set<String> onFile) {
    Set<LotId> unknown = new LinkedHashSet<>();
    foods.forEach(
        (lot, food) -> {
          inLots.put(lot, new LinkedHashSet<>());
          if (namings.containsKey(food)) {
            inLots.get(lot).add(food);
          } else if (!onFile.contains(food)) {
            unknown.add(lot);
          }
        });
    Map<LotId, LotLog> logs =
        session.log().logs(unknown.stream().filter(lot -> from(lot).size() == 1).toList());
    for (LotId lot : unknown) {
      if (!Optional.ofNullable(logs.get(lot)).filter(LotLog::isDivided).isPresent()) {
        inLots.get(lot).add(foods.get(lot));
      }
    }
    unknown.forEach(lot -> inLots.get(lot).forEach(this::noteUnknown));
  }

  /** Gives each lot its own food, where that was named until some moment after the lot began. */
  private void still(Map<LotId, String> foods, Map<String, List<AllergensSaid>> said) {
    Set<LotId> once = new LinkedHashSet<>();
    foods.forEach(
        (lot, food) -> {
          AllergenNaming naming = namings.get(food);
          if (naming != null && naming.why() == Why.NAMED_BEFORE) {
            once.add(lot);
          }
        });
    session
        .lots()
        .find(once)
        .forEach(
            (lot, state) -> {
              Optional<Instant> began = state.standing().map(Standing::beganAt);
              String food = state.food();
              new FoodInLot(food, Optional.empty(), said.get(food), began)
                  .stillNamedFrom(asked)
                  .ifPresent(from -> still.put(lot, new HashMap<>(Map.of(food, from))));
            });
  }

  /** What is in a lot because of one that it came from. */
  private void inherit(LotId lot, LotId source) {
    still
        .getOrDefault(source, Map.of())
        .forEach(
            (food, from) ->
                still
                    .computeIfAbsent(lot, l -> new HashMap<>())
                    .merge(food, from, Recalling::first));
  }

  private static Instant first(Instant one, Instant other) {
    return one.isBefore(other) ? one : other;
  }

  private void noteUnknown(String food) {
    namings.putIfAbsent(food, AllergenNaming.notOnFile(food));
  }

  private List<LotId> from(LotId lot) {
    return sources.getOrDefault(lot, List.of());
  }

  /** The foods in a lot that bear it or may; of each lot before it they are found only once. */
  private Set<String> in(LotId lot) {
    List<LotId> before = sources.remove(lot);
    Set<String> found = inLots.get(lot);
    if (before != null) {
      for (LotId source : before) {
        found.addAll(in(source));
        inherit(lot, source);
      }
    }
    return found;
  }

  private List<AllergenNaming> foods(Set<LotId> bearing, Set<LotId> unsure) {
    Set<String> names = new TreeSet<>();
    bearing.forEach(lot -> names.addAll(inLots.get(lot)));
    unsure.forEach(lot -> names.addAll(inLots.get(lot)));
    return names.stream()
        .map(namings::get)
        .sorted(Comparator.comparing(AllergenNaming::why))
        .toList();
  }

  private List<Recalled> recalled(Set<LotId> lots) {
    Trace trace = Tracing.trace(session, lots, lots.size(), false);
    Map<LotId, List<LotState>> from = new HashMap<>();
    trace.lots().forEach(traced -> from.put(traced.lot().lot(), traced.from()));
    Set<LotId> all = new HashSet<>(lots);
    from.values().forEach(sources -> sources.forEach(source -> all.add(source.lot())));
    Map<LotId, List<LabelsMade>> labels = session.labels().of(all);
    LabelledBoxes.Back back = new LabelledBoxes.Back();
    trace
        .lots()
        .forEach(
            traced ->
                back.note(
                    traced.lot().lot(),
                    traced.from().stream().map(LotState::lot).toList(),
                    traced.handOuts()));
    LabelledBoxes boxes =
        new LabelledBoxes(
            lot -> from.getOrDefault(lot, List.of()),
            lot -> labels.getOrDefault(lot, List.of()),
            back);
    return trace.lots().stream()
        .map(
            traced ->
                recalled(
                    traced,
                    labels.getOrDefault(traced.lot().lot(), List.of()),
                    boxes.of(traced.lot())))
        .toList();
  }

  private List<Made> made(List<LabelsMade> labels) {
    return labels.stream().map(one -> new Made(one, one.names(asked))).toList();
  }

  private Recalled recalled(Traced traced, List<LabelsMade> labels, BoxLabels onBoxes) {
    LotId lot = traced.lot().lot();
    Map<String, Instant> kept = still.getOrDefault(lot, Map.of());
    List<AllergenNaming> all = inLots.get(lot).stream().map(namings::get).toList();
    List<AllergenNaming> named =
        all.stream().filter(n -> n.isNamed() || kept.containsKey(n.food())).toList();
    List<AllergenNaming> shown = named.isEmpty() ? all : named;
    Optional<Instant> from =
        named.stream()
            .flatMap(n -> n.isNamed() ? n.since().stream() : Stream.of(kept.get(n.food())))
            .min(Comparator.naturalOrder());
    boolean isCertain =
        !named.isEmpty()
            && named.stream().allMatch(AllergenNaming::isCertain)
            && all.stream().noneMatch(naming -> naming.why() == Why.NAMED_BEFORE);
    return new Recalled(
        traced,
        !named.isEmpty(),
        shown.stream().map(AllergenNaming::food).toList(),
        from,
        isCertain,
        made(labels),
        onBoxes,
        asked);
  }
}
