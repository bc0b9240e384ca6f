package chillwright.service;

import chillwright.core.log.LotId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A lot to be made known before anything is written of it.
 *
 * @param lot its code; made where it is empty
 * @param food may be left out where it comes from one lot
 * @param category key of the keeping list; may be left out where it comes from one lot
 * @param from the lots it is divided from or made of
 * @param portions how many are made
 */
public record NewLot(
    Optional<LotId> lot,
    Optional<String> food,
    Optional<String> category,
    List<LotId> from,
    OptionalInt portions,
    Optional<String> note) {
  public NewLot {
    from = List.copyOf(from);
  }
}
