package chillwright.service.ahead;

import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Amounts as cooks write them, a number and a unit: "2in", "20 L", "12 lb", "90 min". */
enum Measured {
  LENGTH(
      "length",
      "2in, 50mm or 5cm",
      5000,
      "5 m",
      Map.of("mm", 1.0, "cm", 10.0, "m", 1000.0, "in", 25.4)),
  VOLUME(
      "volume",
      "20L, 5gal, 6qt or 8floz",
      5000,
      "5,000 L",
      Map.of(
          "ml",
          0.001,
          "l",
          1.0,
          "gal",
          3.785411784,
          "qt",
          0.946352946,
          "pt",
          0.473176473,
          "cup",
          0.2365882365,
          "floz",
          0.0295735295625,
          "ft3",
          28.316846592)),
  MASS(
      "weight",
      "12lb or 5.4kg",
      5000,
      "5,000 kg",
      Map.of("g", 0.001, "kg", 1.0, "oz", 0.028349523125, "lb", 0.45359237)),
  /** One piece: the printed thawing times are those of birds and roasts; the bound is ours. */
  PIECE("weight", "12lb or 5.4kg", 25, "25 kg (55 lb)", MASS.units),
  TIME(
      "time",
      "9h, 90min or 2d",
      24 * 3650,
      "3,650 d",
      Map.of("min", 1 / 60.0, "h", 1.0, "d", 24.0));

  /** At most seven digits, so that nothing runs over. */
  private static final Pattern AMOUNT =
      Pattern.compile("(\\d{1,7}(?:\\.\\d{1,4})?)\\s*([A-Za-z]+\\s?[A-Za-z]*3?)");

  private final String what;
  private final String examples;
  private final double most;
  private final String mostSays;
  private final Map<String, Double> units;

  Measured(String what, String examples, double most, String mostSays, Map<String, Double> units) {
    this.what = what;
    this.examples = examples;
    this.most = most;
    this.mostSays = mostSays;
    this.units = units;
  }

  /** What is allowed, as it completes "give". */
  String allowed() {
    return "a %s above 0 and at most %s, with its unit, such as %s"
        .formatted(what, mostSays, examples);
  }

  String code() {
    return "bad-" + what;
  }

  /** In millimetres, litres, kilograms or hours; empty where it is no such amount. */
  OptionalDouble read(String text) {
    Matcher amount = AMOUNT.matcher(text.strip());
    if (!amount.matches()) {
      return OptionalDouble.empty();
    }
    String unit = amount.group(2).replace(" ", "").toLowerCase(Locale.ROOT);
    if (!units.containsKey(unit)) {
      return OptionalDouble.empty();
    }
    double value = Double.parseDouble(amount.group(1)) * units.get(unit);
    return value > 0 && value <= most ? OptionalDouble.of(value) : OptionalDouble.empty();
  }
}
