package chillwright.core.plan;

import chillwright.core.rules.Rule;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A plan, or why there is none.
 *
 * @param tasks in order of time; none without a plan
 * @param bounds of every dish, with a plan or without
 * @param conflicts what stands in the way where there is no plan, and what would help
 * @param unattended limits of cooling that fall due while nobody is there
 * @param needless dishes that it freezes and that would keep without
 * @param isProven of a plan that none is fresher, of none that there is none; false where the
 *     search was cut short
 */
public record Plan(
    boolean isFound,
    boolean isProven,
    List<Task> tasks,
    List<Bound> bounds,
    List<Conflict> conflicts,
    List<Unattended> unattended,
    List<Kept> needless) {
  /** What a task is. */
  public enum Kind {
    MAKE,
    COOL,
    /** Food that needs no cold stands until it is no longer hot, before it is frozen. */
    AIR_COOL,
    CHILL,
    FREEZE,
    TAKE_OUT,
    FINISH,
    HOLD
  }

  /**
   * Something that is done, or a stretch in which a dish is kept.
   *
   * @param step the cook's name for it; blank for what is not a step of the cook's
   */
  public record Task(
      String dish, Kind kind, String step, Instant start, Instant end, Map<String, Double> uses) {
    public Task {
      uses = Map.copyOf(uses);
    }

    /** The same, begun at another moment. */
    Task from(Instant moment) {
      return new Task(dish, kind, step, moment, end, uses);
    }
  }

  /** A limit that must be shown by a moment at which the kitchen is closed. */
  public record Unattended(String dish, Rule rule, Instant by, boolean isBegun) {}

  /** A dish, kept from when it is made until it is served. */
  public record Kept(Dish dish, Instant made, Instant served) {}

  /** Without any limit that falls due while nobody is there. */
  public Plan(
      boolean isFound,
      boolean isProven,
      List<Task> tasks,
      List<Bound> bounds,
      List<Conflict> conflicts) {
    this(isFound, isProven, tasks, bounds, conflicts, List.of(), List.of());
  }

  /**
   * Why there is no plan.
   *
   * @param dish whose bounds leave no moment; blank where things are short
   * @param resource what is short; blank where a bound is at fault
   * @param enough an amount with which there is a plan; zero where none was found
   * @param by when something should have begun at the latest, or the last day of a lot; empty where
   *     {@code why} tells none
   * @param instead rules that allow a faster way
   * @param clash two steps that hold more of a thing at once than there is, in a plan with enough
   */
  public record Conflict(
      Why why,
      String dish,
      String resource,
      double enough,
      Optional<Instant> by,
      List<Rule> instead,
      List<Task> clash) {
    public Conflict {
      clash = List.copyOf(clash);
      instead = List.copyOf(instead);
    }

    Conflict(Why why, String dish, String resource, double enough) {
      this(why, dish, resource, enough, Optional.empty(), List.of(), List.of());
    }
  }

  /** The kind of a conflict. */
  public enum Why {
    /** The steps that reheat it take longer than the rule set allows. */
    REHEAT_TOO_LONG,
    /** It would have to be made before work begins. */
    TOO_LATE_TO_MAKE,
    /** It is made, and would not be frozen through before it must thaw. */
    TOO_LATE_TO_FREEZE,
    /** It is in the freezer, or came out of it, too late to thaw in the hours the cook gives it. */
    TOO_LATE_TO_THAW,
    /** Its last day comes before it is served, however late it is made. */
    KEEPS_TOO_SHORT,
    /** The last day of the lot that it became comes before it is served. */
    LOT_KEEPS_TOO_SHORT,
    /** That lot is past its best before it is taken out, which is quality. */
    LOT_PAST_BEST,
    /** One step alone needs more of a thing than there is. */
    STEP_NEEDS_MORE,
    /** There would be a plan with more of a thing. */
    SHORT_OF,
    /** There would be a plan if hands were there at other hours. */
    CLOSED,
    /** No single thing helps. */
    TOO_MUCH
  }

  public Plan {
    tasks = List.copyOf(tasks);
    bounds = List.copyOf(bounds);
    conflicts = List.copyOf(conflicts);
    unattended = List.copyOf(unattended);
    needless = List.copyOf(needless);
  }
}
