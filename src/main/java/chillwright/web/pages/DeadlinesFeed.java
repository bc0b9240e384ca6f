package chillwright.web.pages;

import chillwright.core.measure.Temperature.Scale;
import chillwright.core.plan.Pull;
import chillwright.core.rules.Finding;
import chillwright.core.rules.OpenReheat;
import chillwright.core.rules.OpenReheat.Running;
import chillwright.core.rules.Rule;
import chillwright.core.rules.Shape.DayCount;
import chillwright.core.rules.Shape.Reach;
import chillwright.print.Figures;
import chillwright.print.PullText;
import chillwright.service.Page;
import chillwright.service.Reports.Due;
import io.javalin.http.Context;
import io.javalin.http.Header;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;

/**
 * What falls due next, and what comes out of the freezer for plans, as a calendar that a phone
 * subscribes to.
 */
public final class DeadlinesFeed {
  public static final String ADDRESS = "/deadlines.ics";

  /** The part of the address in which a calendar program brings its key. */
  public static final String KEY = "key";

  /** The most moments of one feed; the nearest come first. */
  private static final int MOST = 1000;

  /** So far ahead it tells what comes out of the freezer. */
  private static final int PULLED_DAYS = 14;

  private final Desk desk;

  DeadlinesFeed(Desk desk) {
    this.desk = desk;
  }

  /** Its address in that language, for a calendar program that has the key, if one is needed. */
  static String address(Visitor visitor, Optional<String> key) {
    String plain = ADDRESS + "?" + Visitor.LANGUAGE + "=" + visitor.language().tag();
    return key.map(made -> plain + "&" + KEY + "=" + made).orElse(plain);
  }

  void answer(Context context) {
    Visitor visitor =
        desk.visitor(context).reading(Optional.ofNullable(context.queryParam(Visitor.LANGUAGE)));
    String address = desk.address(context);
    Instant now = desk.kitchen().now();
    ICalendar calendar =
        new ICalendar(desk.kitchen().settings().name().orElse(visitor.say("kitchen.unnamed")));
    int count = 0;
    Optional<String> next = Optional.empty();
    do {
      Page<Due> page = desk.kitchen().reports().dueNext(new Page.Wanted(Page.MOST, next));
      page.items().forEach(due -> calendar.add(event(due, address, visitor), now));
      count += page.items().size();
      next = page.next();
    } while (next.isPresent() && count < MOST);
    desk.kitchen().pulls().list(PULLED_DAYS).pulls().stream()
        .filter(pull -> pull.why() == Pull.Why.PLAN)
        .forEach(pull -> calendar.add(event(pull, address, visitor), now));
    context.header(Header.CONTENT_DISPOSITION, "inline; filename=\"deadlines.ics\"");
    context.contentType("text/calendar; charset=utf-8").result(calendar.end());
  }

  private ICalendar.Event event(Due due, String address, Visitor visitor) {
    Finding finding = due.finding();
    Rule rule = finding.rule();
    String lot = due.lot().lot().text();
    Optional<Running> reheat =
        OpenReheat.during(finding, due.timeline(), due.ruleSet(), desk.kitchen().now());
    Instant limit = finding.deadline().orElse(finding.settlesAt());
    Instant last = reheat.map(running -> running.by(limit)).orElse(limit);
    String what = what(due, reheat, last, visitor);
    return new ICalendar.Event(
        lot + "/" + rule.id() + "@" + desk.kitchen().settings().createdAt().toEpochMilli(),
        last,
        what + ": " + due.lot().food() + " (" + lot + ")",
        String.join(
            "\n",
            visitor.language().saidByRules(rule.says().strip()),
            Figures.limitInBoth(rule, visitor.language())
                + " ["
                + rule.citation().text().strip()
                + "]",
            visitor.language().saidByRules(desk.kitchen().judge().book().defers().strip())),
        address + "/lots/" + lot);
  }

  /** What comes out of the freezer for a plan. */
  private ICalendar.Event event(Pull pull, String address, Visitor visitor) {
    PullText text = new PullText(desk.times(visitor));
    String lot = pull.lot().lot().text();
    return new ICalendar.Event(
        lot
            + "/pull/"
            + pull.need().orElseThrow().plan()
            + "@"
            + desk.kitchen().settings().createdAt().toEpochMilli(),
        pull.at().orElseThrow(),
        text.what(pull),
        text.why(pull) + "\n" + text.caution(),
        address + "/lots/" + lot);
  }

  /** What is due and by when, as a clock in the kitchen shows it. */
  private String what(Due due, Optional<Running> reheat, Instant last, Visitor visitor) {
    Finding finding = due.finding();
    Scale scale = Figures.scale(due.timeline());
    if (finding.rule().shape() instanceof DayCount) {
      return visitor.say(
          "due.last-day", desk.times(visitor).day(LocalDate.ofInstant(last, desk.zone())));
    }
    String clock = desk.times(visitor).hour(last);
    if (reheat.isPresent()) {
      return visitor.say("due.by", reheat.get().to().text(scale), clock);
    }
    String limit =
        finding.rule().shape() instanceof Reach reach
            ? reach.to().text(scale)
            : Figures.limit(finding.rule(), scale);
    return visitor.say("due.by", limit, clock);
  }
}
