package chillwright.core.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import chillwright.core.log.Category;
import chillwright.core.plan.Dish.Route;
import chillwright.core.plan.Menu.Hours;
import chillwright.core.plan.Plan.Conflict;
import chillwright.core.plan.Plan.Kind;
import chillwright.core.plan.Plan.Why;
import chillwright.rulebook.BrokenRules;
import chillwright.rulebook.RuleBook;
import chillwright.rulebook.RuleLibrary;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Plans by the figures of FDA Food Code 2022 3-501.17 (seven days, the making day counts),
 * 3-403.11(D) (reheated within two hours) and the freezer months of the keeping list; every plan is
 * held against its menu by {@link PlanCheck}.
 */
class PlannerTest {
  private static final ZoneId ZONE = ZoneId.of("America/Denver");
  private static final Instant SERVING = Instant.parse("2026-03-21T01:00:00Z");
  private static final Instant FROM = Instant.parse("2026-02-27T15:00:00Z");
  private static final RuleLibrary LIBRARY = library();
  private static final RuleBook BOOK = LIBRARY.ruleBook("us-food-code-2022").orElseThrow();

  /** How many menus are made up and held against the checker. */
  private static final int MENUS = Integer.getInteger("menus", 300);

  private static final AtomicInteger FOUND = new AtomicInteger();

  /** Parts that were chosen at another moment than planned. */
  private static final AtomicInteger WIDE = new AtomicInteger();

  private static RuleLibrary library() {
    try {
      return RuleLibrary.load(Optional.empty());
    } catch (BrokenRules broken) {
      throw new IllegalStateException(broken);
    }
  }

  private static Category soup() {
    return LIBRARY.keepingList().category("soup_or_stew").orElseThrow();
  }

  private static Step step(String name, int minutes, Map<String, Double> uses) {
    return new Step(name, Duration.ofMinutes(minutes), uses);
  }

  private static Dish dish(String name, Route route, Map<String, Double> keeps, int reheat) {
    return new Dish(
        name,
        soup(),
        40,
        route,
        List.of(step("cook", 90, Map.of("hob", 1.0, "hands", 1.0))),
        List.of(step("reheat", reheat, Map.of("hob", 1.0))),
        keeps,
        route == Route.FROZEN ? Duration.ofHours(24) : Duration.ZERO,
        Duration.ofMinutes(30),
        Optional.empty());
  }

  private static Menu menu(Map<String, Double> has, List<Dish> dishes) {
    return new Menu(SERVING, ZONE, FROM, has, List.of(), dishes);
  }

  private static Plan plan(Menu menu) {
    Plan plan = Planner.plan(menu, BOOK.on(LocalDate.of(2026, 3, 20)));
    if (plan.isFound()) {
      assertThat(PlanCheck.faults(menu, plan, BOOK)).isEmpty();
    }
    return plan;
  }

  private static Instant start(Plan plan, Kind kind) {
    return plan.tasks().stream()
        .filter(task -> task.kind() == kind)
        .findFirst()
        .orElseThrow()
        .start();
  }

  /**
   * Served on 20 March at 19:00: reheated by the hour before, made by that hour of the 19th; where
   * work begins on the 20th, six hours before it is reheated. Our own rule: ahead is a day ahead.
   */
  @Test
  void a_chilled_dish_alone_is_made_the_day_before_or_else_as_late_as_it_cools() {
    Menu menu = menu(Map.of(), List.of(dish("soup", Route.CHILLED, Map.of(), 60)));
    Plan plan = plan(menu);
    assertThat(start(plan, Kind.FINISH)).isEqualTo(Instant.parse("2026-03-21T00:00:00Z"));
    assertThat(start(plan, Kind.MAKE)).isEqualTo(Instant.parse("2026-03-19T23:30:00Z"));
    assertThat(plan.isProven()).isTrue();
    Plan same = plan(menu.at(Instant.parse("2026-03-20T12:00:00Z"), Map.of()));
    assertThat(start(same, Kind.MAKE)).isEqualTo(Instant.parse("2026-03-20T16:30:00Z"));
    assertThat(same.isProven()).isTrue();
  }

