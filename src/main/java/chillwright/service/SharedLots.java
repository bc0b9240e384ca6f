package chillwright.service;

import chillwright.core.log.LotId;
import chillwright.core.plan.Dish;
import chillwright.service.Plans.Kept;
import chillwright.service.Plans.Planned;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Lots of which the same portions would be counted for two dishes, of a plan or of two. */
public final class SharedLots {
  private final Kitchen kitchen;
  private final PlanLots own;

  SharedLots(Kitchen kitchen) {
    this.kitchen = kitchen;
    this.own = new PlanLots(kitchen);
  }

  /** A lot that serves another dish: itself, or a part or the whole of the one asked for. */
  public record Serves(LotId lot, String dish, LotId asked) {}

  /** A lot of a plan that another plan to come goes by too, as itself, a part or its whole. */
  public record Shared(LotId lot, String dish, Kept other) {}

  /** What serves another dish of the plan already; empty where none of the lots does. */
  public Optional<Serves> inPlan(Planned planned, Dish dish, Collection<LotId> asked) {
    for (LotId lot : asked) {
      Set<LotId> all = own.codes(lot);
      for (Dish other : planned.menu().dishes()) {
        if (!other.name().equals(dish.name())) {
          Optional<LotId> serves =
              planned.lots(other.name()).stream().filter(of -> isOne(all, of)).findFirst();
          if (serves.isPresent()) {
            return Optional.of(new Serves(serves.get(), other.name(), lot));
          }
        }
      }
    }
    return Optional.empty();
  }

  /** The lots of a plan to come that others to come go by too, once for each of those. */
  public List<Shared> withOthers(Planned planned) {
    List<Kept> toCome = kitchen.plans().keptToCome();
    if (toCome.stream().noneMatch(plan -> plan.code().equals(planned.code()))) {
      return List.of();
    }
    List<Shared> shared = new ArrayList<>();
    for (Kept other : toCome) {
      if (!other.code().equals(planned.code())) {
        List<LotId> theirs = kitchen.plans().lots(other);
        planned
            .menu()
            .dishes()
            .forEach(
                dish ->
                    planned.lots(dish.name()).stream()
                        .filter(lot -> theirs.stream().anyMatch(of -> isOne(own.codes(lot), of)))
                        .forEach(lot -> shared.add(new Shared(lot, dish.name(), other))));
      }
    }
    return shared;
  }

  private boolean isOne(Set<LotId> lots, LotId other) {
    return !Collections.disjoint(lots, own.codes(other));
  }
}
