package chillwright.core.keeping;

import chillwright.core.keeping.Keeping.Governs;
import chillwright.core.log.Category;
import chillwright.core.log.Phase;
import chillwright.core.log.Timeline;
import chillwright.core.rules.DayCounting;
import chillwright.core.rules.DayCounting.Days;
import chillwright.core.rules.Finding;
import chillwright.core.rules.Occasion;
import chillwright.core.rules.Rule;
import chillwright.core.rules.RuleSet;
import chillwright.core.rules.Shape.DayCount;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** Works out the dates of a lot from its record, its findings and its storage category. */
public final class Keeper {
  private static final Set<Occasion> DISCARD =
      EnumSet.of(Occasion.TIME_CONTROL_DISCARD_4H, Occasion.TIME_CONTROL_DISCARD_6H);

  private static final String THAWED =
      "read as thawed in its freezer: the dates of frozen food hold no longer";

  private final Timeline timeline;
  private final RuleSet rules;
  private final boolean isFrozen;
  private final boolean usesChart;

  private Keeper(Timeline timeline, RuleSet rules) {
    this.timeline = timeline;
    this.rules = rules;
    this.isFrozen = DayCounting.isFrozen(timeline) && !RoomLife.hasThawedInFreezer(timeline);
    this.usesChart = usesChart(rules);
  }

  /** Whether the days of a rule set are those of each category's chart, as homes count them. */
  public static boolean usesChart(RuleSet rules) {
    return rules
        .rule(Occasion.DATE_MARK)
        .map(Rule::shape)
        .filter(DayCount.class::isInstance)
        .filter(shape -> ((DayCount) shape).days().isEmpty())
        .isPresent();
  }

  /** The dates of a lot; every one is empty where nothing sets it. */
  public static Keeping keep(Timeline timeline, List<Finding> findings, RuleSet rules) {
    return new Keeper(timeline, rules).keep(findings);
  }

  private Keeping keep(List<Finding> findings) {
    Optional<Days> days =
        usesChart ? DayCounting.any(timeline, rules) : DayCounting.of(timeline, rules);
    Optional<LocalDate> lastDay = days.filter(d -> !d.isFrozen()).map(Days::lastDay);
    OptionalInt left =
        days.filter(Days::isFrozen).map(d -> OptionalInt.of(d.left())).orElse(OptionalInt.empty());
    Optional<Instant> discardAt = discardAt(findings);
    boolean hasThawed = !isFrozen && timeline.phase() == Phase.FROZEN;
    Optional<LocalDate> frozen = hasThawed ? Optional.empty() : Quality.firstFrozen(timeline);
    Category category = timeline.food().category();
    Quality quality = frozen.map(day -> Quality.of(timeline, day)).orElse(Quality.NONE);
    Keeping keeping =
        new Keeping(
            usesChart ? Optional.empty() : lastDay,
            days.flatMap(Days::missed).filter(day -> category.tcs()),
            left,
            usesChart ? lastDay : Optional.empty(),
            discardAt,
            quality.best(),
            quality.limit(),
            Optional.empty(),
            new Reasons(timeline, usesChart).of(days, discardAt, frozen, quality));
    Keeping governed = keeping.governedBy(governs(keeping));
    return hasThawed ? governed.because(THAWED) : governed;
  }

  private static Optional<Instant> discardAt(List<Finding> findings) {
    return findings.stream()
        .filter(finding -> finding.rule().occasions().stream().anyMatch(DISCARD::contains))
        .flatMap(finding -> finding.deadline().stream())
        .min(Comparator.naturalOrder());
  }

  private Optional<Governs> governs(Keeping dates) {
    List<Governs> candidates = new ArrayList<>();
    dates.lastDayMissed().ifPresent(d -> candidates.add(Governs.LAST_DAY_MISSED));
    dates.discardAt().ifPresent(d -> candidates.add(Governs.DISCARD_AT));
    if (isFrozen) {
      dates.bestQualityBy().ifPresent(d -> candidates.add(Governs.BEST_QUALITY_BY));
      dates.qualityLimit().ifPresent(d -> candidates.add(Governs.QUALITY_LIMIT));
      dates.daysLeftWhenThawed().ifPresent(d -> candidates.add(Governs.DAYS_LEFT_WHEN_THAWED));
    }
    dates.dateMarkLastDay().ifPresent(d -> candidates.add(Governs.DATE_MARK_LAST_DAY));
    dates.chilledLastDay().ifPresent(d -> candidates.add(Governs.CHILLED_LAST_DAY));
    return candidates.stream().findFirst();
  }
}
