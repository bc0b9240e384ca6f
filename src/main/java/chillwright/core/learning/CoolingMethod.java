package chillwright.core.learning;

import chillwright.core.measure.Depth;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * A way of cooling, as a log tells it.
 *
 * @param food its name
 * @param depth as recorded: 2 in and 5 cm are two ways, since nobody says that they are one
 * @param places where it stood while it cooled, in order of time
 */
public record CoolingMethod(
    String food, Optional<String> container, Optional<Depth> depth, List<String> places) {
  public CoolingMethod {
    Objects.requireNonNull(food, "food");
    Objects.requireNonNull(container, "container");
    Objects.requireNonNull(depth, "depth");
    places = List.copyOf(places);
  }

  /** The same way however its words were capitalized. */
  CoolingMethod plain() {
    return new CoolingMethod(
        plain(food),
        container.map(CoolingMethod::plain),
        depth,
        places.stream().map(CoolingMethod::plain).toList());
  }

  /** Whether another cooling went this way as far as it has gone. */
  boolean beganAs(CoolingMethod begun) {
    CoolingMethod own = plain();
    CoolingMethod other = begun.plain();
    int far = other.places().size();
    return own.food().equals(other.food())
        && own.container().equals(other.container())
        && own.depth().equals(other.depth())
        && own.places().size() >= far
        && own.places().subList(0, far).equals(other.places());
  }

  private static String plain(String words) {
    return words.strip().toLowerCase(Locale.ROOT);
  }

  /** Whether a person who asks for these words means it; empty asks for all. */
  public boolean isOf(Optional<String> askedFood, Optional<String> askedContainer) {
    return askedFood.filter(asked -> !plain(asked).equals(plain(food))).isEmpty()
        && askedContainer
            .filter(asked -> container.filter(own -> plain(own).equals(plain(asked))).isEmpty())
            .isEmpty();
  }
}
