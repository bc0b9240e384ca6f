package chillwright.core.ahead;

import chillwright.core.heat.Answer;
import chillwright.core.heat.FrozenHistory;
import chillwright.core.heat.LifeModel;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What the temperatures of a freezer cost of the quality of one food, as days moved. It tells of
 * quality, never of safety.
 *
 * @param frozen the day it was frozen
 * @param history what it was kept at; time that is not in it costs nothing beyond its length
 * @param today from which the days left are counted
 */
public record FrozenLife(LocalDate frozen, FrozenHistory history, LocalDate today) {
  /** How much faster quality is lost ten degrees Celsius warmer: published 1.6 to 3.9, chosen 3. */
  public static final double USUAL_FACTOR = 3;

  /** No day is lost to the last digit of a double. */
  private static final double ROUNDING = 1e-6;

  /**
   * The dates of a food with printed months, the earlier first.
   *
   * @param best months of best quality, where they are printed apart
   * @param most months until quality fades
   * @param factor for ten degrees Celsius, from 1
   */
  public List<Told> byFactor(OptionalInt best, OptionalInt most, double factor) {
    List<Told> told = new ArrayList<>();
    if (best.isPresent() && best.getAsInt() != most.orElse(best.getAsInt())) {
      told.add(byFactor("frozen-life.best", best.getAsInt(), factor));
    }
    most.ifPresent(months -> told.add(byFactor("frozen-life.fades", months, factor)));
    return told;
  }

  /** Whether it was once so warm that the food was thawing or had thawed. */
  public boolean hasThawed() {
    return history.steps().stream().anyMatch(step -> step.celsius() > LifeModel.WARMEST);
  }

  /**
   * What is told in place of its dates of food that needs no cold, once it was too warm to be
   * frozen: what the freezer added has ended, which is no matter of safety.
   *
   * @param months of best quality in the freezer, where they are printed
   * @param roomDays at room temperature, as its kitchen states them
   * @param warmFrom the first day on which it was so warm, where that is known
   */
  public List<Told> thawedWithoutCold(
      OptionalInt months, OptionalInt roomDays, Optional<LocalDate> warmFrom) {
    Optional<LocalDate> over =
        months.stream()
            .mapToObj(frozen::plusMonths)
            .filter(best -> warmFrom.orElse(today).isAfter(best))
            .findFirst();
    if (over.isPresent()) {
      String key = warmFrom.isPresent() ? "frozen-life.past" : "frozen-life.past.unsure";
      return List.of(Told.of(key, Filled.day("was", over.get())));
    }
    Told ended =
        warmFrom
            .map(day -> Told.of("frozen-life.ended.on", Filled.day("warmFrom", day)))
            .orElseGet(() -> Told.of("frozen-life.ended"));
    if (roomDays.isEmpty()) {
      return List.of(ended, Told.of("frozen-life.room.none"));
    }
    int days = roomDays.getAsInt();
    Filled counted = Filled.count("roomDays", days);
    return List.of(
        ended,
        warmFrom
            .map(day -> day.plusDays(days))
            .map(
                until ->
                    Told.of(
                        "frozen-life.room.until",
                        counted,
                        Filled.day("goodUntil", until),
                        left(until)))
            .orElseGet(() -> Told.of("frozen-life.room.days", counted)));
  }

  private Told byFactor(String key, int months, double factor) {
    LocalDate before = frozen.plusMonths(months);
    double life = ChronoUnit.DAYS.between(frozen, before);
    return moved(key, before, new LifeModel.Factor(life, factor));
  }

  /**
   * A date of quality, moved back by the days that the history cost.
   *
   * @param model lives in days
   */
  public Told moved(String key, LocalDate before, LifeModel model) {
    Answer<Double> cost = history.cost(model);
    Filled was = Filled.day("was", before);
    if (cost.reason().isPresent()) {
      String none = today.isAfter(before) ? ".none.over" : ".none";
      return Told.none(key + none, cost.reason().get(), was);
    }
    double days = Math.max(0, cost.value().orElseThrow());
    double share = 100 * history.used(model).value().orElseThrow();
    LocalDate moved = before.minusDays((long) Math.ceil(days - ROUNDING));
    LocalDate now = moved.isBefore(frozen) ? frozen : moved;
    return Told.of(
        today.isAfter(now) ? key + ".over" : now.equals(before) ? key + ".unmoved" : key,
        Filled.day("now", now),
        was,
        Filled.amount("cost", days, Filled.Unit.DAYS),
        Filled.amount("used", share, Filled.Unit.PERCENT),
        left(now));
  }

  /** The days until then; none once it has passed. */
  private Filled left(LocalDate until) {
    return Filled.count("daysLeft", Math.max(0, ChronoUnit.DAYS.between(today, until)));
  }
}
