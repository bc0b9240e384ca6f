package chillwright.logfile;

import chillwright.logfile.SaidWords.Day;
import chillwright.logfile.SaidWords.Part;
import chillwright.logfile.SaidWords.Said;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import java.util.Optional;

/**
 * Moments as people say them, by the clock on the wall: "since 6 pm", "noon", "yesterday 14:00",
 * "last night 1:30 am", "ayer a las 9:30", "3 hours ago", "2026-11-25 18:00". The only reader of
 * such times. Words such as "yesterday" count from now; a time of day alone is the nearest one on
 * the side that is asked about. What has two meanings ("6") is told as both. An hour that the clock
 * skipped is none, and of one that it showed twice the earlier is taken, which the caller says.
 */
public final class SaidTime {
  /** What of a time of day alone is meant: the last such time, or the next. */
  public enum Toward {
    PAST,
    AHEAD
  }

  /** Of words that leave the hour open: the first moment that they mean, or the last. */
  public enum Edge {
    EARLIEST,
    LATEST
  }

  /** What a text was read as. */
  public sealed interface Read permits At, Either, Skipped, Unreadable {}

  /**
   * A moment.
   *
   * @param isTwice whether the clock showed that time twice; this is the first of them
   * @param isRough whether the words leave the hour open, so that an edge of them was taken
   */
  public record At(Instant moment, boolean isTwice, boolean isRough) implements Read {}

  /** Two moments that a text may mean, the earlier first. */
  public record Either(LocalDateTime first, LocalDateTime second) implements Read {
    /** The two as they can be written without a doubt. */
    public List<String> written() {
      return List.of(written(first), written(second));
    }

    private static String written(LocalDateTime time) {
      return time.toLocalDate() + " " + time.toLocalTime();
    }
  }

  /**
   * A time that the clock never showed, since it was put forward.
   *
   * @param before the last minute that it showed
   * @param after the time that it showed next
   */
  public record Skipped(LocalTime before, LocalTime after) implements Read {}

  /** No such text. */
  public record Unreadable() implements Read {}

  private static final LocalDate FIRST = LocalDate.ofInstant(Cells.EARLIEST, ZoneOffset.UTC);
  private static final LocalDate LAST = LocalDate.of(2099, 12, 31);
  private static final int HOUR = 60;
  private static final int DAY = 24 * HOUR;

  private SaidTime() {}

  /** The moment that a text means for who looks at the clock of that zone now; none by a guess. */
  public static Read moment(String text, ZoneId zone, Instant now, Toward toward) {
    return SaidWords.read(text)
        .map(said -> read(said, zone, now, now, toward))
        .orElseGet(Unreadable::new);
  }

  /**
   * A moment that has passed, or an edge of what words such as "last night" mean. For what must not
   * be counted too short, never for a record.
   *
   * @param before a time of day alone is the last one up to this
   */
  public static Read passed(String text, ZoneId zone, Instant now, Instant before, Edge edge) {
    LocalDateTime clock = LocalDateTime.ofInstant(now, zone);
    Optional<LocalDateTime> rough = roughly(text, clock, edge);
    if (rough.isPresent()) {
      return at(rough.get(), zone) instanceof At at
          ? new At(at.moment(), at.isTwice(), true)
          : at(rough.get(), zone);
    }
    return SaidWords.read(text)
        .map(said -> read(said, zone, now, before, Toward.PAST))
        .orElseGet(Unreadable::new);
  }

  private static Read read(Said said, ZoneId zone, Instant now, Instant before, Toward toward) {
    if (said.ago().isPresent() && toward == Toward.PAST) {
      // Hours that have passed, whatever the clock did meanwhile; to the minute, as all else said.
      Instant moment = now.truncatedTo(ChronoUnit.MINUTES).minus(said.ago().get());
      return new At(moment, false, false);
    }
    LocalDateTime clock = LocalDateTime.ofInstant(now, zone);
    return read(times(said, clock, LocalDateTime.ofInstant(before, zone), toward), zone);
  }

  /** The times on the clock that a text means: none, one, or two with the earlier first. */
  public static List<LocalDateTime> times(String text, LocalDateTime now, Toward toward) {
    return SaidWords.read(text).map(said -> times(said, now, now, toward)).orElse(List.of());
  }

  /** An edge of what words such as "last night" mean, which leave the hour open. */
  static Optional<LocalDateTime> roughly(String text, LocalDateTime now, Edge edge) {
    return SaidWords.read(text)
        .filter(said -> said.clock().isEmpty() && said.ago().isEmpty())
        .flatMap(said -> edge(said.day().orElseThrow(), said.part(), now, edge));
  }

