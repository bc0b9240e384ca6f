package chillwright.core.kitchen;

import chillwright.core.log.Folded;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * A food that went into a lot.
 *
 * @param known what the kitchen says of it today; empty where it said nothing
 * @param said all that was said of its allergens, the earliest first
 * @param began when the earliest lot of it did; empty where nothing of it was logged
 */
public record FoodInLot(
    String food, Optional<KnownFood> known, List<AllergensSaid> said, Optional<Instant> began) {
  public FoodInLot {
    Objects.requireNonNull(food, "food");
    Objects.requireNonNull(known, "known");
    said = List.copyOf(said);
    Objects.requireNonNull(began, "began");
  }

  /**
   * What was taken out of its description after the lot began; empty where that is nothing.
   *
   * @param allergens that are named today, of this food or another: these stay as they are
   * @param others further ones, in words
   */
  Optional<TakenOut> takenOut(Set<Allergen> allergens, Collection<String> others) {
    Set<Allergen> gone = new TreeSet<>();
    Map<String, String> words = new LinkedHashMap<>();
    for (AllergensSaid once : saidBefore()) {
      gone.addAll(once.allergens());
      once.others().stream()
          .flatMap(FoodInLot::each)
          .forEach(word -> words.putIfAbsent(Folded.of(word), word));
    }
    gone.removeAll(allergens);
    others.stream().flatMap(FoodInLot::each).map(Folded::of).forEach(words::remove);
    return gone.isEmpty() && words.isEmpty()
        ? Optional.empty()
        : Optional.of(new TakenOut(food, new ArrayList<>(gone), new ArrayList<>(words.values())));
  }

  /**
   * Since when labels of the lot name what is looked for, though today's description does not;
   * empty where they do not. What was named at any time after the lot began stays on its labels.
   */
  public Optional<Instant> stillNamedFrom(AllergenNaming.Names names) {
    return saidBefore().stream().filter(names::isIn).map(AllergensSaid::at).findFirst();
  }

  /** Whether something else was said of its allergens since the lot began. */
  boolean isSaidOtherwise() {
    return !saidBefore().isEmpty();
  }

  /** What was said until some moment after the lot began, and was replaced then. */
  private List<AllergensSaid> saidBefore() {
    int first = said.size();
    while (first > 0 && began.filter(said.get(first - 1).at()::isAfter).isPresent()) {
      first--;
    }
    return said.isEmpty() ? List.of() : said.subList(Math.max(0, first - 1), said.size() - 1);
  }

  /** Each thing of a list in words. */
  static Stream<String> each(String words) {
    return Arrays.stream(words.split("[,;\n]", -1)).map(String::strip).filter(w -> !w.isEmpty());
  }
}
