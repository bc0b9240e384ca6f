package chillwright.core.portions;

import chillwright.core.portions.NetQuantity.Unit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.MatchResult;

/**
 * The net quantity of several portions by that of one. Where one is told both in ounces and in
 * grams, one of them was meant and the other is its rounded equivalent: the rounder figure (fewest
 * significant digits; the first of equals) is multiplied, the other reckoned anew from the product.
 * NIST Handbook 130, Uniform Packaging and Labeling Regulation, on rounding: a conversion goes by
 * the accuracy of the original measurement, and a rounded one never overstates the quantity, so it
 * is rounded down, to the decimals that the kitchen wrote.
 */
final class NetTotal {
  private static final BigDecimal OUNCES_IN_POUND = BigDecimal.valueOf(16);

  private static final BigDecimal SIXTEENTH = new BigDecimal("0.0625");

  private final String text;
  private final BigDecimal portions;
  private final List<Figure> figures;

  /** A number with its unit, and where they stand; no unit where nobody knows the word. */
  private record Figure(int start, int end, int unitEnd, Optional<Unit> unit, BigDecimal number) {
    BigDecimal size() {
      return BigDecimal.valueOf(unit.orElseThrow().size());
    }
  }

  /** One amount: a figure, or pounds and the ounces beside them. */
  private record Amount(List<Figure> figures, int digits) {
    Unit unit() {
      return figures.get(0).unit().orElseThrow();
    }

    boolean isMetric() {
      return unit().kind().isMetric();
    }

    /** In ounces, fluid ounces, grams or millilitres. */
    BigDecimal whole() {
      return figures.stream()
          .map(each -> each.number().multiply(each.size()))
          .reduce(BigDecimal.ZERO, BigDecimal::add);
    }
  }

  private NetTotal(String text, int portions) {
    this.text = text;
    this.portions = BigDecimal.valueOf(portions);
    this.figures = NetQuantity.EACH.matcher(text).results().map(NetTotal::figure).toList();
  }

  /** As it stands for one portion. */
  static String of(String text, int portions) {
    return portions == 1 ? text : new NetTotal(text, portions).total();
  }

  private static Figure figure(MatchResult found) {
    return new Figure(
        found.start(1),
        found.end(1),
        found.start(2) + found.group(2).stripTrailing().length(),
        NetQuantity.unit(found.group(2)),
        NetQuantity.number(found.group(1)));
  }

  private String total() {
    List<Amount> amounts = amounts();
    Optional<Amount> meant = meant(amounts);
    StringBuilder told = new StringBuilder();
    int at = 0;
    for (Amount amount : amounts) {
      List<BigDecimal> numbers = numbers(amount, meant);
      for (int which = 0; which < numbers.size(); which++) {
        Figure figure = amount.figures().get(which);
        told.append(text, at, figure.start()).append(plain(numbers.get(which)));
        at = figure.end();
      }
    }
    return told.append(text.substring(at)).toString();
  }

  private List<Amount> amounts() {
    List<Amount> amounts = new ArrayList<>();
    for (int which = 0; which < figures.size(); which++) {
      boolean isRun = which + 1 < figures.size() && isRun(which);
      List<Figure> run = figures.subList(which, which + (isRun ? 2 : 1));
      amounts.add(new Amount(List.copyOf(run), run.stream().mapToInt(this::digits).sum()));
      which += isRun ? 1 : 0;
    }
    return amounts;
  }

  /** Whole pounds, and beside them ounces that make no pound: 1 lb 8 oz. */
  private boolean isRun(int which) {
    Figure pounds = figures.get(which);
    Figure ounces = figures.get(which + 1);
    return isOf(pounds, NetQuantity.POUND)
        && isOf(ounces, NetQuantity.OUNCES_UNIT)
        && pounds.number().stripTrailingZeros().scale() <= 0
        && ounces.number().compareTo(OUNCES_IN_POUND) < 0
        && text.substring(pounds.unitEnd(), ounces.start()).matches("[ ,]*");
  }

  private static boolean isOf(Figure figure, Unit unit) {
    return figure.unit().filter(unit::equals).isPresent();
  }

  /**
   * Significant digits as written; a fraction is exact, and counts as one, also where halves,
   * quarters, eighths or sixteenths of what is told in pounds or ounces are written with a point.
   */
  private int digits(Figure figure) {
    String written = text.substring(figure.start(), figure.end());
    if (written.indexOf('/') >= 0) {
      return written.indexOf(' ') < 0 ? 1 : 1 + written.substring(0, written.indexOf(' ')).length();
    }
    boolean isCustomary = figure.unit().filter(unit -> !unit.kind().isMetric()).isPresent();
    boolean isWhole = figure.number().stripTrailingZeros().scale() <= 0;
    if (isCustomary && !isWhole && figure.number().remainder(SIXTEENTH).signum() == 0) {
      BigDecimal whole = figure.number().setScale(0, RoundingMode.DOWN);
      return whole.signum() == 0 ? 1 : 1 + whole.precision();
    }
    return figure.number().signum() == 0 ? 1 : figure.number().stripTrailingZeros().precision();
  }

  /** The amount that the kitchen meant; empty where there is none in a unit known, or no pair. */
  private static Optional<Amount> meant(List<Amount> amounts) {
    List<Amount> known =
        amounts.stream().filter(each -> each.figures().get(0).unit().isPresent()).toList();
    Predicate<Amount> metric = Amount::isMetric;
    boolean isPair = known.stream().anyMatch(metric) && known.stream().anyMatch(metric.negate());
    return isPair
        ? known.stream().reduce((one, other) -> other.digits() < one.digits() ? other : one)
        : Optional.empty();
  }

  private List<BigDecimal> numbers(Amount amount, Optional<Amount> meant) {
    Figure first = amount.figures().get(0);
    if (first.unit().isEmpty()) {
      return List.of(times(first.number()));
    }
    boolean isReckoned = meant.filter(of -> of.isMetric() != amount.isMetric()).isPresent();
    if (amount.figures().size() == 1) {
      return List.of(
          isReckoned
              ? reckoned(meant.orElseThrow(), amount)
                  .divide(first.size(), MathContext.DECIMAL64)
                  .setScale(decimals(first), RoundingMode.DOWN)
              : times(first.number()));
    }
    BigDecimal ounces =
        isReckoned
            ? reckoned(meant.orElseThrow(), amount)
                .setScale(decimals(amount.figures().get(1)), RoundingMode.DOWN)
            : amount.whole().multiply(portions);
    return List.of(
        ounces.divideToIntegralValue(OUNCES_IN_POUND), ounces.remainder(OUNCES_IN_POUND));
  }

  /** In the basic unit of the amount that is reckoned; ounces beside millilitres are fluid ones. */
  private BigDecimal reckoned(Amount meant, Amount amount) {
    Unit metric = (meant.isMetric() ? meant : amount).unit();
    BigDecimal each =
        metric.kind() == NetQuantity.Kind.GRAMS ? NetQuantity.OUNCE : NetQuantity.FLUID_OUNCE;
    BigDecimal all = meant.whole().multiply(portions);
    return meant.isMetric() ? all.divide(each, MathContext.DECIMAL64) : all.multiply(each);
  }

  /** As many as were written; a fraction has two. */
  private int decimals(Figure figure) {
    String written = text.substring(figure.start(), figure.end());
    return written.indexOf('/') >= 0 ? 2 : Math.max(0, figure.number().scale());
  }

  private BigDecimal times(BigDecimal one) {
    return one.multiply(portions).round(new MathContext(6));
  }

  private static String plain(BigDecimal number) {
    return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
  }
}
