package chillwright.storage;

import chillwright.core.keeping.LotState;
import chillwright.core.log.LotId;
import chillwright.core.rules.Finding;
import java.util.List;

/**
 * A lot as it stands, to be kept in place of what was kept of it before; made ready for the
 * database beside the writer.
 */
public final class Assessed {
  private final LotState state;
  private final List<LotId> sources;
  private final List<FindingRow> findings;

  /**
   * @param sources the lots it came from, in the order they were named
   */
  public Assessed(LotState state, List<LotId> sources, List<Finding> findings) {
    this.state = state;
    this.sources = List.copyOf(sources);
    this.findings = findings.stream().map(FindingRow::of).toList();
  }

  LotState state() {
    return state;
  }

  List<LotId> sources() {
    return sources;
  }

  List<FindingRow> findings() {
    return findings;
  }

  LotId lot() {
    return state.lot();
  }
}
