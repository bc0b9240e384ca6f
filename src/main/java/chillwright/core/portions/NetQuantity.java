package chillwright.core.portions;

import java.math.BigDecimal;
import java.math.MathContext;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/**
 * A net quantity of contents as a kitchen words it: a number and its unit, perhaps with others
 * beside it (21 CFR 101.7(a): weight, measure or count). Such as "Net Wt 12 oz (340 g)".
 */
public record NetQuantity(String text) {
  /** So far an amount in pounds and ounces may be from the metric one beside it. */
  private static final double SLACK = 0.05;

  /** NIST Handbook 44, appendix C: grams in an avoirdupois ounce. */
  static final BigDecimal OUNCE = new BigDecimal("28.349523125");

  /** NIST Handbook 44, appendix C: millilitres in a US fluid ounce. */
  static final BigDecimal FLUID_OUNCE = new BigDecimal("29.57353");

  /** Digits with a fraction or not: "12", "1.5", "1,000", "1 1/2", "1/2". */
  private static final String DIGITS = "\\d+(?:[.,]\\d+)?(?:\\s?\\d*/\\d+)?";

  private static final String UNIT = "\\p{L}[\\p{L}. ]{0,20}";

  /** More than nothing. */
  private static final String AMOUNT = "(?=[0 .,/]*[1-9])" + DIGITS + "\\s*" + UNIT;

  private static final Pattern WHOLE =
      Pattern.compile(
          "(?:\\p{L}[\\p{L}.: ]{0,30})?%s(?:[(,;/·=]?\\s*%s\\)?\\s*)*".formatted(AMOUNT, AMOUNT));

  /** An amount: its number and its unit. */
  static final Pattern EACH = Pattern.compile("(" + DIGITS + ")\\s*(" + UNIT + ")");

  /** A fraction of one sign, and the digit before it: a quarter to seven eighths. */
  private static final Pattern ONE_SIGN =
      Pattern.compile("(\\d\\s*)?([\u00bc-\u00be\u2150-\u215e])");

  /** A number of a calculator, such as 1e3. */
  private static final Pattern POWER = Pattern.compile("\\d[eE][+-]?\\d");

  private static final Pattern THOUSANDS = Pattern.compile("[1-9]\\d{0,2},\\d{3}");

  /** What an amount is of; only like amounts can be held against each other. */
  enum Kind {
    OUNCES,
    FLUID_OUNCES,
    GRAMS,
    MILLILITRES;

    boolean isMetric() {
      return this == GRAMS || this == MILLILITRES;
    }
  }

  record Unit(Kind kind, double size) {}

  static final Unit OUNCES_UNIT = new Unit(Kind.OUNCES, 1);
  static final Unit POUND = new Unit(Kind.OUNCES, 16);

  private record Amount(Kind kind, double amount) {}

  private static final Map<String, Unit> UNITS =
      Map.ofEntries(
          Map.entry("oz", OUNCES_UNIT),
          Map.entry("ounce", OUNCES_UNIT),
          Map.entry("onza", OUNCES_UNIT),
          Map.entry("lb", POUND),
          Map.entry("pound", POUND),
          Map.entry("libra", POUND),
          Map.entry("fl", new Unit(Kind.FLUID_OUNCES, 1)),
          Map.entry("fluid", new Unit(Kind.FLUID_OUNCES, 1)),
          Map.entry("floz", new Unit(Kind.FLUID_OUNCES, 1)),
          Map.entry("pt", new Unit(Kind.FLUID_OUNCES, 16)),
          Map.entry("pint", new Unit(Kind.FLUID_OUNCES, 16)),
          Map.entry("qt", new Unit(Kind.FLUID_OUNCES, 32)),
          Map.entry("quart", new Unit(Kind.FLUID_OUNCES, 32)),
          Map.entry("gal", new Unit(Kind.FLUID_OUNCES, 128)),
          Map.entry("gallon", new Unit(Kind.FLUID_OUNCES, 128)),
          Map.entry("g", new Unit(Kind.GRAMS, 1)),
          Map.entry("gr", new Unit(Kind.GRAMS, 1)),
          Map.entry("gm", new Unit(Kind.GRAMS, 1)),
          Map.entry("gram", new Unit(Kind.GRAMS, 1)),
          Map.entry("gramo", new Unit(Kind.GRAMS, 1)),
          Map.entry("mg", new Unit(Kind.GRAMS, 0.001)),
          Map.entry("kg", new Unit(Kind.GRAMS, 1000)),
          Map.entry("kilo", new Unit(Kind.GRAMS, 1000)),
          Map.entry("kilogram", new Unit(Kind.GRAMS, 1000)),
          Map.entry("kilogramo", new Unit(Kind.GRAMS, 1000)),
          Map.entry("ml", new Unit(Kind.MILLILITRES, 1)),
          Map.entry("cl", new Unit(Kind.MILLILITRES, 10)),
          Map.entry("dl", new Unit(Kind.MILLILITRES, 100)),
          Map.entry("l", new Unit(Kind.MILLILITRES, 1000)),
          Map.entry("liter", new Unit(Kind.MILLILITRES, 1000)),
          Map.entry("litre", new Unit(Kind.MILLILITRES, 1000)),
          Map.entry("litro", new Unit(Kind.MILLILITRES, 1000)));

