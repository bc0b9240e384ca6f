package chillwright.web;

import chillwright.core.keeping.LotOrder;
import chillwright.core.keeping.LotState;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Acts;
import chillwright.core.rules.Finding;
import chillwright.core.rules.Verdict;
import chillwright.print.Figures;
import chillwright.print.ReportText;
import chillwright.print.Sentences;
import chillwright.rulebook.RuleBook;
import chillwright.service.Kitchen;
import chillwright.service.LotQuery;
import chillwright.service.LotView;
import chillwright.service.Page;
import chillwright.service.Reports.Due;
import chillwright.service.Settings;
import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Optional;

/** What needs a hand now, what falls due next and what to use first, on one plain page. */
final class HomePage {
  /** Of each list; who has more on hand than that asks the API. */
  static final int SHOWN = 50;

  private static final String STYLE =
      """
      :root{color-scheme:light}
      body{margin:0 auto;max-width:44rem;padding:1rem;background:#fff;color:#111;
      font:1.125rem/1.45 system-ui,sans-serif;overflow-wrap:anywhere}
      h1{font-size:1.5rem;margin:0}
      h2{font-size:1.2rem;margin:1.6rem 0 .4rem;border-bottom:2px solid}
      ul{list-style:none;margin:0;padding:0}li{padding:.7rem 0;border-bottom:1px solid #777}
      b{font-size:1.2rem}p{margin:.4rem 0}.mark{border:2px solid;padding:0 .35rem;font-weight:700}
      .lot{font-family:ui-monospace,monospace}footer{margin-top:2rem;font-size:1rem}
      """;

  private static final String POLICY =
      "default-src 'none'; style-src 'sha256-%s'; base-uri 'none'; form-action 'none';"
              .formatted(styleHash())
          + " frame-ancestors 'none'";

  private final Kitchen kitchen;

  HomePage(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  void show(Context context) {
    Accept.best(context, Accept.HTML);
    Query.none(context);
    context.header("Content-Security-Policy", POLICY);
    context.contentType("text/html; charset=utf-8").result(page(kitchen.now()));
  }

  private String page(Instant now) {
    Settings settings = kitchen.settings();
    String name = settings.name().orElse("Kitchen");
    ZoneId zone = settings.zone();
    return """
        <!doctype html>
        <html lang="en"><head><meta charset="utf-8">
        <meta name="viewport" content="width=device-width, initial-scale=1">
        <title>%s</title><style>%s</style></head>
        <body><header><h1>%s</h1><p>%s, %s</p></header>
        <main><h2>Needs a hand now</h2>
        %s
        <h2>Falls due next</h2>
        %s
        <h2>On hand, use first</h2>
        %s
        </main><footer>%s</footer></body></html>
        """
        .formatted(
            Html.escaped(name),
            STYLE,
            Html.words(name),
            Html.escaped(Figures.time(now, zone, Instant.EPOCH)),
            Html.escaped(zone.getId()),
            needsAHand(now),
            dueNext(now),
            new OnHand(kitchen, now).useFirst(),
            footer(settings.ruleBook()));
  }

  private String needsAHand(Instant now) {
    List<String> items = new ArrayList<>();
    LotQuery out = LotQuery.ALL.with(Verdict.OUT);
    Page<LotState> outNow = kitchen.lots().list(out, Page.Wanted.first(SHOWN));
    Page<LotState> owed =
        kitchen.lots().list(LotQuery.ALL.in(LotOrder.OWED), Page.Wanted.first(SHOWN));
    outNow.items().forEach(lot -> items.add(trouble(lot, "OUT", now)));
    owed.items().stream()
        .filter(lot -> !outNow.items().contains(lot))
        .forEach(lot -> items.add(trouble(lot, "NOT SHOWN", now)));
    return list(
        items,
        outNow.next().isPresent() || owed.next().isPresent(),
        "Nothing on hand is out of compliance, and no action is owed.");
  }

  private String trouble(LotState lot, String mark, Instant now) {
    Optional<LotView.Judged> judged = kitchen.lots().lot(lot.lot()).flatMap(LotView::judged);
    StringBuilder item = new StringBuilder();
    item.append("<li><span class=\"mark\">").append(mark).append("</span> ").append(named(lot));
    judged.ifPresent(
        found ->
            found.findings().stream()
                .sorted(Sentences.worstFirst(now))
                .filter(finding -> finding.at(now).compareTo(Verdict.NOT_SHOWN) <= 0)
                .filter(Acts::calls)
                .forEach(finding -> item.append(says(finding, found, now))));
    return item.append("</li>").toString();
  }

  private String says(Finding finding, LotView.Judged judged, Instant now) {
    Sentences sentences = new Sentences(kitchen.zone(), Figures.scale(judged.timeline()), now);
    String done =
        new ReportText(kitchen.zone(), Scale.FAHRENHEIT, now)
            .done(Acts.taken(finding, judged.timeline()));
    return "<p>%s [%s]</p>%s"
        .formatted(
            Html.words(sentences.says(finding)),
            Html.escaped(finding.rule().citation().text()),
            done.isEmpty() ? "" : "<p>Done: " + Html.words(done) + "</p>");
  }

  static String named(LotState lot) {
    return "%s <span class=\"lot\">%s</span>"
        .formatted(Html.words(lot.food()), Html.escaped(lot.lot().text()));
  }

  private String dueNext(Instant now) {
    Page<Due> due = kitchen.reports().dueNext(Page.Wanted.first(SHOWN));
    return list(
        due.items().stream().map(item -> due(item, now)).toList(),
        due.next().isPresent(),
        "Nothing is running.");
  }

  private String due(Due due, Instant now) {
    Finding finding = due.finding();
    Sentences sentences = new Sentences(kitchen.zone(), Figures.scale(due.timeline()), now);
    Instant deadline = finding.deadline().orElse(finding.settlesAt());
    return "<li><b>%s</b> %s<p>%s [%s]</p></li>"
        .formatted(
            Html.escaped(Figures.time(deadline, kitchen.zone(), now)),
            named(due.lot()),
            Html.words(sentences.says(finding)),
            Html.escaped(finding.rule().citation().text()));
  }

  static String list(List<String> items, boolean hasMore, String none) {
    if (items.isEmpty()) {
      return "<p>" + none + "</p>";
    }
    String more = hasMore ? "<p>There are more; only the first are shown.</p>" : "";
    return "<ul>" + String.join("\n", items) + "</ul>" + more;
  }

  private static String footer(RuleBook book) {
    return "<p>Judged by %s (%s, version %s). %s</p>"
        .formatted(
            Html.escaped(book.title()),
            Html.escaped(book.id()),
            Html.escaped(book.version()),
            Html.escaped(book.defers().strip()));
  }

  private static String styleHash() {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      byte[] hash = digest.digest(STYLE.getBytes(StandardCharsets.UTF_8));
      return Base64.getEncoder().encodeToString(hash);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
