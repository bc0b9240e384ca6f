package chillwright.web.pages;

import chillwright.core.plan.Plan.Task;
import chillwright.core.plan.Progress;
import chillwright.print.PlanText;
import chillwright.service.Busy;
import chillwright.service.Plans;
import chillwright.service.Plans.Planned;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What the plans of coming events ask for within a day, for the first page. */
final class PlanSoon {
  private static final Duration SOON = Duration.ofHours(24);

  /** Of one plan; its page has the others. */
  private static final int SHOWN = 6;

  private final Desk desk;
  private final Visitor visitor;

  PlanSoon(Desk desk, Visitor visitor) {
    this.desk = desk;
    this.visitor = visitor;
  }

  /** The nearest event first; one that asks for nothing soon is left out. */
  List<NowView.Event> events() {
    List<NowView.Event> events = new ArrayList<>();
    for (Plans.Kept kept : desk.kitchen().plans().keptToCome()) {
      List<String> says = says(kept.code());
      if (!says.isEmpty()) {
        String name = PlanTree.of(kept.input(), desk.zone()).name();
        events.add(new NowView.Event(kept.code(), name.isEmpty() ? kept.code() : name, says));
      }
    }
    return events;
  }

  /** The first page never waits in vain: a plan whose turn it is not says so. */
  private List<String> says(String code) {
    try {
      return desk.kitchen().plans().plan(code).map(this::says).orElse(List.of());
    } catch (Busy busy) {
      return List.of(visitor.say("plans.busy"));
    }
  }

  private List<String> says(Planned planned) {
    PlanText text = new PlanText(planned.menu(), visitor.language());
    if (planned.menu().dishes().isEmpty()) {
      return List.of();
    }
    if (!planned.plan().isFound()) {
      return List.of(text.verdict(planned.plan()));
    }
    Instant end = desk.kitchen().now().plus(SOON);
    return planned.plan().tasks().stream()
        .filter(task -> task.start().isBefore(end) && isToDo(task, planned))
        .limit(SHOWN)
        .map(task -> desk.clock(task.start(), visitor) + " " + task.dish() + ": " + text.what(task))
        .toList();
  }

  /**
   * Whether hands are needed for it: food that cools or waits needs none, and what is done none.
   */
  private static boolean isToDo(Task task, Planned planned) {
    Optional<Progress> done = Optional.ofNullable(planned.menu().progress().get(task.dish()));
    return switch (task.kind()) {
      case MAKE, FINISH -> true;
      case FREEZE -> done.flatMap(Progress::frozen).isEmpty();
      case TAKE_OUT -> done.flatMap(Progress::takenOut).isEmpty();
      case COOL, AIR_COOL, CHILL, HOLD -> false;
    };
  }
}
