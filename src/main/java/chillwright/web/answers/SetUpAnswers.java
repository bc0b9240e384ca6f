package chillwright.web.answers;

import chillwright.core.kitchen.Allergen;
import chillwright.core.kitchen.KnownFood;
import chillwright.core.kitchen.KnownPlace;
import chillwright.core.kitchen.PlaceLimit;
import chillwright.core.measure.Temperature;
import chillwright.core.rules.RuleSet;
import java.util.List;
import java.util.Optional;

/** What the kitchen says of itself, as answered. */
public final class SetUpAnswers {
  private SetUpAnswers() {}

  /** A food that is made again and again. */
  public record Food(
      String name,
      String category,
      Optional<Integer> portions,
      Optional<String> container,
      Optional<String> place,
      Optional<String> reheating,
      Optional<String> thawing,
      Optional<Integer> roomDays,
      List<String> allergens,
      Optional<String> otherAllergens,
      Optional<String> ingredients) {}

  /** A place where food is kept, with what its readings are held against. */
  public record Place(
      String name, String kind, Optional<String> ownLimit, int rounds, Optional<Bound> limit) {}

  /**
   * What readings are held against.
   *
   * @param side at-most or at-least
   * @param source rules, house, or quality: advice, no limit of safety
   */
  public record Bound(String side, String figure, String source, Optional<String> citation) {}

  /** Somebody who works here. */
  public record Person(String initials, Optional<String> name) {}

  /** What every label bears. */
  public record Statement(Optional<String> statement) {}

  public static Food food(KnownFood food) {
    return new Food(
        food.name(),
        food.category(),
        food.portions().stream().boxed().findFirst(),
        food.container(),
        food.place(),
        food.reheating(),
        food.thawing(),
        food.roomDays().stream().boxed().findFirst(),
        food.allergens().stream().map(Allergen::key).toList(),
        food.otherAllergens(),
        food.ingredients());
  }

  public static Place place(KnownPlace place, RuleSet rules) {
    return new Place(
        place.name(),
        place.kind().key(),
        place.ownLimit().map(Temperature::text),
        place.rounds(),
        PlaceLimit.of(place, rules).map(SetUpAnswers::bound));
  }

  public static Bound bound(PlaceLimit limit) {
    return new Bound(
        limit.isColdSide() ? "at-most" : "at-least",
        limit.limit().text(),
        limit.source().key(),
        Optional.of(limit.citation()).filter(text -> !text.isEmpty()));
  }

  public static Person person(chillwright.core.kitchen.Person person) {
    return new Person(person.initials(), person.name());
  }
}
