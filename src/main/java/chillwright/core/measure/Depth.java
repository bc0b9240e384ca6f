package chillwright.core.measure;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How deep food stands in its container, kept as it was read: 2 in and 5 cm are different readings,
 * though they are nearly as deep.
 *
 * @param number in the unit, with at most two decimals, without zeros at its end
 */
public record Depth(BigDecimal number, Unit unit) {
  /** A unit that depth is read in. */
  public enum Unit {
    INCH("in", 0.0254),
    CENTIMETER("cm", 0.01);

    private final String text;
    private final double metres;

    Unit(String text, double metres) {
      this.text = text;
      this.metres = metres;
    }
  }

  /** What {@link #read} takes. The ends are our own: a film of sauce, and the tallest stockpot. */
  public static final String ALLOWED =
      "a number with at most two decimals and in or cm, 0.2 to 24 in or 0.5 to 60 cm";

  private static final Pattern WRITTEN =
      Pattern.compile("(\\d{1,2}(?:\\.\\d{1,2})?)\\s*(in|cm)", Pattern.CASE_INSENSITIVE);

  public Depth {
    number = number.stripTrailingZeros();
  }

  /** The depth as a cook writes it, "2in" or "2.5 in" or "5cm"; empty if the text is none. */
  public static Optional<Depth> read(String text) {
    Matcher matcher = WRITTEN.matcher(text);
    if (!matcher.matches()) {
      return Optional.empty();
    }
    boolean isInch = matcher.group(2).equalsIgnoreCase("in");
    BigDecimal number = new BigDecimal(matcher.group(1));
    double least = isInch ? 0.2 : 0.5;
    double most = isInch ? 24 : 60;
    return number.doubleValue() < least || number.doubleValue() > most
        ? Optional.empty()
        : Optional.of(new Depth(number, isInch ? Unit.INCH : Unit.CENTIMETER));
  }

  /** In metres, exact: an inch is 0.0254 m. */
  public double metres() {
    return number.doubleValue() * unit.metres;
  }

  /** As it stands in a log, such as "2in". */
  public String cell() {
    return number.toPlainString() + unit.text;
  }

  /** As people read it, such as "2 in". */
  public String text() {
    return number.toPlainString() + " " + unit.text;
  }
}
