package chillwright.core.log;

import chillwright.core.log.IntakeFaults.Fault;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;

/**
 * Holds a stored lot that grew against the stored lots made of it: it cannot have been thrown away
 * before one of them began. So a discard that is told late is refused as it would be had it stood
 * in the same file.
 */
final class LateDiscards {
  private final Stored stored;
  private final Map<LotId, Descent> descents;
  private final IntakeFaults faults;

  LateDiscards(Stored stored, Map<LotId, Descent> descents, IntakeFaults faults) {
    this.stored = stored;
    this.descents = descents;
    this.faults = faults;
  }

  void check(LotDraft draft) {
    boolean mayEnd = draft.rows().stream().anyMatch(LateDiscards::mayEnd);
    if (!mayEnd || !draft.isStored() || !draft.isComplete()) {
      return;
    }
    Descent source = descents.get(draft.id());
    stored.madeOf(draft.id()).stream()
        .map(log -> descents.getOrDefault(log.lot(), Descent.of(log)))
        .filter(made -> made.sources().contains(draft.id()))
        .filter(made -> thrownBefore(source, made).isPresent())
        .findFirst()
        .ifPresent(made -> refuse(draft, thrownBefore(source, made).get(), made));
  }

  private static Optional<Instant> thrownBefore(Descent source, Descent made) {
    return source
        .thrownAway(Optional.of(made.lot()))
        .filter(thrown -> made.used().filter(thrown::isBefore).isPresent());
  }

  private static boolean mayEnd(NewRow row) {
    return row.isCorrection() || Portions.isOutgoing(row.row().word());
  }

  /** At the row that tells of the end, or else at the last one that may have made it the end. */
  private void refuse(LotDraft draft, Instant thrown, Descent made) {
    Optional<NewRow> cause =
        draft.rows().stream()
            .filter(row -> row.row().word() == Word.DISCARDED && row.row().when().equals(thrown))
            .findFirst()
            .or(
                () ->
                    draft.rows().stream()
                        .filter(LateDiscards::mayEnd)
                        .reduce((earlier, later) -> later));
    if (cause.isEmpty()) {
      return;
    }
    draft.blame();
    faults.add(
        cause.get(),
        cause.get().isCorrection() ? "corrects" : "when",
        new Fault(
            "source-discarded",
            faults.text(thrown),
            "a time after " + faults.text(made.used().orElseThrow()),
            ("Lot %s was made of lot %s on %s, so not all of that was discarded on %s. Check the"
                    + " times; if portions went into the other lot before, write those portions of"
                    + " %s down first.")
                .formatted(
                    made.lot(),
                    draft.id(),
                    faults.text(made.used().orElseThrow()),
                    faults.text(thrown),
                    draft.id())));
  }
}
