package chillwright.core.log;

import chillwright.core.measure.Depth;
import chillwright.core.measure.Temperature;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;

/**
 * What an entry measures and describes: the cells a correction may replace. All may be blank.
 *
 * @param food name of the food, on a lot's first row
 * @param category key of the keeping list, on a lot's first row
 * @param temperature of the food (of the place, in a reading of a place), as read
 * @param air temperature of the surroundings: air, or the water food is thawed in
 * @param portions made (on the first row), taken, served or discarded; 1 or more
 * @param from the lots this one was divided from or made of, on a lot's first row
 * @param to who got the portions
 * @param until a time or date marked on the food
 * @param container what the food stands in, by the name the kitchen gives it
 * @param depth of the food in it
 */
public record Details(
    Optional<String> food,
    Optional<String> category,
    Optional<Temperature> temperature,
    Optional<How> how,
    Optional<String> place,
    Optional<Temperature> air,
    OptionalInt portions,
    List<LotId> from,
    Optional<String> to,
    Optional<Mark> until,
    Optional<String> probe,
    Optional<String> container,
    Optional<Depth> depth) {
  /** No cell filled in. */
  public static final Details NONE =
      new Details(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          OptionalInt.empty(),
          List.of(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty());

  public Details {
    from = List.copyOf(from);
  }

  public boolean isBlank() {
    return equals(NONE);
  }

  /** These details with the filled cells of the correction in place of their own. */
  public Details correctedBy(Details correction) {
    return new Details(
        filled(correction, Details::food),
        filled(correction, Details::category),
        filled(correction, Details::temperature),
        filled(correction, Details::how),
        filled(correction, Details::place),
        filled(correction, Details::air),
        correction.portions.isPresent() ? correction.portions : portions,
        correction.from.isEmpty() ? from : correction.from,
        filled(correction, Details::to),
        filled(correction, Details::until),
        filled(correction, Details::probe),
        filled(correction, Details::container),
        filled(correction, Details::depth));
  }

  /** These details without the cells that only a lot's first row, or a correction of it, keeps. */
  Details withoutFirstRowCells() {
    if (food.isEmpty() && category.isEmpty() && from.isEmpty()) {
      return this;
    }
    return new Details(
        Optional.empty(),
        Optional.empty(),
        temperature,
        how,
        place,
        air,
        portions,
        List.of(),
        to,
        until,
        probe,
        container,
        depth);
  }

  /** These details without a count of portions. */
  public Details uncounted() {
    return new Details(
        food,
        category,
        temperature,
        how,
        place,
        air,
        OptionalInt.empty(),
        from,
        to,
        until,
        probe,
        container,
        depth);
  }

  /** These details with what was read. */
  Details reading(Temperature read) {
    return new Details(
        food,
        category,
        Optional.of(read),
        how,
        place,
        air,
        portions,
        from,
        to,
        until,
        probe,
        container,
        depth);
  }

  /** These details at a place of that name. */
  public Details at(String name) {
    return new Details(
        food,
        category,
        temperature,
        how,
        Optional.of(name),
        air,
        portions,
        from,
        to,
        until,
        probe,
        container,
        depth);
  }

  /** These details with another mark on the food. */
  public Details markedUntil(Optional<Mark> mark) {
    return new Details(
        food,
        category,
        temperature,
        how,
        place,
        air,
        portions,
        from,
        to,
        mark,
        probe,
        container,
        depth);
  }

  private <T> Optional<T> filled(Details correction, Function<Details, Optional<T>> cell) {
    Optional<T> corrected = cell.apply(correction);
    return corrected.isPresent() ? corrected : cell.apply(this);
  }
}
