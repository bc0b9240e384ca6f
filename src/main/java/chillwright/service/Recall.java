package chillwright.service;

import chillwright.core.kitchen.AllergenNaming;
import chillwright.core.kitchen.BoxLabels;
import chillwright.core.kitchen.LabelsMade;
import chillwright.core.log.HandOut;
import chillwright.core.log.LotId;
import chillwright.service.Tracing.Traced;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What bears an allergen, by the foods as the kitchen describes them today: a lot bears what is in
 * its own food and in every lot that it came from, and what these named after they began.
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

  /** Labels of a lot, and whether they name the allergen. */
  public record Made(LabelsMade labels, boolean names) {}

  /**
   * A lot that bears it, or may.
   *
   * @param bears whether it does for certain
   * @param foods in it that do
   * @param namedFrom since when its labels name the allergen, where they do
   * @param isCertain whether no label made before that named it
   * @param labels that were made of it, as far as that is on record; the earliest first
   * @param onBoxes what its boxes may bear: these, and more of parts and of their whole
   * @param asked names of the allergen
   */
  public record Recalled(
      Traced traced,
      boolean bears,
      List<String> foods,
      Optional<Instant> namedFrom,
      boolean isCertain,
      List<Made> labels,
      BoxLabels onBoxes,
      AllergenNaming.Names asked) {
    public Recalled {
      foods = List.copyOf(foods);
      labels = List.copyOf(labels);
    }

    public LotId lot() {
      return traced.lot().lot();
    }

    /** Whether that was before its labels named the allergen. */
    public boolean isBeforeNaming(Instant moment) {
      return namedFrom.filter(moment::isBefore).isPresent();
    }

    /** The labels on record that name it, or those that do not. */
    public List<LabelsMade> labels(boolean naming) {
      return labels.stream().filter(one -> one.names() == naming).map(Made::labels).toList();
    }

    /** Whether more labels may have been made than are kept. */
    public boolean isLabelsCut() {
      return labels.size() >= LabelsMade.MOST;
    }

    /** Whether any of its boxes bore labels by then that did not name the allergen. */
    private boolean isUnnamedOnLabels(Instant moment) {
      return onBoxes.last(moment).stream().anyMatch(last -> !last.names(asked));
    }

    /** Whether somebody got it with labels that did not name the allergen. */
    public boolean isUnnamed(HandOut out) {
      return out.isGiven()
          && out.kind() != HandOut.Kind.DISCARDED
          && isUnnamedOnLabels(out.entry().happenedAt());
    }

    /** Whether it was there before its labels named the allergen. */
    public boolean beganBeforeNaming() {
      return traced.lot().standing().filter(s -> isBeforeNaming(s.beganAt())).isPresent();
    }
  }
}
