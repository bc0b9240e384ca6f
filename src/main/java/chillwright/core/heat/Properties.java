package chillwright.core.heat;

/**
 * How food takes up and passes on heat.
 *
 * @param density kg/m3
 * @param conductivity W/(m K)
 * @param specificHeat kJ/(kg K)
 */
public record Properties(double density, double conductivity, double specificHeat) {
  public Properties {
    if (!(density > 0 && conductivity > 0 && specificHeat > 0)) {
      throw new IllegalArgumentException(
          "density %s, conductivity %s, specific heat %s"
              .formatted(density, conductivity, specificHeat));
    }
  }

  /** How fast warmth spreads, m2/s. */
  public double diffusivity() {
    return conductivity / (density * specificHeat * 1000);
  }
}
