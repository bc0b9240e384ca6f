package chillwright.core.portions;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Portions of one size.
 *
 * @param fluidOunces of one portion, above 0
 */
public record Portion(double fluidOunces) {
  /** A portion that is short of a whole by less than this is whole: figures are rounded. */
  private static final double ROUNDING = 1e-9;

  public static final double OUNCES_IN_QUART = 32;

  /** Millilitres in a US fluid ounce, by definition. */
  public static final double MILLILITRES = 29.5735295625;

  public Portion {
    if (!(fluidOunces > 0)) {
      throw new IllegalArgumentException("a portion of " + fluidOunces + " fl oz");
    }
  }

  /** Fluid ounces of so many. */
  public double volume(int portions) {
    return portions * fluidOunces;
  }

  /** Whole portions in a volume. */
  public int in(double potFluidOunces) {
    return wholeDown(potFluidOunces / fluidOunces);
  }

  /** The tool whose measure is nearest to this portion, of those within a tenth of it. */
  public Optional<Measure> tool(List<Measure> tools) {
    return tools.stream()
        .filter(tool -> Math.abs(tool.fluidOunces() - fluidOunces) <= fluidOunces / 10)
        .min(Comparator.comparingDouble(tool -> Math.abs(tool.fluidOunces() - fluidOunces)));
  }

  /** How many whole ones it takes for a share; what rounding added to a whole is left out. */
  public static int wholeUp(double share) {
    return (int) Math.ceil(share - ROUNDING);
  }

  static int wholeDown(double share) {
    return (int) Math.floor(share + ROUNDING);
  }
}
