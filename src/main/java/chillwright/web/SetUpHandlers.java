package chillwright.web;

import chillwright.core.kitchen.KnownPlace;
import chillwright.core.rules.RuleSet;
import chillwright.service.CardKind;
import chillwright.service.Kitchen;
import chillwright.service.Page;
import chillwright.service.SetUp;
import chillwright.web.answers.SetUpAnswers;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Map;

/** What the kitchen says of itself: its foods, its places, its people. */
final class SetUpHandlers {
  private final SetUp setUp;

  SetUpHandlers(Kitchen kitchen) {
    this.setUp = kitchen.setUp();
  }

  void foods(Context context) {
    list(context, "foods", setUp.foods().stream().map(SetUpAnswers::food).toList());
  }

  void places(Context context) {
    RuleSet rules = setUp.rulesOfToday();
    list(
        context,
        "places",
        setUp.places().stream().map(place -> SetUpAnswers.place(place, rules)).toList());
  }

  void people(Context context) {
    list(context, "people", setUp.people().stream().map(SetUpAnswers::person).toList());
  }

  private static <T> void list(Context context, String name, List<T> all) {
    Accept.best(context, Accept.JSON);
    Page.Wanted page = Query.of(context, Query.LIMIT, Query.CURSOR).page(LotHandlers.USUAL_PAGE);
    Answer.json(context, Pages.listing(all, name, page));
  }

  void food(Context context) {
    Map<String, String> cells =
        cells(
            context,
            List.of(
                "category",
                "container",
                "place",
                "reheating",
                "thawing",
                "otherAllergens",
                "ingredients"),
            List.of("portions", "roomDays"),
            List.of("allergens"));
    cells.put("name", context.pathParam("name"));
    Answer.json(context, SetUpAnswers.food(setUp.food(cells)));
  }

  void place(Context context) {
    Map<String, String> cells =
        cells(context, List.of("kind", "ownLimit"), List.of("rounds"), List.of());
    cells.put("name", context.pathParam("name"));
    KnownPlace place = setUp.place(cells);
    Answer.json(context, SetUpAnswers.place(place, setUp.rulesOfToday()));
  }

  void person(Context context) {
    Map<String, String> cells = cells(context, List.of("name"), List.of(), List.of());
    cells.put("initials", context.pathParam("initials"));
    Answer.json(context, SetUpAnswers.person(setUp.person(cells)));
  }

  void statement(Context context) {
    Accept.best(context, Accept.JSON);
    Query.none(context);
    Answer.json(context, new SetUpAnswers.Statement(setUp.labelStatement()));
  }

  void putStatement(Context context) {
    Map<String, String> cells = cells(context, List.of("statement"), List.of(), List.of());
    Answer.json(context, new SetUpAnswers.Statement(setUp.labelStatement(cells)));
  }

  /** Offers something no more; the parameter of the path names it. */
  Handler retire(CardKind kind, String what, String parameter) {
    return context -> {
      Accept.best(context, Accept.JSON);
      Query.none(context);
      String name = context.pathParam(parameter);
      if (!setUp.retire(kind, name)) {
        throw RequestFault.unknown(what, parameter, Shown.text(name), "one that is in use");
      }
      context.status(HttpStatus.NO_CONTENT);
    };
  }

  private static Map<String, String> cells(
      Context context, List<String> texts, List<String> counts, List<String> lists) {
    Accept.best(context, Accept.JSON);
    Query.none(context);
    return Cards.of(Body.of(context), texts, counts, lists);
  }
}
