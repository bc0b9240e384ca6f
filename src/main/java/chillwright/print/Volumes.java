package chillwright.print;

import chillwright.core.measure.Temperature.Scale;
import java.util.Optional;

/**
 * Volumes in the unit of whoever reads: US quarts with Fahrenheit, else litres.
 *
 * @param scale of whoever reads; empty where that is not known
 */
public record Volumes(Language language, Optional<Scale> scale) {
  /** Litres of a US liquid quart: NIST SP 811, appendix B.8, from 231 cubic inches a gallon. */
  public static final double QUART = 0.946352946;

  /** Such as "15 quarts", or "14.2 litres". */
  String says(double litres) {
    return isQuarts()
        ? language.say("plan.quarts", figure(litres / QUART))
        : language.say("plan.litres", figure(litres));
  }

  /** The same in little room: "15 qt"; a bare figure is litres. */
  String brief(double litres) {
    return isQuarts() ? figure(litres / QUART) + " qt" : figure(litres);
  }

  private boolean isQuarts() {
    return scale.filter(Scale.FAHRENHEIT::equals).isPresent();
  }

  /** With one decimal, or none where that is 0: a quart is near a litre, so this turns back. */
  public static String figure(double amount) {
    return PlanText.amount(amount);
  }
}
