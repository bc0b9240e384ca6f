package chillwright.core.heat;

/**
 * Food that freezes.
 *
 * @param unfrozen properties before
 * @param frozen properties after; its specific heat leaves out the ice that still melts
 * @param latent heat of the water that freezes, kJ/kg of food
 * @param freezingCelsius where it begins to freeze, below or at 0
 */
public record FreezingFood(
    Properties unfrozen, Properties frozen, double latent, double freezingCelsius) {
  /**
   * Where food that is rich in water begins to freeze unless its own point is known: white fish at
   * about -1 °C (FAO Fisheries Technical Paper 340), vegetables from -0.6 to -1.4 °C (ASHRAE
   * Handbook, Thermal properties of foods, table 3).
   */
  public static final double USUAL_POINT = -1;

  /** Unfrozen food is told at this temperature, frozen food at the end temperature. */
  private static final double BEFORE = 5;

  public FreezingFood {
    if (!(latent > 0) || freezingCelsius > 0) {
      throw new IllegalArgumentException(
          "latent heat %s, freezing point %s".formatted(latent, freezingCelsius));
    }
  }

  /**
   * From what food is made of. All water that can freeze is counted, which makes times a little
   * longer rather than shorter.
   */
  public static Answer<FreezingFood> of(
      Composition made, double freezingCelsius, double endCelsius) {
    return made.unfrozen(BEFORE, freezingCelsius)
        .flatMap(
            before ->
                made.frozen(endCelsius, freezingCelsius)
                    .map(
                        after ->
                            new FreezingFood(
                                before,
                                after,
                                made.freezable() * Composition.FUSION,
                                freezingCelsius)));
  }

  /** Heat that leaves a kilogram, kJ: cooling, freezing, and cooling on. */
  public double heat(double startCelsius, double endCelsius) {
    return unfrozen.specificHeat() * (startCelsius - freezingCelsius)
        + latent
        + frozen.specificHeat() * (freezingCelsius - endCelsius);
  }

  double unfrozenPerVolume() {
    return unfrozen.density() * unfrozen.specificHeat() * 1000;
  }

  double frozenPerVolume() {
    return frozen.density() * frozen.specificHeat() * 1000;
  }

  /** J/m3. */
  double latentPerVolume() {
    return frozen.density() * latent * 1000;
  }
}
