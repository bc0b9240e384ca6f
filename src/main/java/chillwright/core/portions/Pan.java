package chillwright.core.portions;

import chillwright.core.heat.Answer;
import chillwright.core.heat.Reason;
import java.util.Objects;

/**
 * A straight-sided pan of the trade's sizes.
 *
 * @param key such as "full-2.5"
 * @param depthInches as it is sold
 * @param usableFluidOunces as printed: what it holds in use, not to its brim
 * @param source who printed that
 * @param status verified or reported
 */
public record Pan(
    String key,
    String title,
    double lengthInches,
    double widthInches,
    double depthInches,
    double usableFluidOunces,
    String source,
    String status) {
  public Pan {
    Objects.requireNonNull(key, "key");
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(status, "status");
    if (!(lengthInches > 0 && widthInches > 0 && depthInches > 0 && usableFluidOunces > 0)) {
      throw new IllegalArgumentException(key + " has a size that is not above 0");
    }
  }

  /**
   * What a layer of that depth holds: the usable volume by the share of the depth.
   *
   * @return a reason where the layer is deeper than the pan
   */
  public Answer<Double> fluidOunces(double layerInches) {
    // A layer of the pan's own depth, told in millimetres and back, is still that layer.
    if (layerInches > depthInches + 1e-6) {
      return Answer.beyond(Reason.PAN_TOO_SHALLOW);
    }
    return Answer.known(usableFluidOunces * Math.min(1, layerInches / depthInches));
  }

  /** How many such pans a pot needs at that depth of food. */
  public Answer<Integer> count(double potFluidOunces, double layerInches) {
    return fluidOunces(layerInches).map(each -> Portion.wholeUp(potFluidOunces / each));
  }

  /** Whole portions in a pan filled as printed. */
  public int portions(double portionFluidOunces) {
    return Portion.wholeDown(usableFluidOunces / portionFluidOunces);
  }
}
