package chillwright.print;

import chillwright.core.forecast.Forecast;
import chillwright.core.forecast.Forecast.Doubt;
import chillwright.core.forecast.Forecast.Outlook;
import chillwright.core.forecast.Forecast.Target;
import chillwright.core.measure.Temperature;
import chillwright.core.measure.Temperature.Scale;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What a forecast says, in words a cook can act on.
 *
 * @param zone the kitchen's zone, for clock times
 * @param scale the scale the lot is read in
 * @param now the moment it is read
 */
public record ForecastText(ZoneId zone, Scale scale, Instant now, Language language) {
  /** In English. */
  public ForecastText(ZoneId zone, Scale scale, Instant now) {
    this(zone, scale, now, Language.ENGLISH);
  }

  /** When it is expected, how that stands against the limit, and what would still do. */
  public String says(Forecast forecast) {
    return aim(forecast)
        .map(aim -> say("forecast.target", atMost(aim.temperature()), time(aim.by())))
        .map(aim -> reaches(forecast) + " " + aim)
        .orElse(reaches(forecast));
  }

  /** A temperature to be at or below: in whole degrees of the reader's scale, never warmer. */
  private String atMost(Temperature aim) {
    return aim.scale() == scale
        ? aim.text()
        : (long) Math.floor(aim.degrees(scale)) + " " + scale.sign();
  }

  /** When it is expected, and how that stands against the limit. */
  public String reaches(Forecast forecast) {
    boolean isTold = forecast.outlook() != Outlook.NOT_TOLD || forecast.expected().isPresent();
    if (isPast(forecast)) {
      return past(forecast);
    }
    return isTold ? expected(forecast) + " " + standing(forecast) : expected(forecast);
  }

  /** Whether what was expected should have been read by now. */
  private boolean isPast(Forecast forecast) {
    return forecast.outlook() == Outlook.UNREAD
        || forecast.expected().filter(now::isAfter).isPresent();
  }

  private String past(Forecast forecast) {
    String limit = forecast.awaited().limit().text(scale);
    String about = time(forecast.expected().orElseThrow());
    String says = say("forecast.past", limit, about);
    return forecast
        .awaited()
        .deadline()
        .map(last -> says + " " + say(isOver(last) ? "forecast.was" : "forecast.is", time(last)))
        .orElse(says);
  }

  private boolean isOver(Instant last) {
    return now.isAfter(last);
  }

  /** What would still do, where several limits stand together. */
  public Optional<String> aims(Forecast forecast) {
    String limit = forecast.awaited().limit().text(scale);
    return aim(forecast)
        .map(aim -> say("forecast.aim", limit, atMost(aim.temperature()), time(aim.by())));
  }

  /** None where it goes well, and none where a reading is what is needed first. */
  private Optional<Target> aim(Forecast forecast) {
    return forecast
        .target()
        .filter(target -> forecast.outlook() != Outlook.IN_TIME && !isPast(forecast));
  }

  private String expected(Forecast forecast) {
    String limit = forecast.awaited().limit().text(scale);
    Optional<Instant> expected = forecast.expected();
    if (expected.isEmpty()) {
      return say("forecast.untold", limit, doubt(forecast.basis().doubts().get(0), forecast));
    }
    String about = time(expected.get());
    String earliest = time(forecast.earliest().orElseThrow());
    return forecast
        .latest()
        .map(latest -> say("forecast.between", limit, about, earliest, time(latest)))
        .orElseGet(() -> say("forecast.open", limit, about, earliest));
  }

  private String standing(Forecast forecast) {
    String key = "forecast.outlook." + forecast.outlook().key();
    boolean isLate = forecast.outlook() == Outlook.LATE;
    return forecast
        .awaited()
        .deadline()
        .map(last -> say(isLate && isOver(last) ? "forecast.over" : key, time(last)))
        .orElse("");
  }

  /** What it rests on, and why it is wide. */
  public String basis(Forecast forecast) {
    return basis(List.of(forecast));
  }

  /** The same of several, each sentence once. */
  public String basis(List<Forecast> forecasts) {
    return Stream.concat(
            forecasts.stream().flatMap(forecast -> grounds(forecast).stream()),
            Stream.of(say("forecast.no-verdict")))
        .distinct()
        .collect(Collectors.joining(" "));
  }

  private List<String> grounds(Forecast forecast) {
    List<String> parts = new ArrayList<>();
    int readings = forecast.basis().readings();
    parts.add(
        forecast
            .basis()
            .surroundings()
            .filter(around -> !forecast.basis().has(Doubt.SURROUNDINGS_NOT_LOGGED))
            .map(around -> say("forecast.basis.around", readings, around.text(scale)))
            .orElseGet(() -> say("forecast.basis", readings)));
    forecast.basis().doubts().forEach(doubt -> parts.add(doubt(doubt, forecast)));
    return parts;
  }

  private String doubt(Doubt doubt, Forecast forecast) {
    String around = forecast.basis().surroundings().map(read -> read.text(scale)).orElse("");
    return switch (doubt) {
      case ONE_READING -> say("forecast.doubt.one-reading");
      case NOT_FALLING -> say("forecast.doubt.not-falling");
      case NEVER_THERE -> say("forecast.doubt.never-there", around);
      case SURROUNDINGS_NOT_LOGGED -> say("forecast.doubt.not-logged", around);
      case TWO_READINGS -> say("forecast.doubt.two-readings");
      case NOT_ONE_CURVE -> say("forecast.doubt.not-one-curve");
    };
  }

  private String time(Instant moment) {
    return Times.at(now, zone, language).said(moment);
  }

  private String say(String key, Object... filled) {
    return language.say(key, filled);
  }
}
