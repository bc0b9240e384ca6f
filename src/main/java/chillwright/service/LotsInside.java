package chillwright.service;

import chillwright.core.keeping.LotState;
import chillwright.core.log.LogEntry;
import chillwright.service.Day.PlaceRound;
import java.util.List;

/** The lots in a place that reads beyond its limit, or that is said to be not in use. */
record LotsInside(Kitchen kitchen) {
  private static final int INSIDE = 50;

  PlaceRound of(PlaceRound place) {
    if (place.isWithin().orElse(true) && !place.isNotInUse()) {
      return place;
    }
    LotQuery inside = LotQuery.ALL.at(place.name());
    List<LotState> lots = kitchen.lots().list(inside, Page.Wanted.first(INSIDE)).items();
    return new PlaceRound(
        place.name(),
        place.known(),
        place.limit(),
        place.last(),
        place.read(),
        lots,
        place.notInUse().filter(said -> isFilledSince(place.name(), lots, said)).isPresent(),
        place.written());
  }

  /** Whether food came to a place after it was said to be not in use. */
  private boolean isFilledSince(String place, List<LotState> inside, LogEntry said) {
    return inside.stream()
        .flatMap(lot -> kitchen.lots().lot(lot.lot()).stream())
        .flatMap(view -> view.judged().stream())
        .flatMap(judged -> judged.timeline().entries().stream())
        .filter(entry -> entry.details().place().filter(place::equals).isPresent())
        .anyMatch(entry -> isAfter(entry, said));
  }

  private static boolean isAfter(LogEntry entry, LogEntry said) {
    int order = entry.happenedAt().compareTo(said.happenedAt());
    return order > 0 || (order == 0 && entry.writtenAt().isAfter(said.writtenAt()));
  }
}
