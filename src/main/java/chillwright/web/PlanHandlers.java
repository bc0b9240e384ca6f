package chillwright.web;

import chillwright.core.log.LotId;
import chillwright.core.plan.Dish;
import chillwright.print.DishLotsText;
import chillwright.print.PlanText;
import chillwright.service.Kitchen;
import chillwright.service.Page;
import chillwright.service.Plans;
import chillwright.service.Plans.LeftOut;
import chillwright.service.Plans.Planned;
import chillwright.service.SharedLots.Shared;
import chillwright.web.answers.Answers;
import chillwright.web.answers.Answers.Fault;
import chillwright.web.answers.PlanAnswers;
import chillwright.web.answers.PlanAnswers.LeftOutLine;
import chillwright.web.answers.PlanAnswers.SharedLine;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.stream.Collectors;

/** Make-ahead plans: what is to be planned is kept, the plan is made afresh at every look. */
final class PlanHandlers {
  private final Kitchen kitchen;

  PlanHandlers(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  void list(Context context) {
    Accept.best(context, Accept.JSON);
    Page.Wanted page = Query.of(context, Query.LIMIT, Query.CURSOR).page(LotHandlers.USUAL_PAGE);
    Answer.json(
        context,
        Pages.listing(
            kitchen.plans().all().stream()
                .map(said -> PlanAnswers.kept(said.code(), said.saidAt(), kitchen.zone()))
                .toList(),
            "plans",
            page));
  }

  void one(Context context) {
    Accept.best(context, Accept.JSON);
    Query.none(context);
    String code = code(context);
    answer(context, kitchen.plans().plan(code).orElseThrow(() -> unknown(code)));
  }

  /** Keeps it in place of what was kept under that code. */
  void save(Context context) {
    Accept.best(context, Accept.JSON);
    Query.none(context);
    String code = context.pathParam("plan");
    if (!Plans.isCode(code)) {
      throw new RequestFault(
          RequestFault.WRONG,
          new Fault(
              "wrong-code",
              new Answers.InParameter("plan"),
              Shown.text(code),
              "letters, digits, '.', '_' and '-', at most 64",
              "This is no code for a plan. Write one such as supper-12."));
    }
    answer(context, kitchen.plans().save(code, Body.of(context).json().toString()));
  }

  void delete(Context context) {
    Query.none(context);
    String code = code(context);
    if (!kitchen.plans().delete(code)) {
      throw unknown(code);
    }
    context.status(HttpStatus.NO_CONTENT);
  }

  private void answer(Context context, Planned planned) {
    Answer.json(
        context,
        new PlanAnswers(kitchen.judge().book())
            .answer(
                planned.menu(),
                planned.plan(),
                planned.moved(),
                planned.missing(),
                planned.begun(),
                planned.menu().dishes().stream()
                    .collect(Collectors.toMap(Dish::name, dish -> codes(planned, dish))),
                planned.leftOut().stream().map(PlanHandlers::leftOut).toList(),
                kitchen.dishLots().shared().withOthers(planned).stream()
                    .map(lot -> shared(lot, new PlanText(planned.menu())))
                    .toList()));
  }

  private static List<String> codes(Planned planned, Dish dish) {
    return planned.lots(dish.name()).stream().map(LotId::text).toList();
  }

  private static LeftOutLine leftOut(LeftOut lot) {
    String says =
        lot.isOut()
            ? "This lot is out of compliance, so the plan does not count on it."
            : "It is not shown that this lot was cooled or reheated in time, so the plan does not"
                + " count on it.";
    String verdict = lot.isOut() ? "out" : "not-shown";
    return new LeftOutLine(lot.lot().text(), lot.dish(), verdict, says);
  }

  private static SharedLine shared(Shared lot, PlanText text) {
    String says = new DishLotsText(text).shared(lot.lot(), lot.other().title());
    return new SharedLine(lot.lot().text(), lot.dish(), lot.other().code(), says);
  }

  private static String code(Context context) {
    String code = context.pathParam("plan");
    if (!Plans.isCode(code)) {
      throw unknown(Shown.text(code));
    }
    return code;
  }

  private static RequestFault unknown(String code) {
    return RequestFault.unknown("plan", "plan", code, "the code of a plan of this kitchen");
  }
}
