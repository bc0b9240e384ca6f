package chillwright.logfile;

import java.text.Normalizer;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Moments as people say them, by the clock on the wall: "18:00", "6 pm", "noon", "yesterday 14:00",
 * "ayer a las 9:30", "2026-11-25 18:00". A time of day alone is the nearest one on the side that is
 * asked about. An hour that the clock skipped is none, and of one that it showed twice the earlier
 * is taken, which the caller says.
 */
public final class SaidTime {
  /** What of a time of day alone is meant: the last such time, or the next. */
  public enum Toward {
    PAST,
    AHEAD
  }

  /** What a text was read as. */
  public sealed interface Read permits At, Skipped, Unreadable {}

  /**
   * A moment.
   *
   * @param isTwice whether the clock showed that time twice; this is the first of them
   */
  public record At(Instant moment, boolean isTwice) implements Read {}

  /**
   * A time that the clock never showed, since it was put forward.
   *
   * @param before the last minute that it showed
   * @param after the time that it showed next
   */
  public record Skipped(LocalTime before, LocalTime after) implements Read {}

  /** No such text. */
  public record Unreadable() implements Read {}

  /** Days by their distance from today. */
  private static final Map<String, Integer> DAYS =
      Map.ofEntries(
          Map.entry("today", 0),
          Map.entry("tonight", 0),
          Map.entry("hoy", 0),
          Map.entry("yesterday", -1),
          Map.entry("last night", -1),
          Map.entry("ayer", -1),
          Map.entry("anoche", -1),
          Map.entry("anteayer", -2),
          Map.entry("antier", -2),
          Map.entry("tomorrow", 1),
          Map.entry("mañana", 1));

  /**
   * Words that leave the hour open, as days from today and the earliest hour that they are commonly
   * said of: what stood out "last night" may have stood from nine on. Common practice, no source.
   */
  private static final Map<String, Rough> ROUGHLY =
      Map.ofEntries(
          rough(-1, 21, "last night"),
          rough(-1, 21, "overnight"),
          rough(-1, 21, "all night"),
          rough(-1, 21, "anoche"),
          rough(-1, 21, "toda la noche"),
          rough(0, 6, "this morning"),
          rough(0, 6, "esta mañana"),
          rough(0, 12, "this afternoon"),
          rough(0, 12, "esta tarde"),
          rough(-1, 12, "yesterday"),
          rough(-1, 12, "ayer"),
          rough(-1, 6, "yesterday morning"),
          rough(-1, 6, "ayer por la mañana"),
          rough(-1, 12, "yesterday afternoon"),
          rough(-1, 12, "ayer por la tarde"),
          rough(-1, 18, "yesterday evening"),
          rough(-1, 18, "ayer por la noche"));

  private record Rough(int days, LocalTime from) {}

  private static final Pattern SHAPE =
      Pattern.compile(
          "(?:(?<day>\\d{4}-\\d\\d-\\d\\d|[\\p{L}]+(?: night)?)(?:,? (?:at |a las? )?|t))?"
              + "(?<hour>\\d{1,2})(?:[:.](?<minute>\\d\\d)(?::\\d\\d(?:\\.\\d+)?)?)?"
              + " ?(?<half>a\\.? ?m\\.?|p\\.? ?m\\.?|de la (?:mañana|tarde|noche))?");

  private static final Pattern NOON = Pattern.compile("\\b(?:al? )?(?:noon|midday|mediod[ií]a)$");

  private static final Pattern MIDNIGHT =
      Pattern.compile("\\b(?:a (?:la )?)?(?:midnight|medianoche)$");

  private static final LocalDate FIRST = LocalDate.ofInstant(Cells.EARLIEST, ZoneOffset.UTC);
  private static final LocalDate LAST = LocalDate.of(2099, 12, 31);

  private SaidTime() {}

  /** The moment that a text means for who looks at the clock of that zone now. */
  public static Read moment(String text, ZoneId zone, Instant now, Toward toward) {
    return local(text, LocalDateTime.ofInstant(now, zone), toward)
        .map(local -> at(local, zone))
        .orElseGet(Unreadable::new);
  }

