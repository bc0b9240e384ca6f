package chillwright.core.plan;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.log.Category;
import chillwright.core.plan.Dish.Route;
import chillwright.rulebook.BrokenRules;
import chillwright.rulebook.RuleBook;
import chillwright.rulebook.RuleLibrary;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** As many dishes as a plan takes, with enough for them and with too little of one thing. */
class ManyDishesTest {
  private static final ZoneId ZONE = ZoneId.of("America/Denver");
  private static final Instant SERVING = Instant.parse("2026-12-13T01:00:00Z");

  /** Our own bar: nobody waits longer for a page. */
  private static final Duration LONGEST = Duration.ofSeconds(5);

  private static Dish dish(int number, Category soup) {
    Map<String, Double> one = Map.of("hob", 1.0, "hands", 1.0);
    return new Dish(
        "dish " + number,
        soup,
        40,
        Route.FROZEN,
        List.of(new Step("cook", Duration.ofMinutes(60 + 5 * (number % 7)), one)),
        List.of(new Step("reheat", Duration.ofMinutes(30 + number % 30), Map.of("hob", 1.0))),
        Map.of(
            Menu.REFRIGERATOR, 4.0,
            Menu.FREEZER, 4.0,
            Menu.FREEZING, 4.0,
            Menu.WARM, 3.0),
        Duration.ofHours(12 + number % 24),
        Duration.ofMinutes(90),
        Optional.empty());
  }

  private static Menu menu(RuleLibrary library, int days, String scarce, double amount) {
    Category soup = library.keepingList().category("soup_or_stew").orElseThrow();
    Map<String, Double> has = new HashMap<>();
    has.put("hob", 16.0);
    has.put("hands", 4.0);
    has.put(Menu.REFRIGERATOR, 200.0);
    has.put(Menu.FREEZER, 200.0);
    has.put(Menu.FREEZING, 30.0);
    has.put(Menu.WARM, 160.0);
    has.put(scarce, amount);
    return new Menu(
        SERVING,
        ZONE,
        SERVING.minus(Duration.ofDays(days)),
        has,
        List.of(
            new Menu.Hours(
                EnumSet.allOf(DayOfWeek.class), LocalTime.of(7, 0), LocalTime.of(20, 0))),
        IntStream.range(0, 40).mapToObj(number -> dish(number, soup)).toList());
  }

  @ParameterizedTest
  @CsvSource({"14, hob, 16", "14, freezing, 8", "390, hands, 1", "14, warm, 60"})
  void forty_frozen_dishes_are_answered_in_time(int days, String scarce, double amount)
      throws BrokenRules {
    RuleLibrary library = RuleLibrary.load(Optional.empty());
    RuleBook book = library.ruleBook("us-food-code-2022").orElseThrow();
    Menu menu = menu(library, days, scarce, amount);
    // The time of this thread alone, since what else runs here is not the planner's doing.
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    long start = threads.getCurrentThreadCpuTime();
    Plan plan = Planner.plan(menu, book.on(LocalDate.of(2026, 12, 12)));
    Duration took = Duration.ofNanos(threads.getCurrentThreadCpuTime() - start);
    if (plan.isFound()) {
      assertThat(PlanCheck.faults(menu, plan, book)).isEmpty();
    }
    assertThat(took).isLessThan(LONGEST);
  }
}
