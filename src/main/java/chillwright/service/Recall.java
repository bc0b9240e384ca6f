package chillwright.service;

import chillwright.core.kitchen.AllergenNaming;
import chillwright.core.log.LotId;
import chillwright.service.Tracing.Traced;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What bears an allergen, by the foods as the kitchen describes them today: a lot bears what is in
 * its own food and in every lot that it came from.
 *
 * @param foods that bear it or may, of those that lots were made of; those that bear it first
 * @param bearing lots that bear it, in the order they began
 * @param unsure lots that may, since something of their food is not told
 * @param isCut whether there may be more than was looked at
 */
public record Recall(
    AllergenAsked asked,
    List<AllergenNaming> foods,
    List<Recalled> bearing,
    List<Recalled> unsure,
    boolean isCut) {
  public Recall {
    foods = List.copyOf(foods);
    bearing = List.copyOf(bearing);
    unsure = List.copyOf(unsure);
  }

  /**
   * A lot that bears it, or may.
   *
   * @param bears whether it does for certain
   * @param foods in it that do
   * @param namedFrom since when its labels name the allergen, where they do
   * @param isCertain whether no label printed before that named it
   */
  public record Recalled(
      Traced traced,
      boolean bears,
      List<String> foods,
      Optional<Instant> namedFrom,
      boolean isCertain) {
    public Recalled {
      foods = List.copyOf(foods);
    }

    public LotId lot() {
      return traced.lot().lot();
    }

    /** Whether that was before its labels named the allergen. */
    public boolean isBeforeNaming(Instant moment) {
      return namedFrom.filter(moment::isBefore).isPresent();
    }

    /** Whether it was there before its labels named the allergen. */
    public boolean beganBeforeNaming() {
      return traced.lot().standing().filter(s -> isBeforeNaming(s.beganAt())).isPresent();
    }
  }
}
