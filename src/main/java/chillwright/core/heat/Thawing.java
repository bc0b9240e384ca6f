package chillwright.core.heat;

import java.util.Objects;

/**
 * How long a piece takes to thaw, by printed rules of thumb.
 *
 * @param pounds of one piece or pack, above 0
 * @param figures the printed rules
 */
public record Thawing(double pounds, Figures figures) {
  /**
   * The rules of thumb.
   *
   * @param refrigeratorPounds pounds that thaw in 24 hours of a refrigerator (4 to 5)
   * @param smallPack hours in cold water of a pack of about one pound (1)
   * @param middlePack hours in cold water of 3 to 4 pounds (2 to 3)
   * @param largePiece hours a pound in cold water of a whole bird (0.5)
   * @param roastFromFrozen times as long as thawed, for a roast cooked from frozen (1.5)
   * @param casseroleFromFrozen the same for a casserole (1.5 to 2)
   */
  public record Figures(
      Practice refrigeratorPounds,
      Practice smallPack,
      Practice middlePack,
      Practice largePiece,
      Practice roastFromFrozen,
      Practice casseroleFromFrozen) {
    public Figures {
      Objects.requireNonNull(refrigeratorPounds, "refrigeratorPounds");
      Objects.requireNonNull(smallPack, "smallPack");
      Objects.requireNonNull(middlePack, "middlePack");
      Objects.requireNonNull(largePiece, "largePiece");
      Objects.requireNonNull(roastFromFrozen, "roastFromFrozen");
      Objects.requireNonNull(casseroleFromFrozen, "casseroleFromFrozen");
    }
  }

  /** Hours, with the range of the rule. */
  public record Hours(double shortest, double longest) {}

  private static final double HOURS_IN_DAY = 24;
  private static final double SMALL = 1;
  private static final double MIDDLE = 4;

  public Thawing {
    if (!(pounds > 0)) {
      throw new IllegalArgumentException("a piece of " + pounds + " lb");
    }
  }

  /** In a refrigerator; even a small pack takes a full day. */
  public Hours refrigerator() {
    double shortest = pounds / figures.refrigeratorPounds().high() * HOURS_IN_DAY;
    double longest = pounds / figures.refrigeratorPounds().low() * HOURS_IN_DAY;
    return new Hours(Math.max(HOURS_IN_DAY, shortest), Math.max(HOURS_IN_DAY, longest));
  }

  /**
   * In cold water that is changed every 30 minutes. The rule by the pound is printed for whole
   * birds and underestimates small packs, which have figures of their own; never shorter for more.
   */
  public Hours coldWater() {
    Practice small = figures.smallPack();
    if (pounds <= SMALL) {
      return new Hours(small.low(), small.high());
    }
    Practice middle = figures.middlePack();
    if (pounds <= MIDDLE) {
      return new Hours(Math.min(middle.low(), pounds * small.low()), middle.high());
    }
    double byPound = pounds * figures.largePiece().low();
    return new Hours(
        Math.max(middle.low(), byPound),
        Math.max(middle.high(), pounds * figures.largePiece().high()));
  }

  /** Hours in the oven from frozen, where it takes so many thawed. */
  public Hours fromFrozen(double hoursThawed, boolean isCasserole) {
    Practice times = isCasserole ? figures.casseroleFromFrozen() : figures.roastFromFrozen();
    return new Hours(hoursThawed * times.low(), hoursThawed * times.high());
  }
}
