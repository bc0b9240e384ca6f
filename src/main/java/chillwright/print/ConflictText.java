package chillwright.print;

import chillwright.core.plan.Menu;
import chillwright.core.plan.Plan.Conflict;
import chillwright.core.plan.Plan.Task;
import java.util.stream.Collectors;

/** Says why there is no plan. */
record ConflictText(PlanText text) {
  /** Why there is no plan, and what would help. */
  String says(Conflict conflict) {
    return switch (conflict.why()) {
      case REHEAT_TOO_LONG -> text.say("plan.conflict.reheat", conflict.dish());
      case TOO_LATE_TO_MAKE -> text.say("plan.conflict.too-late", conflict.dish());
      case TOO_LATE_TO_FREEZE ->
          text.say("plan.conflict.too-late-to-freeze", conflict.dish(), by(conflict));
      case TOO_LATE_TO_THAW ->
          text.say("plan.conflict.too-late-to-thaw", conflict.dish(), by(conflict))
              + instead(conflict);
      case KEEPS_TOO_SHORT -> text.say("plan.conflict.keeps", conflict.dish());
      case LOT_KEEPS_TOO_SHORT ->
          text.say("plan.conflict.lot-keeps", conflict.dish(), lastDay(conflict))
              + sameDay(conflict);
      case LOT_PAST_BEST ->
          text.say("plan.conflict.lot-past-best", conflict.dish(), lastDay(conflict));
      case STEP_NEEDS_MORE ->
          text.say(
                  "plan.conflict.step",
                  conflict.dish(),
                  text.thing(conflict.resource()),
                  text.amount(conflict.resource(), conflict.enough()))
              + (conflict.resource().equals(Menu.FREEZING)
                  ? " " + text.say("plan.conflict.step.freezing")
                  : "");
      case SHORT_OF ->
          text.say(
                  "plan.conflict.short",
                  text.thing(conflict.resource()),
                  text.amount(conflict.resource(), conflict.enough()))
              + (conflict.resource().equals(Menu.HANDS)
                  ? " " + text.say("plan.conflict.short.hands")
                  : "")
              + clash(conflict);
      case CLOSED -> closed(conflict);
      case TOO_MUCH -> text.say("plan.conflict.too-much");
    };
  }

  /** Which steps would fall outside the open hours, where that is known. */
  private String closed(Conflict conflict) {
    String steps =
        conflict.clash().stream()
            .map(
                task ->
                    text.say(
                        "plan.conflict.closed.step",
                        task.dish(),
                        text.what(task),
                        text.moment(task.start()),
                        text.moment(task.end())))
            .collect(Collectors.joining("; "));
    return steps.isEmpty()
        ? text.say("plan.conflict.closed")
        : text.say("plan.conflict.closed.of", steps) + " " + text.say("plan.conflict.closed");
  }

  private String by(Conflict conflict) {
    return conflict.by().map(text::moment).orElse("");
  }

  private String clash(Conflict conflict) {
    if (conflict.clash().isEmpty()) {
      return "";
    }
    return " "
        + text.say("plan.conflict.clash", conflict.clash().stream().map(this::when).toArray());
  }

  private String when(Task task) {
    return text.say(
        "plan.conflict.clash.step",
        task.dish(),
        text.what(task),
        text.moment(task.start()),
        text.moment(task.end()));
  }

  private String lastDay(Conflict conflict) {
    return conflict.by().map(by -> text.title(by.atZone(text.zone()).toLocalDate())).orElse("");
  }

  /** What may be done with a lot that has no days for a night of thawing. */
  private String sameDay(Conflict conflict) {
    return conflict.instead().isEmpty()
        ? " " + text.say("plan.instead.anew")
        : " " + text.say("plan.instead.same-day") + instead(conflict);
  }

  /** What may be done instead: what the rules allow, else to make it fresh. */
  private String instead(Conflict conflict) {
    if (conflict.instead().isEmpty()) {
      return " " + text.say("plan.instead.none");
    }
    String ways = conflict.instead().stream().map(text::cited).collect(Collectors.joining(" "));
    return " " + text.say("plan.instead", ways);
  }
}
