package chillwright.web.pages;

import chillwright.core.keeping.LotState;
import chillwright.core.log.LotId;
import chillwright.core.plan.Dish;
import chillwright.service.Plans;
import chillwright.service.Plans.LeftOut;
import chillwright.service.Plans.Planned;
import chillwright.service.SharedLots.Serves;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Has a dish of a plan become a lot, or several, which the plan follows from then on. */
final class PlanBatches {
  static final String ADDRESS = PlansPage.ONE + "/batches";

  private final Desk desk;
  private final PlansPage plans;

  PlanBatches(Desk desk, PlansPage plans) {
    this.desk = desk;
    this.plans = plans;
  }

  /** Begins a lot, follows some that are known already, or follows one no longer. */
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
    if (sent.get().has("remove")) {
      code(sent.get().text("remove"))
          .ifPresent(lot -> desk.kitchen().dishLots().unlink(planned.get().code(), name, lot));
      back(context, planned.get());
    } else if (sent.get().has("lot")) {
      follow(context, visitor, planned.get(), dish.get(), sent.get().text("lot"));
    } else {
      Optional<LotId> lot = begin(context, planned.get(), dish.get(), sent.get());
      if (lot.isEmpty()) {
        plans.unknown(context, visitor);
        return;
      }
      context.redirect("/lots/" + lot.get(), HttpStatus.SEE_OTHER);
    }
  }

  private static void back(Context context, Planned planned) {
    String address = PlansPage.ADDRESS + "/" + planned.code();
    context.redirect(address, HttpStatus.SEE_OTHER);
  }

  /** A first lot of a dish, or another one of what its lots have too few. */
  private Optional<LotId> begin(Context context, Planned planned, Dish dish, Form sent) {
    int portions = planned.missing().getOrDefault(dish.name(), dish.portions());
    List<LotId> seen = codes(sent.text("known")).stream().flatMap(this::known).toList();
    return desk.kitchen()
        .dishLots()
        .begin(planned.code(), dish, portions, seen, sent.once(context.path()));
  }

  /** Has the plan follow lots that are known already, as many as are typed; all or none. */
  private void follow(Context context, Visitor visitor, Planned planned, Dish dish, String typed) {
    List<String> codes = codes(typed);
    Optional<String> unknown =
        codes.stream().filter(code -> known(code).findFirst().isEmpty()).findFirst();
    if (codes.isEmpty() || unknown.isPresent()) {
      String says = visitor.say("plans.batch.unknown", unknown.orElse(typed));
      plans.refuse(context, visitor, planned, says, dish, typed);
      return;
    }
    List<LotId> lots = codes.stream().flatMap(this::known).toList();
    List<LeftOut> unfit =
        lots.stream()
            .flatMap(lot -> desk.kitchen().dishLots().unfit(dish.name(), lot).stream())
            .toList();
    if (!unfit.isEmpty()) {
      String says = visitor.say("plans.batch.unfit", unfit.get(0).lot());
      List<LeftOut> own = unfit.stream().map(this::ofItsFood).toList();
      plans.refuse(context, visitor, planned.without(own), says, dish, typed);
      return;
    }
    Optional<Serves> serves = desk.kitchen().dishLots().shared().inPlan(planned, dish, lots);
    if (serves.isPresent()) {
      plans.refuse(context, visitor, planned, says(serves.get(), visitor), dish, typed);
      return;
    }
    if (desk.kitchen().dishLots().link(planned.code(), dish.name(), lots)) {
      back(context, planned);
    } else {
      plans.unknown(context, visitor);
    }
  }

  /** Told of the food that the lot is, which need not be the dish that it was named for. */
  private LeftOut ofItsFood(LeftOut unfit) {
    String food = desk.kitchen().lots().state(unfit.lot()).map(LotState::food).orElse(unfit.dish());
    return new LeftOut(unfit.lot(), food, unfit.isOut());
  }

  private static String says(Serves other, Visitor visitor) {
    return other.lot().equals(other.asked())
        ? visitor.say("plans.batch.serves", other.asked(), other.dish())
        : visitor.say("plans.batch.serves.part", other.asked(), other.dish(), other.lot());
  }

  /** As typed from several labels, between commas or blanks. */
  private static List<String> codes(String typed) {
    return Stream.of(typed.split("[\\s,;]+")).filter(code -> !code.isEmpty()).distinct().toList();
  }

  private static Optional<LotId> code(String typed) {
    return Plans.isCode(typed) ? Optional.of(new LotId(typed)) : Optional.empty();
  }

  private Stream<LotId> known(String typed) {
    return desk.kitchen().lots().meant(typed).stream();
  }
}
