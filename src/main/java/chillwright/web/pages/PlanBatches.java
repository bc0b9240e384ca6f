package chillwright.web.pages;

import chillwright.core.log.LotId;
import chillwright.core.plan.Dish;
import chillwright.service.Plans;
import chillwright.service.Plans.LeftOut;
import chillwright.service.Plans.Planned;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Optional;

/** Has a dish of a plan become a lot, which the plan follows from then on. */
final class PlanBatches {
  static final String ADDRESS = PlansPage.ONE + "/batches";

  private final Desk desk;
  private final PlansPage plans;

  PlanBatches(Desk desk, PlansPage plans) {
    this.desk = desk;
    this.plans = plans;
  }

  /** Begins the lot, or takes one that is known already, and leads to its page. */
  void begin(Context context) {
    Optional<Form> sent = desk.form(context);
    if (sent.isEmpty()) {
      return;
    }
    Visitor visitor = desk.visitor(context);
    Optional<Planned> planned = plans.plan(context, visitor);
    if (planned.isEmpty()) {
      return;
    }
    String name = sent.get().text("dish");
    Optional<Dish> dish =
        planned.get().menu().dishes().stream().filter(of -> of.name().equals(name)).findFirst();
    if (dish.isEmpty()) {
      desk.fault(context, visitor, HttpStatus.NOT_FOUND, "plans.dish.unknown", name);
      return;
    }
    String known = sent.get().text("lot");
    List<LeftOut> unfit = unfit(name, known);
    if (!unfit.isEmpty()) {
      plans.refuse(context, visitor, planned.get().without(unfit));
      return;
    }
    Optional<LotId> lot =
        known.isEmpty()
            ? Optional.of(
                desk.kitchen()
                    .plans()
                    .begin(planned.get().code(), dish.get(), sent.get().once(context.path())))
            : linked(planned.get(), name, known);
    if (lot.isEmpty()) {
      desk.fault(context, visitor, HttpStatus.NOT_FOUND, "fault.no-lot", known);
      return;
    }
    context.redirect("/lots/" + lot.get(), HttpStatus.SEE_OTHER);
  }

  private List<LeftOut> unfit(String dish, String code) {
    return Plans.isCode(code) ? desk.kitchen().plans().unfit(dish, new LotId(code)) : List.of();
  }

  private Optional<LotId> linked(Planned planned, String dish, String code) {
    Optional<LotId> lot =
        Plans.isCode(code)
            ? desk.kitchen().lots().state(new LotId(code)).map(state -> state.lot())
            : Optional.empty();
    lot.ifPresent(found -> desk.kitchen().plans().link(planned.code(), dish, found));
    return lot;
  }
}
