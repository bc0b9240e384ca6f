package chillwright.service;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import chillwright.core.plan.Menu;
import chillwright.core.plan.Plan;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

/** Our own bounds: so many plans at once, so many that wait, and none worked out twice. */
class PlanningTest {
  private static final Instant SERVING = Instant.parse("2026-03-20T18:00:00Z");
  private static final Plan NONE = new Plan(false, true, List.of(), List.of(), List.of());

  private static Menu menu(double ovens) {
    Instant from = SERVING.minus(Duration.ofDays(7));
    return new Menu(SERVING, ZoneOffset.UTC, from, Map.of("oven", ovens), List.of(), List.of());
  }

  @Test
  void a_menu_is_worked_out_once() {
    AtomicInteger made = new AtomicInteger();
    Planning planning =
        new Planning(
            menu -> {
              made.incrementAndGet();
              return NONE;
            });
    assertThat(planning.plan(menu(1))).isSameAs(planning.plan(menu(1)));
    planning.plan(menu(2));
    assertThat(made).hasValue(2);
  }

  @Test
  void no_more_are_worked_out_at_once_and_none_waits_without_end() throws Exception {
    CountDownLatch mayEnd = new CountDownLatch(1);
    CountDownLatch begun = new CountDownLatch(Planning.AT_ONCE);
    AtomicInteger running = new AtomicInteger();
    AtomicInteger most = new AtomicInteger();
    Planning planning =
        new Planning(
            menu -> {
              most.accumulateAndGet(running.incrementAndGet(), Math::max);
              begun.countDown();
              await(mayEnd);
              running.decrementAndGet();
              return NONE;
            });
    int taken = Planning.AT_ONCE + Planning.WAITING;
    ExecutorService cooks = Executors.newFixedThreadPool(taken);
    try {
      List<Future<Plan>> plans = new ArrayList<>();
      for (int i = 0; i < taken; i++) {
        double ovens = i + 1;
        plans.add(cooks.submit(() -> planning.plan(menu(ovens))));
      }
      assertThat(begun.await(5, TimeUnit.SECONDS)).isTrue();
      while (planning.waiting() < Planning.WAITING) {
        Thread.sleep(5);
      }
      assertThatThrownBy(() -> planning.plan(menu(99))).isInstanceOf(Busy.class);
      mayEnd.countDown();
      for (Future<Plan> plan : plans) {
        assertThat(plan.get(5, TimeUnit.SECONDS)).isSameAs(NONE);
      }
    } finally {
      mayEnd.countDown();
      cooks.shutdownNow();
    }
    assertThat(most).hasValue(Planning.AT_ONCE);
    assertThat(planning.plan(menu(99))).isSameAs(NONE);
  }

  private static void await(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }
}