  /** FDA Food Code 2022 3-501.14(A): read at 2 and 6 hours, so made by 14:00 of a long day. */
  @ParameterizedTest
  @CsvSource({"CHILLED", "FROZEN"})
  void food_cools_on_a_day_on_which_somebody_is_there_to_read_it(Route route) {
    Set<DayOfWeek> week = EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.THURSDAY);
    LocalTime closes = LocalTime.of(20, 0);
    List<Hours> open =
        List.of(
            new Hours(week, LocalTime.of(17, 0), closes),
            new Hours(Set.of(DayOfWeek.SATURDAY), LocalTime.of(8, 0), closes),
            new Hours(Set.of(DayOfWeek.FRIDAY), LocalTime.of(17, 0), closes));
    Dish soup = dish("soup", route, Map.of(), 60);
    Plan plan = plan(new Menu(SERVING, ZONE, FROM, Map.of(), open, List.of(soup)));
    assertThat(plan.unattended()).isEmpty();
    assertThat(start(plan, Kind.MAKE).atZone(ZONE).toLocalDate())
        .isEqualTo(LocalDate.of(2026, 3, 14));
  }

  /** Day 1 of seven is 14 March: not a day earlier. */
  @Test
  void a_chilled_dish_is_made_at_most_six_days_before() {
    Plan plan = plan(menu(Map.of(), List.of(dish("soup", Route.CHILLED, Map.of(), 60))));
    Bound make = plan.bounds().get(0);
    assertThat(make.kind()).isEqualTo(Bound.Kind.MAKE);
    assertThat(make.from().orElseThrow().atZone(ZONE).toLocalDate())
        .isEqualTo(LocalDate.of(2026, 3, 14));
    assertThat(make.rule().orElseThrow().citation().text()).contains("3-501.17");
  }

  /** A day to freeze and a day to thaw: taken out on the 19th, in the freezer by the 18th. */
  @Test
  void a_frozen_dish_leaves_time_to_freeze_and_to_thaw() {
    Plan plan = plan(menu(Map.of(), List.of(dish("soup", Route.FROZEN, Map.of(), 60))));
    assertThat(start(plan, Kind.TAKE_OUT)).isEqualTo(Instant.parse("2026-03-20T00:00:00Z"));
    assertThat(start(plan, Kind.FREEZE)).isEqualTo(Instant.parse("2026-03-19T00:00:00Z"));
    assertThat(start(plan, Kind.MAKE)).isEqualTo(Instant.parse("2026-03-18T16:30:00Z"));
  }

  /**
   * 3-501.17: seven days, made on the 18th and served on the 20th. The Cold Food Storage Chart of
   * FoodSafety.gov: 3 to 4 days for soup at home, where it is made on Sunday the 15th.
   */
  @Test
  void freezing_that_gains_nothing_is_told() {
    Dish soup = dish("soup", Route.FROZEN, Map.of(), 60);
    Plan plan = plan(menu(Map.of(), List.of(soup)));
    assertThat(plan.needless()).extracting(kept -> kept.dish().name()).containsExactly("soup");
    Set<DayOfWeek> days = Set.of(DayOfWeek.SUNDAY, DayOfWeek.THURSDAY, DayOfWeek.FRIDAY);
    Hours open = new Hours(days, LocalTime.MIDNIGHT, LocalTime.MIDNIGHT);
    Menu weekend = new Menu(SERVING, ZONE, FROM, Map.of(), List.of(open), List.of(soup));
    RuleBook home = LIBRARY.ruleBook("us-home").orElseThrow();
    Plan needed = Planner.plan(weekend, home.on(LocalDate.of(2026, 3, 20)));
    assertThat(needed.isFound()).isTrue();
    assertThat(needed.needless()).isEmpty();
    assertThat(plan(menu(Map.of(), List.of(dish("soup", Route.CHILLED, Map.of(), 60)))).needless())
        .isEmpty();
  }

  /** 3-403.11(D): two hours, and not five minutes more. */
  @ParameterizedTest
  @CsvSource({"120, true", "125, false"})
  void reheating_takes_at_most_two_hours(int minutes, boolean isFound) {
    Plan plan = plan(menu(Map.of(), List.of(dish("soup", Route.CHILLED, Map.of(), minutes))));
    assertThat(plan.isFound()).isEqualTo(isFound);
    if (!isFound) {
      assertThat(plan.conflicts()).extracting(Conflict::why).containsExactly(Why.REHEAT_TOO_LONG);
    }
  }

  /** Three reheats of an hour, one hob and half an hour of holding: one hob too few. */
  @Test
  void what_is_short_is_named_with_what_would_do() {
    List<Dish> three =
        IntStream.range(0, 3).mapToObj(i -> dish("d" + i, Route.CHILLED, Map.of(), 60)).toList();
    Plan plan = plan(menu(Map.of("hob", 1.0), three));
    assertThat(plan.isFound()).isFalse();
    assertThat(plan.isProven()).isTrue();
    assertThat(plan.conflicts())
        .usingRecursiveFieldByFieldElementComparatorIgnoringFields("clash")
        .containsExactly(new Conflict(Why.SHORT_OF, "", "hob", 3));
    assertThat(plan.conflicts().get(0).clash())
        .hasSize(2)
        .allMatch(task -> task.kind() == Kind.FINISH && task.step().equals("reheat"));
    assertThat(plan(menu(Map.of("hob", 3.0), three)).isFound()).isTrue();
  }

  /** By definition: 90 minutes before half past five or later begin while the kitchen is closed. */
  @Test
  void a_dish_that_finds_no_open_hour_by_itself_is_named() {
    EnumSet<DayOfWeek> daily = EnumSet.allOf(DayOfWeek.class);
    Menu menu =
        new Menu(
            SERVING,
            ZONE,
            FROM,
            Map.of("hob", 2.0, "hands", 1.0),
            List.of(
                new Hours(daily, LocalTime.of(8, 0), LocalTime.of(12, 0)),
                new Hours(daily, LocalTime.of(17, 30), LocalTime.of(20, 0))),
            List.of(
                dish("braise", Route.FRESH, Map.of(), 60),
                dish("stew", Route.CHILLED, Map.of(), 60)));
    assertThat(plan(menu).conflicts())
        .extracting(Conflict::why, Conflict::dish)
        .containsExactly(tuple(Why.CLOSED, "braise"));
  }

  @Test
  void a_closed_kitchen_takes_nothing_out_of_the_freezer() {
    Hours weekdays =
        new Hours(
            EnumSet.of(DayOfWeek.MONDAY, DayOfWeek.WEDNESDAY, DayOfWeek.FRIDAY),
            LocalTime.of(8, 0),
            LocalTime.of(20, 0));
    Menu menu =
        new Menu(
            SERVING,
            ZONE,
            FROM,
            Map.of("hob", 1.0, "hands", 1.0),
            List.of(weekdays),
            List.of(dish("soup", Route.FROZEN, Map.of(), 60)));
    Plan plan = plan(menu);
    // The 20th is a Friday: with 24 h of thawing it would come out on a closed Thursday.
    assertThat(start(plan, Kind.TAKE_OUT).atZone(ZONE).getDayOfWeek())
        .isEqualTo(DayOfWeek.WEDNESDAY);
  }

  /**
   * By definition: asked for by the 8th, what is frozen for the 20th is made on that day at the
   * latest, and else as late as it may be; before work begins nothing is made. Where no hours are
   * told the day ends with the hour of serving; where that is past, at midnight.
   */
  @Test
  void what_is_wanted_by_a_day_is_made_by_its_end() {
    Map<String, Double> has = Map.of("hob", 1.0, "hands", 1.0);
    Dish frozen = dish("stew", Route.FROZEN, Map.of(), 60);
    LocalDate eighth = LocalDate.of(2026, 3, 8);
    Plan early = plan(menu(has, List.of(frozen.by(Optional.of(eighth)))));
    assertThat(start(early, Kind.MAKE).plus(Duration.ofMinutes(90)))
        .isEqualTo(eighth.atTime(SERVING.atZone(ZONE).toLocalTime()).atZone(ZONE).toInstant());
    Instant late = eighth.atTime(21, 0).atZone(ZONE).toInstant();
    Menu lateOn =
        new Menu(SERVING, ZONE, late, has, List.of(), List.of(frozen.by(Optional.of(eighth))));
    assertThat(start(plan(lateOn), Kind.MAKE).plus(Duration.ofMinutes(90)))
        .isEqualTo(eighth.plusDays(1).atStartOfDay(ZONE).toInstant());
    assertThat(start(plan(menu(has, List.of(frozen))), Kind.MAKE))
        .isAfter(start(early, Kind.MAKE).plus(Duration.ofDays(5)));
    LocalDate yesterday = FROM.atZone(ZONE).toLocalDate().minusDays(1);
    assertThat(plan(menu(has, List.of(frozen.by(Optional.of(yesterday))))).conflicts())
        .extracting(Conflict::why)
        .containsExactly(Why.TOO_LATE_TO_MAKE);
  }

  /**
   * Open from 8 to 20: it may bake through the night, and is begun and cooled while somebody is
   * there. FDA Food Code 2022 3-501.14(A): 70 °F within 2 hours, 41 °F within 6.
   */
  @Test
  void work_without_hands_is_begun_and_ended_while_the_kitchen_is_open() {
    Dish dish =
        new Dish(
            "shoulder",
            soup(),
            40,
            Route.CHILLED,
            List.of(step("bake", 13 * 60, Map.of("oven", 1.0))),
            List.of(step("reheat", 60, Map.of("oven", 1.0))),
            Map.of(),
            Duration.ZERO,
            Duration.ZERO,
            Optional.empty());
    Hours day = new Hours(EnumSet.allOf(DayOfWeek.class), LocalTime.of(8, 0), LocalTime.of(20, 0));
    Map<String, Double> has = Map.of("oven", 1.0);
    Plan plan = plan(new Menu(SERVING, ZONE, FROM, has, List.of(day), List.of(dish)));
    // Cold by 18:00, so made by 12:00, and not before 8:00: begun in the last slot of the evening.
    assertThat(start(plan, Kind.MAKE).atZone(ZONE).toLocalTime()).isEqualTo(LocalTime.of(19, 55));
    assertThat(plan.unattended()).isEmpty();
    Hours evening =
        new Hours(EnumSet.allOf(DayOfWeek.class), LocalTime.of(17, 0), LocalTime.of(20, 0));
    Plan late =
        plan(
            new Menu(
                SERVING,
                ZONE,
                FROM,
                has,
                List.of(evening),
                List.of(dish("soup", Route.CHILLED, Map.of(), 60))));
    assertThat(late.isFound()).isTrue();
    assertThat(late.unattended())
        .hasSize(2)
        .allMatch(limit -> limit.rule().citation().text().contains("3-501.14(A)"));
  }

  static IntStream seeds() {
    return IntStream.range(0, 40);
  }

  static IntStream menus() {
    return IntStream.range(0, MENUS / 3);
  }

  /** Menus of up to eight dishes with little of everything; -Dmenus=3000 takes more of them. */
  @ParameterizedTest(name = "seed {0}")
  @MethodSource("menus")
  void no_plan_breaks_a_bound(int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    for (int run = 0; run < 3; run++) {
      if (plan(randomMenu(random)).isFound()) {
        FOUND.incrementAndGet();
      }
    }
  }

  /** Whatever moment is chosen within each window, of all dishes at once, the plan is sound. */
  @ParameterizedTest(name = "seed {0}")
  @MethodSource("menus")
  void any_choice_within_the_windows_holds(int seed) {
    SplittableRandom random = new SplittableRandom(77_000L + seed);
    for (int run = 0; run < 2; run++) {
      Menu menu = randomMenu(random);
      Plan plan = plan(menu);
      for (int choice = 0; plan.isFound() && choice < 6; choice++) {
        ChosenWithin chosen = new ChosenWithin(menu, plan, random, choice);
        assertThat(PlanCheck.faults(menu, chosen.plan(), BOOK)).isEmpty();
        WIDE.addAndGet(chosen.moved());
      }
    }
  }

  /** Else nothing would have been held against anything. */
  @AfterAll
  static void many_of_the_menus_had_a_plan() {
    assertThat(FOUND.get()).isGreaterThan(MENUS / 3);
    assertThat(WIDE.get()).isGreaterThan(MENUS);
  }

  private static Menu randomMenu(SplittableRandom random) {
    List<Dish> dishes = new ArrayList<>();
    int count = random.nextInt(1, 9);
    for (int i = 0; i < count; i++) {
      dishes.add(randomDish("dish " + i, random));
    }
    Map<String, Double> has = new HashMap<>();
    has.put("oven", (double) random.nextInt(1, 3));
    has.put("hob", (double) random.nextInt(2, 5));
    has.put("hands", (double) random.nextInt(1, 4));
    has.put(Menu.REFRIGERATOR, (double) random.nextInt(30, 120));
    has.put(Menu.FREEZER, (double) random.nextInt(30, 120));
    has.put(Menu.FREEZING, (double) random.nextInt(10, 30));
    has.put(Menu.WARM, (double) random.nextInt(10, 60));
    Hours hours =
        new Hours(EnumSet.allOf(DayOfWeek.class), LocalTime.of(7, 0), LocalTime.of(21, 0));
    return new Menu(
        SERVING, ZONE, FROM, has, random.nextBoolean() ? List.of(hours) : List.of(), dishes);
  }

  private static Dish randomDish(String name, SplittableRandom random) {
    Route route = List.of(Route.values()).get(random.nextInt(3));
    String heat = random.nextBoolean() ? "oven" : "hob";
    List<Step> make = new ArrayList<>();
    make.add(step("prepare", 5 * random.nextInt(2, 8), Map.of("hands", 1.0)));
    make.add(step("cook", 5 * random.nextInt(4, 20), Map.of(heat, 1.0)));
    List<Step> finish =
        route == Route.FRESH
            ? List.of()
            : List.of(step("reheat", 5 * random.nextInt(3, 13), Map.of(heat, 1.0)));
    double litres = random.nextInt(3, 15);
    return new Dish(
            name,
            soup(),
            20,
            route,
            make,
            finish,
            Map.of(
                Menu.REFRIGERATOR, litres,
                Menu.FREEZER, litres,
                Menu.FREEZING, litres,
                Menu.WARM, litres),
            route == Route.FROZEN ? Duration.ofHours(random.nextInt(0, 36)) : Duration.ZERO,
            Duration.ofMinutes(5L * random.nextInt(0, 19)),
            Optional.empty())
        .dueAt(
            random.nextInt(3) == 0
                ? Optional.of(SERVING.minus(Duration.ofHours(random.nextInt(1, 60))))
                : Optional.empty());
  }

  /**
   * Small questions put to a search through every moment: where the planner says there is no plan,
   * there is none, and where it says proven, none is fresher.
   */
  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void no_plan_means_that_there_is_none(int seed) {
    SplittableRandom random = new SplittableRandom(1_000L + seed);
    for (int run = 0; run < 10; run++) {
      int ovens = random.nextInt(1, 3);
      List<Dish> dishes = new ArrayList<>();
      List<int[]> jobs = new ArrayList<>();
      for (int i = 0; i < 3; i++) {
        int length = random.nextInt(1, 7);
        int hold = random.nextInt(0, 8);
        jobs.add(new int[] {length, hold});
        dishes.add(
            new Dish(
                "d" + i,
                soup(),
                1,
                Route.FRESH,
                List.of(step("bake", 5 * length, Map.of("oven", 1.0))),
                List.of(),
                Map.of(),
                Duration.ZERO,
                Duration.ofMinutes(5L * hold),
                Optional.empty()));
      }
      Plan plan = plan(menu(Map.of("oven", (double) ovens), dishes));
      int least = least(jobs, ovens);
      assertThat(plan.isProven()).isTrue();
      assertThat(plan.isFound()).isEqualTo(least < Integer.MAX_VALUE);
      if (plan.isFound()) {
        int waits =
            plan.tasks().stream()
                .filter(task -> task.kind() == Kind.MAKE)
                .mapToInt(task -> (int) Duration.between(task.end(), SERVING).toMinutes() / 5)
                .sum();
        assertThat(waits).isEqualTo(least);
      }
    }
  }

  /** Slots that the dishes wait in all, over every choice of ends; the largest int where none. */
  private static int least(List<int[]> jobs, int ovens) {
    int best = Integer.MAX_VALUE;
    for (int a = 0; a <= jobs.get(0)[1]; a++) {
      for (int b = 0; b <= jobs.get(1)[1]; b++) {
        for (int c = 0; c <= jobs.get(2)[1]; c++) {
          int[] ends = {a, b, c};
          if (a + b + c < best && isWithin(jobs, ends, ovens)) {
            best = a + b + c;
          }
        }
      }
    }
    return best;
  }

  private static boolean isWithin(List<int[]> jobs, int[] ends, int ovens) {
    for (int slot = 0; slot < 20; slot++) {
      int held = 0;
      for (int i = 0; i < 3; i++) {
        held += slot >= ends[i] && slot < ends[i] + jobs.get(i)[0] ? 1 : 0;
      }
      if (held > ovens) {
        return false;
      }
    }
    return true;
  }
}
