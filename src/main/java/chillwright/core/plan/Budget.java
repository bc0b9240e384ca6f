package chillwright.core.plan;

/**
 * How much searching one plan may take in all, shared by its searches. It counts steps and not
 * time, so that a plan comes out the same on a slow machine and on a busy one.
 */
final class Budget {
  /** Steps of the solver, each counted once for every dish: about as long as it takes. */
  private static final long STEPS = 80_000;

  /** Moments that the lists try. */
  private static final int TRIES = 250_000;

  private final int dishes;
  private long steps = STEPS;
  private int tries = TRIES;

  /**
   * What is there for a menu.
   *
   * @param dishes how many it has; a step is dearer the more there are
   */
  Budget(int dishes) {
    this.dishes = Math.max(1, dishes);
  }

  /** Steps that one search of the solver may take: one share of so many of what is left. */
  long steps(int shares) {
    return steps / dishes / shares;
  }

  /** Counts the steps that the solver took. */
  void take(long taken) {
    steps = Math.max(0, steps - taken * dishes);
  }

  /** Moments that the orders of one list may try together: half of what is left. */
  int tries() {
    return tries / 2;
  }

  /** Counts the moments that a list tried. */
  void tried(int taken) {
    tries = Math.max(0, tries - taken);
  }
}
