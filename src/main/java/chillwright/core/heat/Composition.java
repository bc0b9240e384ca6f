package chillwright.core.heat;

import java.util.EnumMap;
import java.util.Map;

/**
 * What food is made of, as shares of its mass that sum to 1, and what follows from that for heat.
 *
 * @param carbohydrate without the fibre
 */
public record Composition(
    double water, double protein, double fat, double carbohydrate, double fibre, double ash) {
  /** Printed tables are rounded, and their rows do not quite sum to 100. */
  private static final double ROUNDING = 0.02;

  private static final double COLDEST = -40;
  private static final double WARMEST = 150;

  /** Heat of fusion of water, kJ/kg, as in the ASHRAE Handbook Refrigeration. */
  public static final double FUSION = 333.6;

  public Composition {
    double sum = water + protein + fat + carbohydrate + fibre + ash;
    boolean isShares =
        water >= 0 && protein >= 0 && fat >= 0 && carbohydrate >= 0 && fibre >= 0 && ash >= 0;
    if (!isShares || Math.abs(sum - 1) > ROUNDING) {
      throw new IllegalArgumentException("parts of food must sum to 1, not to " + sum);
    }
  }

  /** A row of a food table in grams of 100, where the carbohydrate holds the fibre. */
  public static Composition printed(
      double water, double protein, double fat, double carbohydrate, double fibre, double ash) {
    return new Composition(
        water / 100,
        protein / 100,
        fat / 100,
        (carbohydrate - fibre) / 100,
        fibre / 100,
        ash / 100);
  }

  /**
   * Unfrozen food without air in it. Food with air (bread, loose rice) is lighter and conducts
   * less.
   *
   * @param freezingCelsius below it a reason is given
   */
  public Answer<Properties> unfrozen(double celsius, double freezingCelsius) {
    if (celsius < COLDEST || celsius > WARMEST) {
      return Answer.beyond(Reason.OUTSIDE_PROPERTIES);
    }
    if (celsius < freezingCelsius) {
      return Answer.beyond(Reason.IS_FROZEN);
    }
    return Answer.known(mixed(celsius, 0));
  }

  /**
   * Frozen food; the specific heat is that of its parts, without the heat of the ice that melts.
   *
   * @param celsius at or below the freezing point
   */
  public Answer<Properties> frozen(double celsius, double freezingCelsius) {
    if (celsius < COLDEST || celsius > WARMEST) {
      return Answer.beyond(Reason.OUTSIDE_PROPERTIES);
    }
    return Answer.known(mixed(celsius, ice(celsius, freezingCelsius)));
  }

  /** Volumes add up, heats add up by mass, conductivities by volume. */
  private Properties mixed(double celsius, double ice) {
    double volume = 0;
    double conducted = 0;
    double heat = 0;
    double mass = 0;
    for (Map.Entry<Part, Double> share : shares(ice).entrySet()) {
      Part part = share.getKey();
      double partVolume = share.getValue() / part.density(celsius);
      volume += partVolume;
      conducted += partVolume * part.conductivity(celsius);
      heat += share.getValue() * part.specificHeat(celsius);
      mass += share.getValue();
    }
    return new Properties(mass / volume, conducted / volume, heat / mass);
  }

  private Map<Part, Double> shares(double ice) {
    Map<Part, Double> shares = new EnumMap<>(Part.class);
    shares.put(Part.WATER, Math.max(0, water - ice));
    shares.put(Part.PROTEIN, protein);
    shares.put(Part.FAT, fat);
    shares.put(Part.CARBOHYDRATE, carbohydrate);
    shares.put(Part.FIBRE, fibre);
    shares.put(Part.ASH, ash);
    shares.put(Part.ICE, ice);
    return shares;
  }

  /** Water held by protein, which does not freeze: 0.4 of it (ASHRAE Handbook, eq. 3). */
  private double bound() {
    return 0.4 * protein;
  }

  /** Water that can freeze. */
  public double freezable() {
    return Math.max(0, water - bound());
  }

  /**
   * The share of ice by Tchigeov's equation (ASHRAE Handbook, eq. 5); 0 at or above the freezing
   * point, never more than there is water.
   */
  public double ice(double celsius, double freezingCelsius) {
    if (celsius >= freezingCelsius) {
      return 0;
    }
    double depth = Math.log(freezingCelsius - celsius + 1);
    return Math.min(water, 1.105 * water / (1 + 0.7138 / depth));
  }

  /** The share of ice by the equation of Miles (ASHRAE Handbook, eq. 4). */
  public double iceByMiles(double celsius, double freezingCelsius) {
    return celsius >= freezingCelsius ? 0 : freezable() * (1 - freezingCelsius / celsius);
  }

  /**
   * Heat content in kJ/kg counted from -40 °C, by Chen's equations (ASHRAE Handbook). Agrees with a
   * measured table of white fish within 3 %.
   *
   * @param celsius -40 to 150
   * @param freezingCelsius below 0
   */
  public double heatContent(double celsius, double freezingCelsius) {
    double solids = 1 - water;
    double below = Math.min(celsius, freezingCelsius);
    double frozen =
        (below - COLDEST)
            * (1.55 + 1.26 * solids - freezable() * FUSION * freezingCelsius / (COLDEST * below));
    double above = Math.max(0, celsius - freezingCelsius);
    return frozen + above * (4.19 - 2.30 * solids - 0.628 * Math.pow(solids, 3));
  }
}
