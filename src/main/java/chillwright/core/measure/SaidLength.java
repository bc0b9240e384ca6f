package chillwright.core.measure;

import java.text.Normalizer;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Lengths of time as people say them, in English and Spanish: "3 h", "90 min", "3:30", "1 day 6 h",
 * "2 weeks", "hora y media". The one reader of them; weeks are seven days, days 24 hours.
 */
public final class SaidLength {
  private static final double DAY = 24;

  /** Units from the longest to the shortest, as they follow one another. */
  private static final List<Unit> UNITS =
      List.of(
          new Unit("w|wks?|weeks?|semanas?|sem", 7 * DAY),
          new Unit("d|days?|d[ií]as?", DAY),
          new Unit("h|hrs?|hours?|horas?", 1),
          new Unit("mins?|minutes?|minutos?", 1 / 60.0));

  private static final Map<String, Double> NUMBERS = numbers();

  /**
   * At most seven digits, so that nothing runs over; a comma for decimals as many write it. "1,440"
   * and "1.000" are no figure, since they may mean thousands.
   */
  private static final String FIGURE = "(?!\\d+(?:,\\d{3}|[.]000)(?!\\d))\\d{1,7}(?:[.,]\\d{1,4})?";

  private static final String FRACTION = "(?:\\d{1,5}\\s+)?\\d{1,2}/\\d{1,2}|\\d{0,5}\\s?[½¼¾]";

  private static final String WORDS =
      NUMBERS.keySet().stream()
          .sorted((one, other) -> other.length() - one.length())
          .reduce((one, other) -> one + "|" + other)
          .orElseThrow();

  private static final Pattern AMOUNT =
      Pattern.compile(
          "(?:(?<figure>%s)|(?<fraction>%s)|(?<word>%s)(?=\\s))\\s*(?<unit>\\p{L}+)[.]?"
                  .formatted(FIGURE, FRACTION, WORDS)
              + "(?<half>\\s+(?:and a half|y medi[oa])\\b)?");

  /** "19h30", "19 h 30 min" or "3:30 h": hours, then minutes. */
  private static final Pattern HOURS_AND_MINUTES =
      Pattern.compile(
          "(?<h>\\d{1,5})(?:\\s*(?:h|hr|hours?|horas?)(?:\\s*(?:and|y))?\\s*(?<m>[0-5]?\\d)"
              + "|:(?<of>[0-5]?\\d)(?:\\s*(?:h|hr|hours?|horas?))?)"
              + "\\s*(?:min|minutes?|minutos?)?");

  /** Between two amounts. */
  private static final Pattern BETWEEN = Pattern.compile("\\s*(?:,\\s*)?(?:(?:and|y)\\s+)?");

  private static final Pattern BARE =
      Pattern.compile("(?!\\d+(?:,\\d{3}|[.]000)$)\\d{1,4}([.,]\\d{1,3})?");

  /** A unit by the words for it. */
  private record Unit(String names, double hours) {}

  private SaidLength() {}

  private static Map<String, Double> numbers() {
    Map<String, Double> numbers = new HashMap<>();
    List.of("half an", "half a", "half", "medio", "media").forEach(word -> numbers.put(word, 0.5));
    List.of("a", "an", "one", "un", "una", "uno").forEach(word -> numbers.put(word, 1.0));
    List<String> english = List.of("two", "three", "four", "five", "six", "seven", "eight");
    List<String> spanish = List.of("dos", "tres", "cuatro", "cinco", "seis", "siete", "ocho");
    for (int of = 0; of < english.size(); of++) {
      numbers.put(english.get(of), of + 2.0);
      numbers.put(spanish.get(of), of + 2.0);
    }
    return numbers;
  }

  /** The length, to the second, a bare number being hours; empty where the text is none. */
  public static Optional<Duration> of(String text) {
    String given = text.strip();
    OptionalDouble hours =
        BARE.matcher(given).matches()
            ? OptionalDouble.of(Double.parseDouble(given.replace(',', '.')))
            : hours(given);
    return hours.isPresent()
        ? Optional.of(Duration.ofSeconds(Math.round(hours.getAsDouble() * 3600)))
        : Optional.empty();
  }

  /** Whole days, a bare number being days; empty where the text is none, or no whole days. */
  public static OptionalInt days(String text) {
    String given = text.strip();
    if (given.matches("\\d{1,6}")) {
      return OptionalInt.of(Integer.parseInt(given));
    }
    OptionalDouble hours = hours(given);
    boolean isWhole = hours.isPresent() && hours.getAsDouble() % DAY == 0;
    return isWhole
        ? OptionalInt.of((int) Math.round(hours.getAsDouble() / DAY))
        : OptionalInt.empty();
  }

  /** In hours; empty where there is no such length, or a figure without its unit. */
  public static OptionalDouble hours(String text) {
    String given = Normalizer.normalize(text.strip(), Normalizer.Form.NFC).toLowerCase(Locale.ROOT);
    Matcher clock = HOURS_AND_MINUTES.matcher(given);
    if (clock.matches()) {
      String minutes = clock.group("m") == null ? clock.group("of") : clock.group("m");
      return OptionalDouble.of(
          Double.parseDouble(clock.group("h")) + Double.parseDouble(minutes) / 60);
    }
    double sum = 0;
    int at = 0;
    int unit = -1;
    Matcher amount = AMOUNT.matcher(given);
    while (amount.find(at) && isBetween(given.substring(at, amount.start()), at > 0)) {
      int next = unit(amount.group("unit"));
      Optional<Double> number = number(amount);
      if (next <= unit || number.isEmpty()) {
        return OptionalDouble.empty();
      }
      double half = amount.group("half") == null ? 0 : 0.5;
      sum += (number.get() + half) * UNITS.get(next).hours();
      unit = next;
      at = amount.end();
    }
    return at > 0 && at == given.length() ? OptionalDouble.of(sum) : OptionalDouble.empty();
  }

  private static boolean isBetween(String text, boolean isAfterOne) {
    return isAfterOne ? BETWEEN.matcher(text).matches() : text.isEmpty();
  }

  /** Where it stands in the list; below all where the word is no unit. */
  private static int unit(String word) {
    for (int at = 0; at < UNITS.size(); at++) {
      if (word.matches(UNITS.get(at).names())) {
        return at;
      }
    }
    return -1;
  }

  /** Empty where a fraction is by nothing, or more than a whole: no figure that anybody writes. */
  private static Optional<Double> number(Matcher amount) {
    if (amount.group("word") != null) {
      return Optional.of(NUMBERS.get(amount.group("word")));
    }
    if (amount.group("figure") != null) {
      return Optional.of(Double.parseDouble(amount.group("figure").replace(',', '.')));
    }
    String fraction = amount.group("fraction").strip();
    int sign = "¼½¾".indexOf(fraction.charAt(fraction.length() - 1));
    int blank = fraction.indexOf(' ');
    if (sign >= 0) {
      String whole = fraction.substring(0, fraction.length() - 1).strip();
      return Optional.of((whole.isEmpty() ? 0 : Integer.parseInt(whole)) + (sign + 1) / 4.0);
    }
    String[] parts = fraction.substring(blank + 1).split("/", 2);
    double part = Double.parseDouble(parts[0]) / Integer.parseInt(parts[1]);
    double whole = blank < 0 ? 0 : Integer.parseInt(fraction.substring(0, blank));
    return part < 1 ? Optional.of(whole + part) : Optional.empty();
  }
}
