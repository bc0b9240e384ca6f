package chillwright.web;

import chillwright.rulebook.RuleBook;
import chillwright.service.Kitchen;
import chillwright.service.Page;
import chillwright.service.Settings;
import chillwright.web.answers.Answers;
import chillwright.web.answers.RuleAnswers;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The kitchen itself and the rules it may be judged by. */
final class KitchenHandlers {
  private final Kitchen kitchen;

  KitchenHandlers(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  void kitchen(Context context) {
    Accept.best(context, Accept.JSON);
    Query.none(context);
    answer(context);
  }

  /** Gives the kitchen its name. */
  void name(Context context) {
    Accept.best(context, Accept.JSON);
    Query.none(context);
    kitchen.setUp().name(Cards.of(Body.of(context), List.of("name"), List.of(), List.of()));
    answer(context);
  }

  /** Sets what the code on labels leads to. */
  void address(Context context) {
    Accept.best(context, Accept.JSON);
    Query.none(context);
    kitchen.setUp().address(Cards.of(Body.of(context), List.of("address"), List.of(), List.of()));
    answer(context);
  }

  private void answer(Context context) {
    Settings settings = kitchen.settings();
    Answer.json(
        context,
        new Answers.Kitchen(
            settings.name(),
            settings.zone().getId(),
            settings.scale().name().toLowerCase(Locale.ROOT),
            settings.address(),
            RuleAnswers.line(settings.ruleBook(), true),
            settings.olderVersion(),
            OffsetDateTime.ofInstant(kitchen.now(), settings.zone())));
  }

  /** Asks the database something small: an answer means that it can be read. */
  void health(Context context) {
    Accept.best(context, Accept.JSON);
    Query.none(context);
    kitchen.settings();
    Answer.json(context, new Answers.Health("ok"));
  }

  void openApi(Context context) {
    Accept.best(context, Accept.JSON);
    Query.none(context);
    context.contentType(Accept.JSON).result(OpenApi.json());
  }

  void ruleSets(Context context) {
    Accept.best(context, Accept.JSON);
    Page.Wanted page = Query.of(context, Query.LIMIT, Query.CURSOR).page(LotHandlers.USUAL_PAGE);
    List<Answers.RuleSetLine> all =
        kitchen.library().ruleBooks().stream()
            .map(book -> RuleAnswers.line(book, isInUse(book)))
            .toList();
    Answer.json(context, Pages.listing(all, "sets", page));
  }

  private boolean isInUse(RuleBook book) {
    return book.id().equals(kitchen.judge().book().id());
  }

  void ruleSet(Context context) {
    Accept.best(context, Accept.JSON);
    Query.none(context);
    String id = context.pathParam("id");
    RuleBook book =
        kitchen
            .library()
            .ruleBook(id)
            .orElseThrow(
                () ->
                    RequestFault.unknown(
                        "rule-set", "id", Shown.text(id), "an id of /api/v1/rule-sets"));
    Optional<RuleBook> base = book.extendsId().flatMap(kitchen.library()::ruleBook);
    LocalDate today = LocalDate.ofInstant(kitchen.now(), kitchen.zone());
    Answer.json(context, RuleAnswers.detail(book, base, isInUse(book), today));
  }
}
