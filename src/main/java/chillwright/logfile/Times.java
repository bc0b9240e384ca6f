package chillwright.logfile;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.regex.Pattern;

/**
 * Reads times as RFC 3339 writes them, with the offset from UTC. Seconds may be left out; a space
 * may stand for the "T" (RFC 3339 section 5.6, note); parts of a second below the millisecond are
 * cut off. Read by hand, because a log of a million rows has a million times.
 */
final class Times {
  private static final Pattern SHAPE =
      Pattern.compile(
          "\\d{4}-\\d\\d-\\d\\d[Tt ]\\d\\d:\\d\\d(:\\d\\d(\\.\\d+)?)?([Zz]|[+-]\\d\\d:\\d\\d)");
  private static final int DATE_LENGTH = 10;
  private static final long DAY_MILLIS = 86_400_000L;

  private Times() {}

  /** Why a text is no time. */
  enum Flaw {
    NO_OFFSET,
    NO_SUCH_TIME,
    UNREADABLE
  }

  /** The epoch millisecond; empty if the text is no such time. */
  static OptionalLong millis(String text) {
    int length = text.length();
    Optional<LocalDate> date = length < 17 ? Optional.empty() : dateAt(text);
    int hour = two(text, 11);
    int minute = two(text, 14);
    if (date.isEmpty() || !isTee(text.charAt(10)) || text.charAt(13) != ':') {
      return OptionalLong.empty();
    }
    boolean hasSeconds = text.charAt(16) == ':';
    int second = hasSeconds ? two(text, 17) : 0;
    int at = hasSeconds ? 19 : 16;
    int fractionEnd = hasSeconds ? fractionEnd(text, at) : at;
    OptionalLong offset = offsetMillis(text, fractionEnd);
    if (!isUpTo(23, hour) || !isUpTo(59, minute) || !isUpTo(59, second) || offset.isEmpty()) {
      return OptionalLong.empty();
    }
    long ofDay = ((hour * 60L + minute) * 60L + second) * 1000L + fraction(text, at, fractionEnd);
    return OptionalLong.of(date.get().toEpochDay() * DAY_MILLIS + ofDay - offset.getAsLong());
  }

  /** The date, where the text is a date and nothing else. */
  static Optional<LocalDate> date(String text) {
    return text.length() == DATE_LENGTH ? dateAt(text) : Optional.empty();
  }

  /** What is wrong with a text that is no time. */
  static Flaw flaw(String text) {
    if (millis(text + "Z").isPresent()) {
      return Flaw.NO_OFFSET;
    }
    return SHAPE.matcher(text).matches() ? Flaw.NO_SUCH_TIME : Flaw.UNREADABLE;
  }

  private static Optional<LocalDate> dateAt(String text) {
    int century = two(text, 0);
    int year = two(text, 2);
    int month = two(text, 5);
    int day = two(text, 8);
    boolean shaped = text.charAt(4) == '-' && text.charAt(7) == '-' && century >= 0 && year >= 0;
    if (!shaped || month < 1 || month > 12 || day < 1) {
      return Optional.empty();
    }
    int whole = century * 100 + year;
    return day <= 28 || day <= YearMonth.of(whole, month).lengthOfMonth()
        ? Optional.of(LocalDate.of(whole, month, day))
        : Optional.empty();
  }

  private static boolean isTee(char c) {
    return c == 'T' || c == 't' || c == ' ';
  }

  private static boolean isUpTo(int highest, int number) {
    return number >= 0 && number <= highest;
  }

  /** The number of two digits there, or -1. */
  private static int two(String text, int at) {
    if (at + 2 > text.length()) {
      return -1;
    }
    int tens = text.charAt(at) - '0';
    int ones = text.charAt(at + 1) - '0';
    return isUpTo(9, tens) && isUpTo(9, ones) ? tens * 10 + ones : -1;
  }

  /** Where the decimals of the second end; the start itself where there are none. */
  private static int fractionEnd(String text, int at) {
    if (at >= text.length() || text.charAt(at) != '.') {
      return at;
    }
    int end = at + 1;
    while (end < text.length() && isUpTo(9, text.charAt(end) - '0')) {
      end++;
    }
    return end == at + 1 ? at : end;
  }

  private static int fraction(String text, int start, int end) {
    int millis = 0;
    for (int i = 1; i <= 3; i++) {
      millis = millis * 10 + (start + i < end ? text.charAt(start + i) - '0' : 0);
    }
    return millis;
  }

  /** "Z", or sign, hours, colon and minutes, up to the end of the text. */
  private static OptionalLong offsetMillis(String text, int at) {
    int left = text.length() - at;
    if (left == 1 && (text.charAt(at) == 'Z' || text.charAt(at) == 'z')) {
      return OptionalLong.of(0);
    }
    if (left != 6 || text.charAt(at + 3) != ':') {
      return OptionalLong.empty();
    }
    int hours = two(text, at + 1);
    int minutes = two(text, at + 4);
    if (!isUpTo(ZoneOffset.MAX.getTotalSeconds() / 3600, hours) || !isUpTo(59, minutes)) {
      return OptionalLong.empty();
    }
    long size = (hours * 60L + minutes) * 60_000L;
    return switch (text.charAt(at)) {
      case '+' -> OptionalLong.of(size);
      case '-' -> OptionalLong.of(-size);
      default -> OptionalLong.empty();
    };
  }
}
