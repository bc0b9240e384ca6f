package chillwright.web;

import chillwright.core.kitchen.ProbeCheck;
import chillwright.service.Kitchen;
import chillwright.service.Page;
import chillwright.service.Probes.Checked;
import chillwright.web.answers.ProbeAnswers;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Thermometers and their checks. */
final class ProbeHandlers {
  private final Kitchen kitchen;

  ProbeHandlers(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  private ProbeAnswers answers() {
    return new ProbeAnswers(kitchen.zone());
  }

  void list(Context context) {
    Accept.best(context, Accept.JSON);
    Page.Wanted page = Query.of(context, Query.LIMIT, Query.CURSOR).page(LotHandlers.USUAL_PAGE);
    List<ProbeAnswers.Probe> all = kitchen.probes().all().stream().map(answers()::probe).toList();
    Answer.json(context, Pages.listing(all, "probes", page));
  }

  void say(Context context) {
    Accept.best(context, Accept.JSON);
    Query.none(context);
    Map<String, String> cells =
        Cards.of(Body.of(context), List.of("scales", "note"), List.of(), List.of());
    cells.put("name", context.pathParam("name"));
    String name = kitchen.setUp().probe(cells).name();
    Optional<Checked> said =
        kitchen.probes().all().stream().filter(p -> p.probe().name().equals(name)).findFirst();
    Answer.json(context, answers().probe(said.orElseThrow()));
  }

  void checks(Context context) {
    Accept.best(context, Accept.JSON);
    Page.Wanted page = Query.of(context, Query.LIMIT, Query.CURSOR).page(LotHandlers.USUAL_PAGE);
    List<ProbeAnswers.Check> all =
        kitchen.probes().checks(context.pathParam("name")).stream().map(answers()::check).toList();
    Answer.json(context, Pages.listing(all, "probe-checks", page));
  }

  void check(Context context) {
    Accept.best(context, Accept.JSON);
    Query.none(context);
    Body body = Body.of(context);
    ProbeCheck check =
        kitchen
            .probes()
            .check(
                context.pathParam("name"),
                Cards.of(
                    body,
                    List.of("method", "reading", "result", "by", "note"),
                    List.of(),
                    List.of()),
                OnceKeys.of(context, body));
    Answer.created(context, answers().check(check));
  }
}
