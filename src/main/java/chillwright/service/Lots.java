package chillwright.service;

import chillwright.core.keeping.LotState;
import chillwright.core.kitchen.KnownFood;
import chillwright.core.log.CountedPart;
import chillwright.core.log.EntryId;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.LotLog;
import chillwright.core.log.Phase;
import chillwright.core.log.PutBack;
import chillwright.core.log.Row;
import chillwright.core.log.SwappedPortions;
import chillwright.core.rules.Acts;
import chillwright.core.rules.Finding;
import chillwright.service.FoundFindings.Found;
import chillwright.service.Places.PlaceReading;
import chillwright.storage.LotFilter;
import chillwright.storage.Session;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.Stream;

/** What can be asked about lots. */
public final class Lots {
  /** So many parts of a lot are looked at. */
  private static final int MOST_PARTS = 200;

  /** The tenth part after the second. */
  private static final Comparator<LotState> BY_CODE =
      Comparator.comparing((LotState lot) -> lot.lot().text().length())
          .thenComparing(lot -> lot.lot());

  private final Kitchen kitchen;

  Lots(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /** Where a lot stands; empty if there is none of that code. */
  public Optional<LotState> state(LotId lot) {
    return kitchen.database().read(session -> session.lots().find(lot));
  }

  /**
   * The lot that somebody means by a code as it was typed: the one that is written so, or else in
   * capitals, as the codes are that are made here; empty if there is neither.
   */
  public Optional<LotId> meant(String typed) {
    return Stream.of(typed, typed.toUpperCase(Locale.ROOT))
        .filter(LotId::isCode)
        .map(LotId::new)
        .filter(lot -> state(lot).isPresent())
        .findFirst();
  }

  /** All that is known of a lot; empty if there is none of that code. */
  public Optional<LotView> lot(LotId lot) {
    Instant now = kitchen.now();
    return kitchen
        .database()
        .read(session -> session.lots().find(lot).map(state -> view(session, state, now)));
  }

  private LotView view(Session session, LotState state, Instant now) {
    LotId lot = state.lot();
    Optional<Found> found = FoundFindings.of(session, kitchen.judge(), List.of(lot)).of(lot);
    List<LogEntry> entries = found.map(f -> f.log().entries()).orElse(List.of());
    Optional<Instant> frozen = found.flatMap(f -> FrozenQuality.since(f.timeline()));
    int most = frozen.isPresent() ? FrozenQuality.MOST_READINGS : Stays.SHOWN;
    List<PlaceReading> around =
        found.map(f -> Stays.readings(session, f.timeline(), now, most)).orElse(List.of());
    return new LotView(
        state,
        session.lots().sources(lot),
        List.copyOf(session.log().descendants(List.of(lot))),
        entries,
        around.stream().limit(Stays.SHOWN).toList(),
        frozen
            .map(
                since ->
                    FrozenQuality.of(
                        found.get().timeline(),
                        since,
                        around,
                        roomDays(session, state.food()),
                        now))
            .orElse(List.of()),
        PartsOfLot.contents(session, state, found.map(Found::log)),
        found.map(f -> judged(session, f, around, now)));
  }

  private static OptionalInt roomDays(Session session, String food) {
    return session.setUp().food(food).map(KnownFood::roomDays).orElse(OptionalInt.empty());
  }

  private static LotView.Judged judged(
      Session session, Found found, List<PlaceReading> around, Instant now) {
    LotId lot = found.state().lot();
    List<Finding> findings =
        session.findings().of(List.of(lot)).getOrDefault(lot, List.of()).stream()
            .map(found::finding)
            .toList();
    return new LotView.Judged(
        found.timeline(),
        found.ruleSet(),
        findings,
        Acts.next(found.timeline(), findings, found.ruleSet(), now),
        Forecasts.of(found.timeline(), found.ruleSet(), around, now));
  }

  /** Lots on hand that are nothing but a part of that lot and of the same food. */
  public List<LotState> parts(LotId whole) {
    return kitchen
        .database()
        .read(
            session -> {
              List<LotId> made = session.log().madeFrom(List.of(whole));
              String food = session.lots().find(whole).map(LotState::food).orElse("");
              return session
                  .lots()
                  .find(made.subList(0, Math.min(MOST_PARTS, made.size())))
                  .values()
                  .stream()
                  .filter(part -> part.isOnHand() && part.food().equals(food))
                  .filter(part -> session.lots().sources(part.lot()).equals(List.of(whole)))
                  .sorted(BY_CODE)
                  .toList();
            });
  }

  /** This lot, and parts of it, where they can be put back into what they were divided from. */
  public List<PutBack> putBacks(LotId lot) {
    return kitchen
        .database()
        .read(
            session ->
                withParts(session, lot).stream()
                    .filter(log -> !isUsed(session, log))
                    .flatMap(log -> PutBack.of(log, kitchen.zone()).stream())
                    .toList());
  }

  /** Those of them on hand that cannot, with the reason. */
  public Map<LotId, PutBack.Refusal> notPutBack(LotId lot) {
    return kitchen
        .database()
        .read(
            session -> {
              List<LotLog> logs = withParts(session, lot);
              Map<LotId, LotState> states =
                  session.lots().find(logs.stream().map(LotLog::lot).toList());
              Map<LotId, PutBack.Refusal> refused = new LinkedHashMap<>();
              for (LotLog log : logs) {
                Optional.ofNullable(states.get(log.lot()))
                    .filter(LotState::isOnHand)
                    .flatMap(part -> refusal(session, log))
                    .ifPresent(why -> refused.put(log.lot(), why));
              }
              return refused;
            });
  }

  private Optional<PutBack.Refusal> refusal(Session session, LotLog log) {
    return log.isDivided() && isUsed(session, log)
        ? Optional.of(PutBack.Refusal.USED)
        : PutBack.refusal(log, kitchen.zone());
  }

  /** Whether another lot was made of it, or divided off it, that was not put back since. */
  private static boolean isUsed(Session session, LotLog log) {
    List<LotId> made = session.log().madeFrom(List.of(log.lot()));
    return made.size() > MOST_PARTS || !withoutPutBack(made, session.lots().find(made)).isEmpty();
  }

  /** The logs of a lot and of what was made of it. */
  private static List<LotLog> withParts(Session session, LotId lot) {
    List<LotId> asked = new ArrayList<>(List.of(lot));
    asked.addAll(session.log().madeFrom(List.of(lot)));
    return session
        .log()
        .logs(asked.subList(0, Math.min(MOST_PARTS, asked.size())))
        .values()
        .stream()
        .filter(log -> log.lot().equals(lot) || isPartOf(log, lot))
        .toList();
  }

  private static boolean isPartOf(LotLog log, LotId whole) {
    return log.isDivided() && log.sources().get(0).lot().equals(whole);
  }

  /** Corrections that give a part so many portions more; none where the counts do not tell. */
  public List<CountedPart.Count> countsOf(LotId part, int more, boolean moreMade) {
    return more < 1
        ? List.of()
        : kitchen
            .database()
            .read(session -> session.log().logs(List.of(part)).values().stream())
            .flatMap(log -> CountedPart.of(log, more, moreMade).stream())
            .toList();
  }

  /** Parts beside a lot, or of it, that portions found in it may have been written for. */
  public List<SwappedPortions.Giver> givers(LotId taker) {
    return kitchen
        .database()
        .read(
            session ->
                session.log().log(taker).stream()
                    .flatMap(
                        log ->
                            beside(session, log).stream()
                                .flatMap(
                                    part ->
                                        SwappedPortions.giver(log, part, kitchen.zone()).stream()))
                    .toList());
  }

  /** Corrections that give a lot so many portions of each of these parts; none where one cannot. */
  public List<CountedPart.Count> countsFrom(LotId taker, Map<LotId, Integer> fewer) {
    Map<LotId, Integer> most = new HashMap<>();
    givers(taker).forEach(giver -> most.put(giver.part(), giver.most()));
    if (fewer.entrySet().stream().anyMatch(e -> e.getValue() > most.getOrDefault(e.getKey(), 0))) {
      return List.of();
    }
    List<CountedPart.Count> counts = new ArrayList<>();
    kitchen
        .database()
        .read(session -> session.log().logs(List.copyOf(fewer.keySet())).values())
        .forEach(part -> counts.addAll(SwappedPortions.lowered(part, fewer.get(part.lot()))));
    int more = fewer.values().stream().mapToInt(Integer::intValue).sum();
    kitchen
        .database()
        .read(session -> session.log().log(taker))
        .ifPresent(log -> counts.addAll(SwappedPortions.raised(log, more)));
    return counts;
  }

  /** Parts of the same food, of the lot and of what it was divided from. */
  private static List<LotLog> beside(Session session, LotLog log) {
    List<LotId> wholes = new ArrayList<>(List.of(log.lot()));
    if (log.isDivided()) {
      wholes.add(log.sources().get(0).lot());
    }
    List<LotId> made = session.log().madeFrom(wholes);
    List<LotId> asked = made.subList(0, Math.min(MOST_PARTS, made.size()));
    Map<LotId, LotState> states = session.lots().find(asked);
    String food = session.lots().find(log.lot()).map(LotState::food).orElse("");
    return session.log().logs(asked).values().stream()
        .filter(part -> food.equals(states.get(part.lot()).food()))
        .sorted(Comparator.comparing(part -> states.get(part.lot()), BY_CODE))
        .toList();
  }

  /** What of these lots was not put back into what it was divided from. */
  public List<LotId> withoutPutBack(Collection<LotId> lots) {
    Map<LotId, LotState> states =
        kitchen.database().read(session -> session.lots().find(List.copyOf(lots)));
    return withoutPutBack(lots, states);
  }

  private static List<LotId> withoutPutBack(Collection<LotId> lots, Map<LotId, LotState> states) {
    return lots.stream()
        .filter(
            lot ->
                Optional.ofNullable(states.get(lot))
                    .flatMap(LotState::standing)
                    .filter(standing -> standing.phase() == Phase.PUT_BACK)
                    .isEmpty())
        .toList();
  }

  /** What would be found of a lot if one more row of it was written; nothing is. */
  public List<Finding> findingsWith(LotId lot, Row row) {
    Instant now = kitchen.now();
    LogEntry entry =
        new LogEntry(
            new EntryId("not-written"),
            row.word(),
            row.when(),
            now,
            row.by(),
            row.note(),
            Optional.empty(),
            row.details());
    return kitchen
        .database()
        .read(session -> FoundFindings.of(session, kitchen.judge(), List.of(lot)).of(lot))
        .map(found -> kitchen.judge().judge(with(found.log(), entry)).findings())
        .orElse(List.of());
  }

  private static LotLog with(LotLog log, LogEntry entry) {
    List<LogEntry> entries = new ArrayList<>(log.entries());
    entries.add(entry);
    return new LotLog(log.lot(), entries, log.sources());
  }

  /** A code that no lot has yet. */
  public LotId freeCode() {
    return kitchen.database().read(session -> FreeCodes.ofDay(session, kitchen.days().today()));
  }

  /** Codes for parts of a lot that no lot has yet. */
  public List<LotId> freeCodes(LotId partsOf, int count) {
    return kitchen
        .database()
        .read(session -> FreeCodes.ofParts(session, partsOf, kitchen.days().today(), count));
  }

  /** Lots that the query lets through. */
  public Page<LotState> list(LotQuery query, Page.Wanted wanted) {
    // Of the text, since the hash of a word differs from one run of the program to the next.
    String list = "lots" + query.toString().hashCode();
    return kitchen
        .database()
        .read(
            session ->
                Cursors.page(
                    list,
                    session
                        .lots()
                        .list(
                            filter(session, query), wanted.limit(), Cursors.position(list, wanted)),
                    Function.identity()));
  }

  private LotFilter filter(Session session, LotQuery query) {
    return new LotFilter(
        query.phase(),
        query.place().map(name -> SpelledPlaces.named(session, name)),
        query.verdict(),
        query.lastDayBefore(),
        query.bestQualityBefore(),
        query.goodOn(),
        query.order(),
        kitchen.now());
  }
}
