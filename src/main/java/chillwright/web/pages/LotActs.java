package chillwright.web.pages;

import chillwright.core.keeping.LotOrder;
import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.kitchen.KnownPlace;
import chillwright.core.kitchen.KnownPlace.Kind;
import chillwright.core.kitchen.Move;
import chillwright.core.log.How;
import chillwright.core.log.Phase;
import chillwright.core.log.PutBack;
import chillwright.core.log.Word;
import chillwright.service.Kitchen;
import chillwright.service.LotQuery;
import chillwright.service.Page;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What can be done with a whole lot: moved, divided, put together with others. */
final class LotActs {
  /** So many lots are offered to be put together with one; others are named by their codes. */
  private static final int OFFERED = 30;

  private final Kitchen kitchen;
  private final List<KnownPlace> places;

  LotActs(Kitchen kitchen) {
    this.kitchen = kitchen;
    this.places = kitchen.setUp().places();
  }

  /** Where a lot can be moved with nothing else happening to it. */
  List<String> moves(LotState lot) {
    return moved(lot, false).getOrDefault(Word.MOVED, List.of());
  }

  /** Places in use by the word that a move there is logged as. */
  private Map<Word, List<String>> moved(LotState lot, boolean stillCools) {
    Map<Word, List<String>> moved = new EnumMap<>(Word.class);
    Optional<Phase> phase = lot.standing().filter(s -> lot.isOnHand()).map(Standing::phase);
    Optional<String> here = lot.standing().flatMap(Standing::place);
    for (KnownPlace place : places) {
      phase
          .filter(from -> here.filter(place.name()::equals).isEmpty())
          .flatMap(from -> Move.word(from, here.flatMap(this::kind), place.kind(), stillCools))
          .ifPresent(word -> moved.computeIfAbsent(word, w -> new ArrayList<>()).add(place.name()));
    }
    return moved;
  }

  private Optional<Kind> kind(String name) {
    return places.stream()
        .filter(place -> place.name().equals(name))
        .map(KnownPlace::kind)
        .findFirst();
  }

  /**
   * Moves as the page offers them, those that change nothing else first. Food that is not for use,
   * or needs neither cold nor heat, is not offered a place where it is held hot to be served.
   */
  private List<LotPageView.Move> offered(LotState lot, boolean stillCools, Visitor visitor) {
    boolean isFit = needsCold(lot) && mayBeUsed(lot);
    return moved(lot, stillCools).entrySet().stream()
        .filter(moves -> isFit || moves.getKey() != Word.HOT_HOLDING)
        .sorted(Comparator.comparing(moves -> moves.getKey() != Word.MOVED))
        .map(
            moves ->
                new LotPageView.Move(
                    moves.getKey().text(),
                    moves.getKey() == Word.MOVED
                        ? visitor.say("share.move.stays")
                        : visitor.say(
                            "share.move.as", visitor.say("word." + moves.getKey().text())),
                    moves.getValue()))
        .toList();
  }

  /**
   * The form for a move as the entry that it is: one field names the word it was offered as and the
   * place, with a blank between. Any other form is as it is.
   */
  static Form asEntry(Form form) {
    String[] move = form.text("move").split(" ", 2);
    if (move.length < 2) {
      return form;
    }
    Map<String, List<String>> fields = new HashMap<>();
    form.all().forEach((name, text) -> fields.put(name, List.of(text)));
    fields.put("entry", List.of(move[0]));
    fields.put("place", List.of(move[1]));
    if (move[0].equals(Word.THAWING.text())) {
      fields.put("how", List.of(How.REFRIGERATOR.text()));
    }
    return new Form(fields);
  }

  private boolean needsCold(LotState lot) {
    return kitchen
        .library()
        .keepingList()
        .category(lot.category())
        .filter(category -> !category.tcs())
        .isEmpty();
  }

  /** What to log of a lot that is called frozen where nothing stays frozen; blank for none. */
  private String doubt(LotState lot, Visitor visitor) {
    return lot.standing()
        .filter(standing -> lot.isOnHand())
        .flatMap(
            standing ->
                standing
                    .place()
                    .filter(here -> kind(here).filter(k -> isNoFreezer(standing, k)).isPresent()))
        .map(here -> visitor.say("share.move.doubt", here))
        .orElse("");
  }

  private static boolean isNoFreezer(Standing standing, Kind kind) {
    return Move.isDoubtful(standing.phase(), kind);
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
                  case RECEIVED,
                      REHEATING,
                      TIME_CONTROL,
                      SET_OUT,
                      SERVED,
                      DISCARDED,
                      USED_UP,
                      PUT_BACK,
                      COUNTED_OUT ->
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
        .filter(other -> other.standing().isPresent() && mayBeUsed(other))
        .sorted(likeness)
        .limit(OFFERED)
        .toList();
  }

  /** What is out, or calls for a hand, is not offered for use. */
  boolean mayBeUsed(LotState lot) {
    return !lot.isOnHand() || !kitchen.fitLots().of(List.of(lot)).isEmpty();
  }

  /** Whether something was missed or is not shown and nobody did anything about it yet. */
  static boolean isOwed(LotState lot, Instant now) {
    return lot.isOnHand()
        && lot.standing()
            .flatMap(Standing::owedFrom)
            .filter(from -> !now.isBefore(from))
            .isPresent();
  }

  /** What the page of a lot offers. */
  LotPageView.Acts shown(LotState lot, boolean stillCools, Filled form, Visitor visitor) {
    boolean canPart = ofPart(lot).isPresent();
    boolean canCombine =
        form.given("form").equals("combined")
            || (lot.isOnHand() && lot.standing().isPresent() && mayBeUsed(lot));
    Map<String, String> fields = new HashMap<>(form.fields());
    fields.putIfAbsent("scale", visitor.scaleLetter());
    fields.putIfAbsent("food", lot.food());
    fields.putIfAbsent("category", lot.category());
    return new LotPageView.Acts(
        offered(lot, stillCools, visitor),
        doubt(lot, visitor),
        canPart,
        canCombine
            ? partners(lot).stream().map(other -> partner(other, visitor)).toList()
            : List.of(),
        canCombine,
        left(lot),
        kitchen.lots().putBacks(lot.lot()).stream()
            .map(back -> new LotPageView.Back(back.part().text(), back.whole().text()))
            .toList(),
        kept(lot, visitor),
        CountedMore.ways(kitchen.lots(), lot, form, visitor),
        CountedMore.givers(kitchen.lots(), lot, form, visitor),
        new Known(kitchen).categories(visitor.language()),
        new Filled(fields, form.faults(), form.asked(), form.answered()));
  }

  /** Parts that are not put back, by the reason. */
  private List<LotPageView.Kept> kept(LotState lot, Visitor visitor) {
    Map<PutBack.Refusal, List<String>> parts = new EnumMap<>(PutBack.Refusal.class);
    kitchen
        .lots()
        .notPutBack(lot.lot())
        .forEach(
            (part, why) -> parts.computeIfAbsent(why, w -> new ArrayList<>()).add(part.text()));
    return parts.entrySet().stream()
        .map(
            kept ->
                new LotPageView.Kept(
                    kept.getValue(), visitor.say("share.back.not." + kept.getKey().key())))
        .toList();
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
