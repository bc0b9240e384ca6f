package chillwright.print;

import chillwright.core.measure.Limit;
import chillwright.core.rules.Rule;
import chillwright.core.rules.Shape.DayCount;
import chillwright.core.rules.Shape.Hold;
import chillwright.core.rules.Shape.NoFigure;
import chillwright.core.rules.Shape.Reach;
import chillwright.core.rules.Shape.StaysFrozen;
import chillwright.core.rules.Shape.TimeAlone;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * A rule's limit in short: "70 °F within 2 h".
 *
 * @param degrees how a figure is written
 */
record LimitText(Language language, Function<Limit, String> degrees) {

  String of(Rule rule) {
    if (rule.shape() instanceof Reach reach) {
      String to = degrees.apply(reach.to());
      return reach.within().map(time -> say("limit.reach", to, Figures.duration(time))).orElse(to);
    }
    if (rule.shape() instanceof Hold hold) {
      return hold(hold);
    }
    if (rule.shape() instanceof TimeAlone time) {
      return time(time);
    }
    if (rule.shape() instanceof DayCount count) {
      String days =
          count.days().isPresent()
              ? say(
                  count.days().getAsInt() == 1 ? "limit.day" : "limit.days",
                  count.days().getAsInt())
              : say("limit.days.chart");
      return say(count.firstDayCounts() ? "limit.days.with-first" : "limit.days.after", days);
    }
    if (rule.shape() instanceof StaysFrozen frozen) {
      String stays = say("limit.frozen");
      return frozen.atMost().map(most -> stays + ", " + atMost(most)).orElse(stays);
    }
    if (rule.shape() instanceof NoFigure) {
      return say("limit.none");
    }
    throw new IllegalStateException("no words for the shape of " + rule.id());
  }

  private String hold(Hold hold) {
    String limits =
        Stream.concat(
                hold.atMost().map(this::atMost).stream(),
                hold.atLeast().map(this::atLeast).stream())
            .reduce((one, other) -> say("or", one, other))
            .orElse("");
    return hold.allowed().isZero()
        ? limits
        : say("limit.beyond", limits, Figures.duration(hold.allowed()));
  }

  String atMost(Limit limit) {
    return say(limit.inclusive() ? "limit.at-most" : "limit.below", degrees.apply(limit));
  }

  private String atLeast(Limit limit) {
    return say(limit.inclusive() ? "limit.at-least" : "limit.above", degrees.apply(limit));
  }

  private String time(TimeAlone time) {
    String gone = say("limit.time", Figures.duration(time.within()));
    String under =
        time.ceiling().map(most -> say("limit.time.ceiling", gone, atMost(most))).orElse(gone);
    return time.hotAir()
        .map(
            air ->
                say(
                    "limit.time.hot-air",
                    under,
                    Figures.duration(time.withinHotAir().orElseThrow()),
                    degrees.apply(air)))
        .orElse(under);
  }

  private String say(String key, Object... filled) {
    return language.say(key, filled);
  }
}