  private static Optional<LocalDateTime> edge(Day day, Part part, LocalDateTime now, Edge edge) {
    Day begun = day.week().map(week -> lastBegun(week, part, now)).orElse(day);
    boolean isToday = begun.equals(Day.away(0));
    boolean isAhead = isToday && now.isBefore(now.toLocalDate().atTime(part.from(), 0));
    boolean isEvening = part.isNight() || part == Part.EVENING;
    if (begun.away() > 0 || (isAhead && isEvening)) {
      return Optional.empty();
    }
    if (edge == Edge.LATEST) {
      LocalDateTime end = on(begun, part.to() * HOUR, now, Toward.PAST);
      return Optional.of(end.isAfter(now) ? now : end);
    }
    // What is said of today before its time may have begun with the day.
    return Optional.of(
        isAhead
            ? now.truncatedTo(ChronoUnit.DAYS)
            : on(begun, part.from() * HOUR, now, Toward.PAST));
  }

  /** The last such day of the week whose part of that name had begun. */
  private static Day lastBegun(DayOfWeek week, Part part, LocalDateTime now) {
    LocalDate date = now.toLocalDate().with(TemporalAdjusters.previousOrSame(week));
    boolean hasBegun = !date.atTime(part.from(), 0).isAfter(now);
    return Day.on(hasBegun ? date : date.minusWeeks(1));
  }

  private static List<LocalDateTime> times(
      Said said, LocalDateTime now, LocalDateTime before, Toward toward) {
    if (said.ago().isPresent()) {
      // To the minute, as all else that is said.
      LocalDateTime minute = now.truncatedTo(ChronoUnit.MINUTES);
      return toward == Toward.PAST ? List.of(minute.minus(said.ago().get())) : List.of();
    }
    List<LocalDateTime> all =
        said.minutes().stream()
            .map(
                minutes ->
                    said.day()
                        .map(day -> on(day, minutes, now, toward))
                        .orElseGet(() -> nearest(minutes, before, toward)))
            .map(time -> said.day().isPresent() ? nightOf(said, time, now, toward) : time)
            .filter(time -> !time.toLocalDate().isBefore(FIRST))
            .filter(time -> !time.toLocalDate().isAfter(LAST))
            .distinct()
            .sorted()
            .toList();
    List<LocalDateTime> possible =
        all.stream()
            .filter(time -> toward == Toward.PAST ? !time.isAfter(now) : !time.isBefore(now))
            .toList();
    return possible.isEmpty() ? all.stream().limit(1).toList() : possible;
  }

  /** Early hours of a night are those of its second day, where that can be. */
  private static LocalDateTime nightOf(
      Said said, LocalDateTime time, LocalDateTime now, Toward toward) {
    boolean isNight = said.part().isNight() && time.getHour() < Part.DAWN;
    LocalDateTime before = time.minusDays(1);
    boolean isOther = toward == Toward.PAST ? time.isAfter(now) : !before.isBefore(now);
    return isNight && isOther ? before : time;
  }

  /** That minute, which may be one of the next morning, counted from the beginning of a day. */
  private static LocalDateTime on(Day day, int minutes, LocalDateTime now, Toward toward) {
    LocalDate today = now.toLocalDate();
    if (day.week().isEmpty()) {
      return at(day.date().orElse(today.plusDays(day.away())), minutes);
    }
    boolean isPast = toward == Toward.PAST;
    DayOfWeek week = day.week().get();
    LocalDateTime time =
        at(
            today.with(
                isPast
                    ? TemporalAdjusters.previousOrSame(week)
                    : TemporalAdjusters.nextOrSame(week)),
            minutes);
    boolean isOther = isPast ? time.isAfter(now) : time.isBefore(now);
    return isOther ? time.plusWeeks(isPast ? -1 : 1) : time;
  }

  private static LocalDateTime at(LocalDate date, int minutes) {
    int ofDay = minutes % DAY;
    return date.plusDays(minutes / DAY).atTime(ofDay / HOUR, ofDay % HOUR);
  }

  private static LocalDateTime nearest(int minutes, LocalDateTime now, Toward toward) {
    LocalDateTime today = at(now.toLocalDate(), minutes % DAY);
    return switch (toward) {
      case PAST -> today.isAfter(now) ? today.minusDays(1) : today;
      case AHEAD -> today.isBefore(now) ? today.plusDays(1) : today;
    };
  }

  private static Read read(List<LocalDateTime> times, ZoneId zone) {
    return switch (times.size()) {
      case 0 -> new Unreadable();
      case 1 -> at(times.get(0), zone);
      default -> new Either(times.get(0), times.get(1));
    };
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
    return new At(local.toInstant(offsets.get(0)), offsets.size() > 1, false);
  }
}
