package chillwright.web.pages;

import chillwright.core.forecast.Forecast;
import chillwright.core.forecast.Forecast.Outlook;
import chillwright.core.keeping.LotOrder;
import chillwright.core.keeping.LotState;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Phase;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Acts;
import chillwright.core.rules.Finding;
import chillwright.core.rules.Verdict;
import chillwright.print.Figures;
import chillwright.print.ForecastText;
import chillwright.print.ReportText;
import chillwright.print.Sentences;
import chillwright.print.SpeedupText;
import chillwright.service.Kitchen;
import chillwright.service.LotQuery;
import chillwright.service.LotView;
import chillwright.service.Page;
import chillwright.service.Reports.Due;
import io.javalin.http.Context;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The first page: lots by the time their next limit passes, with what to do. */
final class NowPage {
  static final String ADDRESS = "/";

  /** Of each list; who has more on hand sees the rest among all lots. */
  private static final int SHOWN = 50;

  private final Desk desk;

  NowPage(Desk desk) {
    this.desk = desk;
  }

  void show(Context context) {
    Visitor visitor = desk.visitor(context);
    Frame frame =
        desk.frame(visitor, "page.now", ADDRESS, saved(context, visitor).stream().toList());
    desk.answer(context, Templates.PAGES.now(frame, shown(visitor)));
  }

  /** The address of this page that is to tell what was saved for a lot. */
  static String after(String lot, LogEntry entry) {
    return ADDRESS + "?lot=" + lot + "&done=" + entry.id();
  }

  /** As the record has it, whatever the address says. */
  private Optional<Frame.Notice> saved(Context context, Visitor visitor) {
    String done = Optional.ofNullable(context.queryParam("done")).orElse("");
    return Optional.ofNullable(context.queryParam("lot"))
        .filter(LotId::isCode)
        .map(LotId::new)
        .flatMap(desk.kitchen().lots()::lot)
        .flatMap(
            view ->
                view.entries().stream()
                    .filter(entry -> entry.id().text().equals(done))
                    .findFirst()
                    .map(entry -> LotPage.done(desk, entry, view, visitor)))
        .map(
            told -> new Frame.Notice(told.says(), List.of(context.queryParam("lot")), told.mend()));
  }

  private NowView shown(Visitor visitor) {
    return desk.view(ADDRESS, visitor, NowView.class, () -> view(visitor));
  }

  private NowView view(Visitor visitor) {
    Kitchen kitchen = desk.kitchen();
    Instant now = kitchen.now();
    Page<LotState> out =
        kitchen.lots().list(LotQuery.ALL.with(Verdict.OUT), Page.Wanted.first(SHOWN));
    Page<LotState> owed =
        kitchen.lots().list(LotQuery.ALL.in(LotOrder.OWED), Page.Wanted.first(SHOWN));
    Page<Due> dues = kitchen.reports().dueNext(Page.Wanted.first(SHOWN));
    Page<LotState> notShown =
        kitchen.lots().list(LotQuery.ALL.with(Verdict.NOT_SHOWN), Page.Wanted.first(SHOWN));
    Page<LotState> thawing =
        kitchen
            .lots()
            .list(LotQuery.ALL.with(Verdict.NOT_SHOWN).in(Phase.THAWING), Page.Wanted.first(SHOWN));
    Map<LotId, LotState> hands = new LinkedHashMap<>();
    Stream.of(out, owed, notShown)
        .flatMap(page -> page.items().stream())
        .forEach(lot -> hands.putIfAbsent(lot.lot(), lot));
    // What was out and is for use all the same needs no hand.
    hands.keySet().removeAll(kitchen.fitLots().of(hands.values()));
    // A thaw nobody has read yet is shown by a reading as long as it goes on.
    thawing.items().stream()
        .filter(lot -> isThawUnread(lot, now))
        .forEach(lot -> hands.putIfAbsent(lot.lot(), lot));
    // A lot stands on the page once, with all that is to be done.
    Map<Boolean, List<Due>> byHand =
        dues.items().stream()
            .collect(Collectors.partitioningBy(due -> hands.containsKey(due.lot().lot())));
    return new NowView(
        new CallingPlaces(desk, visitor).shown(),
        hands.values().stream().map(lot -> hand(lot, byHand.get(true), visitor, now)).toList(),
        Stream.of(out, owed, thawing).anyMatch(page -> page.next().isPresent()),
        byHand.get(false).stream().map(due -> next(due, visitor, now)).toList(),
        dues.next().isPresent(),
        new PlanSoon(desk, visitor).events(),
        desk.people(),
        desk.needsKey()
            ? RulesPage.ADDRESS + "#calendar"
            : DeadlinesFeed.address(visitor, Optional.empty()));
  }

