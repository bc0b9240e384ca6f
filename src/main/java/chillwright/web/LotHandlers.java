package chillwright.web;

import chillwright.core.keeping.LotOrder;
import chillwright.core.keeping.LotState;
import chillwright.core.log.Incoming;
import chillwright.core.log.LotId;
import chillwright.core.log.Misread;
import chillwright.core.log.Phase;
import chillwright.core.log.Row;
import chillwright.core.log.Word;
import chillwright.core.rules.Verdict;
import chillwright.logfile.Cells;
import chillwright.logfile.Column;
import chillwright.logfile.Place;
import chillwright.service.Kitchen;
import chillwright.service.LotQuery;
import chillwright.service.LotView;
import chillwright.service.NewLot;
import chillwright.service.Page;
import chillwright.service.Written;
import chillwright.web.answers.Answers;
import chillwright.web.answers.EntryAnswers;
import chillwright.web.answers.LotAnswers;
import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.http.Context;
import io.javalin.http.Header;
import java.time.Instant;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Lots and their entries: parse, call, render. */
final class LotHandlers {
  static final int USUAL_PAGE = 50;

  private static final String PHASES =
      Arrays.stream(Phase.values()).map(Phase::word).collect(Collectors.joining(", "));
  private static final String VERDICTS =
      Arrays.stream(Verdict.values()).map(Verdict::text).collect(Collectors.joining(", "));
  private static final String ORDERS =
      Arrays.stream(LotOrder.values()).map(LotOrder::text).collect(Collectors.joining(", "));

  private final Kitchen kitchen;
  private final Freshness freshness;

  LotHandlers(Kitchen kitchen, Freshness freshness) {
    this.kitchen = kitchen;
    this.freshness = freshness;
  }

  void list(Context context) {
    Accept.best(context, Accept.JSON);
    Query query =
        Query.of(
            context,
            "phase",
            "place",
            "verdict",
            "lastDayBefore",
            "bestQualityBefore",
            "goodOn",
            "sort",
            Query.LIMIT,
            Query.CURSOR);
    LotQuery wanted =
        new LotQuery(
            query.read("phase", "unknown-phase", PHASES, LotHandlers::phase),
            query.text("place"),
            query.read("verdict", "unknown-verdict", VERDICTS, LotHandlers::verdict),
            query.read("lastDayBefore", "bad-date", Moments.DATE_ALLOWED, Moments::date),
            query.read("bestQualityBefore", "bad-date", Moments.DATE_ALLOWED, Moments::date),
            query.read("goodOn", "bad-date", Moments.DATE_ALLOWED, Moments::date),
            query.read("sort", "unknown-order", ORDERS, LotHandlers::order));
    Page.Wanted page = query.page(USUAL_PAGE);
    freshness.answer(
        context,
        () -> {
          LotAnswers answers = answers(kitchen.now());
          return answers.listing(
              Pages.map(kitchen.fitLots().told(kitchen.lots().list(wanted, page)), answers::line));
        });
  }

  private static Optional<Phase> phase(String text) {
    return Arrays.stream(Phase.values()).filter(phase -> phase.word().equals(text)).findFirst();
  }

  private static Optional<LotOrder> order(String text) {
    return Arrays.stream(LotOrder.values()).filter(o -> o.text().equals(text)).findFirst();
  }

  private static Optional<Verdict> verdict(String text) {
    return Arrays.stream(Verdict.values()).filter(v -> v.text().equals(text)).findFirst();
  }

  private LotAnswers answers(Instant now) {
    return new LotAnswers(kitchen.judge().book(), kitchen.zone(), now);
  }

  void create(Context context) {
    Accept.best(context, Accept.JSON);
    Query.none(context);
    Body body = Body.of(context);
    LotState made = kitchen.logbook().createLot(newLot(body), OnceKeys.of(context, body));
    context.header(Header.LOCATION, Routes.LOTS + "/" + made.lot());
    Answer.created(context, detail(made.lot()));
  }

  /** Read as the first row of the lot would be, so that its fields obey the same limits. */
  private NewLot newLot(Body body) {
    List<String> known = List.of("lot", "food", "category", "from", "portions", "note");
    Fields fields = new Fields(body.json(), "", known);
    Map<String, String> given = new HashMap<>();
    for (String name : known) {
      Optional<JsonNode> node = fields.node(name);
      node.flatMap(n -> EntryRows.cell(fields, name, n)).ifPresent(text -> given.put(name, text));
    }
    boolean hasCode = !given.getOrDefault("lot", "").isBlank();
    given.put(Column.ENTRY.title(), Word.PREPARED.text());
    given.put(Column.WHEN.title(), kitchen.now().toString());
    given.compute("lot", (name, code) -> hasCode ? code : "made");
    Incoming read = new Cells(kitchen.now(), kitchen.zone()).read(given, Place.object(""));
    if (read instanceof Misread misread) {
      fields.problems().addAll(misread.problems());
    }
    fields.requireFaultless();
    Row row = (Row) read;
    return new NewLot(
        row.lot().filter(code -> hasCode),
        row.details().food(),
        row.details().category(),
        row.details().from(),
        row.details().portions(),
        row.note());
  }

  void one(Context context) {
    Accept.best(context, Accept.JSON);
    Query.none(context);
    LotId lot = lot(context);
    freshness.answer(context, () -> detail(lot));
  }

  private Answers.LotDetail detail(LotId lot) {
    LotView view = view(lot);
    return answers(kitchen.now())
        .detail(view, kitchen.fitLots().told(view.state()), kitchen.coolingMethods().like(view));
  }

  private LotView view(LotId lot) {
    return kitchen.lots().lot(lot).orElseThrow(() -> unknown(lot.text()));
  }

  private static LotId lot(Context context) {
    String code = context.pathParam("lot");
    if (!LotId.isCode(code)) {
      throw unknown(Shown.text(code));
    }
    return new LotId(code);
  }

  private static RequestFault unknown(String code) {
    return RequestFault.unknown("lot", "lot", code, "the code of a lot of this kitchen");
  }

  void entries(Context context) {
    Accept.best(context, Accept.JSON);
    Page.Wanted page = Query.of(context, Query.LIMIT, Query.CURSOR).page(USUAL_PAGE);
    LotView view = view(lot(context));
    Answer.json(
        context,
        Pages.listing(new EntryAnswers(kitchen.zone()).all(view.entries()), "entries", page));
  }

  void log(Context context) {
    Accept.best(context, Accept.JSON);
    Query.none(context);
    LotId lot = lot(context);
    if (kitchen.lots().state(lot).isEmpty()) {
      throw unknown(lot.text());
    }
    Body body = Body.of(context);
    EntryRows rows = new EntryRows(new Cells(kitchen.now(), kitchen.zone()));
    Written written =
        kitchen
            .logbook()
            .log(rows.oneOrMore(body.json(), EntryRows.ofLot(lot)), OnceKeys.of(context, body));
    Answer.created(context, answers(written.at()).written(written));
  }
}
