package chillwright.service;

import chillwright.core.kitchen.Allergen;
import chillwright.core.kitchen.KnownFood;
import chillwright.core.kitchen.KnownPlace;
import chillwright.core.kitchen.KnownProbe;
import chillwright.core.kitchen.Person;
import chillwright.core.measure.Temperature;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/** What a kitchen says of itself, as the rows of a file that can be taken again. */
public final class CardRows {
  private CardRows() {}

  /** Cells by their names; every one of the kind's is there, blank where nothing is said. */
  public static List<Map<String, String>> of(SetUp setUp, CardKind kind) {
    return switch (kind) {
      case FOODS -> setUp.foods().stream().map(CardRows::row).toList();
      case PLACES -> setUp.places().stream().map(CardRows::row).toList();
      case PEOPLE -> setUp.people().stream().map(CardRows::row).toList();
      case PROBES -> setUp.probes().stream().map(CardRows::row).toList();
    };
  }

  private static Map<String, String> row(KnownFood food) {
    String allergens =
        food.allergens().stream().map(Allergen::key).collect(Collectors.joining(" "));
    return Map.ofEntries(
        Map.entry("name", food.name()),
        Map.entry("category", food.category()),
        Map.entry("portions", count(food.portions())),
        Map.entry("container", food.container().orElse("")),
        Map.entry("place", food.place().orElse("")),
        Map.entry("reheating", food.reheating().orElse("")),
        Map.entry("thawing", food.thawing().orElse("")),
        Map.entry("roomDays", count(food.roomDays())),
        Map.entry("allergens", allergens),
        Map.entry("otherAllergens", food.otherAllergens().orElse("")),
        Map.entry("ingredients", food.ingredients().orElse("")));
  }

  private static String count(OptionalInt count) {
    return count.isPresent() ? Integer.toString(count.getAsInt()) : "";
  }

  private static Map<String, String> row(KnownPlace place) {
    return Map.of(
        "name", place.name(),
        "kind", place.kind().key(),
        "ownLimit", place.ownLimit().map(Temperature::text).orElse(""),
        "rounds", Integer.toString(place.rounds()));
  }

  private static Map<String, String> row(Person person) {
    return Map.of("initials", person.initials(), "name", person.name().orElse(""));
  }

  private static Map<String, String> row(KnownProbe probe) {
    return Map.of(
        "name", probe.name(),
        "scales", probe.scales().key(),
        "note", probe.note().orElse(""));
  }
}