  private boolean isThawUnread(LotState lot, Instant now) {
    return desk.kitchen()
        .lots()
        .lot(lot.lot())
        .filter(view -> NotForUse.isThawUnread(view, now))
        .isPresent();
  }

  private NowView.Hand hand(LotState lot, List<Due> dues, Visitor visitor, Instant now) {
    Optional<LotView> view = desk.kitchen().lots().lot(lot.lot());
    Optional<Verdict> verdict = lot.standing().flatMap(standing -> standing.verdicts().at(now));
    return new NowView.Hand(
        lot.lot().text(),
        lot.food(),
        Sign.of(verdict),
        view.map(found -> says(found, visitor, now)).orElse(List.of()),
        dues.stream()
            .filter(due -> due.lot().lot().equals(lot.lot()))
            .map(due -> next(due, visitor, now))
            .map(next -> new LotPageView.Next(next.says(), next.until(), next.left()))
            .toList(),
        view.filter(
                found ->
                    NextWords.waitsForReading(found, now) || NotForUse.isThawUnread(found, now))
            .isPresent());
  }

  private List<String> says(LotView view, Visitor visitor, Instant now) {
    List<String> says =
        view.judged().map(found -> says(found, visitor, now)).orElseGet(ArrayList::new);
    Sentences sentences = new Sentences(desk.zone(), visitor.scale(), now, visitor.language());
    if (NotForUse.isThawUnread(view, now)) {
      NotForUse.unread(view, sentences, visitor).ifPresent(says::add);
    }
    return says;
  }

  private List<String> says(LotView.Judged found, Visitor visitor, Instant now) {
    List<String> says = new ArrayList<>();
    Scale scale = visitor.scale();
    found.findings().stream()
        .sorted(Sentences.worstFirst(now))
        .filter(finding -> finding.at(now).compareTo(Verdict.NOT_SHOWN) <= 0)
        .filter(Acts::calls)
        .forEach(
            finding -> {
              Sentences sentences = new Sentences(desk.zone(), scale, now, visitor.language());
              String what = sentences.says(finding, found.timeline(), found.ruleSet());
              says.add(what + " [" + finding.rule().citation().text() + "]");
              String done =
                  new ReportText(desk.zone(), scale, now)
                      .done(Acts.taken(finding, found.timeline()), visitor.language());
              if (!done.isEmpty() && !what.contains(done)) {
                says.add(visitor.say("record.action") + " " + done);
              }
            });
    return says;
  }

  /** A warning while there is time; what goes well needs no words here. */
  private String forecast(Due due, Visitor visitor, Instant now) {
    ForecastText text = new ForecastText(desk.zone(), visitor.scale(), now, visitor.language());
    return due.forecast()
        .filter(forecast -> due.timeline().phase() != Phase.REHEATING)
        .filter(forecast -> forecast.outlook() != Outlook.IN_TIME)
        .filter(forecast -> forecast.expected().filter(now::isAfter).isEmpty())
        .map(
            found ->
                text.says(found) + (found.outlook() == Outlook.UNREAD ? "" : soonest(found, text)))
        .orElse("");
  }

  private static String soonest(Forecast forecast, ForecastText text) {
    return new SpeedupText(text.zone(), text.scale(), text.now(), text.language())
        .best(forecast)
        .map(best -> " " + best)
        .orElse("");
  }

  /** What is left until a moment, for as long as no script counts it down. */
  static String left(Instant last, Instant now, Visitor visitor) {
    Duration left = Duration.between(now, last);
    String key = left.isNegative() ? "script.over" : "script.left";
    return visitor.say(key, Figures.duration(left.abs()));
  }

  private NowView.Next next(Due due, Visitor visitor, Instant now) {
    Finding finding = due.finding();
    Instant last = finding.deadline().orElse(finding.settlesAt());
    return new NowView.Next(
        due.lot().lot().text(),
        due.lot().food(),
        desk.clock(last, visitor),
        last.toString(),
        left(last, now, visitor),
        new Sentences(desk.zone(), visitor.scale(), now, visitor.language())
                .saysUncounted(finding, due.timeline(), due.ruleSet(), last)
            + " ["
            + finding.rule().citation().text()
            + "]",
        forecast(due, visitor, now),
        new NotForUse(desk, visitor).mended(due.lot()).orElse(""),
        NextWords.takesReading(finding));
  }
}
