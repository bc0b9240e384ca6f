package chillwright.core.log;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Objects;

/** A time or a date marked on the food itself. */
public sealed interface Mark {
  /** The last moment the mark allows; a date allows all of its day in that zone. */
  Instant lastMoment(ZoneId zone);

  /** The local day of the mark. */
  LocalDate day(ZoneId zone);

  /** A marked time of day. */
  record Time(Instant at) implements Mark {
    public Time {
      Objects.requireNonNull(at, "at");
    }

    @Override
    public Instant lastMoment(ZoneId zone) {
      return at;
    }

    @Override
    public LocalDate day(ZoneId zone) {
      return LocalDate.ofInstant(at, zone);
    }
  }

  /** A marked date. */
  record Day(LocalDate date) implements Mark {
    public Day {
      Objects.requireNonNull(date, "date");
    }

    @Override
    public Instant lastMoment(ZoneId zone) {
      return date.plusDays(1).atStartOfDay(zone).toInstant().minusMillis(1);
    }

    @Override
    public LocalDate day(ZoneId zone) {
      return date;
    }
  }
}
