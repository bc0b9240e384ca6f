package chillwright.cli;

import chillwright.core.kitchen.Allergen;
import chillwright.core.kitchen.KnownFood;
import chillwright.core.kitchen.KnownPlace;
import chillwright.core.kitchen.KnownProbe;
import chillwright.core.kitchen.Person;
import chillwright.core.measure.Temperature;
import chillwright.core.rules.RuleSet;
import chillwright.service.CardKind;
import chillwright.service.Kitchen;
import chillwright.service.SetUp;
import chillwright.web.answers.ProbeAnswers;
import chillwright.web.answers.SetUpAnswers;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** What a kitchen says of itself, as rows of a file and as answers. */
final class KitchenCards {
  private final Kitchen kitchen;
  private final SetUp setUp;

  KitchenCards(Kitchen kitchen) {
    this.kitchen = kitchen;
    this.setUp = kitchen.setUp();
  }

  /** The answers that the service gives. */
  List<?> answers(CardKind kind) {
    RuleSet rules = setUp.rulesOfToday();
    return switch (kind) {
      case FOODS -> setUp.foods().stream().map(SetUpAnswers::food).toList();
      case PLACES -> setUp.places().stream().map(p -> SetUpAnswers.place(p, rules)).toList();
      case PEOPLE -> setUp.people().stream().map(SetUpAnswers::person).toList();
      case PROBES ->
          kitchen.probes().all().stream().map(new ProbeAnswers(kitchen.zone())::probe).toList();
    };
  }

  /** Cells by their names, as a file that is read has them. */
  List<Map<String, String>> rows(CardKind kind) {
    return switch (kind) {
      case FOODS -> setUp.foods().stream().map(KitchenCards::row).toList();
      case PLACES -> setUp.places().stream().map(KitchenCards::row).toList();
      case PEOPLE -> setUp.people().stream().map(KitchenCards::row).toList();
      case PROBES -> setUp.probes().stream().map(KitchenCards::row).toList();
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
