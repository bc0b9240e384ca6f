package chillwright.service;

import chillwright.core.forecast.Forecast;
import chillwright.core.keeping.LotState;
import chillwright.core.log.EntryId;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Timeline;
import chillwright.core.rules.Acts;
import chillwright.core.rules.Finding;
import chillwright.core.rules.RuleSet;
import chillwright.service.FoundFindings.Found;
import chillwright.storage.FindingRow;
import chillwright.storage.FindingStore.OfLot;
import chillwright.storage.Session;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** What the kitchen must answer for, and what it must do next. */
public final class Reports {
  private static final String DUE = "due";
  private static final String TROUBLE = "out";

  private final Kitchen kitchen;

  Reports(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /**
   * A limit that was missed, or a reading that was not taken in time.
   *
   * @param timeline the lot's life in order of time, corrections applied
   * @param ruleSet the rules that judged the lot
   * @param evidence the entries it rests on, as they were written
   * @param taken what was done about it since; nothing means that a corrective action is owed
   * @param handedOn what was handed on of it after that, before anything mended it; corrections
   *     applied
   * @param record all entries of the lot and of those it came from, corrections included
   */
  public record Trouble(
      LotState lot,
      Timeline timeline,
      RuleSet ruleSet,
      Finding finding,
      List<LogEntry> evidence,
      List<LogEntry> taken,
      List<LogEntry> handedOn,
      List<LogEntry> record) {
    public Trouble {
      evidence = List.copyOf(evidence);
      taken = List.copyOf(taken);
      handedOn = List.copyOf(handedOn);
      record = List.copyOf(record);
    }

    /** What was handed on, as it was written. */
    public List<LogEntry> handedOnAsWritten() {
      return written(record, handedOn.stream().map(LogEntry::id).toList());
    }

    /** Whether a corrective action is still owed: none was taken and the food is on hand. */
    public boolean isOwed() {
      return taken.isEmpty() && lot.isOnHand();
    }
  }

  /**
   * What falls due next of one lot.
   *
   * @param forecast when it is expected to reach that limit, while it cools
   */
  public record Due(
      LotState lot,
      Timeline timeline,
      RuleSet ruleSet,
      Finding finding,
      Optional<Forecast> forecast) {}

  /**
   * What went out of compliance, or a cooling or reheating that was not shown, between two moments,
   * both included; the oldest first, closed lots too. What only will go out later is not among it.
   */
  public Page<Trouble> outOfCompliance(
      Optional<Instant> from, Optional<Instant> to, Page.Wanted wanted) {
    Instant now = kitchen.now();
    Instant last = to.filter(now::isAfter).orElse(now);
    return kitchen
        .database()
        .read(
            session ->
                Cursors.page(
                    TROUBLE,
                    session
                        .findings()
                        .trouble(
                            from.orElse(Instant.EPOCH),
                            last,
                            wanted.limit(),
                            Cursors.position(TROUBLE, wanted)),
                    rows -> troubles(session, rows)));
  }

  private List<Trouble> troubles(Session session, List<OfLot> rows) {
    FoundFindings found = found(session, rows);
    Set<LotId> made = made(session, rows);
    return rows.stream().map(row -> trouble(found.of(row.lot()).orElseThrow(), row, made)).toList();
  }

  /** The lots that came from any of these. */
  private static Set<LotId> made(Session session, List<OfLot> rows) {
    Set<LotId> lots = rows.stream().map(OfLot::lot).collect(Collectors.toSet());
    return lots.isEmpty() ? Set.of() : Set.copyOf(session.log().madeFrom(lots));
  }

  private static Trouble trouble(Found found, OfLot row, Set<LotId> made) {
    Finding finding = found.finding(row.row());
    List<LogEntry> record = found.log().withSources();
    List<EntryId> taken = Acts.taken(finding, found.timeline()).stream().map(LogEntry::id).toList();
    List<LogEntry> handedOn =
        Acts.handedOn(finding, found.timeline(), found.ruleSet(), made::contains);
    return new Trouble(
        found.state(),
        found.timeline(),
        found.ruleSet(),
        finding,
        written(record, finding.evidence()),
        written(record, taken),
        handedOn,
        record);
  }

  /** Those entries as they were written, in the order of the ids. */
  private static List<LogEntry> written(List<LogEntry> record, Collection<EntryId> ids) {
    Map<EntryId, LogEntry> byId = new HashMap<>();
    record.forEach(entry -> byId.put(entry.id(), entry));
    return ids.stream().map(byId::get).filter(Objects::nonNull).toList();
  }

  /**
   * What falls due next: of each lot on hand the first finding that settles badly unless something
   * is done, the most urgent first.
   */
  public Page<Due> dueNext(Page.Wanted wanted) {
    Instant now = kitchen.now();
    return kitchen
        .database()
        .read(
            session ->
                Cursors.page(
                    DUE,
                    session.findings().due(now, wanted.limit(), Cursors.position(DUE, wanted)),
                    rows -> dues(session, rows, now)));
  }

  private List<Due> dues(Session session, List<OfLot> rows, Instant now) {
    FoundFindings found = found(session, rows);
    Map<LotId, List<FindingRow>> all =
        session.findings().of(rows.stream().map(OfLot::lot).toList());
    List<Due> dues = new ArrayList<>();
    for (OfLot row : rows) {
      Found lot = found.of(row.lot()).orElseThrow();
      List<Finding> findings = all.get(row.lot()).stream().map(lot::finding).toList();
      Acts.due(lot.timeline(), findings, lot.ruleSet(), now)
          .map(finding -> due(session, lot, finding, now))
          .ifPresent(dues::add);
    }
    return dues;
  }

  private static Due due(Session session, Found lot, Finding finding, Instant now) {
    Optional<Forecast> forecast =
        Forecasts.of(session, lot.timeline(), lot.ruleSet(), now).stream()
            .filter(of -> of.awaited().rule().equals(finding.rule()))
            .findFirst();
    return new Due(lot.state(), lot.timeline(), lot.ruleSet(), finding, forecast);
  }

  private FoundFindings found(Session session, List<OfLot> rows) {
    List<LotId> lots = rows.stream().map(OfLot::lot).distinct().toList();
    return FoundFindings.of(session, kitchen.judge(), lots);
  }
}
