package chillwright.core.plan;

import chillwright.core.plan.Plan.Conflict;
import chillwright.core.plan.Plan.Kind;
import chillwright.core.plan.Plan.Task;
import chillwright.core.plan.Plan.Why;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** Which dishes have no plan within the open hours, and which of their steps fall outside. */
final class ClosedHours {
  /** What somebody does; the rest goes by itself. */
  private static final Set<Kind> DONE =
      EnumSet.of(Kind.MAKE, Kind.FREEZE, Kind.TAKE_OUT, Kind.FINISH);

  private final Menu menu;

  ClosedHours(Menu menu) {
    this.menu = menu;
  }

  /**
   * One for each dish that has no plan even alone; else one for all of them together.
   *
   * @param alone what a dish has in a kitchen of such hours for itself
   * @param together a plan of all of them with hands at all hours
   */
  List<Conflict> conflicts(
      List<Window> windows,
      Function<Menu, Function<Window, Optional<List<Task>>>> alone,
      List<Task> together) {
    Function<Window, Optional<List<Task>>> within = alone.apply(menu);
    Function<Window, Optional<List<Task>>> always = alone.apply(menu.alwaysOpen());
    List<Conflict> own =
        windows.stream()
            .filter(window -> within.apply(window).isEmpty())
            .map(window -> conflict(window, always.apply(window).orElse(together)))
            .toList();
    return own.isEmpty() ? List.of(conflict("", together)) : own;
  }

  private Conflict conflict(Window window, List<Task> plan) {
    String dish = window.dish().name();
    return conflict(dish, plan.stream().filter(task -> task.dish().equals(dish)).toList());
  }

  private Conflict conflict(String dish, List<Task> plan) {
    List<Task> closed =
        plan.stream().filter(task -> DONE.contains(task.kind()) && isClosed(task)).toList();
    return new Conflict(Why.CLOSED, dish, Menu.HANDS, 0, Optional.empty(), List.of(), closed);
  }

  /** Whether nobody is there as it begins, or as something is made. */
  private boolean isClosed(Task task) {
    boolean isEnded = task.kind() == Kind.MAKE || task.uses().containsKey(Menu.HANDS);
    return !menu.isOpen(task.start()) || (isEnded && !menu.isOpen(task.end().minusSeconds(1)));
  }
}
