package chillwright.service;

import chillwright.core.keeping.LotState;
import chillwright.core.log.HandOut;
import chillwright.core.log.LotId;
import chillwright.core.log.LotLog;
import chillwright.storage.Session;
import java.text.Normalizer;
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

/** Follows a food or a lot to every lot made of it and to everybody who got some of it. */
public final class Tracing {
  /** So many lots are looked at; where there are more, the newest. */
  public static final int MOST_LOTS = 20_000;

  private final Kitchen kitchen;

  Tracing(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /**
   * What was found.
   *
   * @param lots those asked for and all that came from them, in the order they began
   * @param isCut whether there may be more than was looked at
   */
  public record Trace(List<Traced> lots, boolean isCut) {
    public Trace {
      lots = List.copyOf(lots);
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
   */
  public record Traced(
      LotState lot,
      boolean isAsked,
      boolean isPart,
      List<LotState> from,
      List<LotId> into,
      List<HandOut> handOuts) {
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

  /** Every lot of a food, however it is capitalised, and all that came from those. */
  public Trace food(String food) {
    String name = Normalizer.normalize(food.strip(), Normalizer.Form.NFC);
    return kitchen
        .database()
        .read(
            session -> {
              Map<LotId, String> newest = session.lots().newestFoods(MOST_LOTS + 1);
              Set<LotId> asked = new LinkedHashSet<>();
              newest.forEach(
                  (lot, of) -> {
                    if (of.equalsIgnoreCase(name)) {
                      asked.add(lot);
                    }
                  });
              return trace(session, asked, MOST_LOTS, newest.size() > MOST_LOTS);
            });
  }

  private static Trace trace(Session session, Set<LotId> asked, int most, boolean isCutBefore) {
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
      traced.add(
          new Traced(
              states.get(lot),
              asked.contains(lot),
              parts.contains(lot) && !asked.contains(lot),
              log.map(LotLog::sources).orElse(List.of()).stream()
                  .map(source -> states.get(source.lot()))
                  .toList(),
              made,
              log.map(found -> handOuts(found, made)).orElse(List.of())));
    }
    traced.sort(Comparator.comparing(Tracing::began).thenComparing(one -> one.lot().lot()));
    return new Trace(traced, isCut);
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
