package chillwright.core.heat;

/**
 * How much a freezer can freeze: more at once warms what is in it, and freezes slowly.
 *
 * @param cubicFeet of the freezer, above 0
 * @param perDay pounds a cubic foot in 24 hours; its smaller figure counts
 */
public record FreezerLoad(double cubicFeet, Practice perDay) {
  /** A load over a day's by less than this is a day's: pounds and kilograms are rounded. */
  private static final double ROUNDING = 1e-6;

  public FreezerLoad {
    if (!(cubicFeet > 0)) {
      throw new IllegalArgumentException("a freezer of " + cubicFeet + " cubic feet");
    }
  }

  /** Pounds of new food in 24 hours. */
  public double poundsPerDay() {
    return cubicFeet * perDay.low();
  }

  /** Whole days over which so much is spread, a day's load on each. */
  public int days(double pounds) {
    return (int) Math.ceil(pounds / poundsPerDay() - ROUNDING);
  }
}
