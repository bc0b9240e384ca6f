package chillwright.web.pages;

import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Finding;
import chillwright.print.ReportText;
import chillwright.print.Sentences;
import chillwright.service.Page;
import chillwright.service.Places;
import chillwright.service.Reports.Trouble;
import io.javalin.http.Context;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;

/** The record: what went out of compliance or was not shown, and what was done about it. */
final class RecordPage {
  static final String ADDRESS = "/record";

  /** What an inspector usually asks for first: the last 90 days. */
  static final int DAYS = 90;

  static final Map<String, String> NAMES = Map.of("from", "record.from", "to", "record.to");

  private final Desk desk;

  RecordPage(Desk desk) {
    this.desk = desk;
  }

  void show(Context context) {
    Visitor visitor = desk.visitor(context);
    Instant now = desk.kitchen().now();
    LocalDate today = LocalDate.ofInstant(now, desk.zone());
    Parameters parameters = new Parameters(context, visitor, NAMES);
    Parameters.Period asked = parameters.period(today.minusDays(DAYS), today);
    LocalDate from = asked.from();
    LocalDate to = asked.to();
    Page<Trouble> found =
        desk.kitchen()
            .reports()
            .outOfCompliance(
                Optional.of(start(from)),
                Optional.of(start(to.plusDays(1)).minusMillis(1)),
                Page.Wanted.first(Page.MOST));
    Places.Troubles places =
        desk.kitchen().places().troubles(start(from), start(to.plusDays(1)).minusMillis(1));
    TroubleWords words =
        new TroubleWords(desk.zone(), visitor, moment -> desk.moment(moment, visitor));
    String period = "?from=" + from + "&to=" + to;
    RecordView view =
        new RecordView(
            from.toString(),
            to.toString(),
            found.items().stream().map(trouble -> item(trouble, visitor, now)).toList(),
            found.next().isPresent(),
            places.items().stream().map(words::of).toList(),
            places.isCut(),
            ADDRESS + ".pdf" + period,
            "/api/v1/reports/out-of-compliance?format=csv&from="
                + start(from)
                + "&to="
                + start(to.plusDays(1)).minusMillis(1),
            Tables.READINGS + period);
    Frame frame =
        desk.frame(visitor, "page.record", ADDRESS, Frame.Notice.plain(parameters.faults()))
            .asked(context);
    desk.answer(context, Templates.PAGES.record(frame, view));
  }

  private Instant start(LocalDate day) {
    return day.atStartOfDay(desk.zone()).toInstant();
  }

  private RecordView.Item item(Trouble trouble, Visitor visitor, Instant now) {
    Finding finding = trouble.finding();
    Scale scale = visitor.scale();
    ReportText text = new ReportText(desk.zone(), scale, now);
    String done = text.done(trouble.taken(), visitor.language());
    String none = visitor.say(trouble.isOwed() ? "record.owed" : "record.closed");
    return new RecordView.Item(
        trouble.lot().lot().text(),
        trouble.lot().food(),
        Sign.of(finding.at(now)),
        desk.moment(finding.settlesAt(), visitor),
        new Sentences(desk.zone(), scale, now, visitor.language())
            .says(finding, trouble.timeline(), trouble.ruleSet()),
        text.done(done.isEmpty() ? none : done, trouble.handedOn(), visitor.language()),
        finding.rule().citation().text());
  }
}
