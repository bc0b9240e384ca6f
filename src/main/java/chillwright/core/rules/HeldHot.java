package chillwright.core.rules;

import chillwright.core.log.How;
import chillwright.core.log.Phase;
import chillwright.core.log.Timeline;
import java.util.Optional;

/** What holds first for food that reads hot and is held hot, or was just reheated for that. */
public final class HeldHot {
  private HeldHot() {}

  /**
   * The limit it is held to, where a cooling limit still runs, such as after a reheat that nobody
   * logged, or one that just reached its temperature opened; empty for any other food.
   */
  public static Optional<Rule> despite(Finding due, Timeline timeline, RuleSet rules) {
    boolean isCooling = due.rule().occasions().stream().anyMatch(Occasion::isCooling);
    boolean isRoast = timeline.entries().stream().anyMatch(entry -> entry.is(How.ROAST));
    Thresholds thresholds = Thresholds.of(rules);
    boolean isHot =
        (timeline.phase() == Phase.HOT_HOLDING || timeline.phase() == Phase.REHEATING)
            && Readings.last(Readings.coolest(timeline.entries()))
                .filter(read -> thresholds.isHot(read, isRoast))
                .isPresent();
    return isCooling && isHot
        ? rules.rule(isRoast ? Occasion.HOT_HOLDING_ROAST : Occasion.HOT_HOLDING)
        : Optional.empty();
  }
}
