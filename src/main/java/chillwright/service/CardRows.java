package chillwright.service;

import chillwright.core.kitchen.Allergen;
import chillwright.core.kitchen.KnownFood;
import chillwright.core.kitchen.KnownPlace;
import chillwright.core.kitchen.KnownProbe;
import chillwright.core.kitchen.Person;
import chillwright.core.measure.Temperature;
import java.util.List;
import java.util.Map;
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
    String portions =
        food.portions().isPresent() ? Integer.toString(food.portions().getAsInt()) : "";
    return Map.of(
        "name", food.name(),
        "category", food.category(),
        "portions", portions,
        "container", food.container().orElse(""),
        "place", food.place().orElse(""),
        "reheating", food.reheating().orElse(""),
        "thawing", food.thawing().orElse(""),
        "allergens", allergens,
        "otherAllergens", food.otherAllergens().orElse(""),
        "ingredients", food.ingredients().orElse(""));
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
