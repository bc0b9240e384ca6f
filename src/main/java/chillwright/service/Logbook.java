package chillwright.service;

import chillwright.core.keeping.LotState;
import chillwright.core.log.EntryId;
import chillwright.core.log.Incoming;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.LotLog;
import chillwright.core.log.Row;
import chillwright.core.rules.Acts;
import chillwright.core.rules.Finding;
import chillwright.service.Judge.Judged;
import chillwright.storage.KeyStore.Answered;
import chillwright.storage.LogStore;
import chillwright.storage.Session;
import chillwright.storage.Slice;
import chillwright.storage.StorageException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What happened, told to the kitchen; each call is one transaction. */
public final class Logbook {
  /** How long a request that was answered is known again. */
  public static final Duration REMEMBERED = Duration.ofDays(30);

  private static final int RECOMPUTED_TOGETHER = 1000;

  private final Kitchen kitchen;
  private final Judge judge;
  private final LastJudged last;

  Logbook(Kitchen kitchen) {
    this.kitchen = kitchen;
    this.judge = kitchen.judge();
    this.last = kitchen.lastJudged();
  }

  /**
   * Writes rows down, all or none, and judges the lots they belong to and the lots that came from
   * those. Rows that are known already are no fault.
   *
   * @param key makes the request count once
   * @throws Refused with every fault, or where the key was used for another request
   */
  public Written log(List<? extends Incoming> rows, Optional<OnceKey> key) {
    return log(rows, Set.of(), key);
  }

  /**
   * The same, where some lots are to begin with these rows.
   *
   * @param fresh lots that must not be known yet: another phone may have taken the code meanwhile
   * @throws Refused also where one of them exists
   */
  public Written log(List<? extends Incoming> rows, Set<LotId> fresh, Optional<OnceKey> key) {
    List<Incoming> told = List.copyOf(rows);
    Map<LotId, Judged> judged = new HashMap<>();
    try {
      Written written = kitchen.database().write(session -> log(session, told, fresh, key, judged));
      last.keep(judged.values());
      return written;
    } catch (StorageException failed) {
      last.clear();
      throw failed;
    }
  }

  private Written log(
      Session session,
      List<Incoming> rows,
      Set<LotId> fresh,
      Optional<OnceKey> key,
      Map<LotId, Judged> judged) {
    Instant now = kitchen.now();
    Optional<Answered> answered = key.flatMap(k -> answered(session, k));
    if (answered.isPresent()) {
      return replayed(session, answered.get(), now);
    }
    fresh.forEach(lot -> Announcement.requireNew(session, lot));
    Intaking intake = Intaking.of(session, judge, last, rows, now);
    if (!intake.admission().isFaultless()) {
      throw new Refused(Refused.Why.FAULTS, intake.admission().problems());
    }
    if (MovedRows.isAmong(rows)) {
      new MovedRows(session.setUp().places(), judge).check(rows, intake.admission());
    }
    Set<LotId> descendants =
        new Recorder(session, judge, now)
            .record(
                intake.admission().lots(),
                intake.admission().ofPlaces(),
                lot -> judged.put(lot.log().lot(), lot));
    List<EntryId> ids = intake.admission().ids().stream().map(Optional::orElseThrow).toList();
    key.ifPresent(k -> remember(session, k, now, Optional.empty(), ids));
    List<Written.Lot> lots = new ArrayList<>();
    List<LogEntry> record = ofPlaces(session, ids, rows.stream().anyMatch(Logbook::isOfPlace));
    boolean isOne = lotsOf(rows).size() == 1 && judged.size() == 1;
    for (LotId lot : lotsOf(rows)) {
      Optional<Judged> before = intake.before().lot(lot).map(this::judged);
      Judged after = judged.containsKey(lot) ? judged.get(lot) : before.orElseThrow();
      Set<LotId> made = isOne ? descendants : session.log().descendants(List.of(lot));
      List<Finding> findingsBefore = before.map(Judged::findings).orElse(List.of());
      lots.add(written(session, after, findingsBefore, made, now));
      record.addAll(after.log().entries());
    }
    List<LogEntry> entries = entries(session, ids, intake.added());
    return new Written(now, entries, record, intake.admission().repeats(), lots, false);
  }

  private Judged judged(LotLog log) {
    return last.of(log).orElseGet(() -> judge.judge(log));
  }

  private static boolean isOfPlace(Incoming incoming) {
    return incoming instanceof Row row && row.lot().isEmpty();
  }

  /** The corrections of readings of places, where there may be such readings. */
  private static List<LogEntry> ofPlaces(Session session, List<EntryId> ids, boolean mayBe) {
    return mayBe ? new ArrayList<>(session.places().corrections(ids)) : new ArrayList<>();
  }

  private static Set<LotId> lotsOf(List<Incoming> rows) {
    Set<LotId> lots = new LinkedHashSet<>();
    for (Incoming incoming : rows) {
      if (incoming instanceof Row row) {
        row.lot().ifPresent(lots::add);
      }
    }
    return lots;
  }

