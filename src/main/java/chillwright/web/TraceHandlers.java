package chillwright.web;

import chillwright.core.log.LotId;
import chillwright.service.Kitchen;
import chillwright.service.Tracing;
import chillwright.service.Tracing.Trace;
import chillwright.web.answers.Answers;
import chillwright.web.answers.Answers.Fault;
import chillwright.web.answers.TraceAnswers;
import io.javalin.http.Context;
import java.util.Optional;

/** Who got some of a food or of a lot. */
final class TraceHandlers {
  private static final String FOOD = "food";
  private static final String LOT = "lot";

  private final Kitchen kitchen;

  TraceHandlers(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  void trace(Context context) {
    Accept.best(context, Accept.JSON);
    Query query = Query.of(context, FOOD, LOT);
    Optional<String> food = query.line(FOOD);
    Optional<String> lot = query.line(LOT);
    query.requireFaultless();
    if (food.isPresent() == lot.isPresent()) {
      throw new RequestFault(
          RequestFault.WRONG,
          new Fault(
              "food-or-lot",
              new Answers.InParameter(food.isPresent() ? LOT : FOOD),
              "",
              "one of food and lot",
              "Give either a food or a lot to be traced."));
    }
    Trace found = food.map(kitchen.tracing()::food).orElseGet(() -> ofLot(lot.orElseThrow()));
    Answer.json(context, new TraceAnswers(kitchen.zone(), kitchen.now()).answer(found));
  }

  private Trace ofLot(String code) {
    Optional<Trace> found =
        LotId.isCode(code)
            ? kitchen.tracing().lot(new LotId(code), Tracing.MOST_LOTS)
            : Optional.empty();
    return found.orElseThrow(
        () -> RequestFault.unknown("lot", LOT, Shown.text(code), "the code of a lot"));
  }
}
