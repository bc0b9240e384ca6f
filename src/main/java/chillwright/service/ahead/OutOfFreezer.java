package chillwright.service.ahead;

import chillwright.core.ahead.Ahead.Source;
import chillwright.core.ahead.Filled;
import chillwright.core.ahead.Told;
import chillwright.core.log.Category;
import chillwright.service.KeepQuestion;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Whether food that leaves the freezer on a day is good for some more, as the list of what is good
 * on a day has it ({@link chillwright.core.keeping.StillGood}): food that needs the cold by its
 * days once thawed, the day itself included; food that needs none by the days at room temperature
 * that its kitchen states.
 *
 * @param days that it has; empty where nobody has stated any
 * @param after so many days more are asked for, from 1
 */
record OutOfFreezer(boolean needsCold, OptionalInt days, int after) {
  /** Of a food made and frozen on one day. */
  static OutOfFreezer of(Category category, OwnFood own, int after, Setting setting) {
    return new OutOfFreezer(
        category.tcs(), category.tcs() ? onceThawed(category, setting) : own.roomDays(), after);
  }

  private static OptionalInt onceThawed(Category category, Setting setting) {
    Optional<LocalDate> today = Optional.of(setting.now().toLocalDate());
    Optional<LocalDate> none = Optional.empty();
    return new KeepQuestion(category, today, none, none, today, none)
        .answer(setting.book(), setting.asked().getZone(), today.get())
        .keeping()
        .daysLeftWhenThawed();
  }

  /** Whether those days reach so far; if not, only a freezer does. */
  boolean isEnough() {
    // Of the days of safety the day of thawing is one; those of quality count from the next.
    return days.isPresent() && days.getAsInt() >= (needsCold ? after + 1 : after);
  }

  Told told() {
    String of = needsCold ? "batches.thawed." : "batches.room.";
    if (days.isEmpty()) {
      return Told.of(of + "none", Filled.count("after", after));
    }
    return Told.of(
        of + (isEnough() ? "enough" : "short"),
        Filled.count("daysOut", days.getAsInt()),
        Filled.count("after", after));
  }

  /** Where days once thawed are from; those at room temperature are the kitchen's own. */
  Optional<Source> source(Setting setting) {
    return needsCold && days.isPresent()
        ? Optional.of(
            new Source(
                "days once thawed", "the rules in force: " + setting.rules().id(), "derived"))
        : Optional.empty();
  }
}
