package chillwright.core.heat;

import java.time.Duration;

/**
 * How long closed appliances stay cold without power. It tells when to look, not that food is good:
 * only its temperature, or ice crystals in it, do.
 *
 * @param refrigeratorHours closed (about 4)
 * @param fullFreezerHours closed and full (about 48)
 * @param halfFreezerHours closed and half full (about 24); for one that holds less nothing is told
 * @param dryIce pounds a cubic foot of a full freezer for two days
 */
public record Outage(
    Practice refrigeratorHours,
    Practice fullFreezerHours,
    Practice halfFreezerHours,
    Practice dryIce) {
  /** What stays closed. */
  public enum Appliance {
    REFRIGERATOR,
    FULL_FREEZER,
    HALF_FREEZER
  }

  /** How long it stays cold from the moment the power went. */
  public Duration staysCold(Appliance appliance) {
    Practice hours =
        switch (appliance) {
          case REFRIGERATOR -> refrigeratorHours;
          case FULL_FREEZER -> fullFreezerHours;
          case HALF_FREEZER -> halfFreezerHours;
        };
    return Duration.ofMinutes(Math.round(hours.low() * 60));
  }

  /** What is left of that time; zero once it is over. */
  public Duration left(Appliance appliance, Duration withoutPower) {
    Duration left = staysCold(appliance).minus(withoutPower);
    return left.isNegative() ? Duration.ZERO : left;
  }

  /** Pounds of dry ice that keep a full freezer cold for two days. */
  public double dryIcePounds(double cubicFeet) {
    return cubicFeet * dryIce.high();
  }
}
