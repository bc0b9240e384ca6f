package chillwright.core.plan;

import chillwright.core.plan.Plan.Kind;
import chillwright.core.plan.Plan.Task;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

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
    /** It was to go into the freezer before now. */
    NOT_FROZEN("not-frozen"),
    /** It was to come out of the freezer before now. */
    NOT_TAKEN_OUT("not-taken-out"),
    /** Nothing of this dish: another one needs its place. */
    OTHERS("others"),
    /** It is served at another hour than before. */
    HOUR("hour"),
    /** More or fewer portions of it than before. */
    PORTIONS("portions"),
    /** The menu itself in another way: other dishes, other steps, another kitchen. */
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

  private Moved(Task task, Instant was, Why why) {
    this(task, was, why, Optional.empty());
  }

  /**
   * What stands elsewhere than it was planned because the work went otherwise.
   *
   * @param first the plan of that menu before anything was begun
   */
  public static List<Moved> between(Plan first, Plan after, Menu menu) {
    List<Moved> moved = new ArrayList<>();
    for (Task task : after.tasks()) {
      other(first, task).map(old -> moved(old, task, first, menu)).ifPresent(moved::add);
    }
    return List.copyOf(moved);
  }

  /**
   * What stands elsewhere because something else was asked for.
   *
   * @param before the plan of what was asked for before
   * @param first the plan of what is asked for now, before anything was begun
   * @param was what was asked for before
   */
  public static List<Moved> asked(Plan before, Plan first, Plan after, Menu menu, Menu was) {
    List<Moved> moved = new ArrayList<>();
    for (Task task : after.tasks()) {
      boolean isAsked =
          !first.isFound()
              || first.tasks().stream()
                  .filter(planned -> isSame(planned, task))
                  .anyMatch(planned -> other(before, planned).isPresent());
      other(before, task)
          .filter(old -> isAsked)
          .map(old -> new Moved(task, old.start(), asked(was, menu)))
          .ifPresent(moved::add);
    }
    return List.copyOf(moved);
  }

  /** The same task where it stands at another time in a plan. */
  private static Optional<Task> other(Plan plan, Task task) {
    return plan.tasks().stream()
        .filter(old -> isSame(old, task))
        .filter(old -> !old.start().equals(task.start()))
        .findFirst();
  }

  private static boolean isSame(Task one, Task other) {
    return one.dish().equals(other.dish())
        && one.kind() == other.kind()
        && one.step().equals(other.step());
  }

  private static Why asked(Menu was, Menu menu) {
    if (!was.serving().equals(menu.serving())) {
      return Why.HOUR;
    }
    Map<String, Integer> before = portions(was);
    boolean isMoreOrLess =
        portions(menu).entrySet().stream()
            .filter(now -> before.containsKey(now.getKey()))
            .anyMatch(now -> !before.get(now.getKey()).equals(now.getValue()));
    return isMoreOrLess ? Why.PORTIONS : Why.ASKED;
  }

  private static Map<String, Integer> portions(Menu menu) {
    return menu.dishes().stream().collect(Collectors.toMap(Dish::name, Dish::portions));
  }

  private static Moved moved(Task was, Task task, Plan before, Menu menu) {
    Progress progress = menu.progress().get(task.dish());
    if (progress == null) {
      boolean isOverdue = task.kind() == Kind.MAKE && was.start().isBefore(menu.from());
      return new Moved(task, was.start(), isOverdue ? Why.NOT_BEGUN : Why.OTHERS);
    }
    if (progress.takenOut().isPresent()) {
      return new Moved(task, was.start(), Why.TAKEN_OUT, progress.takenOut());
    }
    if (progress.frozen().isPresent()) {
      return isOverdue(before, task, Kind.TAKE_OUT, menu)
          ? new Moved(task, was.start(), Why.NOT_TAKEN_OUT)
          : new Moved(task, was.start(), Why.FROZEN, progress.frozen());
    }
    return isMadeAsPlanned(before, progress, task) && isOverdue(before, task, Kind.FREEZE, menu)
        ? new Moved(task, was.start(), Why.NOT_FROZEN)
        : new Moved(task, was.start(), Why.BEGUN, Optional.of(progress.made()));
  }

  private static boolean isOverdue(Plan before, Task task, Kind kind, Menu menu) {
    return first(before, task.dish(), kind)
        .filter(planned -> planned.start().isBefore(menu.from()))
        .isPresent();
  }

  private static boolean isMadeAsPlanned(Plan before, Progress progress, Task task) {
    return first(before, task.dish(), Kind.MAKE)
        .filter(planned -> !progress.made().isAfter(planned.end()))
        .isPresent();
  }

  private static Optional<Task> first(Plan plan, String dish, Kind kind) {
    return plan.tasks().stream()
        .filter(task -> task.dish().equals(dish) && task.kind() == kind)
        .findFirst();
  }
}
