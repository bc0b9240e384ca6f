package chillwright.service;

import chillwright.core.keeping.LotState;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
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
 * @param repeats how many of them were known already
 * @param lots each lot that the rows belong to
 * @param descendants lots that came from those and were judged again
 * @param isReplay whether the same request was answered before; nothing was written now
 */
public record Written(
    Instant at,
    List<LogEntry> entries,
    int repeats,
    List<Lot> lots,
    Set<LotId> descendants,
    boolean isReplay) {
  /**
   * One of the lots.
   *
   * @param before the findings it had before these rows; the others are what the rows did
   * @param due what settles badly next unless something is done
   */
  public record Lot(
      LotState state, Set<Finding> before, List<Finding> findings, Optional<Finding> due) {
    public Lot {
      before = Set.copyOf(before);
      findings = List.copyOf(findings);
    }
  }

  public Written {
    entries = List.copyOf(entries);
    lots = List.copyOf(lots);
    descendants = Set.copyOf(descendants);
  }
}
