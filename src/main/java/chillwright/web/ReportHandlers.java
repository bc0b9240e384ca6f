package chillwright.web;

import chillwright.service.Kitchen;
import chillwright.service.Page;
import chillwright.service.Reports.Trouble;
import chillwright.web.answers.LotAnswers;
import io.javalin.http.Context;
import io.javalin.http.Header;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** What must be done next, and what the kitchen must answer for. */
final class ReportHandlers {
  private static final String FORMAT = "format";
  private static final SortedMap<String, String> FORMATS =
      new TreeMap<>(Map.of("json", Accept.JSON, "csv", Accept.CSV));

  private final Kitchen kitchen;
  private final Freshness freshness;

  ReportHandlers(Kitchen kitchen, Freshness freshness) {
    this.kitchen = kitchen;
    this.freshness = freshness;
  }

  private LotAnswers answers() {
    return new LotAnswers(kitchen.judge().book(), kitchen.zone(), kitchen.now());
  }

  void due(Context context) {
    Accept.best(context, Accept.JSON);
    Page.Wanted page = Query.of(context, Query.LIMIT, Query.CURSOR).page(LotHandlers.USUAL_PAGE);
    freshness.answer(
        context,
        () -> {
          LotAnswers answers = answers();
          return answers.listing(Pages.map(kitchen.reports().dueNext(page), answers::due));
        });
  }

  /**
   * As JSON page by page; as CSV from the cursor on to the end. The first page is made before the
   * answer begins, so a fault in it is told as one; a fault in a later page breaks the line.
   */
  void outOfCompliance(Context context) throws IOException {
    context.header(Header.VARY, Header.ACCEPT);
    Query query = Query.of(context, "from", "to", FORMAT, Query.LIMIT, Query.CURSOR);
    String form =
        query
            .read(FORMAT, "unknown-format", String.join(", ", FORMATS.keySet()), ReportHandlers::of)
            .orElseGet(() -> Accept.best(context, Accept.JSON, Accept.CSV));
    Optional<Instant> from = query.from("from", kitchen.zone());
    Optional<Instant> to = query.to("to", kitchen.zone());
    Page.Wanted wanted = query.page(LotHandlers.USUAL_PAGE);
    Page<Trouble> first =
        kitchen
            .reports()
            .outOfCompliance(from, to, form.equals(Accept.CSV) ? most(wanted) : wanted);
    if (form.equals(Accept.JSON)) {
      LotAnswers answers = answers();
      Answer.json(context, answers.listing(Pages.map(first, answers::trouble)));
    } else {
      csv(context, from, to, first);
    }
  }

  private static Optional<String> of(String format) {
    return Optional.ofNullable(FORMATS.get(format));
  }

  private static Page.Wanted most(Page.Wanted wanted) {
    return new Page.Wanted(Page.MOST, wanted.cursor());
  }

  private void csv(
      Context context, Optional<Instant> from, Optional<Instant> to, Page<Trouble> first)
      throws IOException {
    StringWriter begun = new StringWriter();
    new TroubleCsv(answers(), begun).begin().write(first.items());
    context.contentType("text/csv; charset=utf-8; header=present");
    context.header(Header.CONTENT_DISPOSITION, "attachment; filename=\"out-of-compliance.csv\"");
    Writer out = new OutputStreamWriter(context.outputStream(), StandardCharsets.UTF_8);
    TroubleCsv csv = new TroubleCsv(answers(), out);
    Page<Trouble> page = first;
    out.write(begun.toString());
    while (page.next().isPresent()) {
      page = kitchen.reports().outOfCompliance(from, to, new Page.Wanted(Page.MOST, page.next()));
      csv.write(page.items());
    }
    out.flush();
  }
}
