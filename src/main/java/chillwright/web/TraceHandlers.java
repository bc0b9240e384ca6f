package chillwright.web;

import chillwright.core.log.LotId;
import chillwright.service.AllergenAsked;
import chillwright.service.Kitchen;
import chillwright.service.Tracing;
import chillwright.service.Tracing.Trace;
import chillwright.web.answers.Answers;
import chillwright.web.answers.Answers.Fault;
import chillwright.web.answers.TraceAnswers;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Who got some of a food or of a lot, what somebody got, and what bears an allergen. */
final class TraceHandlers {
  private static final String FOOD = "food";
  private static final String LOT = "lot";
  private static final String TO = "to";
  private static final String ALLERGEN = "allergen";
  private static final List<String> ALL = List.of(FOOD, LOT, TO, ALLERGEN);

  private final Kitchen kitchen;

  TraceHandlers(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  void trace(Context context) {
    Accept.best(context, Accept.JSON);
    Query query = Query.of(context, ALL.toArray(String[]::new));
    Map<String, Function<String, TraceAnswers.Answer>> questions =
        Map.of(
            FOOD,
            text -> answers().answer(kitchen.tracing().food(text)),
            LOT,
            text -> answers().answer(ofLot(text)),
            TO,
            text -> answers().answer(kitchen.tracing().recipient(text)),
            ALLERGEN,
            text -> answers().answer(kitchen.tracing().allergen(AllergenAsked.of(text))));
    List<String> given = ALL.stream().filter(name -> query.line(name).isPresent()).toList();
    query.requireFaultless();
    if (given.size() != 1) {
      throw new RequestFault(
          RequestFault.WRONG,
          new Fault(
              "one-to-trace",
              new Answers.InParameter(given.isEmpty() ? FOOD : given.get(1)),
              "",
              "one of food, lot, to and allergen",
              "Give one thing to be traced: a food, a lot, who got portions, or an allergen."));
    }
    String name = given.get(0);
    Answer.json(context, questions.get(name).apply(query.line(name).orElseThrow()));
  }

  private TraceAnswers answers() {
    return new TraceAnswers(kitchen.zone(), kitchen.now());
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
