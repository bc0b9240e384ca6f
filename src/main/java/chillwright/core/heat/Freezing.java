package chillwright.core.heat;

import java.time.Duration;
import java.util.Optional;

/**
 * How long food takes to freeze through, its thickest point to the end temperature, told by two
 * methods that differ by about a tenth.
 *
 * <p>Range: slab, cylinder or sphere up to 12 cm, start from the freezing point to 40 °C, air of
 * -15 to -45 °C, surface up to 500 W/(m2 K): what the handbook's formulas were tried on. Towards
 * small coefficients the formulas become a plain heat balance, so there is no lower bound. Packs
 * that touch count as one: a stacked box can take twice as long.
 *
 * @param solid a flat pack is a slab
 * @param thicknessMetres whole thickness or diameter
 * @param coefficient of the surface, W/(m2 K)
 */
public record Freezing(FreezingFood food, Solid solid, double thicknessMetres, double coefficient) {
  private static final double THICKEST = 0.12;
  private static final double WARMEST_START = 40;
  private static final double WARMEST_AIR = -15;
  private static final double COLDEST_AIR = -45;
  private static final double MOST = 500;
  private static final double SECONDS_IN_HOUR = 3600;

  /** How sure a surface coefficient is: 30 % either way (ASHRAE paper 4707). */
  public static final double UNSURE = 0.3;

  public Freezing {
    if (!(thicknessMetres > 0 && coefficient > 0)) {
      throw new IllegalArgumentException(
          "thickness %s m, coefficient %s".formatted(thicknessMetres, coefficient));
    }
  }

  /** Where freezing starts and ends, and in what air. */
  public record Course(double startCelsius, double endCelsius, double airCelsius) {}

  /**
   * A time with its range.
   *
   * @param shortest the faster method, with a surface 30 % better than said
   * @param expected between the two methods
   * @param longest the slower method, with a surface 30 % worse
   */
  public record Time(Duration shortest, Duration expected, Duration longest) {}

  /** The time with its range, or the reason why the formulas do not tell. */
  public Answer<Time> time(Course course) {
    if (course.airCelsius() >= Math.min(food.freezingCelsius(), course.endCelsius())) {
      return Answer.beyond(Reason.AIR_TOO_WARM);
    }
    if (course.endCelsius() >= food.freezingCelsius()) {
      return Answer.beyond(Reason.ENDS_UNFROZEN);
    }
    if (course.startCelsius() > WARMEST_START) {
      return Answer.beyond(Reason.TOO_WARM_TO_FREEZE);
    }
    if (course.startCelsius() < food.freezingCelsius()) {
      return Answer.beyond(Reason.ALREADY_THERE);
    }
    return untried(course).orElseGet(() -> Answer.known(both(course)));
  }

  private Optional<Answer<Time>> untried(Course course) {
    if (course.airCelsius() > WARMEST_AIR || course.airCelsius() < COLDEST_AIR) {
      return Optional.of(Answer.beyond(Reason.AIR_UNTRIED));
    }
    if (thicknessMetres > THICKEST) {
      return Optional.of(Answer.beyond(Reason.TOO_THICK));
    }
    if (coefficient > MOST) {
      return Optional.of(Answer.beyond(Reason.SURFACE_UNTRIED));
    }
    return Optional.empty();
  }

  private Time both(Course course) {
    Freezing better = new Freezing(food, solid, thicknessMetres, coefficient * (1 + UNSURE));
    Freezing worse = new Freezing(food, solid, thicknessMetres, coefficient * (1 - UNSURE));
    double earlier = Math.min(better.pham1984Hours(course), better.pham1986Hours(course));
    double expected = (pham1984Hours(course) + pham1986Hours(course)) / 2;
    double later = Math.max(worse.pham1984Hours(course), worse.pham1986Hours(course));
    return new Time(hours(earlier), hours(expected), hours(later));
  }

  private static Duration hours(double hours) {
    return Duration.ofSeconds(Math.round(hours * SECONDS_IN_HOUR));
  }

