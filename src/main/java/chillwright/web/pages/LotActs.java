package chillwright.web.pages;

import chillwright.core.keeping.LotOrder;
import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.kitchen.KnownPlace;
import chillwright.core.kitchen.KnownPlace.Kind;
import chillwright.core.log.Phase;
import chillwright.core.rules.Verdict;
import chillwright.service.Kitchen;
import chillwright.service.LotQuery;
import chillwright.service.Page;
import java.time.Instant;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What can be done with a whole lot: moved, divided, put together with others. */
final class LotActs {
  /** So many lots are offered to be put together with one; others are named by their codes. */
  private static final int OFFERED = 30;

  private static final Set<Kind> COLD = EnumSet.of(Kind.REFRIGERATOR, Kind.OTHER);
  private static final Set<Kind> FROZEN = EnumSet.of(Kind.FREEZER, Kind.OTHER);

  private final Kitchen kitchen;
  private final List<KnownPlace> places;

  LotActs(Kitchen kitchen) {
    this.kitchen = kitchen;
    this.places = kitchen.setUp().places();
  }

  /**
   * Where a lot can be moved without anything else happening to it: what goes from a freezer to a
   * refrigerator thaws, and that is an entry of its own. Only refrigerated and frozen lots; any
   * other is moved with a reading that names the place.
   */
  List<String> moves(LotState lot) {
    Optional<Phase> phase = lot.standing().map(Standing::phase);
    Set<Kind> fitting =
        phase.filter(Phase.CHILLED::equals).isPresent()
            ? COLD
            : phase.filter(Phase.FROZEN::equals).isPresent() ? FROZEN : Set.of();
    if (fitting.isEmpty() || !lot.isOnHand()) {
      return List.of();
    }
    Optional<String> here = lot.standing().flatMap(Standing::place);
    return places.stream()
        .filter(place -> fitting.contains(place.kind()))
        .map(KnownPlace::name)
        .filter(name -> here.filter(name::equals).isEmpty())
        .toList();
  }

  /**
   * The word that a part begins with: it says where the part is, and nothing of how it came there.
   * Empty where a part cannot be told from a new start.
   */
  static Optional<Phase> ofPart(LotState lot) {
    return lot.standing()
        .filter(standing -> lot.isOnHand())
        .flatMap(
            standing ->
                switch (standing.phase()) {
                  case COOKED, PREPARED, COOLING -> Optional.of(Phase.COOLING);
                  case HOT_HOLDING, CHILLED, FROZEN, THAWING, OPENED ->
                      Optional.of(standing.phase());
                  case RECEIVED, REHEATING, TIME_CONTROL, SET_OUT, SERVED, DISCARDED ->
                      Optional.empty();
                });
  }

  /** Lots that may be put together with one: the same food first, then the same category. */
  List<LotState> partners(LotState lot) {
    LotQuery query = LotQuery.ALL.in(LotOrder.USE_FIRST);
    Comparator<LotState> likeness =
        Comparator.comparing((LotState other) -> !other.food().equals(lot.food()))
            .thenComparing(other -> !other.category().equals(lot.category()));
    return kitchen.lots().list(query, Page.Wanted.first(Page.MOST)).items().stream()
        .filter(other -> !other.lot().equals(lot.lot()))
        .filter(other -> other.standing().isPresent() && mayBeUsed(other, kitchen.now()))
        .sorted(likeness)
        .limit(OFFERED)
        .toList();
  }

  /** What is out, or calls for a hand, is not offered for use. */
  static boolean mayBeUsed(LotState lot, Instant now) {
    boolean isOwed =
        lot.standing().flatMap(Standing::owedFrom).filter(from -> !now.isBefore(from)).isPresent();
    boolean isOut =
        lot.standing()
            .flatMap(standing -> standing.verdicts().at(now))
            .filter(Verdict.OUT::equals)
            .isPresent();
    return !lot.isOnHand() || (!isOwed && !isOut);
  }

  /** What the page of a lot offers. */
  LotPageView.Acts shown(LotState lot, Filled form, Visitor visitor) {
    boolean canPart = ofPart(lot).isPresent();
    boolean canCombine =
        lot.isOnHand() && lot.standing().isPresent() && mayBeUsed(lot, kitchen.now());
    Map<String, String> fields = new HashMap<>(form.fields());
    fields.putIfAbsent("scale", visitor.scaleLetter());
    fields.putIfAbsent("food", lot.food());
    fields.putIfAbsent("category", lot.category());
    return new LotPageView.Acts(
        lot.standing().map(Standing::phase).map(Phase::word).orElse(""),
        moves(lot),
        canPart,
        canCombine
            ? partners(lot).stream().map(other -> partner(other, visitor)).toList()
            : List.of(),
        canCombine,
        left(lot),
        new Known(kitchen).categories(visitor.language()),
        new Filled(fields, form.faults(), ""));
  }

  private static LotPageView.Partner partner(LotState lot, Visitor visitor) {
    return new LotPageView.Partner(
        lot.lot().text(), lot.food(), LotLines.where(lot, visitor), left(lot));
  }

  private static String left(LotState lot) {
    return lot.portions().left().isPresent()
        ? Integer.toString(lot.portions().left().getAsInt())
        : "";
  }
}
