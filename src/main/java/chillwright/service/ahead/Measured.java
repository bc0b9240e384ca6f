package chillwright.service.ahead;

import chillwright.core.measure.SaidLength;
import java.text.Normalizer;
import java.util.HashMap;
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
      units(
          "mm millimetre milímetro = 1",
          "cm centimetre centimeter centímetro centimetro = 10",
          "m metre meter metro = 1000",
          "in inch inches pulgada = 25.4")),
  VOLUME(
      "volume",
      "20L, 5gal, 6qt or 8floz",
      5000,
      "5,000 L",
      units(
          "ml millilitre milliliter mililitro = 0.001",
          "l litre liter litro = 1",
          "gal gallon galón galon galones = 3.785411784",
          "qt quart cuarto = 0.946352946",
          "pt pint pinta = 0.473176473",
          "cup taza = 0.2365882365",
          "floz fluidounce onzalíquida onzaliquida onzaslíquidas onzasliquidas = 0.0295735295625",
          "ft3 cuft cubicfoot cubicfeet piecúbico piecubico piescúbicos piescubicos"
              + " = 28.316846592")),
  MASS(
      "weight",
      "12lb or 5.4kg",
      5000,
      "5,000 kg",
      units(
          "g gram gramme gramo = 0.001",
          "kg kilo kilogram kilogramme kilogramo = 1",
          "oz ounce onza = 0.028349523125",
          "lb pound libra = 0.45359237")),
  /** One piece: the printed thawing times are those of birds and roasts; the bound is ours. */
  PIECE("weight", "12lb or 5.4kg", 25, "25 kg (55 lb)", MASS.units),
  TIME("time", "9h, 90min, 3h 30min, 2d or 2 weeks", 24 * 3650, "3,650 d", Map.of());

  /** At most seven digits, so that nothing runs over; a comma for decimals as many write it. */
  private static final String NUMBER = "\\d{1,7}(?:[.,]\\d{1,4})?";

  private static final Pattern AMOUNT =
      Pattern.compile("(" + NUMBER + ")\\s*(\\p{L}+[.]?\\s?\\p{L}*3?[.]?)");

  /** "3 1/2", "1/2" and "3½": a fraction, after a whole number or alone. */
  private static final Pattern FRACTION =
      Pattern.compile("^(?:(\\d{1,5})(?:\\s+|(?=[½¼¾])))?(?:(\\d{1,2})/(\\d{1,2})|([½¼¾]))");

  /** What the piece is, after its weight: "12 lb turkey". */
  private static final Pattern NAMED =
      Pattern.compile("(" + NUMBER + "\\s*\\p{L}+[.]?)(?:\\s+\\p{L}+)+");

  private static final Pattern BARE = Pattern.compile(NUMBER);

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

  /** Whether a figure stands there without its unit, so that it could be either of two. */
  boolean isBare(String text) {
    return BARE.matcher(inDecimals(text.strip())).matches();
  }

  /**
   * The fault of a figure without a unit: which of these is meant?
   *
   * @param name of the parameter; the room of a freezer is told in units of its own
   */
  WithoutUnit withoutUnit(String name) {
    return switch (this) {
      case LENGTH -> new WithoutUnit("no-unit-length", "in", "cm");
      case VOLUME ->
          name.equals("freezer")
              ? new WithoutUnit("no-unit-freezer", "ft3", "L")
              : new WithoutUnit("no-unit-volume", "qt", "L");
      case MASS, PIECE -> new WithoutUnit("no-unit-weight", "lb", "kg");
      case TIME -> new WithoutUnit("no-unit-time", "h", "min");
    };
  }

  /** A code, and the two units that are likely. */
  record WithoutUnit(String code, String one, String other) {
    String asks(String figure) {
      return "\"%s\" cannot be read without its unit: %s %s or %s %s?"
          .formatted(figure, figure, one, figure, other);
    }
  }

  /** A fraction at the beginning told in decimals; the rest stays as it is. */
  private static String inDecimals(String text) {
    Matcher fraction = FRACTION.matcher(text);
    if (!fraction.find()) {
      return text;
    }
    double whole = fraction.group(1) == null ? 0 : Integer.parseInt(fraction.group(1));
    double part =
        fraction.group(4) == null
            ? Double.parseDouble(fraction.group(2)) / Integer.parseInt(fraction.group(3))
            : ("¼½¾".indexOf(fraction.group(4)) + 1) / 4.0;
    // By nothing, or more than a whole: no figure that anybody writes.
    return part < 1
        ? String.format(Locale.ROOT, "%.4f", whole + part) + text.substring(fraction.end())
        : text;
  }

  /** In millimetres, litres, kilograms or hours; empty where it is no such amount. */
  OptionalDouble read(String text) {
    if (this == TIME) {
      OptionalDouble hours = SaidLength.hours(text);
      return hours.isPresent() ? within(hours.getAsDouble()) : hours;
    }
    String given = inDecimals(Normalizer.normalize(text.strip(), Normalizer.Form.NFC));
    Matcher named = NAMED.matcher(given);
    Matcher amount = AMOUNT.matcher(this == PIECE && named.matches() ? named.group(1) : given);
    if (!amount.matches()) {
      return OptionalDouble.empty();
    }
    String unit = amount.group(2).replaceAll("[ .]", "").toLowerCase(Locale.ROOT);
    Double one = units.getOrDefault(unit, units.get(unit.replaceFirst("s$", "")));
    return one == null
        ? OptionalDouble.empty()
        : within(Double.parseDouble(amount.group(1).replace(',', '.')) * one);
  }

  private OptionalDouble within(double value) {
    return value > 0 && value <= most ? OptionalDouble.of(value) : OptionalDouble.empty();
  }

  /** "mm millimetre = 1": every name of a unit, and what one of it is. */
  private static Map<String, Double> units(String... lines) {
    Map<String, Double> units = new HashMap<>();
    for (String line : lines) {
      int equals = line.indexOf(" = ");
      double one = Double.parseDouble(line.substring(equals + 3));
      for (String name : line.substring(0, equals).split(" ", -1)) {
        units.put(name, one);
      }
    }
    return Map.copyOf(units);
  }
}
