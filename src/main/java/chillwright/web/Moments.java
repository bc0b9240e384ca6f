package chillwright.web;

import chillwright.logfile.TimeExample;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Optional;
import java.util.regex.Pattern;

/** Times, dates and zones as text. */
final class Moments {
  static final String DATE_ALLOWED = "a date, such as 2026-03-02";
  static final String ZONE_ALLOWED = "a time zone of the IANA list, such as America/Chicago";

  /** Four digits of year: what lies further off is no time of a kitchen. */
  private static final Pattern DATE = Pattern.compile("\\d{4}-\\d\\d-\\d\\d");

  private Moments() {}

  /** What may stand where a time is asked for, in a kitchen of that zone. */
  static String timeAllowed(ZoneId zone) {
    return new TimeExample(zone).allowed();
  }

  /** A time as RFC 3339 has it; seconds may be left out. */
  static Optional<Instant> time(String text) {
    if (text.length() < 17 || !DATE.matcher(text.substring(0, 10)).matches()) {
      return Optional.empty();
    }
    try {
      return Optional.of(OffsetDateTime.parse(text).toInstant());
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  static Optional<LocalDate> date(String text) {
    if (!DATE.matcher(text).matches()) {
      return Optional.empty();
    }
    try {
      return Optional.of(LocalDate.parse(text));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  static Optional<ZoneId> zone(String text) {
    try {
      return Optional.of(ZoneId.of(text));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }
}
