package chillwright.web.pages;

import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.log.LogEntry;
import chillwright.service.Day.PlaceRound;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Places whose last reading asks for something that nobody has done: what is inside may suffer. */
final class CallingPlaces {
  private final Desk desk;
  private final Visitor visitor;
  private final Map<String, PlaceRound> calling = new LinkedHashMap<>();

  CallingPlaces(Desk desk, Visitor visitor) {
    this.desk = desk;
    this.visitor = visitor;
    desk.kitchen()
        .places()
        .unanswered(desk.kitchen().now())
        .forEach(place -> calling.put(place.name(), place));
  }

  List<NowView.Place> shown() {
    return calling.values().stream()
        .map(
            place ->
                new NowView.Place(
                    place.name(),
                    PlaceWords.sign(place),
                    PlaceWords.standing(place, visitor),
                    read(place),
                    LotsPages.ON_HAND
                        + "?place="
                        + URLEncoder.encode(place.name(), StandardCharsets.UTF_8)))
        .toList();
  }

  /** What to know of a lot on hand in such a place; none elsewhere. */
  List<String> warning(LotState lot) {
    return lot.standing().filter(standing -> lot.isOnHand()).flatMap(Standing::place).stream()
        .flatMap(place -> Optional.ofNullable(calling.get(place)).stream())
        .map(place -> visitor.say("lots.place-calls", place.name(), read(place)))
        .toList();
  }

  private String read(PlaceRound place) {
    LogEntry last = place.last().orElseThrow();
    return last.temperature().map(read -> read.text(visitor.scale())).orElse("")
        + ", "
        + desk.clock(last.happenedAt(), visitor);
  }
}
