package chillwright.service;

import chillwright.core.log.LotId;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;

/**
 * The lots that a dish of a plan became, as the plan was told.
 *
 * @param lots by code; one that was discarded is none
 * @param missing how many portions they hold too few, all together; empty where those of one are
 *     not counted, or nothing of any is made yet
 * @param open how many of these no lot is known for either; empty where that is not counted
 * @param toCome lots that nothing is logged of yet, with the portions they were made known for
 * @param cold those that keep in the refrigerator until the dish is served, so that they are not
 *     frozen as the others of it were
 */
public record Followed(
    List<LotId> lots,
    OptionalInt missing,
    OptionalInt open,
    Map<LotId, Integer> toCome,
    List<LotId> cold) {
  public Followed {
    toCome = Collections.unmodifiableMap(new TreeMap<>(toCome));
    lots = List.copyOf(lots);
    cold = List.copyOf(cold);
  }

  /** Of which no more is known than their codes. */
  Followed(List<LotId> lots) {
    this(lots, OptionalInt.empty(), OptionalInt.empty(), Map.of(), List.of());
  }
}
