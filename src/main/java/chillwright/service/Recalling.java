package chillwright.service;

import chillwright.core.kitchen.AllergenNaming;
import chillwright.core.kitchen.AllergenNaming.Why;
import chillwright.core.kitchen.AllergensSaid;
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
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

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
    Set<String> onFile = name();
    own(foods, onFile);
    Set<LotId> bearing = new LinkedHashSet<>();
    Set<LotId> unsure = new LinkedHashSet<>();
    for (LotId lot : looked) {
      Set<String> found = in(lot);
      if (found.stream().anyMatch(food -> namings.get(food).isNamed())) {
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

  /** Notes each food on file that bears it or may. */
  private Set<String> name() {
    Set<String> onFile = new LinkedHashSet<>();
    Map<String, List<AllergensSaid>> said = session.setUp().allergensSaid();
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
      before.forEach(source -> found.addAll(in(source)));
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
    Map<LotId, List<LabelsMade>> labels = session.labels().of(lots);
    return trace.lots().stream()
        .map(traced -> recalled(traced, labels.getOrDefault(traced.lot().lot(), List.of())))
        .toList();
  }

  private Recalled recalled(Traced traced, List<LabelsMade> labels) {
    List<AllergenNaming> all = inLots.get(traced.lot().lot()).stream().map(namings::get).toList();
    List<AllergenNaming> named = all.stream().filter(AllergenNaming::isNamed).toList();
    List<AllergenNaming> shown = named.isEmpty() ? all : named;
    Optional<Instant> from =
        named.stream().flatMap(n -> n.since().stream()).min(Comparator.naturalOrder());
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
        labels.stream().map(made -> new Made(made, made.names(asked))).toList());
  }
}
