package chillwright.core.log;

import chillwright.core.log.IntakeFaults.Fault;
import chillwright.core.log.Problem.Where.InFile;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Holds the portions that left a lot for a part of it against those that the part began with: they
 * are the same, so that no portion is there twice. A part that was made by mistake is put back by
 * rows of both: {@code portions} of the part to the lot, and a correction of the lot's own row. In
 * between they may be nowhere, but never in both.
 *
 * <p>Where the lot's rows name no part, as in logs of those who do not count, nothing is compared.
 * What is stored is judged again only where a new row tells of these portions.
 */
final class DividedLots {
  private final Stored stored;
  private final Map<LotId, LotDraft> drafts;
  private final Map<LotId, Descent> descents;
  private final IntakeFaults faults;
  private final Map<LotId, Optional<HandedOn>> handedOn = new HashMap<>();
  private final Set<Division> checked = new HashSet<>();

  DividedLots(
      Stored stored,
      Map<LotId, LotDraft> drafts,
      Map<LotId, Descent> descents,
      IntakeFaults faults) {
    this.stored = stored;
    this.drafts = drafts;
    this.descents = descents;
    this.faults = faults;
  }

  /** A lot and what may be a part of it. */
  private record Division(LotId lot, LotId part) {}

  /** Compares every part that a new row of this lot tells of. */
  void check(LotDraft draft) {
    if (!draft.isComplete() || draft.rows().isEmpty()) {
      return;
    }
    Optional<HandedOn> own = handedOn(draft.id());
    Optional<EntryId> first = own.flatMap(HandedOn::first).map(LogEntry::id);
    if (first.isEmpty()) {
      return;
    }
    for (LogEntry entry : descents.get(draft.id()).entries()) {
      Optional<EntryId> row =
          draft.row(entry.id()).flatMap(n -> own.get().corrected(entry)).map(LogEntry::id);
      if (row.equals(first)) {
        sources(draft.id()).forEach(lot -> check(new Division(lot, draft.id())));
      } else if (row.isPresent()) {
        for (String taker : own.get().takers(row.get())) {
          if (LotId.isCode(taker)) {
            check(new Division(draft.id(), new LotId(taker)));
            check(new Division(new LotId(taker), draft.id()));
          }
        }
      }
    }
  }

  private List<LotId> sources(LotId lot) {
    return descent(lot).map(Descent::sources).orElse(List.of());
  }

  private Optional<Descent> descent(LotId lot) {
    return Optional.ofNullable(descents.get(lot)).or(() -> stored.lot(lot).map(Descent::of));
  }

  /** Empty where nothing is known of the lot, or not all of it could be read. */
  private Optional<HandedOn> handedOn(LotId lot) {
    boolean isWhole = !drafts.containsKey(lot) || drafts.get(lot).isComplete();
    return handedOn.computeIfAbsent(
        lot,
        l ->
            descent(l)
                .filter(found -> isWhole && !found.entries().isEmpty())
                .map(found -> new HandedOn(found.entries())));
  }

  private void check(Division division) {
    if (!sources(division.part()).equals(List.of(division.lot())) || !checked.add(division)) {
      return;
    }
    Optional<HandedOn> lot = handedOn(division.lot());
    Optional<HandedOn> part = handedOn(division.part());
    Optional<LogEntry> first = part.flatMap(HandedOn::first);
    boolean isCounted = first.filter(row -> row.details().portions().isPresent()).isPresent();
    boolean isMade = first.filter(row -> Timeline.MADE.contains(row.word())).isPresent();
    if (lot.isEmpty() || !isCounted || isMade || lot.get().rowsFor(division.part()).isEmpty()) {
      return;
    }
    long began = first.get().details().portions().getAsInt();
    long kept = began - part.get().portionsFor(division.lot());
    long gone = lot.get().portionsFor(division.part());
    if (gone < kept || gone > began) {
      refuse(division, first.get().id(), List.copyOf(lot.get().rowsFor(division.part())), kept);
    }
  }

  /** At the new row that made it so; the other one is named. */
  private void refuse(Division division, EntryId first, List<EntryId> rows, long kept) {
    EntryId row = rows.get(rows.size() - 1);
    long gone = handedOn(division.lot()).orElseThrow().portionsFor(division.part());
    String says =
        ("Lot %s has %d portions of lot %s (%s), but %d left that lot for it (%s). Make the counts"
                + " the same. If it was divided by mistake, put it back first: in lot %s log"
                + " \"portions\" with its count, to %s; its page has a button for that.")
            .formatted(
                division.part(),
                kept,
                division.lot(),
                place(division.part(), first),
                gone,
                place(division.lot(), row),
                division.part(),
                division.lot());
    Cause cause = cause(division, first, rows);
    cause.draft().blame();
    faults.add(
        cause.row(),
        cause.row().isCorrection() ? "corrects" : "portions",
        new Fault(
            "parts-do-not-add-up",
            cause.row().isCorrection()
                ? cause.row().row().corrects().orElseThrow().text()
                : Long.toString(cause.draft().id().equals(division.lot()) ? gone : kept),
            "the same count in both lots",
            says));
  }

  private record Cause(LotDraft draft, NewRow row) {}

  private Cause cause(Division division, EntryId first, List<EntryId> rows) {
    List<Cause> causes = new ArrayList<>();
    addNew(division.lot(), Set.copyOf(rows), true, causes);
    addNew(division.part(), Set.of(first), false, causes);
    addNew(division.lot(), Set.copyOf(rows), false, causes);
    Set<EntryId> back = handedOn(division.part()).orElseThrow().rowsFor(division.lot());
    addNew(division.part(), back, false, causes);
    return causes.get(0);
  }

  /** The new ones among some rows and what corrects them. */
  private void addNew(LotId lot, Set<EntryId> rows, boolean onlyCorrections, List<Cause> causes) {
    LotDraft draft = drafts.get(lot);
    if (draft == null) {
      return;
    }
    HandedOn own = handedOn(lot).orElseThrow();
    for (LogEntry entry : descents.get(lot).entries()) {
      draft
          .row(entry.id())
          .filter(row -> row.isCorrection() || !onlyCorrections)
          .filter(row -> own.corrected(entry).filter(r -> rows.contains(r.id())).isPresent())
          .ifPresent(row -> causes.add(new Cause(draft, row)));
    }
  }

  /** Where a row stands: its line in a file, or its id where it came by itself or is stored. */
  private String place(LotId lot, EntryId row) {
    return Optional.ofNullable(drafts.get(lot))
        .flatMap(draft -> draft.row(row))
        .map(found -> found.row().where())
        .filter(InFile.class::isInstance)
        .map(IntakeFaults::text)
        .orElse("entry " + row);
  }
}
