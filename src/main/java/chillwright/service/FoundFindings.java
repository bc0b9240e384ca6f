package chillwright.service;

import chillwright.core.keeping.LotState;
import chillwright.core.log.EntryId;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.LotLog;
import chillwright.core.log.Timeline;
import chillwright.core.rules.Finding;
import chillwright.core.rules.RuleSet;
import chillwright.storage.FindingRow;
import chillwright.storage.Session;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** Turns stored findings back into findings, with their rules and the entries that decided. */
final class FoundFindings {
  private final Map<LotId, Found> found = new LinkedHashMap<>();

  /** A lot with the log that its findings rest on, and the rules that judged it. */
  record Found(
      LotState state,
      LotLog log,
      Timeline timeline,
      RuleSet ruleSet,
      Map<EntryId, LogEntry> entries) {
    Finding finding(FindingRow row) {
      return row.finding(ruleSet, id -> Optional.ofNullable(entries.get(id)));
    }
  }

  private FoundFindings() {}

  /** Reads the logs of those lots that have one. */
  static FoundFindings of(Session session, Judge judge, Collection<LotId> lots) {
    FoundFindings all = new FoundFindings();
    Map<LotId, LotState> states = session.lots().find(lots);
    session
        .log()
        .logs(lots)
        .forEach(
            (lot, log) -> {
              Timeline timeline = judge.timeline(log);
              Map<EntryId, LogEntry> entries = new HashMap<>();
              collect(timeline, entries);
              RuleSet ruleSet = judge.ruleSet(timeline);
              all.found.put(lot, new Found(states.get(lot), log, timeline, ruleSet, entries));
            });
    return all;
  }

  private static void collect(Timeline timeline, Map<EntryId, LogEntry> entries) {
    timeline.entries().forEach(entry -> entries.put(entry.id(), entry));
    timeline.sources().forEach(source -> collect(source, entries));
  }

  Optional<Found> of(LotId lot) {
    return Optional.ofNullable(found.get(lot));
  }
}
