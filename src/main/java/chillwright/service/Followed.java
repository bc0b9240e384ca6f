package chillwright.service;

import chillwright.core.log.LotId;
import java.util.List;
import java.util.OptionalInt;

/**
 * The lots that a dish of a plan became, as the plan was told.
 *
 * @param lots by code; one that was discarded is none
 * @param missing how many portions they hold too few, all together; empty where those of one are
 *     not counted, or nothing of any is made yet
 * @param cold those that keep in the refrigerator until the dish is served, so that they are not
 *     frozen as the others of it were
 */
public record Followed(List<LotId> lots, OptionalInt missing, List<LotId> cold) {
  public Followed {
    lots = List.copyOf(lots);
    cold = List.copyOf(cold);
  }
}
