package chillwright.service;

import chillwright.core.keeping.LotState;
import chillwright.core.log.Ending;
import chillwright.core.log.Folded;
import chillwright.core.log.HandOut;
import chillwright.core.log.LotId;
import chillwright.core.log.LotLog;
import chillwright.storage.Session;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Follows a food or a lot to every lot made of it and to everybody who got some of it. */
public final class Tracing {
  /** So many lots are looked at; where there are more, the newest. */
  public static final int MOST_LOTS = 20_000;

  /** What these were handed out to is offered again. */
  private static final int LOTS_OF_LATE = 500;

  private final Kitchen kitchen;

  Tracing(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /**
   * What was found.
   *
   * @param lots those asked for and all that came from them, in the order they began
   * @param isCut whether there may be more than was looked at
   * @param matched the foods, or those who got portions, whose names were meant; in order
   */
  public record Trace(List<Traced> lots, boolean isCut, List<String> matched) {
    public Trace {
      lots = List.copyOf(lots);
      matched = List.copyOf(matched);
    }
  }

  /**
   * A lot on the way.
   *
   * @param isAsked whether it was asked for; the others came from those
   * @param isPart whether it is nothing but a part of one that was asked for
   * @param from the lots it came from, one step up
   * @param into the lots that came from it, one step down
   * @param handOuts what left it, in order of time
   * @param ending how it came to an end; empty while any is left
   */
  public record Traced(
      LotState lot,
      boolean isAsked,
      boolean isPart,
      List<LotState> from,
      List<LotId> into,
      List<HandOut> handOuts,
      Optional<Ending> ending) {
    /** The same with nothing but what left it so. */
    Traced with(List<HandOut> some) {
      return new Traced(lot, isAsked, isPart, from, into, some, ending);
    }

    public Traced {
      from = List.copyOf(from);
      into = List.copyOf(into);
      handOuts = List.copyOf(handOuts);
    }
  }

  /** A lot and all that came from it; empty if there is none of that code. */
  public Optional<Trace> lot(LotId lot, int most) {
    return kitchen
        .database()
        .read(
            session ->
                session.lots().find(lot).isEmpty()
                    ? Optional.empty()
                    : Optional.of(trace(session, Set.of(lot), most, false)));
  }

  /**
   * Every lot of the foods in whose name that stands, and all that came from those. Capitals and
   * accents make no difference.
   */
  public Trace food(String part) {
    return kitchen
        .database()
        .read(
            session -> {
              Map<LotId, String> newest = session.lots().newestFoods(MOST_LOTS + 1);
              Set<String> matched = matching(part, newest.values());
              Set<LotId> asked = new LinkedHashSet<>();
              newest.forEach(
                  (lot, food) -> {
                    if (matched.contains(food)) {
                      asked.add(lot);
                    }
                  });
              Trace found = trace(session, asked, MOST_LOTS, newest.size() > MOST_LOTS);
              return new Trace(found.lots(), found.isCut(), List.copyOf(matched));
            });
  }

  /**
   * What those got in whose name that stands, of all lots; capitals and accents make no difference.
   * Each lot is told with nothing but what they got of it.
   */
  public Trace recipient(String part) {
    return kitchen
        .database()
        .read(
            session -> {
              Map<LotId, Set<String>> named = session.log().recipients(MOST_LOTS);
              Set<String> matched = matching(part, joined(named.values()));
              named.values().removeIf(names -> names.stream().noneMatch(matched::contains));
              Trace found = trace(session, named.keySet(), MOST_LOTS, false);
              Set<String> got = new TreeSet<>();
              List<Traced> lots = new ArrayList<>();
              for (Traced lot : found.lots()) {
                List<HandOut> outs = lot.handOuts().stream().filter(o -> isTo(o, matched)).toList();
                outs.forEach(out -> got.add(out.entry().details().to().orElseThrow()));
                if (!outs.isEmpty()) {
                  lots.add(lot.with(outs));
                }
              }
              boolean isCut = session.lots().newestFoods(MOST_LOTS + 1).size() > MOST_LOTS;
              return new Trace(lots, isCut, List.copyOf(got));
            });
  }

  /** Who got portions of the newest lots, by name; lots that portions went into are nobody. */
  public List<String> recipients() {
    return kitchen
        .database()
        .read(
            session -> {
              Set<String> names =
                  new TreeSet<>(joined(session.log().recipients(LOTS_OF_LATE).values()));
              List<LotId> codes = names.stream().filter(LotId::isCode).map(LotId::new).toList();
              session.lots().find(codes).keySet().forEach(lot -> names.remove(lot.text()));
              return List.copyOf(names);
            });
  }

  /** How those of these lots ended of which nothing is left. */
  public Map<LotId, Ending> endings(Collection<LotState> lots) {
    List<LotId> ended = lots.stream().filter(lot -> !lot.isOnHand()).map(LotState::lot).toList();
    return ended.isEmpty() ? Map.of() : kitchen.database().read(session -> endings(session, ended));
  }

  private static Map<LotId, Ending> endings(Session session, List<LotId> ended) {
    Map<LotId, LotLog> logs = session.log().logs(ended);
    Set<LotId> named = new HashSet<>();
    logs.values().forEach(log -> named.addAll(takers(log)));
    Map<LotId, LotLog> takers = session.log().logs(session.lots().find(named).keySet());
    Map<LotId, Ending> endings = new HashMap<>();
    logs.forEach(
        (lot, log) -> {
          List<LotId> made =
              takers(log).stream()
                  .filter(taker -> takers.containsKey(taker) && isFrom(takers.get(taker), lot))
                  .toList();
          Ending.of(handOuts(log, made), part -> Optional.ofNullable(takers.get(part)))
              .ifPresent(ending -> endings.put(lot, ending));
        });
    return endings;
  }

  private static boolean isFrom(LotLog log, LotId lot) {
    return log.sources().stream().anyMatch(source -> source.lot().equals(lot));
  }

  /** The lots that may have got portions: whatever is named so. */
  private static Set<LotId> takers(LotLog log) {
    Set<LotId> takers = new HashSet<>();
    log.entries()
        .forEach(
            entry ->
                entry.details().to().filter(LotId::isCode).map(LotId::new).ifPresent(takers::add));
    return takers;
  }

  /** What bears an allergen, or may. */
  public Recall allergen(AllergenAsked asked) {
    return kitchen.database().read(session -> Recalling.of(session, asked));
  }

  private static boolean isTo(HandOut out, Set<String> names) {
    return out.isGiven() && out.entry().details().to().filter(names::contains).isPresent();
  }

  private static Set<String> joined(Collection<Set<String>> all) {
    Set<String> joined = new HashSet<>();
    all.forEach(joined::addAll);
    return joined;
  }

  /** The names in which that stands, in order. */
  private static Set<String> matching(String part, Collection<String> names) {
    Set<String> matching = new TreeSet<>();
    for (String name : new HashSet<>(names)) {
      if (Folded.isIn(part, name)) {
        matching.add(name);
      }
    }
    return matching;
  }

  static Trace trace(Session session, Set<LotId> asked, int most, boolean isCutBefore) {
    Set<LotId> all = new LinkedHashSet<>(asked);
    Set<LotId> next = asked;
    while (!next.isEmpty() && all.size() <= most) {
      Set<LotId> found = new LinkedHashSet<>(session.log().madeFrom(next));
      found.removeAll(all);
      all.addAll(found);
      next = found;
    }
    boolean isCut = isCutBefore || all.size() > most;
    List<LotId> kept = all.stream().limit(most).toList();
    Map<LotId, LotLog> logs = session.log().logs(kept);
    Map<LotId, List<LotId>> into = new HashMap<>();
    Set<LotId> known = new LinkedHashSet<>(kept);
    logs.forEach(
        (lot, log) ->
            log.sources()
                .forEach(
                    source -> {
                      known.add(source.lot());
                      into.computeIfAbsent(source.lot(), l -> new ArrayList<>()).add(lot);
                    }));
    Map<LotId, LotState> states = session.lots().find(known);
    Set<LotId> parts = parts(asked, kept, logs);
    List<Traced> traced = new ArrayList<>();
    for (LotId lot : kept) {
      Optional<LotLog> log = Optional.ofNullable(logs.get(lot));
      List<LotId> made = into.getOrDefault(lot, List.of());
      List<HandOut> outs = log.map(found -> handOuts(found, made)).orElse(List.of());
      traced.add(
          new Traced(
              states.get(lot),
              asked.contains(lot),
              parts.contains(lot) && !asked.contains(lot),
              log.map(LotLog::sources).orElse(List.of()).stream()
                  .map(source -> states.get(source.lot()))
                  .toList(),
              made,
              outs,
              states.get(lot).isOnHand()
                  ? Optional.empty()
                  : Ending.of(outs, part -> Optional.ofNullable(logs.get(part)))));
    }
    traced.sort(Comparator.comparing(Tracing::began).thenComparing(one -> one.lot().lot()));
    return new Trace(traced, isCut, List.of());
  }

  /** Those asked for, and what is nothing but a part of them; sources stand before their parts. */
  private static Set<LotId> parts(
      Set<LotId> asked, Collection<LotId> kept, Map<LotId, LotLog> logs) {
    Set<LotId> parts = new HashSet<>(asked);
    for (LotId lot : kept) {
      LotLog log = logs.get(lot);
      if (log != null && log.isDivided() && parts.contains(log.sources().get(0).lot())) {
        parts.add(lot);
      }
    }
    return parts;
  }

  private static List<HandOut> handOuts(LotLog log, List<LotId> made) {
    Set<LotId> into = Set.copyOf(made);
    return HandOut.of(
        log.entries(),
        lot -> log.sources().stream().anyMatch(source -> source.lot().equals(lot)),
        into::contains);
  }

  private static Instant began(Traced traced) {
    return traced.lot().standing().map(LotState.Standing::beganAt).orElse(Instant.MAX);
  }
}
