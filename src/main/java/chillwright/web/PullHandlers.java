package chillwright.web;

import chillwright.service.Kitchen;
import chillwright.service.Pulls;
import chillwright.web.answers.PullAnswers;
import io.javalin.http.Context;
import java.util.Optional;

/** What to take out of the freezer in the next days. */
final class PullHandlers {
  private static final String DAYS = "days";

  private final Kitchen kitchen;

  PullHandlers(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  void list(Context context) {
    Accept.best(context, Accept.JSON);
    Query query = Query.of(context, DAYS);
    String allowed = "a whole number from 1 to " + Pulls.MOST_DAYS;
    Optional<Integer> days = query.read(DAYS, "bad-days", allowed, Pulls::days);
    query.requireFaultless();
    int asked = days.orElse(Pulls.USUAL_DAYS);
    Answer.json(
        context,
        new PullAnswers(kitchen.judge().book(), kitchen.zone(), kitchen.now())
            .answer(kitchen.pulls().list(asked), asked));
  }
}
