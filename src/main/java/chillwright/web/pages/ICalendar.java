package chillwright.web.pages;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Moments as a calendar that other programs read (RFC 5545). */
final class ICalendar {
  private static final DateTimeFormatter UTC =
      DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

  /** A line is no longer than this, its end not counted (RFC 5545, 3.1). */
  private static final int OCTETS = 75;

  private final StringBuilder text = new StringBuilder();

  /**
   * A moment at which something is due.
   *
   * @param id stays the same while the feed is read again and again
   * @param address of the page that tells more
   */
  record Event(String id, Instant at, String summary, String description, String address) {}

  ICalendar(String title) {
    line("BEGIN", "VCALENDAR");
    line("VERSION", "2.0");
    line("PRODID", "-//Chillwright//Deadlines//EN");
    line("CALSCALE", "GREGORIAN");
    line("METHOD", "PUBLISH");
    line("X-WR-CALNAME", escaped(title));
  }

  /**
   * @param made when the feed was made
   */
  ICalendar add(Event event, Instant made) {
    line("BEGIN", "VEVENT");
    line("UID", event.id());
    line("DTSTAMP", UTC.format(made));
    line("DTSTART", UTC.format(event.at()));
    line("SUMMARY", escaped(event.summary()));
    line("DESCRIPTION", escaped(event.description()));
    line("URL", event.address());
    line("TRANSP", "TRANSPARENT");
    line("END", "VEVENT");
    return this;
  }

  String end() {
    line("END", "VCALENDAR");
    return text.toString();
  }

  private void line(String name, String value) {
    int octets = 0;
    String line = name + ":" + value;
    for (int at = 0; at < line.length(); ) {
      int point = line.codePointAt(at);
      String letter = Character.toString(point);
      int more = letter.getBytes(StandardCharsets.UTF_8).length;
      if (octets + more > OCTETS) {
        text.append("\r\n ");
        octets = 1;
      }
      text.append(letter);
      octets += more;
      at += letter.length();
    }
    text.append("\r\n");
  }

  /** TEXT as RFC 5545, 3.3.11 writes it; control characters have no place in it. */
  private static String escaped(String value) {
    StringBuilder escaped = new StringBuilder();
    value
        .replace("\r\n", "\n")
        .codePoints()
        .forEach(
            point -> {
              switch (point) {
                case '\\', ';', ',' -> escaped.append('\\').appendCodePoint(point);
                case '\n' -> escaped.append("\\n");
                default -> {
                  if (!Character.isISOControl(point)) {
                    escaped.appendCodePoint(point);
                  }
                }
              }
            });
    return escaped.toString();
  }
}
