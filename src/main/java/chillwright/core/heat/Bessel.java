package chillwright.core.heat;

import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;

/**
 * Bessel functions of the first kind by their integral, {@code Jn(x) = 1/pi integral cos(n t - x
 * sin t) dt} from 0 to pi. The rule of trapezoids is exact to the last digits for such a periodic
 * function as long as there are clearly more points than half of x, here for x up to 70.
 */
public final class Bessel {
  private static final int POINTS = 64;
  private static final int STEPS = 60;

  private Bessel() {}

  /** J0, for x from 0 to 70. */
  public static double j0(double x) {
    return integral(0, x);
  }

  /** J1, for x from 0 to 70. */
  public static double j1(double x) {
    return integral(1, x);
  }

  private static double integral(int order, double x) {
    double sum = 0;
    for (int i = 0; i <= POINTS; i++) {
      double angle = Math.PI * i / POINTS;
      double value = Math.cos(order * angle - x * Math.sin(angle));
      sum += i == 0 || i == POINTS ? value / 2 : value;
    }
    return sum / POINTS;
  }

  /** The n-th zero of J0, close to (n - 1/4) pi; as many as a series has terms. */
  static double zeroOfJ0(int n) {
    return Zeros.OF_J0[n - 1];
  }

  /** The n-th zero of J1 above 0, close to (n + 1/4) pi. */
  static double zeroOfJ1(int n) {
    return Zeros.OF_J1[n - 1];
  }

  /** Found once, with the first pot that is asked about. */
  private static final class Zeros {
    static final double[] OF_J0 = zeros(Bessel::j0, -0.25);
    static final double[] OF_J1 = zeros(Bessel::j1, 0.25);

    private static double[] zeros(DoubleUnaryOperator function, double shift) {
      return IntStream.rangeClosed(1, Series.TERMS)
          .mapToDouble(n -> zero(function, (n + shift) * Math.PI))
          .toArray();
    }
  }

  /** No zero is further than 0.1 from the place that its asymptotic form gives. */
  private static double zero(DoubleUnaryOperator function, double near) {
    double low = near - 0.15;
    double high = near + 0.15;
    boolean isLowNegative = function.applyAsDouble(low) < 0;
    for (int i = 0; i < STEPS; i++) {
      double middle = (low + high) / 2;
      if (function.applyAsDouble(middle) < 0 == isLowNegative) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }
}
