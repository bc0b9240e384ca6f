package chillwright.service.ahead;

import chillwright.logfile.SaidTime;
import chillwright.logfile.SaidTime.At;
import chillwright.logfile.SaidTime.Unreadable;
import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/** Reads since when something lasts, from a moment or from how long it has lasted. */
final class SinceWhen {
  private static final Pattern BARE_CLOCK = Pattern.compile("\\d{1,2}[:.]\\d\\d");
  private static final Duration LONGEST = Duration.ofDays(3650);

  private SinceWhen() {}

  /** What it was read as; where it is neither, or still to come, unreadable. */
  static SaidTime.Read read(String text, ZonedDateTime asked) {
    // "5:30" may be half past five or five hours and a half: of the two people say the clock.
    OptionalDouble hours =
        BARE_CLOCK.matcher(text).matches() ? OptionalDouble.empty() : Measured.TIME.read(text);
    Instant now = asked.toInstant();
    SaidTime.Read read =
        hours.isPresent()
            ? new At(now.minusSeconds(Math.round(hours.getAsDouble() * 3600)), false, false)
            : SaidTime.passed(text, asked.getZone(), now, now, SaidTime.Edge.EARLIEST);
    boolean hasPassed =
        !(read instanceof At at)
            || (!at.moment().isAfter(now)
                && Duration.between(at.moment(), now).compareTo(LONGEST) <= 0);
    return hasPassed ? read : new Unreadable();
  }
}
