package chillwright.print;

import chillwright.core.learning.CoolingMethod;
import chillwright.core.learning.Likewise;
import chillwright.core.learning.MethodRecord;
import chillwright.core.learning.MethodRecord.StageRecord;
import chillwright.core.measure.Depth;
import chillwright.core.measure.Temperature.Scale;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/** What a log shows of the ways a kitchen cools, in words. */
public record CoolingMethodText(Scale scale, Language language) {
  /** The way: food, container, depth and places, with what is not told said so. */
  public String method(CoolingMethod method) {
    List<String> parts = new ArrayList<>();
    parts.add(method.food());
    parts.add(method.container().orElseGet(() -> language.say("method.container.none")));
    parts.add(
        method
            .depth()
            .map(Depth::text)
            .map(depth -> language.say("method.deep", depth))
            .orElseGet(() -> language.say("method.depth.none")));
    parts.add(
        method.places().stream()
            .reduce((first, next) -> language.say("method.then", first, next))
            .orElseGet(() -> language.say("method.place.none")));
    return String.join(", ", parts);
  }

  /** How it stands, then each limit, then what else is known; a sentence each. */
  public List<String> says(MethodRecord found) {
    List<String> lines = new ArrayList<>();
    lines.add(standing(found));
    found.stages().forEach(stage -> lines.add(stage(stage)));
    if (found.notShown() > 0) {
      lines.add(language.say("method.not-shown", found.notShown()));
    }
    if (!found.air().isEmpty()) {
      lines.add(language.say("method.air", found.air().get(0).text(), found.air().get(1).text()));
    }
    return lines;
  }

  private String standing(MethodRecord found) {
    return switch (found.standing()) {
      case SHOWN -> language.say("method.made-every-time", found.made());
      case MISSED -> language.say("method.missed", found.missed(), found.runs());
      case TOO_FEW ->
          found.made() == 0
              ? language.say("method.none-made")
              : language.say("method.too-few", found.made(), MethodRecord.ENOUGH);
    };
  }

  private String stage(StageRecord stage) {
    List<String> parts = new ArrayList<>();
    parts.add(Figures.limit(stage.rule(), scale, language) + ":");
    stage
        .median()
        .ifPresent(median -> parts.add(language.say("method.median", Figures.duration(median))));
    stage.worstMargin().ifPresent(margin -> parts.add(margin(margin)));
    if (stage.missed() > 0) {
      parts.add(language.say("method.stage.missed", stage.missed()));
    }
    return String.join(" ", parts);
  }

  private String margin(Duration margin) {
    return margin.isNegative()
        ? language.say("method.late", Figures.duration(margin.negated()))
        : language.say("method.margin", Figures.duration(margin));
  }

  /** How earlier coolings went that began as one that runs. */
  public String says(Likewise earlier) {
    List<String> parts = new ArrayList<>();
    String made = language.say("method.like.made", earlier.made());
    parts.add(
        earlier
            .worstMargin()
            .map(worst -> language.say("method.like.worst", made, Figures.duration(worst)))
            .orElse(made));
    parts.add(language.say("method.like.missed", earlier.missed()));
    if (earlier.notShown() > 0) {
      parts.add(language.say("method.like.not-shown", earlier.notShown()));
    }
    return language.say("method.like", earlier.runs(), String.join(", ", parts));
  }

  /** What it is not. */
  public String caution() {
    return language.say("method.caution");
  }
}
