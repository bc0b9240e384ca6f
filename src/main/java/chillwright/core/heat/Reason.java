package chillwright.core.heat;

import java.util.Locale;

/** Why a question has no figure for an answer. Its words are kept with those of findings. */
public enum Reason {
  /** The surroundings are not colder than what the food is to reach. */
  NEVER_GETS_THERE,
  /** The food starts at or below what it is to reach. */
  ALREADY_THERE,
  /** The surface would freeze on the way, which the formula of cooling does not know. */
  SURFACE_FREEZES,
  /** The formulas of the parts of food hold from -40 to 150 °C. */
  OUTSIDE_PROPERTIES,
  /** Below its freezing point food is told by its ice, above it by its parts. */
  IS_FROZEN,
  /** The freezer's air is not colder than the freezing point or than the end temperature. */
  AIR_TOO_WARM,
  /** Food warmer than 40 °C at the start is cooled first, and no freezing formula was fitted. */
  TOO_WARM_TO_FREEZE,
  /** The end temperature is not below the freezing point, so that the food would not be hard. */
  ENDS_UNFROZEN,
  /** Freezing formulas were tried in air of -15 to -45 °C. */
  AIR_UNTRIED,
  /** Freezing formulas were tried up to 12 cm thick. */
  TOO_THICK,
  /** Freezing formulas were tried up to 500 W/(m2 K). */
  SURFACE_UNTRIED,
  /** Not even the thinnest layer asked about makes the limits. */
  NO_LAYER_IS_THIN_ENOUGH,
  /** The ice has to be colder than what the food is to reach. */
  ICE_NOT_COLD_ENOUGH,
  /** Quality life is told up to -5 °C; warmer than that food is thawing, which is another rule. */
  NOT_FROZEN,
  /** No pan of that size is as deep as the layer. */
  PAN_TOO_SHALLOW;

  /** As written in answers, such as "never-gets-there". */
  public String key() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
