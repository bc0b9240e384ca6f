package chillwright.service;

import chillwright.core.keeping.LotOrder;
import chillwright.core.keeping.LotState;
import chillwright.core.log.LotId;
import chillwright.core.plan.Dish;
import chillwright.service.Plans.LeftOut;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;

/** Which lots the dishes of plans became, as people say it. */
public final class DishLots {
  /** So many are offered; another is named by its code. */
  private static final int OFFERED = 5;

  private final Kitchen kitchen;

  DishLots(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /**
   * Makes a lot of a dish known, so that the plan follows it; its first entry is still to come. A
   * dish that became another lot meanwhile, perhaps by somebody else just now, keeps that.
   *
   * @param portions how many are to be made
   * @param seen lots of the dish that were known to whoever asks
   * @return empty where the plan was given up meanwhile; then no lot is made
   * @throws Refused where it cannot be made known
   */
  public Optional<LotId> begin(
      String code, Dish dish, int portions, Collection<LotId> seen, Optional<OnceKey> once) {
    Set<LotId> before = new HashSet<>(seen);
    PlanLots own = new PlanLots(kitchen);
    kitchen.database().read(session -> session.plans().lots(code)).values().stream()
        .flatMap(List::stream)
        .filter(own::isDiscarded)
        .forEach(before::add);
    NewLot lot =
        new NewLot(
            Optional.empty(),
            Optional.of(dish.name()),
            Optional.of(dish.category().key()),
            List.of(),
            OptionalInt.of(portions),
            Optional.empty());
    return kitchen
        .database()
        .write(
            session -> {
              if (session.plans().find(code).isEmpty()) {
                return Optional.empty();
              }
              List<LotId> known = session.plans().lots(code).getOrDefault(dish.name(), List.of());
              Optional<LotId> other =
                  known.stream().filter(one -> !before.contains(one)).findFirst();
              if (other.isPresent()) {
                return other;
              }
              LotId made = kitchen.logbook().createLot(session, lot, once).lot();
              session.plans().link(code, dish.name(), made);
              return Optional.of(made);
            });
  }

  /**
   * Says that a dish of a plan became lots that are known already, beside those before.
   *
   * @return false where the plan was given up meanwhile
   */
  public boolean link(String code, String dish, Collection<LotId> lots) {
    return kitchen
        .database()
        .write(
            session -> {
              boolean isKept = session.plans().find(code).isPresent();
              if (isKept) {
                lots.forEach(lot -> session.plans().link(code, dish, lot));
              }
              return isKept;
            });
  }

  /** Takes back that a dish of a plan became a lot; the lot itself stays as it is. */
  public void unlink(String code, String dish, LotId lot) {
    kitchen
        .database()
        .write(
            session -> {
              session.plans().unlink(code, dish, lot);
              return null;
            });
  }

  /** Says that a lot that a plan goes by for its name alone is none of it. */
  public void leave(String code, LotId lot) {
    kitchen
        .database()
        .write(
            session -> {
              if (session.plans().find(code).isPresent()) {
                session.plans().leave(code, lot);
              }
              return null;
            });
  }

  /** Has a dish that is called otherwise now keep its lots. */
  public void rename(String code, String was, String dish) {
    kitchen
        .database()
        .write(
            session -> {
              session.plans().rename(code, was, dish);
              return null;
            });
  }

  /** Which of them are counted twice. */
  public SharedLots shared() {
    return new SharedLots(kitchen);
  }

  /** Why no dish can be planned from a lot, that of the plan or one to become it. */
  public List<LeftOut> unfit(String dish, LotId lot) {
    PlanLots own = new PlanLots(kitchen);
    return own.progress(lot).isPresent() ? List.of() : own.leftOut(dish, List.of(lot));
  }

  /**
   * Fit lots that could serve a dish of which portions are missing, or that was told no lot: of the
   * food that its lots have, or that is called as it is; good on the day it is served, and of no
   * plan to come. What is to be used first stands first.
   */
  public List<LotState> offered(Plans.Planned planned, Dish dish) {
    List<LotId> told = planned.lots(dish.name());
    boolean isWanted =
        told.isEmpty()
            ? planned.menu().progress().containsKey(dish.name())
            : planned.open().containsKey(dish.name());
    if (!isWanted) {
      return List.of();
    }
    Set<String> foods = new HashSet<>(List.of(dish.name()));
    if (!isFood(dish.name(), told)) {
      foods.addAll(foods(told));
    }
    Set<LotId> taken = new HashSet<>(told);
    told.stream()
        .flatMap(lot -> kitchen.lots().lot(lot).stream())
        .forEach(lot -> taken.addAll(lot.descendants()));
    Set<String> toCome =
        kitchen.plans().keptToCome().stream().map(Plans.Kept::code).collect(Collectors.toSet());
    LotQuery good =
        LotQuery.ALL
            .goodOn(planned.menu().due(dish).atZone(kitchen.zone()).toLocalDate())
            .in(LotOrder.USE_FIRST);
    PlanLots own = new PlanLots(kitchen);
    return kitchen.lots().list(good, Page.Wanted.first(Page.MOST)).items().stream()
        .filter(lot -> foods.contains(lot.food()) && !taken.contains(lot.lot()))
        .filter(lot -> lot.standing().isPresent() && lot.portions().left().orElse(1) > 0)
        .filter(lot -> plans(lot.lot()).stream().noneMatch(of -> toCome.contains(of.code())))
        .filter(lot -> kitchen.lots().lot(lot.lot()).filter(own::isFit).isPresent())
        .limit(OFFERED)
        .toList();
  }

  /**
   * Lots that are of another food than a dish: of another kind, or called otherwise where the
   * kitchen has that food by the name of the dish.
   */
  public List<LotState> ofOtherFood(Plans.Planned planned, Dish dish, List<LotId> lots) {
    List<LotId> all = new ArrayList<>(planned.lots(dish.name()));
    all.addAll(lots);
    boolean isFood = isFood(dish.name(), all);
    return lots.stream()
        .flatMap(lot -> kitchen.lots().state(lot).stream())
        .filter(
            lot ->
                !lot.category().equals(dish.category().key())
                    || (isFood && !lot.food().equals(dish.name())))
        .toList();
  }

  /** Whether the kitchen has a food of that name, or one of these lots is called so. */
  private boolean isFood(String name, List<LotId> lots) {
    return foods(lots).contains(name) || kitchen.setUp().food(name).isPresent();
  }

  private Set<String> foods(List<LotId> lots) {
    return lots.stream()
        .flatMap(lot -> kitchen.lots().state(lot).stream())
        .map(LotState::food)
        .collect(Collectors.toSet());
  }

  /** The plans that were told a lot, by code. */
  public List<Plans.Kept> plans(LotId lot) {
    return kitchen.database().read(session -> session.plans().of(lot)).stream()
        .map(said -> new Plans.Kept(said.code(), said.input(), said.saidAt()))
        .toList();
  }
}
