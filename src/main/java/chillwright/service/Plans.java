package chillwright.service;

import chillwright.core.keeping.LotOrder;
import chillwright.core.keeping.LotState;
import chillwright.core.log.LotId;
import chillwright.core.plan.Dish;
import chillwright.core.plan.Menu;
import chillwright.core.plan.Moved;
import chillwright.core.plan.Plan;
import chillwright.core.plan.Progress;
import chillwright.rulebook.BrokenRules;
import chillwright.rulebook.PlanFile;
import chillwright.storage.PlanStore.Said;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Plans that the kitchen keeps. What is to be planned is stored; the plan is made afresh at every
 * look, from where its dishes stand in the log by then.
 */
public final class Plans {
  /** Lots on hand looked through for the dishes of a plan. */
  private static final int LOOKED_AT = 2_000;

  private final Kitchen kitchen;

  Plans(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /** A plan that is kept, with its input as it was given. */
  public record Kept(String code, String input, Instant saidAt) {
    /** What its event is called, or its code. */
    public String title() {
      try {
        String name = PlanFile.name(input);
        return name.isEmpty() ? code : name;
      } catch (BrokenRules unreadable) {
        return code;
      }
    }
  }

  /**
   * A plan as of now.
   *
   * @param saidAt when its input was written
   * @param moved what stands elsewhere than in the plan as it was first made, or as it was before
   *     something else was asked for
   * @param followed the lots that dishes became, by dish, where the plan was told
   * @param named lots that dishes go by since they are called so, where the plan was told none
   * @param leftOut lots that dishes are not planned from, since they are unfit for use
   */
  public record Planned(
      String code,
      String input,
      Instant saidAt,
      Menu menu,
      Plan plan,
      List<Moved> moved,
      Map<String, Followed> followed,
      Map<String, Followed> named,
      List<LeftOut> leftOut) {
    public Planned {
      named = Map.copyOf(named);
      leftOut = List.copyOf(leftOut);
      followed = Map.copyOf(followed);
      moved = List.copyOf(moved);
    }

    /** How many portions the lots of a dish hold too few, by dish. */
    public Map<String, Integer> missing() {
      return some(Followed::missing);
    }

    /** How many of these no lot is known for, by dish. */
    public Map<String, Integer> open() {
      return some(Followed::open);
    }

    /** Of which there are any. */
    private Map<String, Integer> some(Function<Followed, OptionalInt> count) {
      Map<String, Integer> found = new HashMap<>();
      Stream.of(followed, named)
          .flatMap(lots -> lots.entrySet().stream())
          .forEach(
              dish ->
                  count
                      .apply(dish.getValue())
                      .ifPresent(portions -> found.put(dish.getKey(), portions)));
      found.values().removeIf(portions -> portions <= 0);
      return found;
    }

    /** Dishes that are begun, with how many portions are missing; empty where nobody counted. */
    public Map<String, OptionalInt> begun() {
      return menu.dishes().stream()
          .map(Dish::name)
          .filter(menu.progress()::containsKey)
          .collect(
              Collectors.toMap(
                  dish -> dish,
                  dish ->
                      Optional.ofNullable(followed.getOrDefault(dish, named.get(dish)))
                          .map(Followed::missing)
                          .orElse(OptionalInt.empty())));
    }

    /** The lots that a dish became; none where the plan was told none. */
    public List<LotId> lots(String dish) {
      return Optional.ofNullable(followed.get(dish)).map(Followed::lots).orElse(List.of());
    }

    /** The lots that a dish goes by for its name alone. */
    public List<LotId> named(String dish) {
      return Optional.ofNullable(named.get(dish)).map(Followed::lots).orElse(List.of());
    }

    /** The same plan that names more lots it is not made from. */
    public Planned without(List<LeftOut> more) {
      List<LeftOut> all = Stream.concat(leftOut.stream(), more.stream()).distinct().toList();
      return new Planned(code, input, saidAt, menu, plan, moved, followed, named, all);
    }
  }

  /** A lot that no dish is planned from: out of compliance, or not shown to be in. */
  public record LeftOut(LotId lot, String dish, boolean isOut) {}

  /** All plans, by code. */
  public List<Kept> all() {
    return kitchen.database().read(session -> session.plans().all()).stream()
        .map(said -> new Kept(said.code(), said.input(), said.saidAt()))
        .toList();
  }

  /** A plan made afresh; empty where there is none of that code. */
  public Optional<Planned> plan(String code) {
    return find(code).map(said -> planned(said, before(said)));
  }

  /**
   * Plans whose event is still to come, the nearest first. One that today's keeping list can no
   * longer read is left out; its own page says what is wrong with it.
   */
  public List<Planned> coming() {
    return saidToCome().map(said -> planned(said, before(said))).toList();
  }

  /** The same plans, not worked out. */
  public List<Kept> keptToCome() {
    return saidToCome().map(said -> new Kept(said.code(), said.input(), said.saidAt())).toList();
  }

  /** The lots that dishes became which a plan has still. */
  List<LotId> lots(Kept plan) {
    Map<String, List<LotId>> lots = new PlanLots(kitchen).of(plan.code());
    return menu(new Said(plan.code(), plan.input(), plan.saidAt())).dishes().stream()
        .flatMap(dish -> lots.getOrDefault(dish.name(), List.of()).stream())
        .toList();
  }

  private Stream<Said> saidToCome() {
    Instant now = kitchen.now();
    return kitchen.database().read(session -> session.plans().all()).stream()
        .filter(said -> isToCome(said, now))
        .sorted(Comparator.comparing(said -> menu(said).serving()));
  }

  private Optional<Said> before(Said said) {
    return kitchen.lastPlans().before(said.code(), kitchen.now());
  }

  private boolean isToCome(Said said, Instant now) {
    try {
      return menu(said).serving().isAfter(now);
    } catch (Refused unreadable) {
      return false;
    }
  }

  private Optional<Said> find(String code) {
    return kitchen.database().read(session -> session.plans().find(code));
  }

  /**
   * Keeps what is to be planned, in place of what was kept under that code, and tells what that
   * moves.
   *
   * @param code letters, digits and . _ -, as codes of lots are
   * @param input YAML or JSON
   * @throws Refused with every fault; nothing is changed then
   */
  public Planned save(String code, String input) {
    Optional<Said> before = find(code);
    // Lots that were begun for the plan stay its own when something else is asked for.
    Said said = new Said(code, input, before.map(Said::saidAt).orElseGet(kitchen::now));
    Optional<Said> other = before.filter(old -> !old.input().equals(input));
    Planned planned =
        planned(said, other.or(() -> kitchen.lastPlans().before(code, kitchen.now())));
    kitchen
        .database()
        .write(
            session -> {
              session.plans().save(said);
              return null;
            });
    other.ifPresent(old -> kitchen.lastPlans().changed(old, kitchen.now()));
    return planned;
  }

  /** Whether there was one. */
  public boolean delete(String code) {
    kitchen.lastPlans().forget(code);
    return kitchen.database().write(session -> session.plans().delete(code));
  }

  public static boolean isCode(String code) {
    return LotId.isCode(code);
  }

  private Planned planned(Said said, Optional<Said> before) {
    Menu asked = menu(said);
    Plan first = plan(asked);
    Map<String, List<LotId>> lots = new PlanLots(kitchen).of(said.code());
    List<LeftOut> unfit = new ArrayList<>();
    Map<String, List<LotId>> byName = new HashMap<>();
    Map<String, Progress> begun = progress(asked, said, lots, byName, unfit);
    Instant now = soon().isAfter(asked.from()) ? soon() : asked.from();
    boolean isOver = !now.isBefore(asked.serving());
    Menu menu = isOver ? asked : asked.at(now, begun).frozen(frozen(lots, byName));
    Plan plan = plan(menu);
    List<Moved> moved = new ArrayList<>();
    before
        .map(this::menu)
        .ifPresent(was -> moved.addAll(Moved.asked(plan(was), first, plan, menu, was)));
    Moved.between(first, plan, menu).stream()
        .filter(one -> moved.stream().noneMatch(other -> other.task().equals(one.task())))
        .forEach(moved::add);
    Map<String, Followed> followed = new HashMap<>();
    lots.forEach((dish, all) -> followed.put(dish, new Followed(all)));
    menu.dishes().stream()
        .filter(dish -> !isOver && lots.containsKey(dish.name()))
        .forEach(
            dish ->
                followed.put(
                    dish.name(), followed(dish, menu, begun, lots.get(dish.name()), unfit)));
    Map<String, Followed> named = new HashMap<>();
    menu.dishes().stream()
        .filter(dish -> !isOver && byName.containsKey(dish.name()))
        .forEach(
            dish ->
                named.put(
                    dish.name(), followed(dish, menu, begun, byName.get(dish.name()), unfit)));
    return new Planned(
        said.code(), said.input(), said.saidAt(), menu, plan, moved, followed, named, unfit);
  }

  /**
   * Of a dish that became lots: what was eaten, never made, or is unfit for use is not there to be
   * served.
   */
  private Followed followed(
      Dish dish, Menu menu, Map<String, Progress> begun, List<LotId> lots, List<LeftOut> unfit) {
    PlanLots own = new PlanLots(kitchen);
    boolean isUnfit = unfit.stream().anyMatch(out -> out.dish().equals(dish.name()));
    OptionalInt left =
        begun.containsKey(dish.name())
            ? own.left(lots)
            : isUnfit ? OptionalInt.of(0) : OptionalInt.empty();
    OptionalInt missing =
        left.isPresent() ? OptionalInt.of(Math.max(0, dish.portions() - left.getAsInt())) : left;
    List<LotId> cold =
        dish.route() == Dish.Route.FROZEN ? own.cold(lots, served(dish, menu)) : List.of();
    Map<LotId, Integer> toCome = own.toCome(lots);
    int coming = toCome.values().stream().mapToInt(Integer::intValue).sum();
    OptionalInt wanted = toCome.size() == lots.size() ? OptionalInt.of(dish.portions()) : missing;
    OptionalInt open =
        wanted.isPresent() ? OptionalInt.of(Math.max(0, wanted.getAsInt() - coming)) : wanted;
    return new Followed(lots, missing, open, toCome, cold);
  }

  /** Portions that are in the freezer already, by dish. */
  private Map<String, Integer> frozen(
      Map<String, List<LotId>> lots, Map<String, List<LotId>> named) {
    PlanLots own = new PlanLots(kitchen);
    Map<String, Integer> frozen = new HashMap<>();
    named.forEach((dish, all) -> frozen.put(dish, own.portions(all, PlanLots::isFrozen)));
    lots.forEach((dish, all) -> frozen.put(dish, own.portions(all, PlanLots::isFrozen)));
    return frozen;
  }

  private static LocalDate served(Dish dish, Menu menu) {
    return menu.due(dish).atZone(menu.zone()).toLocalDate();
  }

  private Plan plan(Menu menu) {
    return kitchen.planning().plan(menu);
  }

  /** The next full minute: within one nothing moves, and a plan once worked out is given again. */
  private Instant soon() {
    return kitchen.now().plusSeconds(60).minusNanos(1).truncatedTo(ChronoUnit.MINUTES);
  }

  private Menu menu(Said said) {
    try {
      return PlanFile.begun(
          said.input(), kitchen.library().keepingList(), kitchen.zone(), said.saidAt());
    } catch (BrokenRules broken) {
      throw new Refused(Refused.Why.FAULTS, broken.problems());
    }
  }

  /**
   * How far the dishes have come: by the lots the plan was told, else by a lot of that food, on
   * hand, begun since the plan was written and not taken away from it. One that is unfit for use
   * serves no dish.
   */
  private Map<String, Progress> progress(
      Menu menu,
      Said said,
      Map<String, List<LotId>> lots,
      Map<String, List<LotId>> named,
      List<LeftOut> unfit) {
    Map<String, Dish> dishes =
        menu.dishes().stream().collect(Collectors.toMap(Dish::name, dish -> dish));
    Map<String, Progress> found = new HashMap<>();
    PlanLots own = new PlanLots(kitchen);
    menu.dishes().stream()
        .filter(dish -> lots.containsKey(dish.name()))
        .forEach(
            dish -> {
              List<LotId> all = lots.get(dish.name());
              own.progress(all, served(dish, menu)).ifPresent(done -> found.put(dish.name(), done));
              unfit.addAll(own.leftOut(dish.name(), all));
            });
    dishes.keySet().removeAll(lots.keySet());
    if (dishes.isEmpty()) {
      return found;
    }
    Set<LotId> away = kitchen.database().read(session -> session.plans().away(said.code()));
    Optional<String> next = Optional.empty();
    int looked = 0;
    do {
      Page<LotState> page =
          kitchen.lots().list(LotQuery.ALL.in(LotOrder.OLDEST), new Page.Wanted(Page.MOST, next));
      for (LotState lot : page.items()) {
        if (dishes.containsKey(lot.food()) && !away.contains(lot.lot())) {
          Optional<LotView> view = begun(lot, said.saidAt());
          Optional<LeftOut> out = view.flatMap(is -> own.unfit(lot.food(), is));
          out.ifPresent(unfit::add);
          view.filter(is -> out.isEmpty())
              .flatMap(LotView::judged)
              .map(is -> PlanLots.of(is, kitchen.now()))
              .ifPresent(
                  done -> {
                    found.putIfAbsent(lot.food(), done);
                    if (isOfNoPlan(lot.lot())) {
                      named.computeIfAbsent(lot.food(), dish -> new ArrayList<>()).add(lot.lot());
                    }
                  });
        }
      }
      looked += page.items().size();
      next = page.next();
    } while (next.isPresent() && looked < LOOKED_AT);
    return found;
  }

  private boolean isOfNoPlan(LotId lot) {
    return kitchen.database().read(session -> session.plans().of(lot)).isEmpty();
  }

  private Optional<LotView> begun(LotState lot, Instant since) {
    return kitchen
        .lots()
        .lot(lot.lot())
        .filter(
            view ->
                view.judged().filter(is -> !is.timeline().beganAt().isBefore(since)).isPresent());
  }
}
