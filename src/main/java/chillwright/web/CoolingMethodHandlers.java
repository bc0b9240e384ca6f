package chillwright.web;

import chillwright.service.CoolingMethods.Asked;
import chillwright.service.Kitchen;
import chillwright.web.answers.CoolingMethodAnswers;
import chillwright.web.answers.CoolingMethodAnswers.Methods;
import chillwright.web.answers.CoolingMethodCsv;
import io.javalin.http.Context;
import io.javalin.http.Header;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** What the kitchen's own coolings show. */
final class CoolingMethodHandlers {
  private static final SortedMap<String, String> FORMATS =
      new TreeMap<>(Map.of("json", Accept.JSON, "csv", Accept.CSV));

  private final Kitchen kitchen;

  CoolingMethodHandlers(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  void list(Context context) {
    context.header(Header.VARY, Header.ACCEPT);
    Query query = Query.of(context, "food", "container", "from", "to", "format");
    String form =
        query
            .read(
                "format",
                "unknown-format",
                String.join(", ", FORMATS.keySet()),
                name -> Optional.ofNullable(FORMATS.get(name)))
            .orElseGet(() -> Accept.best(context, Accept.JSON, Accept.CSV));
    Asked asked =
        new Asked(
            query.line("food"),
            query.line("container"),
            query.from("from", kitchen.zone()),
            query.to("to", kitchen.zone()));
    query.requireFaultless();
    Methods found =
        new CoolingMethodAnswers(kitchen.judge().book(), kitchen.zone())
            .answer(kitchen.coolingMethods().find(asked));
    if (form.equals(Accept.JSON)) {
      Answer.json(context, found);
    } else {
      context.contentType("text/csv; charset=utf-8; header=present");
      context.header(Header.CONTENT_DISPOSITION, "attachment; filename=\"cooling-methods.csv\"");
      context.result(CoolingMethodCsv.text(found));
    }
  }
}
