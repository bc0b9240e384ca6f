package chillwright.print;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.Year;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Days and moments as people read them, on pages, on paper and in text: "Tue 24 Nov 14:05". Only
 * files and answers for programs write them otherwise.
 *
 * @param zone the kitchen's zone
 * @param today the day of the question: its year is left out; empty where what is written outlives
 *     the year, as a label in a freezer does
 */
public record Times(ZoneId zone, Language language, Optional<LocalDate> today) {
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final Pattern WRITTEN =
      Pattern.compile("\\b(\\d{4}-\\d{2}-\\d{2})(?: (\\d{2}:\\d{2}))?\\b");

  /** As they are read at that moment. */
  public static Times at(Instant now, ZoneId zone, Language language) {
    return new Times(zone, language, Optional.of(LocalDate.ofInstant(now, zone)));
  }

  /** With the year, always: for what is kept. */
  public static Times kept(ZoneId zone, Language language) {
    return new Times(zone, language, Optional.empty());
  }

  /** "Tue 24 Nov", in another year "Wed 24 Nov 2027". */
  public String day(LocalDate day) {
    boolean isOfYear = today.filter(now -> Year.from(now).equals(Year.from(day))).isPresent();
    return formatted(day, isOfYear ? "EEE d MMM" : "EEE d MMM uuuu");
  }

  /** "24 Nov", where the day of the week and the year stand elsewhere. */
  String shortDay(LocalDate day) {
    return formatted(day, "d MMM");
  }

  private String formatted(LocalDate day, String pattern) {
    return DateTimeFormatter.ofPattern(pattern, language.locale()).format(day);
  }

  /** "Tue 24 Nov 14:05". */
  public String moment(Instant moment) {
    return day(local(moment).toLocalDate()) + " " + hour(moment);
  }

  /** "14:05", whatever the day; of a time that the clock showed twice, which of them it is. */
  public String hour(Instant moment) {
    LocalDateTime local = local(moment);
    String time = CLOCK.format(local);
    List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
    if (offsets.size() < 2) {
      return time;
    }
    boolean isFirst = offsets.get(0).equals(zone.getRules().getOffset(moment));
    return language.say(isFirst ? "time.first" : "time.second", time);
  }

  /** "14:05" today, else with its day. */
  public String clock(Instant moment) {
    return isToday(moment) ? hour(moment) : moment(moment);
  }

  /** The same with the words that it needs in a sentence: "a las 14:05". */
  String said(Instant moment) {
    LocalDateTime local = local(moment);
    String time = language.say(local.getHour() == 1 ? "time.one" : "time", hour(moment));
    return isToday(moment) ? time : language.say("time.dated", day(local.toLocalDate()), time);
  }

  /** A line whose days were written as files write them, such as one of arithmetic. */
  public String retold(String line) {
    return WRITTEN
        .matcher(line)
        .replaceAll(
            found ->
                day(LocalDate.parse(found.group(1)))
                    + (found.group(2) == null ? "" : " " + found.group(2)));
  }

  private boolean isToday(Instant moment) {
    return today.filter(local(moment).toLocalDate()::equals).isPresent();
  }

  private LocalDateTime local(Instant moment) {
    return LocalDateTime.ofInstant(moment, zone);
  }
}
