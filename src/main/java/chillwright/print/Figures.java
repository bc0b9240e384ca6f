package chillwright.print;

import chillwright.core.log.LogEntry;
import chillwright.core.log.Timeline;
import chillwright.core.measure.Limit;
import chillwright.core.measure.Temperature;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Rule;
import chillwright.core.rules.Shape.DayCount;
import chillwright.core.rules.Shape.Hold;
import chillwright.core.rules.Shape.NoFigure;
import chillwright.core.rules.Shape.Reach;
import chillwright.core.rules.Shape.StaysFrozen;
import chillwright.core.rules.Shape.TimeAlone;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;

/** Limits, durations and times as a cook reads them. */
public final class Figures {
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final DateTimeFormatter DAY_AND_CLOCK =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

  private Figures() {}

  /** The scale most readings of a lot were taken in; Fahrenheit where it has none. */
  public static Scale scale(Timeline timeline) {
    int celsius = 0;
    int all = 0;
    for (LogEntry entry : timeline.entries()) {
      Optional<Temperature> reading = entry.temperature();
      if (reading.isPresent()) {
        all++;
        celsius += reading.get().scale() == Scale.CELSIUS ? 1 : 0;
      }
    }
    return 2 * celsius > all ? Scale.CELSIUS : Scale.FAHRENHEIT;
  }

  /** A rule's limit in short: "70 °F within 2 h". */
  public static String limit(Rule rule, Scale scale) {
    return limit(rule, limit -> limit.text(scale));
  }

  /** The same with both printed figures: "70 °F (21 °C) within 2 h". */
  public static String limitInBoth(Rule rule) {
    return limit(rule, Limit::text);
  }

  private static String limit(Rule rule, Function<Limit, String> degrees) {
    if (rule.shape() instanceof Reach reach) {
      return degrees.apply(reach.to())
          + reach.within().map(t -> " within " + duration(t)).orElse("");
    }
    if (rule.shape() instanceof Hold hold) {
      return hold(hold, degrees);
    }
    if (rule.shape() instanceof TimeAlone time) {
      return "gone within " + duration(time.within()) + more(time, degrees);
    }
    if (rule.shape() instanceof DayCount count) {
      return days(count);
    }
    if (rule.shape() instanceof StaysFrozen frozen) {
      return "stays frozen" + frozen.atMost().map(l -> ", " + atMost(l, degrees)).orElse("");
    }
    if (rule.shape() instanceof NoFigure) {
      return "no figure";
    }
    throw new IllegalStateException("no words for the shape of " + rule.id());
  }

  private static String hold(Hold hold, Function<Limit, String> degrees) {
    List<String> parts = new ArrayList<>();
    hold.atMost().ifPresent(limit -> parts.add(atMost(limit, degrees)));
    hold.atLeast().ifPresent(limit -> parts.add(atLeast(limit, degrees)));
    String limits = String.join(", or ", parts);
    return hold.allowed().isZero()
        ? limits
        : limits + ", beyond it for at most " + duration(hold.allowed());
  }

  private static String atMost(Limit limit, Function<Limit, String> degrees) {
    return limit.inclusive() ? degrees.apply(limit) + " or below" : "below " + degrees.apply(limit);
  }

  private static String atLeast(Limit limit, Function<Limit, String> degrees) {
    return limit.inclusive() ? degrees.apply(limit) + " or above" : "above " + degrees.apply(limit);
  }

  private static String more(TimeAlone time, Function<Limit, String> degrees) {
    String ceiling = time.ceiling().map(l -> ", " + atMost(l, degrees) + " meanwhile").orElse("");
    String hotAir =
        time.hotAir()
            .map(
                l ->
                    ", "
                        + duration(time.withinHotAir().orElseThrow())
                        + " above "
                        + degrees.apply(l))
            .orElse("");
    return ceiling + hotAir;
  }

  private static String days(DayCount count) {
    String first = count.firstDayCounts() ? ", day 1 included" : " after the making day";
    return count.days().isPresent()
        ? count.days().getAsInt() + " days" + first
        : "the refrigerator chart's days" + first;
  }

  /** "1 h 45 min"; seconds only where there is nothing longer. */
  public static String duration(Duration time) {
    if (time.compareTo(Duration.ofMinutes(1)) < 0) {
      return time.toSeconds() + " s";
    }
    long hours = time.toHours();
    int minutes = time.toMinutesPart();
    if (hours == 0) {
      return minutes + " min";
    }
    return minutes == 0 ? hours + " h" : hours + " h " + minutes + " min";
  }

  /** The clock time in the kitchen's zone, with the date where it is not the day of {@code now}. */
  public static String time(Instant moment, ZoneId zone, Instant now) {
    ZonedDateTime local = moment.atZone(zone);
    boolean isToday = local.toLocalDate().equals(LocalDate.ofInstant(now, zone));
    return (isToday ? CLOCK : DAY_AND_CLOCK).format(local);
  }

  /** What an entry read: its temperature, or the state it was found in. */
  static String reading(LogEntry entry) {
    Optional<String> read = entry.temperature().map(Temperature::text);
    return read.or(() -> entry.details().how().map(how -> how.text())).orElse("no reading");
  }
}
