package chillwright.web.pages;

import chillwright.core.kitchen.KnownFood;
import chillwright.core.kitchen.KnownPlace;
import chillwright.core.kitchen.KnownPlace.Kind;
import chillwright.core.log.How;
import chillwright.core.log.Word;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Where food goes that is frozen, chilled or thawed in a refrigerator: the entry form has a place
 * for each of these words, filled in with where the kitchen keeps that food, or with its only place
 * of that kind. Whoever saves the form sees it, and may empty it: nothing is filled in behind
 * anybody's back.
 */
final class ColdPlace {
  private static final String PLACE = "place";

  /** What the names of these fields begin with. */
  static final String FIELD = "place-";

  /** The kind of place that makes food cold so. */
  private static final Map<String, Kind> COLD =
      Map.of(
          Word.FROZEN.text(),
          Kind.FREEZER,
          Word.CHILLED.text(),
          Kind.REFRIGERATOR,
          Word.THAWING.text(),
          Kind.REFRIGERATOR);

  /** Food that thaws so is in no refrigerator. */
  private static final Set<String> ELSEWHERE =
      Set.of(How.RUNNING_WATER.text(), How.WHILE_COOKING.text());

  private ColdPlace() {}

  static boolean isCold(String word) {
    return COLD.containsKey(word);
  }

  /** The fields as they are when the form is opened. */
  static Map<String, String> usual(Desk desk, String food) {
    List<KnownPlace> places = desk.kitchen().setUp().places();
    Optional<String> kept = desk.kitchen().setUp().food(food).flatMap(KnownFood::place);
    Map<String, String> fields = new HashMap<>();
    COLD.forEach(
        (word, kind) -> {
          List<String> cold =
              places.stream().filter(p -> p.kind() == kind).map(KnownPlace::name).toList();
          kept.filter(cold::contains)
              .or(() -> Optional.of(cold).filter(all -> all.size() == 1).map(all -> all.get(0)))
              .ifPresent(place -> fields.put(FIELD + word, place));
        });
    return fields;
  }

  /** The form with the place beside its word; one named for any word goes first. */
  static Form chosen(Form form) {
    String field = FIELD + form.text("entry");
    boolean isElsewhere = ELSEWHERE.contains(form.text("how"));
    return form.has(PLACE) || !form.has(field) || isElsewhere
        ? form
        : form.with(PLACE, form.text(field));
  }
}