  public NetQuantity {
    Objects.requireNonNull(text, "text");
  }

  /** Empty where the words tell no quantity. */
  public static Optional<NetQuantity> read(String text) {
    String plain = withPlainFractions(text);
    return WHOLE.matcher(plain).matches() && !POWER.matcher(plain).find()
        ? Optional.of(new NetQuantity(plain))
        : Optional.empty();
  }

  /** "1\u00bc" as "1 1/4": Unicode knows what each such sign stands for. */
  private static String withPlainFractions(String text) {
    return ONE_SIGN
        .matcher(text)
        .replaceAll(
            found ->
                (found.group(1) == null ? "" : found.group(1).strip() + " ")
                    + Normalizer.normalize(found.group(2), Normalizer.Form.NFKC)
                        .replace('\u2044', '/'));
  }

  /**
   * Whether what it says in ounces and in grams, or in fluid ounces and in millilitres, is one and
   * the same; also where it says it in one of them only.
   */
  public boolean agrees() {
    List<Amount> amounts = amounts();
    return amounts.stream()
        .filter(one -> one.kind().isMetric())
        .allMatch(metric -> isMet(metric, customary(amounts, metric.kind())));
  }

  private static boolean isMet(Amount metric, List<Double> customary) {
    double each = (metric.kind() == Kind.GRAMS ? OUNCE : FLUID_OUNCE).doubleValue();
    return customary.isEmpty()
        || customary.stream()
            .anyMatch(
                ounces -> Math.abs(ounces * each - metric.amount()) <= SLACK * metric.amount());
  }

  /** Each amount in ounces, and amounts one after another taken together: 1 lb, 8 oz. */
  private static List<Double> customary(List<Amount> amounts, Kind metric) {
    List<Double> sums = new ArrayList<>();
    for (int from = 0; from < amounts.size(); from++) {
      double sum = 0;
      for (int to = from; to < amounts.size(); to++) {
        if (!isLike(amounts.get(to).kind(), metric)) {
          break;
        }
        sum += amounts.get(to).amount();
        sums.add(sum);
      }
    }
    return sums;
  }

  /** Ounces beside millilitres are meant as fluid ones. */
  private static boolean isLike(Kind customary, Kind metric) {
    return customary == Kind.OUNCES
        || (customary == Kind.FLUID_OUNCES && metric == Kind.MILLILITRES);
  }

  /** The same of so many portions, each of this quantity; whether it agrees is asked before. */
  public NetQuantity times(int portions) {
    return new NetQuantity(NetTotal.of(text, portions));
  }

  private List<Amount> amounts() {
    return EACH.matcher(text).results().flatMap(found -> amount(found).stream()).toList();
  }

  private static Optional<Amount> amount(MatchResult found) {
    return unit(found.group(2))
        .map(unit -> new Amount(unit.kind(), number(found.group(1)).doubleValue() * unit.size()));
  }

  /** Empty where nobody knows the word, such as bars. */
  static Optional<Unit> unit(String words) {
    String word = words.strip().toLowerCase(Locale.ROOT).split("[. ]", 2)[0];
    String one = word.length() > 2 ? word.replaceFirst("s$", "") : word;
    return Optional.ofNullable(UNITS.get(one))
        .or(() -> Optional.ofNullable(UNITS.get(word.replaceFirst("s$", ""))));
  }

  /** "1 1/2" is one and a half; a comma before three digits parts thousands. */
  static BigDecimal number(String digits) {
    int slash = digits.indexOf('/');
    if (slash < 0) {
      boolean isThousands = THOUSANDS.matcher(digits).matches();
      return new BigDecimal(isThousands ? digits.replace(",", "") : digits.replace(',', '.'));
    }
    int blank = digits.indexOf(' ');
    String whole = blank < 0 ? "0" : digits.substring(0, blank);
    BigDecimal over = new BigDecimal(digits.substring(blank + 1, slash));
    BigDecimal under = new BigDecimal(digits.substring(slash + 1));
    return under.signum() == 0
        ? number(whole)
        : number(whole).add(over.divide(under, MathContext.DECIMAL64));
  }
}
