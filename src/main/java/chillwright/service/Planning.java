package chillwright.service;

import chillwright.core.plan.Menu;
import chillwright.core.plan.Plan;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;

/**
 * Works out plans, few at once, so that the pages of a kitchen stay quick while somebody plans; a
 * menu that was worked out a short while ago, with what was known then, keeps its plan.
 */
final class Planning {
  /** Plans worked out at once: a kitchen's machine has few cores, and the log needs one. */
  static final int AT_ONCE = 2;

  /** How many may wait for their turn; others are turned away at once. */
  static final int WAITING = 6;

  /** Longer than the longest plan takes, so that who waits is mostly answered. */
  private static final long PATIENCE_SECONDS = 6;

  private static final int KEPT = 100;

  private final Function<Menu, Plan> planner;
  private final Semaphore turns = new Semaphore(AT_ONCE, true);
  private final Map<Menu, Plan> made =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Menu, Plan> eldest) {
          return size() > KEPT;
        }
      };

  /**
   * By the rules of one kitchen.
   *
   * @param planner gives the same plan for the same menu
   */
  Planning(Function<Menu, Plan> planner) {
    this.planner = planner;
  }

  /**
   * The plan of a menu, with how far its dishes have come.
   *
   * @throws Busy where too many are being worked out
   */
  Plan plan(Menu menu) {
    return kept(menu).orElseGet(() -> inTurn(menu));
  }

  private Optional<Plan> kept(Menu menu) {
    synchronized (made) {
      return Optional.ofNullable(made.get(menu));
    }
  }

  private Plan inTurn(Menu menu) {
    if (waiting() >= WAITING || !getsTurn()) {
      throw new Busy();
    }
    try {
      // Who waited may have waited for the same plan.
      return kept(menu).orElseGet(() -> make(menu));
    } finally {
      turns.release();
    }
  }

  /** How many wait for their turn. */
  int waiting() {
    return turns.getQueueLength();
  }

  private boolean getsTurn() {
    try {
      return turns.tryAcquire(PATIENCE_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException stopping) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  private Plan make(Menu menu) {
    Plan plan = planner.apply(menu);
    synchronized (made) {
      made.put(menu, plan);
    }
    return plan;
  }
}
