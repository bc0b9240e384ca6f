package chillwright.print;

import chillwright.core.log.LotId;
import chillwright.core.plan.Dish;
import chillwright.core.plan.Menu;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** What is said of the lots that the dishes of a plan became. */
public record DishLotsText(PlanText text) {
  /** What dishes that became lots have too little of, a sentence each. */
  public List<String> missing(Map<String, Integer> missing) {
    return new TreeMap<>(missing)
        .entrySet().stream()
            .map(dish -> text.say("plan.missing", dish.getKey(), dish.getValue()))
            .toList();
  }

  /** Lots of a dish that are known, and that nothing is logged of yet. */
  public String toCome(String dish, Map<LotId, Integer> lots) {
    String each =
        lots.entrySet().stream()
            .map(lot -> text.say("plan.to-come.lot", lot.getKey().text(), lot.getValue()))
            .collect(Collectors.joining("; "));
    return text.say("plan.to-come", dish, each);
  }

  /** A lot that waits in the refrigerator, where others of its dish were frozen. */
  public String cold(Dish dish, LotId lot, Menu menu) {
    LocalDate served = menu.due(dish).atZone(text.zone()).toLocalDate();
    return text.say("plan.cold", dish.name(), lot.text(), text.day(served));
  }

  /** A lot that another plan to come goes by too. */
  public String shared(LotId lot, String plan) {
    return text.say("plan.shared", lot.text(), plan);
  }
}
