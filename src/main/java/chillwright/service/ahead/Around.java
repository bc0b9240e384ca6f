package chillwright.service.ahead;

import chillwright.core.ahead.Filled;
import chillwright.core.ahead.Told;
import chillwright.core.heat.Surface;
import chillwright.rulebook.Handbook;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What food cools in, and how warm that is. Where nobody says how warm, a usual figure is taken and
 * told beside the answer: our own, no source, except melting ice, which is at 0 °C.
 *
 * @param celsius of the air or water
 * @param isTaken whether nobody said it
 */
record Around(Surface surface, double celsius, boolean isTaken) {
  /** 38 °F, between the limits of the Food Code and freezing; in degrees Celsius. */
  static final double COLD_AIR = 6 / 1.8;

  /** 68 °F. */
  static final double TAP_WATER = 20;

  /** 75 °F. */
  static final double ROOM = 43 / 1.8;

  /** Ice that melts, °C. */
  static final double MELTING = 0;

  private static final Map<String, Double> USUAL =
      Map.of(
          "still_air",
          COLD_AIR,
          "moving_air",
          COLD_AIR,
          Common.COUNTER,
          ROOM,
          "running_water",
          TAP_WATER,
          "stirred_bath",
          MELTING);

  static Around of(Given given, Handbook handbook) {
    Surface surface = Common.surface(given, Question.COOLING, handbook);
    OptionalDouble said = given.temperature("surroundings");
    return new Around(surface, said.orElse(USUAL.get(surface.key())), !given.has("surroundings"));
  }

  /** What was taken where nobody said it. */
  Optional<Told> told() {
    return isTaken
        ? Optional.of(
            Told.of(
                "cooling.taken." + surface.key(),
                Filled.amount("surroundings", celsius, Filled.Unit.CELSIUS)))
        : Optional.empty();
  }

  Around in(Surface other) {
    return new Around(other, other.key().equals("stirred_bath") ? MELTING : celsius, isTaken);
  }
}
