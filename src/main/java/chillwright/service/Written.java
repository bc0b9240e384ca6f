package chillwright.service;

import chillwright.core.forecast.Forecast;
import chillwright.core.keeping.Keeping;
import chillwright.core.keeping.LotState;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Timeline;
import chillwright.core.rules.Finding;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What came of rows that were told.
 *
 * @param at the moment they were written down, or asked about again
 * @param entries the entry of each row, in the order of the rows, new or known already
 * @param record all entries of the lots at hand and the corrections of the readings of places, as
 *     they were written: what became of each entry is told by the corrections among them
 * @param repeats how many of them were known already
 * @param lots each lot that the rows belong to
 * @param isReplay whether the same request was answered before; nothing was written now
 */
public record Written(
    Instant at,
    List<LogEntry> entries,
    List<LogEntry> record,
    int repeats,
    List<Lot> lots,
    boolean isReplay) {
  /**
   * One of the lots.
   *
   * @param timeline its life in order of time, corrections applied
   * @param before the findings it had before these rows; the others are what the rows did
   * @param due what is owed, or else settles badly next unless something is done
   * @param keeping its dates, as far as they hold
   * @param forecasts of the limits it still waits for while it cools; no verdict rests on them
   * @param descendants lots that came from it and were judged again
   */
  public record Lot(
      LotState state,
      Timeline timeline,
      Set<Finding> before,
      List<Finding> findings,
      Optional<Finding> due,
      Keeping keeping,
      List<Forecast> forecasts,
      Set<LotId> descendants) {
    public Lot {
      before = Set.copyOf(before);
      findings = List.copyOf(findings);
      forecasts = List.copyOf(forecasts);
      descendants = Set.copyOf(descendants);
    }
  }

  public Written {
    entries = List.copyOf(entries);
    record = List.copyOf(record);
    lots = List.copyOf(lots);
  }
}
