package chillwright.service.ahead;

import chillwright.core.keeping.LotState;
import chillwright.core.kitchen.KnownFood;
import chillwright.core.log.Phase;
import chillwright.service.Kitchen;
import chillwright.service.LotQuery;
import chillwright.service.Page;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** The foods of the kitchen that is served, and what its log has of them. */
public record KitchenFoods(Kitchen kitchen) implements OwnFoods {
  /** So many frozen lots are looked at for one answer. */
  static final int LOOKED_AT = 2_000;

  @Override
  public List<String> names() {
    return kitchen.setUp().foods().stream().map(KnownFood::name).toList();
  }

  @Override
  public Optional<KnownFood> food(String name) {
    return kitchen.setUp().foods().stream()
        .filter(food -> food.name().equalsIgnoreCase(name))
        .findFirst();
  }

  @Override
  public Stock frozen(String food, LocalDate goodOn) {
    LotQuery query = LotQuery.ALL.in(Phase.FROZEN).goodOn(goodOn);
    List<OptionalInt> counts = new ArrayList<>();
    int looked = 0;
    Page<LotState> page = kitchen.lots().list(query, Page.Wanted.first(Page.MOST));
    looked += add(page, food, counts);
    while (page.next().isPresent() && looked < LOOKED_AT) {
      page = kitchen.lots().list(query, new Page.Wanted(Page.MOST, page.next()));
      looked += add(page, food, counts);
    }
    long portions = counts.stream().flatMapToInt(OptionalInt::stream).asLongStream().sum();
    int uncounted = (int) counts.stream().filter(OptionalInt::isEmpty).count();
    return new Stock(portions, counts.size(), uncounted, page.next().isEmpty());
  }

  private static int add(Page<LotState> page, String food, List<OptionalInt> counts) {
    page.items().stream()
        .filter(lot -> lot.food().equalsIgnoreCase(food))
        .forEach(lot -> counts.add(lot.portions().left()));
    return page.items().size();
  }
}
