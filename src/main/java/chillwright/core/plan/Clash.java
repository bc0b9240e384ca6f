package chillwright.core.plan;

import chillwright.core.plan.Plan.Task;
import java.util.Comparator;
import java.util.List;

/** Which two steps stand in each other's way where a thing is short. */
final class Clash {
  private Clash() {}

  /** The two that hold most of a thing when more is held than there is; none where none are two. */
  static List<Task> of(List<Task> plan, String resource, double there) {
    List<Task> holding = plan.stream().filter(task -> task.uses().containsKey(resource)).toList();
    // What is nearest to serving has least room to give way.
    for (int i = holding.size() - 1; i >= 0; i--) {
      Task task = holding.get(i);
      List<Task> together =
          holding.stream()
              .filter(other -> !other.start().isAfter(task.start()))
              .filter(other -> other.end().isAfter(task.start()))
              .sorted(Comparator.comparing((Task other) -> -other.uses().get(resource)))
              .toList();
      double held = together.stream().mapToDouble(other -> other.uses().get(resource)).sum();
      if (held > there && together.size() > 1) {
        return together.subList(0, 2);
      }
    }
    return List.of();
  }
}
