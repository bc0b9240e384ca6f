package chillwright.core.plan;

import chillwright.core.portions.Measure;
import chillwright.core.portions.Pan;
import chillwright.core.portions.Portion;
import java.util.List;
import java.util.Objects;

/**
 * Into what a dish is filled, so that its portions become pans and litres.
 *
 * @param portion the size of one
 * @param pan the pan it is kept in
 * @param depthInches how deep the food stands in it, above 0 and at most as deep as the pan
 * @param tools ladles and scoops that measure a portion, at most one of each
 */
public record Filling(Portion portion, Pan pan, double depthInches, List<Measure> tools) {
  private static final double LITRES_IN_CUBIC_INCH = 0.016387064;

  public Filling {
    Objects.requireNonNull(portion, "portion");
    Objects.requireNonNull(pan, "pan");
    tools = List.copyOf(tools);
    if (!(depthInches > 0) || pan.fluidOunces(depthInches).value().isEmpty()) {
      throw new IllegalArgumentException(pan.key() + " filled " + depthInches + " in deep");
    }
  }

  /** Litres of food in so many portions. */
  public double litres(int portions) {
    return portion.volume(portions) * Portion.MILLILITRES / 1000;
  }

  /** How many pans so many portions fill. */
  public int pans(int portions) {
    return pan.count(portion.volume(portions), depthInches).value().orElseThrow();
  }

  /** Litres that the pans take up where they stand, by their outline and depth as sold. */
  public double room(int portions) {
    double each = pan.lengthInches() * pan.widthInches() * pan.depthInches();
    return pans(portions) * each * LITRES_IN_CUBIC_INCH;
  }
}
