package chillwright.web;

import chillwright.service.Day;
import chillwright.service.Kitchen;
import chillwright.web.answers.DayAnswers;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.List;

/** Days: their rounds, who takes over, and the manager's sign. */
final class DayHandlers {
  private final Kitchen kitchen;

  DayHandlers(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  void day(Context context) {
    Accept.best(context, Accept.JSON);
    Query.none(context);
    Answer.json(context, shown(kitchen.days().day(date(context))));
  }

  void handOver(Context context) {
    Accept.best(context, Accept.JSON);
    Query.none(context);
    LocalDate date = date(context);
    Body body = Body.of(context);
    Day day =
        kitchen
            .days()
            .handOver(
                date,
                Cards.of(body, List.of("by", "note"), List.of(), List.of("lots")),
                OnceKeys.of(context, body));
    Answer.created(context, shown(day));
  }

  void sign(Context context) {
    Accept.best(context, Accept.JSON);
    Query.none(context);
    LocalDate date = date(context);
    Body body = Body.of(context);
    Day day =
        kitchen
            .days()
            .sign(
                date,
                Cards.of(body, List.of("word", "by", "note"), List.of(), List.of()),
                OnceKeys.of(context, body));
    Answer.created(context, shown(day));
  }

  private DayAnswers.Day shown(Day day) {
    return new DayAnswers(kitchen.judge().book(), kitchen.zone(), kitchen.now()).day(day);
  }

  private static LocalDate date(Context context) {
    String given = context.pathParam("date");
    return Moments.date(given)
        .orElseThrow(
            () -> RequestFault.unknown("day", "date", Shown.text(given), Moments.DATE_ALLOWED));
  }
}
