package chillwright.core.heat;

/**
 * The ice that takes the heat out of a pot, by energy balance: {@code ice (L + c T) = food c (T0 -
 * T) + water c (Tw - T)}, all at T in the end. The same ice cools as an ingredient.
 *
 * <p>It leaves out the pot, the room and ice that was still frozen at the end, so it is the least
 * that does it. L is 333.6 kJ/kg, c of water 4.18 kJ/(kg K) (ASHRAE Handbook Refrigeration). Ice
 * counts as 0 °C.
 *
 * @param foodKilograms above 0
 * @param foodHeat specific heat of the food, kJ/(kg K)
 * @param waterKilograms water in the bath before the ice, 0 or more
 */
public record IceBath(
    double foodKilograms, double foodHeat, double waterKilograms, double waterCelsius) {
  private static final double WATER_HEAT = 4.18;

  public IceBath {
    if (!(foodKilograms > 0 && foodHeat > 0 && waterKilograms >= 0)) {
      throw new IllegalArgumentException(
          "food %s kg, %s kJ/(kg K), water %s kg"
              .formatted(foodKilograms, foodHeat, waterKilograms));
    }
  }

  /** Kilograms of ice; a reason where the end is not above 0 °C or the food is there already. */
  public Answer<Double> kilograms(double startCelsius, double endCelsius) {
    if (endCelsius <= 0) {
      return Answer.beyond(Reason.ICE_NOT_COLD_ENOUGH);
    }
    if (startCelsius <= endCelsius) {
      return Answer.beyond(Reason.ALREADY_THERE);
    }
    double heat =
        foodKilograms * foodHeat * (startCelsius - endCelsius)
            + waterKilograms * WATER_HEAT * Math.max(0, waterCelsius - endCelsius);
    return Answer.known(heat / (Composition.FUSION + WATER_HEAT * endCelsius));
  }
}
