package chillwright.service;

import chillwright.core.keeping.LotOrder;
import chillwright.core.keeping.LotState;
import chillwright.core.log.LotId;
import chillwright.core.log.Phase;
import chillwright.core.measure.SaidLength;
import chillwright.core.plan.Dish;
import chillwright.core.plan.Plan;
import chillwright.core.plan.Plan.Task;
import chillwright.core.plan.Progress;
import chillwright.core.plan.Pull.Need;
import chillwright.core.plan.Pull.Unlogged;
import chillwright.core.plan.PullList;
import chillwright.core.plan.Thawing;
import chillwright.core.rules.Acts;
import chillwright.core.rules.Verdict;
import chillwright.rulebook.BrokenRules;
import chillwright.rulebook.PlanFile;
import chillwright.service.Plans.Planned;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What to take out of the freezer, and what to use, in the next days. */
public final class Pulls {
  /** Days that are told unless others are asked for, and the most that can be. */
  public static final int USUAL_DAYS = 3;

  public static final int MOST_DAYS = 366;

  /** Lots looked through of each kind. */
  private static final int LOOKED_AT = 2_000;

  private final Kitchen kitchen;

  Pulls(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /** A number of days as it is asked for; empty where it is none, or out of range. */
  public static Optional<Integer> days(String text) {
    OptionalInt days = SaidLength.days(text);
    return days.isPresent()
        ? Optional.of(days.getAsInt()).filter(count -> count >= 1 && count <= MOST_DAYS)
        : Optional.empty();
  }

  /**
   * The list of today and the days after it.
   *
   * @param days how many, today included; 1 to {@link #MOST_DAYS}
   */
  public PullList list(int days) {
    LocalDate end = kitchen.days().today().plusDays(days);
    ZoneId zone = kitchen.zone();
    List<Planned> coming = kitchen.plans().coming();
    List<LotState> toFreeze =
        coming.stream()
            .flatMap(planned -> toFreeze(planned).values().stream())
            .flatMap(List::stream)
            .distinct()
            .toList();
    List<Need> needs =
        coming.stream()
            .flatMap(planned -> needs(planned, end.atStartOfDay(zone).toInstant()).stream())
            .sorted(Comparator.comparing(Need::at))
            .toList();
    List<LotState> ending =
        all(LotQuery.ALL.lastDayBefore(end)).stream()
            .filter(lot -> lot.standing().isPresent() && !isFrozen(lot))
            .filter(lot -> !toFreeze.contains(lot))
            .filter(lot -> !isUnfit(lot))
            .toList();
    Map<LotState, LocalDate> room = new LinkedHashMap<>();
    kitchen.roomLots().list().forEach(lot -> room.put(lot.lot(), lot.until()));
    // Found soft in the freezer, it goes by its days at room temperature.
    List<LotState> frozen =
        Stream.concat(
                all(LotQuery.ALL.in(Phase.FROZEN).in(LotOrder.OLDEST)).stream(), toFreeze.stream())
            .filter(lot -> !room.containsKey(lot))
            .filter(lot -> needs.stream().noneMatch(need -> need.isFor(lot)) || !isUnfit(lot))
            .toList();
    return PullList.of(needs, frozen, ending, room, zone, kitchen.now(), end)
        .with(unlogged(coming, end.atStartOfDay(zone).toInstant()));
  }

  /** Whether a limit is not shown, and only words were written down about it. */
  private boolean isUnfit(LotState lot) {
    Instant now = kitchen.now();
    return lot.standing()
        .flatMap(standing -> standing.verdicts().at(now))
        .filter(Verdict.NOT_SHOWN::equals)
        .flatMap(verdict -> kitchen.lots().lot(lot.lot()))
        .flatMap(LotView::judged)
        .flatMap(is -> Acts.unfit(is.timeline(), is.findings(), is.ruleSet(), now))
        .isPresent();
  }

  private List<LotState> all(LotQuery query) {
    List<LotState> found = new ArrayList<>();
    Optional<String> next = Optional.empty();
    do {
      Page<LotState> page = kitchen.lots().list(query, new Page.Wanted(Page.MOST, next));
      found.addAll(page.items());
      next = page.next();
    } while (next.isPresent() && found.size() < LOOKED_AT);
    return found;
  }

  /**
   * By dish, lots and parts on hand that are still to go into the freezer by the plan, which takes
   * care that their days last for that: no last day as they stand now is told of them.
   */
  private Map<String, List<LotState>> toFreeze(Planned planned) {
    Map<String, List<LotState>> found = new HashMap<>();
    planned.plan().tasks().stream()
        .filter(task -> task.kind() == Plan.Kind.FREEZE)
        .map(Task::dish)
        .filter(dish -> planned.followed().containsKey(dish))
        .filter(
            dish ->
                Optional.ofNullable(planned.menu().progress().get(dish))
                    .filter(done -> done.frozen().isEmpty())
                    .isPresent())
        .forEach(
            dish -> {
              Followed followed = planned.followed().get(dish);
              List<LotId> freezes =
                  followed.lots().stream().filter(lot -> !followed.cold().contains(lot)).toList();
              found.put(
                  dish,
                  lots(freezes).stream()
                      .flatMap(lot -> kitchen.lots().state(lot).stream())
                      .filter(lot -> lot.isOnHand() && lot.standing().isPresent())
                      .filter(lot -> !isFrozen(lot))
                      .toList());
            });
    return found;
  }

  /** Dishes that are to come out of the freezer before a moment, there or still to go there. */
  private List<Need> needs(Planned planned, Instant end) {
    List<Need> needs = new ArrayList<>();
    Map<String, List<LotState>> toFreeze = toFreeze(planned);
    for (Dish dish : planned.menu().dishes()) {
      boolean waits = waits(planned, dish, toFreeze);
      planned.plan().tasks().stream()
          .filter(task -> waits && task.kind() == Plan.Kind.TAKE_OUT)
          .filter(task -> task.dish().equals(dish.name()) && task.start().isBefore(end))
          .findFirst()
          .ifPresent(
              task ->
                  needs.add(
                      need(planned, dish, task, toFreeze.getOrDefault(dish.name(), List.of()))));
    }
    return needs;
  }

  /** Whether lots of a dish are in the freezer, or are to go there. */
  private static boolean waits(Planned planned, Dish dish, Map<String, List<LotState>> toFreeze) {
    return !toFreeze.getOrDefault(dish.name(), List.of()).isEmpty()
        || Optional.ofNullable(planned.menu().progress().get(dish.name()))
            .filter(done -> done.frozen().isPresent() && done.takenOut().isEmpty())
            .isPresent();
  }

  /** Dishes that come out before a moment, and of which no lot is in the freezer by the log. */
  private List<Unlogged> unlogged(List<Planned> coming, Instant end) {
    List<Unlogged> found = new ArrayList<>();
    for (Planned planned : coming) {
      Map<String, List<LotState>> toFreeze = toFreeze(planned);
      planned.menu().dishes().stream()
          .filter(dish -> !waits(planned, dish, toFreeze))
          .forEach(
              dish ->
                  planned.plan().tasks().stream()
                      .filter(task -> task.dish().equals(dish.name()))
                      .filter(task -> comesOut(planned, dish, task))
                      .filter(task -> task.start().isBefore(end))
                      .map(task -> unlogged(planned, dish, task))
                      .forEach(found::add));
    }
    return found.stream().sorted(Comparator.comparing(Unlogged::at)).toList();
  }

  private static boolean comesOut(Planned planned, Dish dish, Task task) {
    Optional<Progress> done = Optional.ofNullable(planned.menu().progress().get(dish.name()));
    boolean thaws =
        done.isEmpty()
            && task.kind() == Plan.Kind.MAKE
            && task.step().equals(dish.make().get(0).name())
            && Thawing.isOutOfFreezer(dish);
    return thaws
        || (task.kind() == Plan.Kind.TAKE_OUT && done.flatMap(Progress::takenOut).isEmpty());
  }

  private static Unlogged unlogged(Planned planned, Dish dish, Task task) {
    boolean isLogged =
        planned.menu().progress().containsKey(dish.name())
            || planned.leftOut().stream().anyMatch(out -> out.dish().equals(dish.name()));
    return new Unlogged(
        planned.code(),
        name(planned),
        dish.name(),
        dish.portions(),
        task.kind() == Plan.Kind.MAKE,
        isLogged,
        task.start());
  }

  private Need need(Planned planned, Dish dish, Task task, List<LotState> toFreeze) {
    Set<LotId> comeOut = toFreeze.stream().map(LotState::lot).collect(Collectors.toSet());
    return new Need(
        planned.code(),
        name(planned),
        dish.name(),
        dish.portions() - elsewhere(planned.lots(dish.name()), comeOut),
        task.start(),
        planned.menu().due(dish).atZone(kitchen.zone()).toLocalDate(),
        lots(planned.lots(dish.name())));
  }

  /** Portions of the lots of a dish that need not come out of the freezer. */
  private int elsewhere(List<LotId> followed, Set<LotId> toFreeze) {
    return new PlanLots(kitchen)
        .portions(
            followed,
            lot ->
                lot.judged().isPresent()
                    && !isFrozen(lot.state())
                    && !toFreeze.contains(lot.state().lot()));
  }

  private Set<LotId> lots(List<LotId> followed) {
    Set<LotId> lots = new HashSet<>();
    followed.stream()
        .flatMap(lot -> kitchen.lots().lot(lot).stream())
        .forEach(
            view -> {
              lots.add(view.state().lot());
              lots.addAll(view.descendants());
            });
    return lots;
  }

  private static boolean isFrozen(LotState lot) {
    return lot.standing().filter(standing -> standing.phase() == Phase.FROZEN).isPresent();
  }

  private static String name(Planned planned) {
    try {
      String name = PlanFile.name(planned.input());
      return name.isBlank() ? planned.code() : name;
    } catch (BrokenRules broken) {
      throw new IllegalStateException("a plan that is kept has been read before", broken);
    }
  }
}
