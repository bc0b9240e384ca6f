package chillwright.web.pages;

import chillwright.core.keeping.LotOrder;
import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.log.KeepingList;
import chillwright.service.Kitchen;
import chillwright.service.LotQuery;
import chillwright.service.Page;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What a kitchen said before, to be offered again: its foods and its places. */
final class Known {
  private final Kitchen kitchen;

  Known(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /** Names of the foods of the newest lots. */
  List<String> foods() {
    return List.copyOf(categoryByFood().keySet());
  }

  /** The category of the newest lot of that food. */
  Optional<String> category(String food) {
    return Optional.ofNullable(categoryByFood().get(food));
  }

  private Map<String, String> categoryByFood() {
    Map<String, String> foods = new LinkedHashMap<>();
    for (LotState lot : kitchen.lots().list(LotQuery.ALL, Page.Wanted.first(Page.MOST)).items()) {
      foods.putIfAbsent(lot.food(), lot.category());
    }
    return foods;
  }

  /** Where lots are now. */
  List<String> places() {
    LotQuery onHand = LotQuery.ALL.in(LotOrder.USE_FIRST);
    return kitchen.lots().list(onHand, Page.Wanted.first(Page.MOST)).items().stream()
        .flatMap(lot -> lot.standing().flatMap(Standing::place).stream())
        .distinct()
        .sorted(Comparator.naturalOrder())
        .toList();
  }

  List<Choice> categories() {
    KeepingList list = kitchen.library().keepingList();
    return list.categories().stream()
        .map(category -> new Choice(category.key(), category.title()))
        .sorted(Comparator.comparing(Choice::title))
        .toList();
  }
}