  private static Written.Lot written(
      Session session, Judged judged, List<Finding> before, Set<LotId> descendants, Instant now) {
    LotId lot = judged.log().lot();
    return new Written.Lot(
        session.lots().find(lot).orElseThrow(),
        judged.timeline(),
        Set.copyOf(before),
        judged.findings(),
        Acts.next(judged.timeline(), judged.findings(), judged.ruleSet(), now),
        judged.held(now),
        Forecasts.of(session, judged.timeline(), judged.ruleSet(), now),
        descendants);
  }

  private static List<LogEntry> entries(Session session, List<EntryId> ids, List<LogEntry> atHand) {
    Map<EntryId, LogEntry> found = new HashMap<>();
    atHand.forEach(entry -> found.put(entry.id(), entry));
    List<EntryId> more = ids.stream().filter(id -> !found.containsKey(id)).toList();
    session.log().entries(more).forEach(entry -> found.put(entry.entry().id(), entry.entry()));
    return ids.stream()
        .map(id -> found.computeIfAbsent(id, i -> session.places().entry(i).orElseThrow()))
        .toList();
  }

  /** Whether that very request was answered before, and would be again. */
  public boolean isAnswered(OnceKey key) {
    return kitchen
        .database()
        .read(session -> session.keys().answered(key.text()))
        .filter(before -> before.bodyHash().equals(key.bodyHash()))
        .isPresent();
  }

  static Optional<Answered> answered(Session session, OnceKey key) {
    Optional<Answered> answered = session.keys().answered(key.text());
    if (answered.filter(before -> !before.bodyHash().equals(key.bodyHash())).isPresent()) {
      throw Refused.field(
          Refused.Why.KEY_REUSED,
          Refused.problem(
              "idempotency-key-reused",
              "/Idempotency-Key",
              key.text(),
              "a new key for each request",
              "This key came with another request before. Send this one with a key of its own."));
    }
    return answered;
  }

  private Written replayed(Session session, Answered before, Instant now) {
    Set<LotId> lots = new LinkedHashSet<>();
    session.log().entries(before.entries()).stream().map(LogStore.OfLot::lot).forEach(lots::add);
    List<Written.Lot> found = new ArrayList<>();
    List<LogEntry> record = ofPlaces(session, before.entries(), lots.isEmpty());
    session
        .log()
        .logs(lots)
        .values()
        .forEach(
            log -> {
              Judged judged = judge.judge(log);
              Set<LotId> made = session.log().descendants(List.of(log.lot()));
              found.add(written(session, judged, judged.findings(), made, now));
              record.addAll(log.entries());
            });
    List<LogEntry> entries = entries(session, before.entries(), List.of());
    return new Written(now, entries, record, before.entries().size(), found, true);
  }

  static void remember(
      Session session, OnceKey key, Instant now, Optional<LotId> lot, List<EntryId> ids) {
    session.keys().forgetBefore(now.minus(REMEMBERED));
    session.keys().remember(new Answered(key.text(), key.bodyHash(), now, lot, ids));
  }

  /**
   * Makes a lot known before anything is written of it; its first entry then need not say what it
   * is.
   *
   * @throws Refused with every fault, where a lot of that code exists, or where the key was used
   *     for another request
   */
  public LotState createLot(NewLot lot, Optional<OnceKey> key) {
    return kitchen.database().write(session -> createLot(session, lot, key));
  }

  LotState createLot(Session session, NewLot lot, Optional<OnceKey> key) {
    Instant now = kitchen.now();
    Optional<LotId> made = key.flatMap(k -> answered(session, k)).flatMap(Answered::lot);
    if (made.isPresent()) {
      return session.lots().find(made.get()).orElseThrow();
    }
    LotState state = new Announcement(session, lot).keep(judge, now);
    key.ifPresent(k -> remember(session, k, now, Optional.of(state.lot()), List.of()));
    return state;
  }

  /**
   * What recomputing did.
   *
   * @param lots how many lots were judged again
   * @param changedRows how many rows were not what today's figures make of the log
   */
  public record Recomputed(long lots, long changedRows) {}

  /**
   * Judges every lot again if the figures are not those that judged the last time: what is stored
   * would be shown beside limits that did not judge it.
   *
   * @return empty where nothing had changed
   */
  public Optional<Recomputed> catchUp(Progress progress) {
    return kitchen.settings().olderVersion().map(older -> recompute(progress));
  }

  /** Judges every lot again, some in each transaction. */
  public Recomputed recompute(Progress progress) {
    long lots = 0;
    long changed = 0;
    Optional<Slice.Position> next = Optional.empty();
    do {
      Optional<Slice.Position> after = next;
      Slice<LotId> some =
          kitchen.database().read(session -> session.lots().all(RECOMPUTED_TOGETHER, after));
      Integer changedNow =
          kitchen.database().write(session -> recorder(session).rejudge(some.items()));
      changed += changedNow;
      lots += some.items().size();
      progress.done("lots recomputed", lots);
      next = some.next();
    } while (next.isPresent());
    kitchen.database().write(session -> session.kitchen().setRulesVersion(kitchen.figures()));
    return new Recomputed(lots, changed);
  }

  private Recorder recorder(Session session) {
    return new Recorder(session, judge, kitchen.now());
  }
}
