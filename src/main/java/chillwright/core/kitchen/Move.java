package chillwright.core.kitchen;

import chillwright.core.kitchen.KnownPlace.Kind;
import chillwright.core.log.Phase;
import chillwright.core.log.Word;
import java.util.Optional;

/**
 * What a log calls it when a whole lot is put into another place. Where the food stays what it is,
 * the entry says no more than where it went: {@code moved} opens no phase, so no clock starts or
 * stops with it. Food that goes from a freezer into a refrigerator thaws, whatever its row said
 * before; that is an entry of its own.
 */
public final class Move {
  private Move() {}

  /**
   * The word for a move; empty where the place is not one to put such food into in passing, such as
   * cold food into a hot-holding unit, which is reheated first. Common practice, no source.
   *
   * @param here what the place is that it was in; empty where nobody said
   * @param stillCools whether a cooling runs: such food is not frozen yet, whatever it was put into
   */
  public static Optional<Word> word(
      Phase from, Optional<Kind> here, Kind there, boolean stillCools) {
    if (here.filter(there::equals).isPresent()) {
      return Optional.of(Word.MOVED);
    }
    return switch (there) {
      case REFRIGERATOR -> intoRefrigerator(from, stillCools);
      case FREEZER -> intoFreezer(from);
      case HOT_HOLDING -> intoHotHolding(from);
      case COUNTER -> ontoCounter(from);
      case OTHER -> Optional.of(Word.MOVED);
    };
  }

  private static Optional<Word> intoRefrigerator(Phase from, boolean stillCools) {
    return switch (from) {
      case COOKED, PREPARED, RECEIVED, OPENED, HOT_HOLDING, COOLING, REHEATING, SET_OUT ->
          Optional.of(Word.CHILLED);
      case FROZEN -> Optional.of(stillCools ? Word.CHILLED : Word.THAWING);
      case CHILLED, THAWING, TIME_CONTROL -> Optional.of(Word.MOVED);
      case SERVED, DISCARDED, USED_UP, PUT_BACK, COUNTED_OUT -> Optional.empty();
    };
  }

  /** Food that thaws, or is used by the clock, is not frozen again in passing. */
  private static Optional<Word> intoFreezer(Phase from) {
    return switch (from) {
      case COOKED, PREPARED, RECEIVED, OPENED, HOT_HOLDING, COOLING, CHILLED, REHEATING, SET_OUT ->
          Optional.of(Word.FROZEN);
      case FROZEN -> Optional.of(Word.MOVED);
      case THAWING, TIME_CONTROL, SERVED, DISCARDED, USED_UP, PUT_BACK, COUNTED_OUT ->
          Optional.empty();
    };
  }

  private static Optional<Word> intoHotHolding(Phase from) {
    return switch (from) {
      case COOKED, REHEATING -> Optional.of(Word.HOT_HOLDING);
      case HOT_HOLDING, TIME_CONTROL -> Optional.of(Word.MOVED);
      default -> Optional.empty();
    };
  }

  /** Food that is held at a temperature does not stay so on a counter. */
  private static Optional<Word> ontoCounter(Phase from) {
    return switch (from) {
      case COOKED, COOLING, REHEATING, TIME_CONTROL, SET_OUT -> Optional.of(Word.MOVED);
      default -> Optional.empty();
    };
  }

  /**
   * Whether a log that was written otherwise (by file, or before the place was described) calls
   * food frozen that stands in a place which is no freezer.
   */
  public static boolean isDoubtful(Phase phase, Kind here) {
    return phase == Phase.FROZEN && here != Kind.FREEZER && here != Kind.OTHER;
  }
}
