package chillwright.web.pages;

import chillwright.core.log.LogEntry;
import chillwright.service.Day.PlaceRound;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

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

  /** What to know of a lot in such a place; none elsewhere. */
  List<String> warning(String place) {
    return calling.containsKey(place)
        ? List.of(visitor.say("lots.place-calls", place, read(calling.get(place))))
        : List.of();
  }

  private String read(PlaceRound place) {
    LogEntry last = place.last().orElseThrow();
    return last.temperature().map(read -> read.text(visitor.scale())).orElse("")
        + ", "
        + desk.clock(last.happenedAt(), visitor);
  }
}
