package chillwright.core.plan;

import chillwright.core.plan.Plan.Kind;
import chillwright.core.plan.Plan.Task;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A task of a plan that stands at another time than in an earlier plan of the same dishes.
 *
 * @param since the moment that {@code why} speaks of; empty where it speaks of none
 */
public record Moved(Task task, Instant was, Why why, Optional<Instant> since) {
  /** What moved it. */
  public enum Why {
    BEGUN("begun"),
    FROZEN("frozen"),
    TAKEN_OUT("taken-out"),
    NOT_BEGUN("not-begun"),
    /** Nothing of this dish: another one needs its place. */
    OTHERS("others"),
    /** The menu itself: another hour, other dishes, another kitchen. */
    ASKED("asked");

    private final String key;

    Why(String key) {
      this.key = key;
    }

    /** As it stands in an answer. */
    public String key() {
      return key;
    }
  }

  /**
   * What moved between two plans.
   *
   * @param menu what the later one was made of
   * @param isAskedAnew whether the menus differ by what was asked for
   */
  public static List<Moved> between(Plan before, Plan after, Menu menu, boolean isAskedAnew) {
    List<Moved> moved = new ArrayList<>();
    for (Task task : after.tasks()) {
      before.tasks().stream()
          .filter(was -> isSame(was, task))
          .filter(was -> !was.start().equals(task.start()))
          .findFirst()
          .map(was -> moved(was, task, menu, isAskedAnew))
          .ifPresent(moved::add);
    }
    return List.copyOf(moved);
  }

  private static boolean isSame(Task one, Task other) {
    return one.dish().equals(other.dish())
        && one.kind() == other.kind()
        && one.step().equals(other.step());
  }

  private static Moved moved(Task was, Task task, Menu menu, boolean isAskedAnew) {
    Progress progress = menu.progress().get(task.dish());
    if (isAskedAnew) {
      return new Moved(task, was.start(), Why.ASKED, Optional.empty());
    }
    if (progress == null) {
      boolean isOverdue = task.kind() == Kind.MAKE && was.start().isBefore(menu.from());
      Why why = isOverdue ? Why.NOT_BEGUN : Why.OTHERS;
      return new Moved(task, was.start(), why, Optional.empty());
    }
    if (progress.takenOut().isPresent()) {
      return new Moved(task, was.start(), Why.TAKEN_OUT, progress.takenOut());
    }
    return progress.frozen().isPresent()
        ? new Moved(task, was.start(), Why.FROZEN, progress.frozen())
        : new Moved(task, was.start(), Why.BEGUN, Optional.of(progress.made()));
  }
}
