package chillwright.core.portions;

import java.util.Objects;

/**
 * A ladle or a scoop. A scoop's number is how many level scoopfuls make a quart; a ladle is named
 * by its fluid ounces.
 *
 * @param key such as "scoop-16" or "ladle-8"
 */
public record Measure(String key, double fluidOunces, String source, String status) {
  public Measure {
    Objects.requireNonNull(key, "key");
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(status, "status");
    if (!(fluidOunces > 0)) {
      throw new IllegalArgumentException(key + " holds nothing");
    }
  }

  public static Measure scoop(int number, String source, String status) {
    return new Measure("scoop-" + number, Portion.OUNCES_IN_QUART / number, source, status);
  }

  public static Measure ladle(int ounces, String source, String status) {
    return new Measure("ladle-" + ounces, ounces, source, status);
  }

  /** Whole measures in a volume. */
  public int in(double potFluidOunces) {
    return Portion.wholeDown(potFluidOunces / fluidOunces);
  }
}
