package chillwright.print;

import chillwright.core.forecast.Forecast;
import chillwright.core.forecast.Speedup;
import chillwright.core.measure.Temperature.Scale;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What would bring food that cools to its limit sooner, in words.
 *
 * @param zone the kitchen's zone, for clock times
 * @param scale the scale the lot is read in
 * @param now the moment it is read
 */
public record SpeedupText(ZoneId zone, Scale scale, Instant now, Language language) {
  /** An action, and what it rests on. */
  public record Line(String says, String basis) {}

  /** The line above those of a lot. */
  public String head() {
    return say("head");
  }

  /** What a cook can do, and when the limit is expected then. */
  public String says(Speedup speedup, Forecast forecast) {
    String act = act(speedup);
    String limit = forecast.awaited().limit().text(scale);
    return speedup
        .window()
        .map(
            window -> {
              String about = time(window.expected());
              String earliest = time(window.earliest());
              return window
                  .latest()
                  .map(last -> say("between", act, limit, about, earliest, time(last)))
                  .orElseGet(() -> say("open", act, limit, about, earliest));
            })
        .orElseGet(() -> say("untimed", act));
  }

  private String act(Speedup speedup) {
    return say("act." + speedup.act().key(), speedup.pans(), speedup.depth().text());
  }

  /** The figure behind it. */
  public String basis(Speedup speedup) {
    boolean isDepthUsed =
        switch (speedup.act()) {
          case STIRRED_ICE_BATH, DIVIDE -> true;
          case ICE_BATH, FREEZER, MOVING_AIR, STIR, ICE_IN_FOOD -> false;
        };
    String figure = say("basis." + speedup.act().key(), speedup.depth().text());
    return isDepthUsed && speedup.isDepthAssumed() ? figure + " " + say("assumed") : figure;
  }

  /**
   * Those of the limit that is reached next, since what speeds one up speeds up the other. What no
   * figure times stands together in the last line.
   */
  public List<Line> lines(List<Forecast> forecasts) {
    return forecasts.stream()
        .filter(forecast -> !forecast.speedups().isEmpty())
        .findFirst()
        .map(this::lines)
        .orElse(List.of());
  }

  private List<Line> lines(Forecast forecast) {
    List<Line> lines = new ArrayList<>();
    forecast.speedups().stream()
        .filter(speedup -> speedup.window().isPresent())
        .forEach(speedup -> lines.add(new Line(says(speedup, forecast), basis(speedup))));
    String others =
        forecast.speedups().stream()
            .filter(speedup -> speedup.window().isEmpty())
            .map(this::act)
            .collect(Collectors.joining("; "));
    lines.add(new Line(say("untimed", others), say("basis.ice-in-food")));
    return lines;
  }

  /** The one that shortens most; empty where no figure tells of any. */
  public Optional<String> best(Forecast forecast) {
    return forecast.speedups().stream()
        .filter(speedup -> speedup.window().isPresent())
        .findFirst()
        .map(speedup -> says(speedup, forecast));
  }

  private String time(Instant moment) {
    return Times.at(now, zone, language).said(moment);
  }

  private String say(String key, Object... filled) {
    return language.say("sooner." + key, filled);
  }
}
