package chillwright.core.heat;

/** The series of one shape at one Biot number. Immutable. */
final class Series {
  /** Enough for Fo = 0.01, where the next would count for less than one part in 10^15. */
  static final int TERMS = 20;

  /**
   * Before this Fourier number the centre has not felt the surface: it has lost less than one part
   * in 10^11, and the series would need ever more terms.
   */
  private static final double UNFELT = 0.01;

  private final double[] squares = new double[TERMS];
  private final double[] centre = new double[TERMS];
  private final double[] surface = new double[TERMS];

  Series(Solid solid, double biot) {
    for (int i = 0; i < TERMS; i++) {
      double z = solid.root(i + 1, biot);
      squares[i] = z * z;
      centre[i] = solid.coefficient(z);
      surface[i] = centre[i] * solid.position(z);
    }
  }

  /** The first root's square and coefficient, which govern once Fo is above about 0.2. */
  double firstSquare() {
    return squares[0];
  }

  double firstCoefficient() {
    return centre[0];
  }

  /** The share of the first difference that is left at the centre. */
  double centre(double fourier) {
    return fourier < UNFELT ? 1 : Math.min(1, sum(centre, fourier));
  }

  /** The share left at the surface; before {@link #UNFELT} it is told too high. */
  double surface(double fourier) {
    return Math.min(1, sum(surface, Math.max(fourier, UNFELT)));
  }

  private double sum(double[] factors, double fourier) {
    double sum = 0;
    for (int i = 0; i < TERMS; i++) {
      sum += factors[i] * Math.exp(-squares[i] * fourier);
    }
    return sum;
  }
}
