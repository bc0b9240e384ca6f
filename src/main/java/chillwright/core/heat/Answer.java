package chillwright.core.heat;

import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;

/**
 * A figure, or the reason why there is none: outside the range of a formula nothing is guessed.
 *
 * @param <T> the type of the figure
 */
public sealed interface Answer<T> {
  /** A figure. */
  record Known<T>(T figure) implements Answer<T> {
    public Known {
      Objects.requireNonNull(figure, "figure");
    }
  }

  /** No figure, and why. */
  record Beyond<T>(Reason why) implements Answer<T> {
    public Beyond {
      Objects.requireNonNull(why, "why");
    }
  }

  static <T> Answer<T> known(T value) {
    return new Known<>(value);
  }

  static <T> Answer<T> beyond(Reason reason) {
    return new Beyond<>(reason);
  }

  /** The figure, if there is one. */
  default Optional<T> value() {
    return this instanceof Known<T> known ? Optional.of(known.figure()) : Optional.empty();
  }

  /** Why there is no figure; empty where there is one. */
  default Optional<Reason> reason() {
    return this instanceof Beyond<T> beyond ? Optional.of(beyond.why()) : Optional.empty();
  }

  /** What follows from the figure; a reason stays as it is. */
  default <U> Answer<U> map(Function<T, U> next) {
    return flatMap(value -> known(next.apply(value)));
  }

  /** As {@link #map}, where what follows may have no figure either. */
  default <U> Answer<U> flatMap(Function<T, Answer<U>> next) {
    return this instanceof Known<T> known
        ? next.apply(known.figure())
        : new Beyond<>(reason().orElseThrow());
  }
}