  /** The time on the clock that a text means; empty where it means none. */
  public static Optional<LocalDateTime> local(String text, LocalDateTime now, Toward toward) {
    String clock = NOON.matcher(normal(text)).replaceFirst("12:00");
    Matcher said = SHAPE.matcher(MIDNIGHT.matcher(clock).replaceFirst("00:00"));
    if (!said.matches()) {
      return Optional.empty();
    }
    Optional<LocalTime> time = timeOfDay(said);
    String day = said.group("day");
    if (day != null) {
      return day(day, now.toLocalDate()).flatMap(date -> time.map(date::atTime));
    }
    return time.map(of -> nearest(now.toLocalDate().atTime(of), now, toward));
  }

  /**
   * The earliest time on the clock that words such as "last night" or "this morning" mean, which
   * leave the hour open; empty for all else. For what must not be counted too short, never for a
   * record.
   */
  public static Optional<LocalDateTime> earliest(String text, LocalDateTime now) {
    return Optional.ofNullable(ROUGHLY.get(normal(text)))
        .map(said -> now.toLocalDate().plusDays(said.days()).atTime(said.from()))
        .map(time -> time.isAfter(now) ? now.toLocalDate().atStartOfDay() : time);
  }

  /** That time on the clock of that zone. */
  public static Read at(LocalDateTime local, ZoneId zone) {
    List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
    if (offsets.isEmpty()) {
      var gap = zone.getRules().getTransition(local);
      return new Skipped(
          gap.getDateTimeBefore().minusMinutes(1).toLocalTime(),
          gap.getDateTimeAfter().toLocalTime());
    }
    // Of two offsets the first is that of the time before the clock was put back.
    return new At(local.toInstant(offsets.get(0)), offsets.size() > 1);
  }

  private static Map.Entry<String, Rough> rough(int days, int hour, String words) {
    return Map.entry(words, new Rough(days, LocalTime.of(hour, 0)));
  }

  private static LocalDateTime nearest(LocalDateTime today, LocalDateTime now, Toward toward) {
    return switch (toward) {
      case PAST -> today.isAfter(now) ? today.minusDays(1) : today;
      case AHEAD -> today.isBefore(now) ? today.plusDays(1) : today;
    };
  }

  private static String normal(String text) {
    return Normalizer.normalize(text, Normalizer.Form.NFKC)
        .replaceAll("\\s+", " ")
        .strip()
        .toLowerCase(Locale.ROOT);
  }

  /** Twelve hours with their half of the day, or twenty-four with minutes. */
  private static Optional<LocalTime> timeOfDay(Matcher said) {
    int hour = Integer.parseInt(said.group("hour"));
    boolean hasMinute = said.group("minute") != null;
    int minute = hasMinute ? Integer.parseInt(said.group("minute")) : 0;
    Optional<String> half = Optional.ofNullable(said.group("half"));
    boolean isHour = half.isPresent() ? hour >= 1 && hour <= 12 : hour <= 23 && hasMinute;
    if (!isHour || minute > 59) {
      return Optional.empty();
    }
    return Optional.of(LocalTime.of(half.map(of -> hour(hour, of)).orElse(hour), minute));
  }

  private static int hour(int hour, String half) {
    boolean isMorning = half.startsWith("a") || half.endsWith("mañana");
    // Twelve at night is the end of the evening: midnight.
    boolean isMidnight = hour == 12 && half.endsWith("noche");
    return hour % 12 + (isMorning || isMidnight ? 0 : 12);
  }

  private static Optional<LocalDate> day(String said, LocalDate today) {
    if (DAYS.containsKey(said)) {
      return Optional.of(today.plusDays(DAYS.get(said)));
    }
    try {
      return Optional.of(LocalDate.parse(said))
          .filter(day -> !day.isBefore(FIRST) && !day.isAfter(LAST));
    } catch (DateTimeException noDay) {
      return Optional.empty();
    }
  }
}
