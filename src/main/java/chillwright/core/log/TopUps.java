package chillwright.core.log;

import chillwright.core.log.IntakeFaults.Fault;
import java.util.Map;
import java.util.Optional;

/**
 * Refuses portions put into a lot that does not name the lot they come from: the food in it would
 * go on with its own dates, whatever was put in. A lot made of both takes over what was of each. A
 * lot that nobody has begun, or one that this lot was divided from, may take them.
 */
final class TopUps {
  private final Stored stored;
  private final Map<LotId, LotDraft> drafts;
  private final Map<LotId, Descent> descents;
  private final IntakeFaults faults;

  TopUps(
      Stored stored,
      Map<LotId, LotDraft> drafts,
      Map<LotId, Descent> descents,
      IntakeFaults faults) {
    this.stored = stored;
    this.drafts = drafts;
    this.descents = descents;
    this.faults = faults;
  }

  /** Looks at every new row of this lot that names, or is corrected to name, another lot. */
  void check(LotDraft draft) {
    if (!draft.isComplete() || draft.rows().stream().noneMatch(TopUps::namesLot)) {
      return;
    }
    Descent lot = descents.get(draft.id());
    HandedOn own = new HandedOn(lot.entries());
    for (LogEntry entry : lot.entries()) {
      Optional<NewRow> row = draft.row(entry.id()).filter(TopUps::namesLot);
      if (row.isPresent()) {
        LotId taker = new LotId(row.get().details().to().orElseThrow());
        boolean isStanding =
            own.corrected(entry).filter(e -> own.standingFor(taker).contains(e.id())).isPresent();
        if (isStanding && isOther(taker, lot)) {
          refuse(draft, row.get(), taker);
        }
      }
    }
  }

  private static boolean namesLot(NewRow row) {
    return row.details().to().filter(LotId::isCode).isPresent();
  }

  /** Whether that lot has begun, and neither came from the other. */
  private boolean isOther(LotId taker, Descent lot) {
    boolean isWhole = !drafts.containsKey(taker) || drafts.get(taker).isComplete();
    return isWhole
        && !lot.sources().contains(taker)
        && Optional.ofNullable(descents.get(taker))
            .or(() -> stored.lot(taker).map(Descent::of))
            .filter(found -> !found.entries().isEmpty())
            .filter(found -> !found.sources().contains(lot.lot()))
            .isPresent();
  }

  private void refuse(LotDraft draft, NewRow row, LotId taker) {
    draft.blame();
    faults.add(
        row,
        "to",
        new Fault(
            "not-made-of",
            taker.text(),
            "a lot that names this one in its first row, a new one, or words for a person",
            ("Lot %s was not made of lot %s, so nothing of that can go into it. Begin a new lot of"
                    + " both: name %s and %s as what it is made of. If the first row of %s forgot"
                    + " it, correct that row.")
                .formatted(taker, draft.id(), taker, draft.id(), taker)));
  }
}
