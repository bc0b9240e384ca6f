package chillwright.core.heat;

/**
 * The parts of food, with density, conductivity and specific heat as {@code a + b t + c t^2}, t in
 * °C from -40 to 150. Source: Choi and Okos 1986 as in the ASHRAE Handbook Refrigeration, Thermal
 * properties of foods; read in four transcriptions that agree. For the specific heat of water the
 * constant 4.1762 is used, which gives the true 4.177 at 25 °C; a printing with 4.1289 does not.
 */
enum Part {
  WATER(
      new Curve(997.18, 3.1439e-3, -3.7574e-3),
      new Curve(0.57109, 1.7625e-3, -6.7036e-6),
      new Curve(4.1762, -9.0864e-5, 5.4731e-6)),
  PROTEIN(
      new Curve(1329.9, -0.5184, 0),
      new Curve(0.17881, 1.1958e-3, -2.7178e-6),
      new Curve(2.0082, 1.2089e-3, -1.3129e-6)),
  FAT(
      new Curve(925.59, -0.41757, 0),
      new Curve(0.18071, -2.7604e-4, -1.7749e-7),
      new Curve(1.9842, 1.4733e-3, -4.8008e-6)),
  CARBOHYDRATE(
      new Curve(1599.1, -0.31046, 0),
      new Curve(0.20141, 1.3874e-3, -4.3312e-6),
      new Curve(1.5488, 1.9625e-3, -5.9399e-6)),
  FIBRE(
      new Curve(1311.5, -0.36589, 0),
      new Curve(0.18331, 1.2497e-3, -3.1683e-6),
      new Curve(1.8459, 1.8306e-3, -4.6509e-6)),
  ASH(
      new Curve(2423.8, -0.28063, 0),
      new Curve(0.32962, 1.4011e-3, -2.9069e-6),
      new Curve(1.0926, 1.8896e-3, -3.6817e-6)),
  ICE(
      new Curve(916.89, -0.13071, 0),
      new Curve(2.2196, -6.2489e-3, 1.0154e-4),
      new Curve(2.0623, 6.0769e-3, 0));

  private final Curve density;
  private final Curve conductivity;
  private final Curve specificHeat;

  /** A quadratic in °C. */
  private record Curve(double a, double b, double c) {
    double at(double celsius) {
      return a + celsius * (b + celsius * c);
    }
  }

  Part(Curve density, Curve conductivity, Curve specificHeat) {
    this.density = density;
    this.conductivity = conductivity;
    this.specificHeat = specificHeat;
  }

  double density(double celsius) {
    return density.at(celsius);
  }

  double conductivity(double celsius) {
    return conductivity.at(celsius);
  }

  double specificHeat(double celsius) {
    return specificHeat.at(celsius);
  }
}
