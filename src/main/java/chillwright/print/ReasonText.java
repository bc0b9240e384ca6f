package chillwright.print;

import chillwright.core.plan.Bound;
import chillwright.core.plan.Plan;
import chillwright.core.plan.Plan.Kind;
import chillwright.core.plan.Plan.Task;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Why the tasks of a plan stand where they do, in words. */
public record ReasonText(PlanText text) {
  /** The bounds that a task keeps to, then limits that fall in closed hours. */
  List<String> because(Task task, Plan plan) {
    Stream<String> unattended =
        plan.unattended().stream()
            .filter(limit -> cools(task) && limit.dish().equals(task.dish()))
            .map(text::unattended);
    return Stream.concat(bounds(task, plan).map(text::bound), unattended).toList();
  }

  /**
   * Bounds that a task keeps to, of those not told yet: for paper, where each reason stands once
   * and what is closed then stands on top.
   *
   * @param told grows by what is told here
   */
  public String once(Task task, Plan plan, Set<Bound> told) {
    return String.join(" ", bounds(task, plan).filter(told::add).map(text::bound).toList());
  }

  /** All other bounds, after a line on what they hold with; none where nothing is left. */
  public List<String> others(Plan plan, Set<Bound> told) {
    Set<Bound> all = new HashSet<>(plan.bounds());
    return told.containsAll(all)
        ? List.of()
        : new BoundText(text).all(plan, bound -> !told.contains(bound));
  }

  private static boolean cools(Task task) {
    return task.kind() == Kind.COOL || task.kind() == Kind.CHILL;
  }

  private static Stream<Bound> bounds(Task task, Plan plan) {
    Optional<Bound.Kind> kind =
        switch (task.kind()) {
          case MAKE -> Optional.of(Bound.Kind.MAKE);
          case FREEZE, COOL, AIR_COOL -> Optional.of(Bound.Kind.FREEZE);
          case TAKE_OUT -> Optional.of(Bound.Kind.TAKE_OUT);
          case FINISH -> Optional.of(Bound.Kind.REHEAT);
          case HOLD -> Optional.of(Bound.Kind.HOLD);
          case CHILL -> Optional.empty();
        };
    return plan.bounds().stream()
        .filter(bound -> bound.dish().equals(task.dish()))
        .filter(
            bound ->
                kind.filter(bound.kind()::equals).isPresent()
                    || PlanLimits.kinds(task).contains(bound.kind()));
  }
}
