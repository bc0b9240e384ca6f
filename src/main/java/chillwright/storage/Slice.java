package chillwright.storage;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * A part of an ordered list.
 *
 * @param next after which the list goes on; empty at its end
 */
public record Slice<T>(List<T> items, Optional<Position> next) {
  /**
   * A place in an ordered list: the sort key of an item, and what tells it from its equals.
   *
   * @param order the value the list is ordered by; 0 where it is ordered by the row alone
   * @param row key of the item's row
   * @param seq number within that row's own list; 0 where there is none
   */
  public record Position(long order, long row, long seq) {}

  public Slice {
    items = List.copyOf(items);
  }

  /** Of rows of which one more than the limit was asked for, to see whether there are more. */
  static <R, T> Slice<T> of(
      List<R> rows, int limit, Function<R, T> item, Function<R, Position> position) {
    boolean more = rows.size() > limit;
    List<R> kept = more ? rows.subList(0, limit) : rows;
    Optional<Position> next =
        more ? Optional.of(position.apply(kept.get(limit - 1))) : Optional.empty();
    return new Slice<>(kept.stream().map(item).toList(), next);
  }
}
