package chillwright.web.pages;

import chillwright.core.keeping.LotOrder;
import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.kitchen.KnownFood;
import chillwright.core.log.Folded;
import chillwright.core.log.KeepingList;
import chillwright.print.Language;
import chillwright.rulebook.Handbook;
import chillwright.service.Kitchen;
import chillwright.service.LotQuery;
import chillwright.service.Page;
import java.text.Normalizer;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** What a kitchen said before, to be offered again: its foods and its places. */
final class Known {
  private final Kitchen kitchen;

  Known(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /** Names of the foods that the kitchen described, then those of the newest lots. */
  List<String> foods() {
    Set<String> names = new LinkedHashSet<>();
    kitchen.setUp().foods().forEach(food -> names.add(food.name()));
    names.addAll(categoryByFood().keySet());
    return List.copyOf(names);
  }

  /** What the kitchen said of that food; capitals and accents make no difference. */
  Optional<KnownFood> food(String name) {
    String folded = Folded.of(name);
    return kitchen
        .setUp()
        .food(Normalizer.normalize(name, Normalizer.Form.NFC))
        .or(
            () ->
                kitchen.setUp().foods().stream()
                    .filter(food -> Folded.of(food.name()).equals(folded))
                    .findFirst());
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

  /** The places that the kitchen described, and those where lots are now. */
  List<String> places() {
    Set<String> names = new TreeSet<>();
    kitchen.setUp().places().forEach(place -> names.add(place.name()));
    names.addAll(placesOfLots());
    return List.copyOf(names);
  }

  /** The places where lots are now. */
  List<String> placesOfLots() {
    Set<String> names = new TreeSet<>();
    LotQuery onHand = LotQuery.ALL.in(LotOrder.USE_FIRST);
    kitchen
        .lots()
        .list(onHand, Page.Wanted.first(Page.MOST))
        .items()
        .forEach(lot -> lot.standing().flatMap(Standing::place).ifPresent(names::add));
    return List.copyOf(names);
  }

  /** What the kitchen keeps its foods in, then the pans of the handbook. */
  List<String> containers(Language language) {
    Set<String> names = new LinkedHashSet<>();
    kitchen.setUp().foods().forEach(food -> food.container().ifPresent(names::add));
    Handbook.shipped().pans().forEach(pan -> names.add(language.named(pan.title())));
    return List.copyOf(names);
  }

  /** The kinds of food to choose from, by their titles. */
  List<Choice> categories(Language language) {
    KeepingList list = kitchen.library().keepingList();
    return list.categories().stream()
        .map(category -> new Choice(category.key(), language.titled(category)))
        .sorted(Comparator.comparing(Choice::title))
        .toList();
  }
}
