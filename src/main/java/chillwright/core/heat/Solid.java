package chillwright.core.heat;

/**
 * One of the three shapes whose warming and cooling is known as a series: {@code theta = sum Cn
 * exp(-zn^2 Fo) position}. The roots zn solve the shape's equation for a Biot number Bi = h L / k;
 * L is the half thickness of a slab cooled on both faces (its whole depth if one face keeps its
 * heat) or a radius.
 *
 * <p>Source: Cengel and Ghajar, Heat and Mass Transfer, chapter 4. The equations are written
 * without their poles, so that bisection always ends at a root.
 */
public enum Solid {
  SLAB {
    @Override
    double characteristic(double z, double biot) {
      return z * Math.sin(z) - biot * Math.cos(z);
    }

    @Override
    double rootAbove(int n) {
      return (n - 1) * Math.PI;
    }

    @Override
    double rootBelow(int n) {
      return (n - 0.5) * Math.PI;
    }

    @Override
    public double coefficient(double z) {
      return 4 * Math.sin(z) / (2 * z + Math.sin(2 * z));
    }

    @Override
    double position(double z) {
      return Math.cos(z);
    }
  },
  CYLINDER {
    @Override
    double characteristic(double z, double biot) {
      return z * Bessel.j1(z) - biot * Bessel.j0(z);
    }

    @Override
    double rootAbove(int n) {
      return n == 1 ? 0 : Bessel.zeroOfJ1(n - 1);
    }

    @Override
    double rootBelow(int n) {
      return Bessel.zeroOfJ0(n);
    }

    @Override
    public double coefficient(double z) {
      double j0 = Bessel.j0(z);
      double j1 = Bessel.j1(z);
      return 2 / z * j1 / (j0 * j0 + j1 * j1);
    }

    @Override
    double position(double z) {
      return Bessel.j0(z);
    }
  },
  SPHERE {
    @Override
    double characteristic(double z, double biot) {
      return Math.sin(z) - z * Math.cos(z) - biot * Math.sin(z);
    }

    @Override
    double rootAbove(int n) {
      return (n - 1) * Math.PI;
    }

    @Override
    double rootBelow(int n) {
      return n * Math.PI;
    }

    @Override
    public double coefficient(double z) {
      return 4 * (Math.sin(z) - z * Math.cos(z)) / (2 * z - Math.sin(2 * z));
    }

    @Override
    double position(double z) {
      return Math.sin(z) / z;
    }
  };

  /** Halvings of the interval: the root to fifteen places. */
  private static final int STEPS = 54;

  /** Keeps the search away from the trivial root at zero. */
  private static final double SMALLEST = 1e-7;

  abstract double characteristic(double z, double biot);

  abstract double rootAbove(int n);

  abstract double rootBelow(int n);

  /** Cn of the series, for the root zn. */
  public abstract double coefficient(double z);

  /** The factor of the surface; that of the centre is 1. */
  abstract double position(double z);

  /**
   * The n-th root, n from 1, by bisection.
   *
   * @param biot greater than 0
   */
  public double root(int n, double biot) {
    double low = Math.max(rootAbove(n), SMALLEST);
    double high = rootBelow(n);
    boolean isLowNegative = characteristic(low, biot) < 0;
    for (int i = 0; i < STEPS; i++) {
      double middle = (low + high) / 2;
      if (characteristic(middle, biot) < 0 == isLowNegative) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }
}
