package chillwright.logfile;

import chillwright.logfile.SaidTime.Toward;
import chillwright.logfile.SaidWords.Day;
import chillwright.logfile.SaidWords.Said;
import java.text.Normalizer;
import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.time.Month;
import java.time.MonthDay;
import java.time.format.TextStyle;
import java.time.temporal.TemporalAdjusters;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Days as people say them: "2026-11-22", "yesterday", "3 days ago", "10 Nov 2026", "December 18th",
 * "18 de diciembre". The only reader of such days. One without its year, and a day of the week, is
 * the nearest on the side that is asked about. Figures alone, such as 10/11, have two meanings and
 * are none; so is a night, which is of two days.
 */
public final class SaidDay {
  private static final List<Locale> LOCALES = List.of(Locale.ENGLISH, Locale.forLanguageTag("es"));

  private static final Map<String, Month> MONTHS = months();

  private static final String WORD = "\\p{L}{3,10}";
  private static final String OF_MONTH = "(?<day>\\d{1,2})(?:st|nd|rd|th|o|\u00b0)?";
  private static final String YEAR = "(?:,? ?(?:de |del )?(?<year>\\d{4}))?";
  private static final String WEEKDAY = "(?:(?<week>" + WORD + ")[.,]? (?:the )?)?";

  private static final List<Pattern> DATES =
      List.of(
          Pattern.compile(WEEKDAY + OF_MONTH + " ?(?:of |de )?(?<month>" + WORD + ")\\.?" + YEAR),
          Pattern.compile(WEEKDAY + "(?<month>" + WORD + ")\\.? " + OF_MONTH + YEAR));

  /** A leap day comes once in eight years at the least: 1896 to 1904. */
  private static final int YEARS = 8;

  private SaidDay() {}

  /** The day that a text means for who says it on another; empty where it is none, or two. */
  public static Optional<LocalDate> read(String text, LocalDate today, Toward toward) {
    String said =
        Normalizer.normalize(text, Normalizer.Form.NFKC)
            .replaceAll("\\s+", " ")
            .strip()
            .toLowerCase(Locale.ROOT);
    return written(said)
        .or(() -> dated(said, today, toward))
        .or(() -> SaidWords.read(said).flatMap(words -> phrased(words, today, toward)));
  }

  private static Optional<LocalDate> written(String said) {
    try {
      return Optional.of(LocalDate.parse(said));
    } catch (DateTimeException none) {
      return Optional.empty();
    }
  }

  private static Optional<LocalDate> phrased(Said said, LocalDate today, Toward toward) {
    if (said.ago().isPresent()) {
      Duration ago = said.ago().get();
      boolean isDays = ago.equals(Duration.ofDays(ago.toDays()));
      return Optional.of(today.minusDays(ago.toDays())).filter(day -> isDays && !isAhead(toward));
    }
    return said.day()
        .filter(day -> said.clock().isEmpty() && !said.part().isNight())
        .map(day -> on(day, today, toward));
  }

  private static boolean isAhead(Toward toward) {
    return toward == Toward.AHEAD;
  }

  private static LocalDate on(Day day, LocalDate today, Toward toward) {
    return day.week()
        .map(
            week ->
                today.with(
                    isAhead(toward)
                        ? TemporalAdjusters.nextOrSame(week)
                        : TemporalAdjusters.previousOrSame(week)))
        .or(day::date)
        .orElseGet(() -> today.plusDays(day.away()));
  }

  /** The day of a month; with a day of the week before it only where it falls on that. */
  private static Optional<LocalDate> dated(String said, LocalDate today, Toward toward) {
    return DATES.stream()
        .map(pattern -> pattern.matcher(said))
        .filter(Matcher::matches)
        .filter(found -> MONTHS.containsKey(found.group("month")))
        .findFirst()
        .flatMap(
            found ->
                dated(found, today, toward)
                    .filter(day -> isOf(day.getDayOfWeek(), found.group("week"))));
  }

  private static Optional<LocalDate> dated(Matcher found, LocalDate today, Toward toward) {
    Month month = MONTHS.get(found.group("month"));
    int day = Integer.parseInt(found.group("day"));
    if (day < 1 || day > month.maxLength()) {
      return Optional.empty();
    }
    MonthDay date = MonthDay.of(month, day);
    if (found.group("year") != null) {
      int year = Integer.parseInt(found.group("year"));
      return Optional.of(year).filter(date::isValidYear).map(date::atYear);
    }
    boolean isAhead = isAhead(toward);
    return IntStream.rangeClosed(0, YEARS)
        .map(away -> today.getYear() + (isAhead ? away : -away))
        .filter(date::isValidYear)
        .mapToObj(date::atYear)
        .filter(one -> isAhead ? !one.isBefore(today) : !one.isAfter(today))
        .findFirst();
  }

  private static boolean isOf(DayOfWeek day, String said) {
    return said == null
        || LOCALES.stream()
            .map(locale -> day.getDisplayName(TextStyle.FULL, locale).toLowerCase(locale))
            .anyMatch(name -> name.startsWith(said));
  }

  /** By their names, and by the first three letters of those. */
  private static Map<String, Month> months() {
    Map<String, Month> months = new HashMap<>();
    for (Month month : Month.values()) {
      LOCALES.stream()
          .map(locale -> month.getDisplayName(TextStyle.FULL, locale).toLowerCase(locale))
          .flatMap(name -> Stream.of(name, name.substring(0, 3)))
          .forEach(name -> months.put(name, month));
    }
    months.put("sept", Month.SEPTEMBER);
    return Map.copyOf(months);
  }
}
