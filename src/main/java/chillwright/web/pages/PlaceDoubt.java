package chillwright.web.pages;

import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.kitchen.KnownPlace;
import chillwright.core.kitchen.KnownPlace.Kind;
import chillwright.core.kitchen.Move;
import chillwright.core.log.Phase;
import chillwright.core.log.PlaceName;
import chillwright.core.log.Row;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Where what an entry says can hardly be done: thawing on a counter, freezing in no freezer. */
record PlaceDoubt(LotState lot, Desk desk, Visitor visitor) {
  /** How a counter is called, by the last word of its name. */
  private static final Set<String> COUNTERS =
      Set.of("counter", "countertop", "bench", "worktop", "encimera", "mostrador", "mesa");

  /** The question; empty where nothing is odd. */
  Optional<Question> of(Row row) {
    Optional<String> place =
        row.details().place().or(() -> lot.standing().flatMap(Standing::place));
    return switch (row.word()) {
      case THAWING ->
          place
              .filter(here -> row.details().how().isEmpty())
              .filter(here -> needsCold())
              .filter(here -> kind(here).filter(Kind.COUNTER::equals).isPresent())
              .map(here -> asks("entry.doubt.thawing", here));
      case FROZEN ->
          place
              .filter(here -> row.details().place().isEmpty())
              .filter(here -> kind(here).filter(PlaceDoubt::isNoFreezer).isPresent())
              .map(here -> asks("entry.doubt.no-freezer", here));
      default -> Optional.empty();
    };
  }

  /** How food thaws is asked of TCS food alone: FDA Food Code 2022 3-501.13 begins with it. */
  private boolean needsCold() {
    return desk.kitchen()
        .library()
        .keepingList()
        .category(lot.category())
        .filter(category -> category.tcs())
        .isPresent();
  }

  private Question asks(String key, String here) {
    return Question.of(key, here, visitor.say(key, here));
  }

  private static boolean isNoFreezer(Kind kind) {
    return Move.isDoubtful(Phase.FROZEN, kind);
  }

  /** What the kitchen says that a place is, or else what its name says; empty for neither. */
  private Optional<Kind> kind(String name) {
    List<KnownPlace> places = desk.kitchen().setUp().places();
    return PlaceName.among(places.stream().map(KnownPlace::name).toList(), name)
        .flatMap(meant -> places.stream().filter(p -> p.name().equals(meant)).findFirst())
        .map(KnownPlace::kind)
        .filter(kind -> kind != Kind.OTHER)
        .or(() -> isCalledCounter(name) ? Optional.of(Kind.COUNTER) : Optional.empty());
  }

  private static boolean isCalledCounter(String name) {
    String key = PlaceName.key(name);
    return COUNTERS.contains(key.substring(key.lastIndexOf(' ') + 1));
  }
}
