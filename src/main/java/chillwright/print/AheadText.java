package chillwright.print;

import chillwright.core.ahead.Ahead;
import chillwright.core.ahead.Filled;
import chillwright.core.ahead.Filled.Amount;
import chillwright.core.ahead.Filled.Day;
import chillwright.core.ahead.Filled.Moment;
import chillwright.core.ahead.Filled.Unit;
import chillwright.core.ahead.Filled.Word;
import chillwright.core.ahead.OutageFoods;
import chillwright.core.ahead.Told;
import chillwright.core.heat.Reason;
import chillwright.core.measure.Limit;
import chillwright.core.measure.Temperature.Scale;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Answers to questions asked ahead, in words; every figure in both scales or systems.
 *
 * @param scale which comes first; Celsius puts metric amounts first too
 */
public record AheadText(Language language, Scale scale) {
  private static final double INCH = 25.4;
  private static final double POUND = 0.45359237;

  /** FoodSafety.gov, charts for a power outage: what stayed so cold may be frozen again. */
  private static final Limit COLD = Limit.of(4, 40);

  /** Longer than that nobody counts in hours. */
  private static final double TWO_DAYS = 48;

  private static final double NEARLY_A_DAY = 20;
  private static final double HALF_DAY = 12;

  /** Questions that are answered with an estimate alone. */
  /** Where the two ends of a range stand; as said they may be one. */
  private static final Map<String, Integer> RANGES =
      Map.of("cooling.reaches", 2, "cooling.stage", 3);

  /** A measure by its number, such as "ladle 8". */
  private static final Pattern TOOL = Pattern.compile("(ladle|scoop) (.+)");

  /** A limit in both scales, Fahrenheit first. */
  private static final Pattern BOTH = Pattern.compile("([-\\d.]+ °F) \\(([-\\d.]+ °C)\\)");

  private static final String COOLING = "cooling.";

  private static final double QUART = 0.946352946;

  /** As the United States read it. */
  public AheadText(Language language) {
    this(language, Scale.FAHRENHEIT);
  }

  /** The whole answer: what is told, what to mind, and where its figures are printed. */
  public String answer(Ahead ahead, String defers) {
    List<String> lines = new ArrayList<>();
    ahead.told().forEach(told -> lines.add((OutageFoods.isFood(told) ? "  - " : "") + says(told)));
    lines.add("");
    cautions(ahead).forEach(lines::add);
    lines.add("");
    lines.add(language.say("ahead.sources"));
    sources(ahead).forEach(source -> lines.add("  " + source));
    lines.add(defers.strip());
    return String.join(System.lineSeparator(), lines);
  }

  /** Where its figures are printed, and how they were come by. */
  public List<String> sources(Ahead ahead) {
    return ahead.sources().stream()
        .map(
            source ->
                named(source.what()).replaceFirst("[.]$", "")
                    + ": "
                    + source.source()
                    + " ("
                    + language.say("ahead.status." + source.status())
                    + ")")
        .toList();
  }

  /** What a figure is of; a tool by its kind, with its number after it. */
  private String named(String what) {
    Matcher tool = TOOL.matcher(what);
    return tool.matches()
        ? language.named(tool.group(1)) + " " + tool.group(2)
        : language.named(what);
  }

  /** What belongs to every answer of its kind. */
  public List<String> cautions(Ahead ahead) {
    String cold = COLD.both(scale);
    return ahead.cautions().stream()
        .map(key -> language.say("ahead.caution." + key, cold))
        .toList();
  }

  /** One sentence. */
  public String says(Told told) {
    List<Object> filled = new ArrayList<>();
    boolean isRough = told.key().startsWith(COOLING);
    told.filled().forEach(value -> filled.add(isRough ? rough(value) : shown(value)));
    told.reason().ifPresent(reason -> filled.add(reason(reason)));
    String key = told.key();
    int range = RANGES.getOrDefault(key, -1);
    boolean isOne = range >= 0 && filled.get(range).equals(filled.get(range + 1));
    return language.say("ahead." + key + (isOne ? ".one" : ""), filled.toArray());
  }

  public String reason(Reason reason) {
    return language.say("ahead.reason." + reason.key());
  }

  /** No finer than a cook can use it: what takes a day or more is told in half days. */
  private String rough(Filled filled) {
    boolean isTime = filled.value() instanceof Amount time && time.unit() == Unit.HOURS;
    double hours = isTime ? ((Amount) filled.value()).amount() : 0;
    long halves = Math.round(hours / HALF_DAY);
    if (hours < NEARLY_A_DAY) {
      return shown(filled);
    }
    if (halves <= 3) {
      return language.say(halves == 2 ? "ahead.half-days.two" : "ahead.half-days.three");
    }
    return language.say("ahead.half-days." + (halves % 2 == 0 ? "even" : "odd"), halves / 2);
  }

  private String shown(Filled filled) {
    if (filled.value() instanceof Amount amount) {
      return amount(amount);
    }
    if (filled.value() instanceof Word word) {
      Matcher limit = BOTH.matcher(word.text());
      return limit.matches()
          ? both(limit.group(1), limit.group(2))
          : Times.kept(ZoneOffset.UTC, language).retold(language.named(word.text()));
    }
    if (filled.value() instanceof Moment moment) {
      return Times.kept(moment.at().getOffset(), language).moment(moment.at().toInstant());
    }
    return Times.kept(ZoneOffset.UTC, language).day(((Day) filled.value()).day());
  }

  private String amount(Amount amount) {
    double value = amount.amount();
    return switch (amount.unit()) {
      case CELSIUS -> both(plain(value * 9 / 5 + 32, 0) + " °F", plain(value, 0) + " °C");
      case HOURS -> hours(value);
      case KILOGRAMS -> both(value, "kg", value / POUND, "lb");
      case LITRES ->
          value < QUART
              ? both(value * 1000, "ml", value / QUART * 32, "fl oz")
              : both(value, "L", value / QUART, "qt");
      case MILLIMETRES -> both(plain(value / INCH, 1) + " in", plain(value, 0) + " mm");
      case DAYS -> plain(value, 1);
      case PERCENT -> plain(value, 0) + " %";
      case COUNT -> plain(value, 0);
    };
  }

  private String both(double metric, String unit, double ours, String other) {
    return both(
        plain(ours, ours < 20 ? 1 : 0) + " " + other,
        plain(metric, metric < 20 ? 1 : 0) + " " + unit);
  }

  private String both(String american, String metric) {
    return scale == Scale.CELSIUS ? metric + " (" + american + ")" : american + " (" + metric + ")";
  }

  /** No finer than it is known: to five minutes, a quarter of an hour, or an hour. */
  private String hours(double hours) {
    double minutes = hours * 60;
    int step = hours < 1 ? 1 : hours < 3 ? 5 : hours < 10 ? 15 : 60;
    String told = Figures.duration(Duration.ofMinutes(Math.round(minutes / step) * step));
    return hours > TWO_DAYS ? language.say("ahead.days", told, plain(hours / 24, 1)) : told;
  }

  private static String plain(double value, int decimals) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
    String text = rounded.stripTrailingZeros().toPlainString();
    return text.equals("-0") ? "0" : text;
  }
}
