package chillwright.service;

import chillwright.core.kitchen.KnownPlace;
import chillwright.core.log.Details;
import chillwright.core.log.Incoming;
import chillwright.core.log.PlaceName;
import chillwright.core.log.Row;
import chillwright.storage.Session;
import java.util.List;

/** Places as the kitchen spells them, whatever capitals or hyphens a row or a question has. */
final class SpelledPlaces {
  private final List<String> known;

  private SpelledPlaces(Session session) {
    known = session.setUp().places().stream().map(KnownPlace::name).toList();
  }

  /** The name of a place of this kitchen that is meant; else what was given. */
  static String named(Session session, String given) {
    return PlaceName.among(new SpelledPlaces(session).known, given).orElse(given);
  }

  /** The same rows, each with the place that it means. */
  static List<Incoming> in(Session session, List<Incoming> rows) {
    if (rows.stream().noneMatch(SpelledPlaces::hasPlace)) {
      return rows;
    }
    SpelledPlaces places = new SpelledPlaces(session);
    return places.known.isEmpty() ? rows : rows.stream().map(places::spelled).toList();
  }

  private static boolean hasPlace(Incoming incoming) {
    return incoming instanceof Row row && row.details().place().isPresent();
  }

  private Incoming spelled(Incoming incoming) {
    if (!(incoming instanceof Row row) || !hasPlace(incoming)) {
      return incoming;
    }
    String given = row.details().place().orElseThrow();
    String meant = PlaceName.among(known, given).orElse(given);
    if (meant.equals(given)) {
      return incoming;
    }
    Details details = row.details().at(meant);
    return new Row(
        row.where(),
        row.lot(),
        row.word(),
        row.when(),
        row.id(),
        row.by(),
        row.note(),
        row.corrects(),
        details);
  }
}