  /** Faces in which heat leaves for a thickness: A/V is twice this over the thickness. */
  private double faces() {
    return switch (solid) {
      case SLAB -> 1;
      case CYLINDER -> 2;
      case SPHERE -> 3;
    };
  }

  private double biot(double conductivity) {
    return coefficient * thicknessMetres / conductivity;
  }

  /**
   * Plank's time of the change of phase alone, in hours: {@code rho L / dT (P D/h + R D^2/k)} with
   * P, R of 1/2 1/8, 1/4 1/16, 1/6 1/24. It leaves out cooling before and after, so it is too
   * short. Source: Encyclopedia of Food Sciences, food freezing.
   *
   * @param differenceKelvin between freezing point and air
   */
  public double plankHours(double differenceKelvin) {
    return stage(food.latentPerVolume(), differenceKelvin, biot(food.frozen().conductivity()), 4);
  }

  /** One stage of Pham's: heat over what the surface takes, and the way through the food. */
  private double stage(double heatPerVolume, double differenceKelvin, double biot, double k) {
    double surfacePerVolume = 2 * faces() / thicknessMetres;
    double seconds =
        heatPerVolume / (coefficient * surfacePerVolume * differenceKelvin) * (1 + biot / k);
    return seconds / SECONDS_IN_HOUR;
  }

  /**
   * Hours by three stages. Source: Pham, Int. J. Refrig. 7 (1984) 377-383 with its erratum; D read
   * as the whole thickness, which makes the second stage Plank's equation.
   */
  public double pham1984Hours(Course course) {
    double air = course.airCelsius();
    double frozenBiot = biot(food.frozen().conductivity());
    double meanBiot = (biot(food.unfrozen().conductivity()) + frozenBiot) / 2;
    double start = course.startCelsius() - air;
    double change = food.freezingCelsius() - air;
    double average = endAverage(course.endCelsius(), air, frozenBiot);
    // The average is colder than the centre: the last stage may be over before it begins.
    double end = Math.min(change, average - air);
    double cooling = food.unfrozenPerVolume() * (start - change);
    double tempering = food.frozenPerVolume() * (change - end);
    return stage(cooling, logMean(start, change), meanBiot, 6)
        + plankHours(change)
        + stage(tempering, logMean(change, end), frozenBiot, 6);
  }

  /** The average temperature of the food when its centre is at the end temperature. */
  public static double endAverage(double centreCelsius, double airCelsius, double biot) {
    return centreCelsius - (centreCelsius - airCelsius) / (2 + 4 / biot);
  }

  /** The logarithmic mean of two differences; their value where they are equal. */
  public static double logMean(double a, double b) {
    double ratio = a / b;
    // Near 1 the quotient loses its digits, and the plain mean is exact to the twelfth place.
    return Math.abs(ratio - 1) < 1e-6 ? (a + b) / 2 : (a - b) / Math.log(ratio);
  }

  /**
   * Hours by a mean freezing temperature, {@code Tfm = 1.8 + 0.263 Tc + 0.105 Ta}. Source: Pham, J.
   * Food Technol. 21 (1986) 209-221, as two public programs that agree have it; for food rich in
   * water.
   */
  public double pham1986Hours(Course course) {
    double air = course.airCelsius();
    double mean = 1.8 + 0.263 * course.endCelsius() + 0.105 * air;
    double cooling = food.unfrozenPerVolume() * Math.max(0, course.startCelsius() - mean);
    double freezing =
        food.latentPerVolume() + food.frozenPerVolume() * (mean - course.endCelsius());
    double first = (course.startCelsius() + mean) / 2 - air;
    double second = mean - air;
    double seconds =
        thicknessMetres
            / (2 * faces() * coefficient)
            * (cooling / first + freezing / second)
            * (1 + biot(food.frozen().conductivity()) / 4);
    return seconds / SECONDS_IN_HOUR;
  }
}
