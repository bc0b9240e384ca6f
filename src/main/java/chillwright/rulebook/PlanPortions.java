package chillwright.rulebook;

import chillwright.core.log.Problem;
import chillwright.core.plan.Filling;
import chillwright.core.plan.Ingredient;
import chillwright.core.plan.Menu;
import chillwright.core.portions.Measure;
import chillwright.core.portions.Pan;
import chillwright.core.portions.Portion;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Reads how many portions of a dish there are, and into what they are filled. */
final class PlanPortions {
  /** So deep food is filled to cool, where the plan does not say. */
  private static final double USUAL_DEPTH = 2;

  private static final String USUAL_PAN = "full-2.5";

  /** Kilograms of a litre of food; common practice, no source. */
  private static final double DENSITY = 1;

  private final Faults faults;

  PlanPortions(Faults faults) {
    this.faults = faults;
  }

  /** As many as are named, or for all guests: one each, or as many as a guest eats. */
  int portions(Spot dish, OptionalInt guests) {
    boolean isByGuest = dish.has("portionsPerGuest");
    if (isByGuest && dish.has("portions")) {
      faults.add(only(dish.at("portionsPerGuest"), "portions"));
    }
    if (isByGuest && guests.isEmpty()) {
      faults.add(
          dish.at("portionsPerGuest")
              .fault(
                  "missing-key",
                  "guests beside it",
                  "nobody said how many guests there are. Write guests, or portions."));
    }
    if (isByGuest) {
      double each = dish.at("portionsPerGuest").node().asDouble();
      return (int) Math.ceil(guests.orElse(1) * each - 1e-9);
    }
    return dish.at("portions").node().asInt(guests.orElse(1));
  }

  /** What so many portions take: as it is written, or as many times as the recipe is made. */
  static List<Ingredient> ingredients(Spot dish, int portions) {
    double factor =
        dish.has("ingredientsFor") ? portions / dish.at("ingredientsFor").node().asDouble() : 1;
    return dish.at("ingredients").items().stream()
        .map(one -> ingredient(one).times(factor))
        .toList();
  }

  private static Ingredient ingredient(Spot spot) {
    OptionalDouble amount =
        spot.has("amount")
            ? OptionalDouble.of(spot.at("amount").node().asDouble())
            : OptionalDouble.empty();
    return new Ingredient(spot.text("name"), amount, spot.has("unit") ? spot.text("unit") : "");
  }

  private static Problem only(Spot spot, String other) {
    return spot.fault(
        "one-of-two",
        "this or " + other + ", not both",
        "there is " + other + " too. Write one of the two.");
  }

  /** Empty where the size of a portion is not given, or something is at fault. */
  Optional<Filling> filling(Spot dish) {
    boolean hasOunces = dish.has("portionFluidOunces");
    boolean hasMillilitres = dish.has("portionMillilitres");
    if (hasOunces && hasMillilitres) {
      faults.add(only(dish.at("portionMillilitres"), "portionFluidOunces"));
    }
    if (!hasOunces && !hasMillilitres) {
      Stream.of("pan", "panDepthInches").filter(dish::has).forEach(key -> sizeless(dish.at(key)));
      return Optional.empty();
    }
    double ounces =
        hasOunces
            ? dish.at("portionFluidOunces").node().asDouble()
            : dish.at("portionMillilitres").node().asDouble() / Portion.MILLILITRES;
    return pan(dish).flatMap(pan -> filling(dish, new Portion(ounces), pan));
  }

  private void sizeless(Spot spot) {
    faults.add(
        spot.fault(
            "missing-key",
            "portionFluidOunces or portionMillilitres beside it",
            "a pan is filled by the size of a portion. Write portionFluidOunces too."));
  }

  private Optional<Pan> pan(Spot dish) {
    List<Pan> pans = Handbook.shipped().pans();
    String key = dish.has("pan") ? dish.text("pan") : USUAL_PAN;
    Optional<Pan> found = pans.stream().filter(pan -> pan.key().equals(key)).findFirst();
    if (found.isEmpty()) {
      String known = pans.stream().map(Pan::key).collect(Collectors.joining(", "));
      faults.add(
          dish.at("pan")
              .fault("wrong-value", known, "there is no such pan. Write one of " + known + "."));
    }
    return found;
  }

  private Optional<Filling> filling(Spot dish, Portion portion, Pan pan) {
    double depth =
        dish.at("panDepthInches").node().asDouble(Math.min(USUAL_DEPTH, pan.depthInches()));
    if (pan.fluidOunces(depth).value().isEmpty()) {
      String most = "at most " + pan.depthInches() + " in, the depth of the pan";
      faults.add(
          dish.at("panDepthInches")
              .fault("wrong-value", most, "the pan is not so deep. Write less."));
      return Optional.empty();
    }
    return Optional.of(new Filling(portion, pan, depth, tools(portion)));
  }

  private static List<Measure> tools(Portion portion) {
    List<Measure> all = Handbook.shipped().measures();
    return Stream.of("ladle", "scoop")
        .map(kind -> all.stream().filter(tool -> tool.key().startsWith(kind)).toList())
        .flatMap(kind -> portion.tool(kind).stream())
        .toList();
  }

  /**
   * Says what pans hold where the cook did not, of what the kitchen has: it stays in the same pans
   * from the refrigerator to the hot box.
   *
   * @param keeps what the cook said, which stays; what follows is put beside it
   */
  static void keep(
      Filling filling, int portions, Collection<String> has, Map<String, Double> keeps) {
    Stream.of(Menu.REFRIGERATOR, Menu.FREEZER, Menu.WARM)
        .filter(has::contains)
        .forEach(thing -> keeps.putIfAbsent(thing, filling.room(portions)));
    if (has.contains(Menu.FREEZING)) {
      keeps.putIfAbsent(Menu.FREEZING, filling.litres(portions) * DENSITY);
    }
  }
}
