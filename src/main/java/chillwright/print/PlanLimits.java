package chillwright.print;

import chillwright.core.measure.Limit;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.plan.Bound;
import chillwright.core.plan.Plan;
import chillwright.core.plan.Plan.Task;
import chillwright.core.plan.Thawing;
import chillwright.core.rules.Occasion;
import chillwright.core.rules.Rule;
import chillwright.core.rules.Shape.DayCount;
import chillwright.core.rules.Shape.NoFigure;
import chillwright.core.rules.Shape.Reach;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * The figures behind a plan: of a rule, and of the rules that a task keeps to.
 *
 * @param scale in which they are told; in both printed ones where it is empty
 */
record PlanLimits(Language language, Optional<Scale> scale) {
  /** "165 °F within 2 h", of cooling with where it begins; empty where the rule sets no figure. */
  Optional<String> of(Rule rule) {
    boolean isFigure =
        !(rule.shape() instanceof NoFigure)
            && !(rule.shape() instanceof DayCount days && days.days().isEmpty());
    Function<Limit, String> degrees = limit -> scale.map(limit::text).orElseGet(limit::text);
    String says = isFigure ? new LimitText(language, degrees).of(rule) : "";
    boolean cools = rule.occasions().stream().anyMatch(Occasion::isCooling);
    Optional<Limit> from =
        cools && rule.shape() instanceof Reach reach ? reach.from() : Optional.empty();
    return Optional.of(
            from.map(hot -> language.say("plan.from-to", degrees.apply(hot), says)).orElse(says))
        .filter(text -> !text.isEmpty());
  }

  /** What food must read in a task, all of it in short; blank where no rule sets a figure. */
  String of(Task task, Plan plan) {
    return plan.bounds().stream()
        .filter(bound -> bound.dish().equals(task.dish()) && kinds(task).contains(bound.kind()))
        .flatMap(bound -> bound.rule().stream())
        .flatMap(rule -> of(rule).stream())
        .distinct()
        .collect(Collectors.joining("; "));
  }

  /** Of which limits readings in a task speak. */
  static Set<Bound.Kind> kinds(Task task) {
    return switch (task.kind()) {
      case COOL -> EnumSet.of(Bound.Kind.COOL);
      case CHILL -> EnumSet.of(Bound.Kind.COOL, Bound.Kind.COLD);
      case TAKE_OUT -> EnumSet.of(Bound.Kind.THAW);
      case FINISH -> EnumSet.of(Bound.Kind.REHEAT);
      case HOLD -> EnumSet.of(Bound.Kind.HOLD);
      case MAKE ->
          Thawing.isNamed(task.step())
              ? EnumSet.of(Bound.Kind.THAW)
              : EnumSet.noneOf(Bound.Kind.class);
      case FREEZE, AIR_COOL -> EnumSet.noneOf(Bound.Kind.class);
    };
  }
}
