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
  int waits() {
    return (job.due() - make) + (job.due() - finish - job.finishLength());
  }

  int made() {
    return make + job.makeLength();
  }

  int finished() {
    return finish + job.finishLength();
  }

  /** All that it holds, in slots of the grid. */
  List<Use> uses() {
    List<Use> uses = new ArrayList<>();
    job.make().forEach(use -> uses.add(moved(use, make)));
    job.finish().forEach(use -> uses.add(moved(use, finish)));
    if (job.isFrozen()) {
      hold(uses, Menu.REFRIGERATOR, made(), freeze);
      hold(uses, Menu.FREEZER, freeze, takeOut);
      if (!job.isInFreezer()) {
        hold(uses, Menu.FREEZING, freeze, Math.min(freeze + job.freezes(), takeOut));
        uses.add(new Use(Menu.HANDS, freeze, freeze + 1, 10));
      }
      hold(uses, Menu.REFRIGERATOR, takeOut, finish);
      if (!job.isOut()) {
        uses.add(new Use(Menu.HANDS, takeOut, takeOut + 1, 10));
      }
    } else if (!job.isFresh()) {
      hold(uses, Menu.REFRIGERATOR, made(), finish);
    }
    hold(uses, Menu.WARM, finished(), job.due());
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
