package chillwright.web.pages;

import chillwright.core.keeping.LotState;
import chillwright.core.kitchen.KnownPlace;
import chillwright.core.log.How;
import chillwright.core.log.PlaceName;
import chillwright.core.log.Row;
import chillwright.service.LotQuery;
import chillwright.service.Page;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** A place that is said to be not in use while, by the log, food stands in it. */
record IdleDoubt(Desk desk, Visitor visitor) {
  /** So many lots are named; the list of lots has the others. */
  private static final int NAMED = 10;

  /** The question; empty where nothing stands there. */
  Optional<Question> of(Row row) {
    return row.details()
        .place()
        .filter(place -> row.details().how().filter(How.NOT_IN_USE::equals).isPresent())
        .flatMap(place -> of(named(place)));
  }

  private String named(String place) {
    List<String> names = desk.kitchen().setUp().places().stream().map(KnownPlace::name).toList();
    return PlaceName.among(names, place).orElse(place);
  }

  private Optional<Question> of(String place) {
    Page<LotState> inside =
        desk.kitchen().lots().list(LotQuery.ALL.at(place), Page.Wanted.first(NAMED));
    String lots =
        inside.items().stream()
            .map(lot -> lot.food() + " (" + lot.lot() + ")")
            .collect(Collectors.joining(", "));
    String all = inside.next().isPresent() ? lots + ", …" : lots;
    return lots.isEmpty()
        ? Optional.empty()
        : Optional.of(
            Question.of("idle", place + ":" + all, visitor.say("day.idle.inside", place, all)));
  }
}
