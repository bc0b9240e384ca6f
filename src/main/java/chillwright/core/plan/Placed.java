package chillwright.core.plan;

import chillwright.core.plan.Job.Use;
import java.util.ArrayList;
import java.util.List;

/**
 * Where the parts of one dish begin.
 *
 * @param freeze when it goes into the freezer, and {@code takeOut} when it comes out; both equal to
 *     {@code finish} for what is never frozen
 */
record Placed(Job job, int make, int freeze, int takeOut, int finish) {
  /** How long before it is served it is made and finished, in slots: the less, the fresher. */
  int wait(int serving) {
    return (serving - make) + (serving - finish - job.finishLength());
  }

  int made() {
    return make + job.makeLength();
  }

  int finished() {
    return finish + job.finishLength();
  }

  /** All that it holds, in slots of the grid. */
  List<Use> uses(int serving) {
    List<Use> uses = new ArrayList<>();
    job.make().forEach(use -> uses.add(moved(use, make)));
    job.finish().forEach(use -> uses.add(moved(use, finish)));
    if (job.isFrozen()) {
      hold(uses, Menu.REFRIGERATOR, made(), freeze);
      hold(uses, Menu.FREEZER, freeze, takeOut);
      hold(uses, Menu.FREEZING, freeze, Math.min(freeze + Job.FREEZES, takeOut));
      hold(uses, Menu.REFRIGERATOR, takeOut, finish);
      uses.add(new Use(Menu.HANDS, freeze, freeze + 1, 10));
      uses.add(new Use(Menu.HANDS, takeOut, takeOut + 1, 10));
    } else if (!job.isFresh()) {
      hold(uses, Menu.REFRIGERATOR, made(), finish);
    }
    hold(uses, Menu.WARM, finished(), serving);
    return uses;
  }

  private void hold(List<Use> uses, String resource, int from, int to) {
    int amount = job.keeps(resource);
    if (amount > 0 && to > from) {
      uses.add(new Use(resource, from, to, amount));
    }
  }

  private static Use moved(Use use, int by) {
    return new Use(use.resource(), use.from() + by, use.to() + by, use.amount());
  }
}
