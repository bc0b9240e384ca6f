package chillwright.storage;

import chillwright.core.keeping.LotState;
import chillwright.core.log.LotId;
import chillwright.core.rules.Finding;
import java.util.List;

/**
 * A lot as it stands, to be kept in place of what was kept of it before.
 *
 * @param sources the lots it came from, in the order they were named
 */
public record Assessed(LotState state, List<LotId> sources, List<Finding> findings) {
  public Assessed {
    sources = List.copyOf(sources);
    findings = List.copyOf(findings);
  }

  LotId lot() {
    return state.lot();
  }
}
