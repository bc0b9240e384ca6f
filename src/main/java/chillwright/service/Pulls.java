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
import chillwright.core.plan.PullList;
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
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

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
    List<Need> needs =
        kitchen.plans().coming().stream()
            .flatMap(planned -> needs(planned, end.atStartOfDay(zone).toInstant()).stream())
            .sorted(Comparator.comparing(Need::at))
            .toList();
    List<LotState> ending =
        all(LotQuery.ALL.lastDayBefore(end)).stream()
            .filter(lot -> lot.standing().filter(s -> s.phase() != Phase.FROZEN).isPresent())
            .filter(lot -> !isUnfit(lot))
            .toList();
    Map<LotState, LocalDate> room = new LinkedHashMap<>();
    kitchen.roomLots().list().forEach(lot -> room.put(lot.lot(), lot.until()));
    // Found soft in the freezer, it goes by its days at room temperature.
    List<LotState> frozen =
        all(LotQuery.ALL.in(Phase.FROZEN).in(LotOrder.OLDEST)).stream()
            .filter(lot -> !room.containsKey(lot))
            .filter(lot -> needs.stream().noneMatch(need -> isFor(need, lot)) || !isUnfit(lot))
            .toList();
    return PullList.of(needs, frozen, ending, room, zone, kitchen.now(), end);
  }

  private static boolean isFor(Need need, LotState lot) {
    return need.lots().contains(lot.lot()) || lot.food().equals(need.dish());
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

  /** Dishes in the freezer that are to come out before a moment. */
  private List<Need> needs(Planned planned, Instant end) {
    List<Need> needs = new ArrayList<>();
    for (Dish dish : planned.menu().dishes()) {
      Optional<Progress> done = Optional.ofNullable(planned.menu().progress().get(dish.name()));
      boolean waits =
          done.filter(p -> p.frozen().isPresent() && p.takenOut().isEmpty()).isPresent();
      planned.plan().tasks().stream()
          .filter(task -> waits && task.kind() == Plan.Kind.TAKE_OUT)
          .filter(task -> task.dish().equals(dish.name()) && task.start().isBefore(end))
          .findFirst()
          .ifPresent(task -> needs.add(need(planned, dish, task)));
    }
    return needs;
  }

  private Need need(Planned planned, Dish dish, Task task) {
    return new Need(
        planned.code(),
        name(planned),
        dish.name(),
        dish.portions(),
        task.start(),
        planned.menu().due(dish).atZone(kitchen.zone()).toLocalDate(),
        lots(Optional.ofNullable(planned.lots().get(dish.name()))));
  }

  private Set<LotId> lots(Optional<LotId> followed) {
    Set<LotId> lots = new HashSet<>();
    followed
        .flatMap(lot -> kitchen.lots().lot(lot))
        .ifPresent(
            view -> {
              lots.add(view.state().lot());
              lots.addAll(view.descendants());
            });
    return lots;
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
