package chillwright.core.log;

import chillwright.core.log.IntakeFaults.Fault;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Compares what later rows say of food, category and sources with the lot's first row. People fill
 * such columns down, so the same again is no fault; anything else is.
 */
final class LaterRows {
  private final Map<LotId, Descent> descents;
  private final IntakeFaults faults;

  LaterRows(Map<LotId, Descent> descents, IntakeFaults faults) {
    this.descents = descents;
    this.faults = faults;
  }

  void check(LotDraft draft) {
    if (draft.firstId().isEmpty() || !draft.isComplete()) {
      return;
    }
    Set<String> foods = said(draft.id(), Details::food);
    Set<String> categories = said(draft.id(), Details::category);
    Set<Set<LotId>> sources = new HashSet<>();
    descents.get(draft.id()).firsts().forEach(first -> sources.add(Set.copyOf(first.from())));
    for (Collection<NewRow> rows : List.of(draft.rows(), draft.repeats())) {
      for (NewRow row : rows) {
        if (!row.isCorrection() && !draft.isNewFirst(row)) {
          compare(draft, row, "food", row.details().food(), foods);
          compare(draft, row, "category", row.details().category(), categories);
          compareSources(draft, row, sources);
        }
      }
    }
  }

  /** What the first row says, as written and as corrected, or what it takes over; maybe nothing. */
  private Set<String> said(LotId lot, Function<Details, Optional<String>> cell) {
    Set<LotId> seen = new HashSet<>();
    Optional<LotId> next = Optional.of(lot);
    while (next.isPresent() && seen.add(next.get()) && descents.containsKey(next.get())) {
      Descent descent = descents.get(next.get());
      Set<String> said =
          descent.firsts().stream().map(cell).flatMap(Optional::stream).collect(Collectors.toSet());
      if (!said.isEmpty()) {
        return said;
      }
      next =
          descent.sources().size() == 1 ? Optional.of(descent.sources().get(0)) : Optional.empty();
    }
    return Set.of();
  }

  private void compare(
      LotDraft draft, NewRow row, String column, Optional<String> given, Set<String> said) {
    if (given.isEmpty() || said.isEmpty() || said.contains(given.get())) {
      return;
    }
    refuse(draft, row, column, given.get(), String.join(" or ", said));
  }

  private void compareSources(LotDraft draft, NewRow row, Set<Set<LotId>> said) {
    List<LotId> given = row.details().from();
    if (given.isEmpty() || said.contains(Set.copyOf(given))) {
      return;
    }
    String allowed =
        said.stream().map(LaterRows::text).filter(t -> !t.isEmpty()).collect(Collectors.joining());
    refuse(draft, row, "from", text(given), allowed);
  }

  private static String text(Collection<LotId> lots) {
    return lots.stream().map(LotId::text).sorted().collect(Collectors.joining(" "));
  }

  private void refuse(LotDraft draft, NewRow row, String column, String given, String allowed) {
    draft.blame();
    faults.add(
        row,
        column,
        new Fault(
            "differs-from-first-row",
            given,
            allowed.isEmpty() ? "blank" : allowed + ", or blank",
            "The first row of lot %s says %s. Leave this cell blank; if the first row is wrong,"
                    .formatted(draft.id(), allowed.isEmpty() ? "nothing here" : allowed)
                + " write a correction; if this is other food, give it a lot of its own."));
  }
}
