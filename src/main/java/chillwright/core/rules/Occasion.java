package chillwright.core.rules;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * When a rule bears on a lot. A rule file names one for each rule; several rules of a set may share
 * an occasion (the two stages of cooling do), and a set may leave occasions out.
 */
public enum Occasion {
  /** Cooked food that cools; reach rules, counted from the last proof of being hot. */
  COOLING_COOKED,
  /** Food made from ingredients at ambient temperature; counted from its {@code prepared} row. */
  COOLING_AMBIENT,
  /** Food received warmer than the cold limit as law allows; counted from its row. */
  COOLING_RECEIVED,
  RECEIVING,
  HOT_HOLDING,
  HOT_HOLDING_ROAST,
  COLD_HOLDING,
  /** Reheated for hot holding, the ordinary case. */
  REHEATING,
  REHEATING_MICROWAVE,
  REHEATING_COMMERCIAL,
  REHEATING_SERVE_NOW,
  TIME_CONTROL_START_4H,
  TIME_CONTROL_START_6H,
  TIME_CONTROL_DISCARD_4H,
  TIME_CONTROL_DISCARD_6H,
  /** Out on a table or counter, without temperature or time control; times out add up. */
  SET_OUT,
  DATE_MARK,
  FROZEN,
  THAWING_REFRIGERATOR,
  /** Thawed in running water: ready-to-eat food. */
  THAWING_RUNNING_WATER,
  /** Thawed in running water: food that will be cooked. */
  THAWING_RUNNING_WATER_RAW,
  /** The temperature of the water itself, logged as the surroundings. */
  THAWING_WATER,
  THAWING_WHILE_COOKING,
  /** Food that no time or temperature limit bears on. */
  NO_TEMPERATURE_LIMIT;

  /** Whether it is about food that cools from hot or ambient. */
  public boolean isCooling() {
    return this == COOLING_COOKED || this == COOLING_AMBIENT || this == COOLING_RECEIVED;
  }

  /** As written in rule files: lower case with hyphens, such as "cooling-cooked". */
  public String key() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  public static Optional<Occasion> ofKey(String key) {
    return Arrays.stream(values()).filter(occasion -> occasion.key().equals(key)).findFirst();
  }
}
