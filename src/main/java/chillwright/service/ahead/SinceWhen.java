package chillwright.service.ahead;

import chillwright.logfile.SaidTime;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZonedDateTime;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/** Reads since when something lasts, from a moment or from how long it has lasted. */
final class SinceWhen {
  private static final Pattern BARE_CLOCK = Pattern.compile("\\d{1,2}[:.]\\d\\d");
  private static final Duration LONGEST = Duration.ofDays(3650);

  private SinceWhen() {}

  /** The moment; empty where the text is none, or one that is still to come. */
  static Optional<ZonedDateTime> read(String text, ZonedDateTime asked) {
    // "5:30" may be half past five or five hours and a half: of the two people say the clock.
    OptionalDouble hours =
        BARE_CLOCK.matcher(text).matches() ? OptionalDouble.empty() : Measured.TIME.read(text);
    Optional<ZonedDateTime> since =
        hours.isPresent()
            ? Optional.of(asked.minusSeconds(Math.round(hours.getAsDouble() * 3600)))
            : moment(text, asked);
    return since
        .filter(at -> !at.isAfter(asked))
        .filter(at -> Duration.between(at, asked).compareTo(LONGEST) <= 0);
  }

  private static Optional<ZonedDateTime> moment(String text, ZonedDateTime asked) {
    LocalDateTime now = asked.toLocalDateTime();
    Optional<LocalDateTime> local =
        SaidTime.earliest(text, now).or(() -> SaidTime.local(text, now, SaidTime.Toward.PAST));
    return local.flatMap(time -> at(time, asked));
  }

  private static Optional<ZonedDateTime> at(LocalDateTime local, ZonedDateTime asked) {
    if (!(SaidTime.at(local, asked.getZone()) instanceof SaidTime.At at)) {
      return Optional.empty();
    }
    Instant moment = at.moment();
    return Optional.of(moment.atZone(asked.getZone()));
  }
}
