package chillwright.web.pages;

import chillwright.core.log.LogEntry;
import chillwright.service.Day;
import chillwright.service.Day.PlaceRound;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Places whose last reading asks for something that nobody has done: what is inside may suffer. */
final class CallingPlaces {
  private final Desk desk;
  private final Visitor visitor;
  private final Map<String, PlaceRound> calling;

  CallingPlaces(Desk desk, Visitor visitor) {
    this.desk = desk;
    this.visitor = visitor;
    Day day = desk.kitchen().days().day(desk.kitchen().days().today());
    this.calling =
        day.round().stream()
            .filter(place -> isUrgent(place) && !isAnswered(place))
            .collect(Collectors.toMap(PlaceRound::name, Function.identity()));
  }

  /** What is held against a figure of quality alone can wait for the round. */
  private static boolean isUrgent(PlaceRound place) {
    return place.calls() && !PlaceWords.sign(place).equals(Sign.NONE);
  }

  /** What was done answers the readings before it; a new one calls again. */
  private static boolean isAnswered(PlaceRound place) {
    return place
        .last()
        .filter(
            last ->
                place.acts().stream()
                    .anyMatch(act -> !act.happenedAt().isBefore(last.happenedAt())))
        .isPresent();
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
