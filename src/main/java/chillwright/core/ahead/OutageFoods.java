package chillwright.core.ahead;

import chillwright.core.heat.OutageFood;
import chillwright.core.heat.OutageFood.Place;
import chillwright.core.heat.OutageFood.Then;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** After a power failure, food by food: what is discarded comes first, then what is kept. */
public final class OutageFoods {
  /** Keys of sentences that name a group of foods, under the sentence before them. */
  private static final String FOOD = "outage.food.";

  private OutageFoods() {}

  /** Whether a sentence is a line of the list. */
  public static boolean isFood(Told told) {
    return told.key().startsWith(FOOD);
  }

  /** The sentences for one place, the foods of each under it. */
  public static List<Told> told(List<OutageFood> foods, Place place) {
    List<Told> told = new ArrayList<>();
    for (Then then : Then.values()) {
      List<OutageFood> these =
          foods.stream().filter(food -> food.place() == place && food.then() == then).toList();
      if (!these.isEmpty()) {
        told.add(Told.of(key(place, then), filled(these.get(0))));
        these.forEach(food -> told.add(Told.of(FOOD + food.key(), filled(food))));
      }
    }
    return told;
  }

  private static String key(Place place, Then then) {
    return ("outage." + place + "." + then).toLowerCase(Locale.ROOT);
  }

  private static Filled[] filled(OutageFood food) {
    double celsius = (food.fahrenheit() - 32) * 5 / 9;
    return new Filled[] {
      Filled.amount("above", celsius, Filled.Unit.CELSIUS), Filled.hours("longer", food.hours())
    };
  }
}
